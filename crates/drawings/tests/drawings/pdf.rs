use trammel_drawings::metrics::{CAPITAL, Metrics};
use trammel_drawings::pdf;
use trammel_drawings::sheet::{Paper, SheetSet, lay_out};

use crate::sample::{block, content, metrics, tab};

fn set(m: &Metrics) -> SheetSet {
    SheetSet {
        title: "lower arm tab".to_owned(),
        pages: lay_out(Paper::A4, &block("lower arm tab"), &content(&tab()), m),
    }
}

#[test]
fn the_same_pages_give_the_same_bytes() {
    let m = metrics();
    let first = pdf::write(&set(&m), &m).unwrap();
    assert!(first.starts_with(b"%PDF"));
    assert_eq!(first, pdf::write(&set(&metrics()), &m).unwrap());
}

#[test]
fn no_pages_are_no_fault() {
    let m = metrics();
    let none = SheetSet {
        title: "none".to_owned(),
        pages: Vec::new(),
    };
    let _ = pdf::write(&none, &m);
}

/// DejaVu Sans 2.37: a capital H is 1493 of 2048 units high and 1540 wide (its tables).
#[test]
fn widths_come_from_the_font() {
    let width = metrics().width("H", 1493.0, false);
    assert!((width - 1540.0).abs() < 1e-6, "{width}");
    assert!((CAPITAL - 0.729).abs() < 1e-3);
}

#[test]
fn the_font_has_what_sheets_write() {
    assert!(metrics().has("\u{2300}\u{b0}\u{b1}\u{2013}\u{201c}\u{201d}\u{d7}\u{bd}"));
    assert!(!metrics().has("\u{10ffff}"));
}
