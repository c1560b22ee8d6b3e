use std::path::PathBuf;
use std::process::Command;

use trammel_drawings::metrics::Metrics;
use trammel_drawings::pdf;
use trammel_drawings::sheet::Paper;

use crate::raster::Raster;
use crate::sample::{pages, set, tab};
use crate::tools::{poppler, printed};

fn written(folder: &tempfile::TempDir, paper: Paper) -> PathBuf {
    let metrics = Metrics::new().expect("metrics");
    let file = folder.path().join(format!("{paper}.pdf"));
    std::fs::write(
        &file,
        pdf::write(&set(&tab(), paper, &metrics), &metrics).expect("a PDF"),
    )
    .expect("written");
    file
}

#[test]
fn the_bars_are_100_mm_and_4_in_within_a_tenth_both_ways() {
    if !poppler("pdftoppm") {
        return;
    }
    let folder = tempfile::tempdir().expect("a folder");
    for paper in [Paper::A4, Paper::Letter] {
        let page = Raster::of(&written(&folder, paper));
        for (asked, seen) in paper.size().into_iter().zip(page.size()) {
            assert!((asked - seen).abs() < 0.1, "{paper} is {seen} mm");
        }
        // Ticks at the bars' ends, looked for 1.4 mm beside the bar. The lower bar starts at (22.5, 55), the upper 7 mm over it.
        for (y, length) in [(55.0, 100.0), (62.0, 101.6)] {
            let tick = |x: f64| page.middle_across(y + 1.4, x - 1.5, x + 1.5);
            let measured = tick(22.5 + length) - tick(22.5);
            assert!(
                (measured - length).abs() < 0.1,
                "{paper}, across: {measured}"
            );
        }
        for (x, length) in [(34.0, 100.0), (27.0, 101.6)] {
            let tick = |y: f64| page.middle_up(x + 1.4, y - 1.5, y + 1.5);
            let measured = tick(82.0 + length) - tick(82.0);
            assert!((measured - length).abs() < 0.1, "{paper}, up: {measured}");
        }
    }
}

#[test]
fn holes_are_round_and_where_they_should_be() {
    if !poppler("pdftoppm") {
        return;
    }
    let folder = tempfile::tempdir().expect("a folder");
    let page = Raster::of(&written(&folder, Paper::A4));
    let (part, metrics) = (tab(), Metrics::new().expect("metrics"));
    let pages = pages(&part, Paper::A4, &metrics);
    let placed = pages[0]
        .placed
        .iter()
        .find(|placed| placed.drawing.title == part.name)
        .expect("the part");
    let (hole, foot) = (part.holes[0].centre + placed.shift, placed.shift);
    // The circle, 5 mm out, at eight angles between the cross's arms.
    for step in 0..8 {
        let angle = 0.39 + f64::from(step) * std::f64::consts::FRAC_PI_4;
        let at =
            |radius: f64| page.is_ink(hole.x + radius * angle.cos(), hole.y + radius * angle.sin());
        assert!(at(5.0) && !at(4.7) && !at(5.3), "at {angle}");
    }
    // The cross's upright arm tells x, the level one y; the crown of the cope lies 40 mm below the hole.
    let x = page.middle_across(hole.y + 3.0, hole.x - 1.0, hole.x + 1.0);
    let y = page.middle_up(hole.x + 3.0, hole.y - 1.0, hole.y + 1.0);
    let crown = page.middle_up(hole.x + 0.05, foot.y - 1.0, foot.y + 1.0);
    assert!((x - hole.x).abs() < 0.1, "{x} for {}", hole.x);
    assert!(
        (y - crown - 40.0).abs() < 0.1,
        "{} over the crown",
        y - crown
    );
}

#[test]
fn text_can_be_searched_and_fonts_are_embedded() {
    if !(poppler("pdftotext") && poppler("pdffonts")) {
        return;
    }
    let folder = tempfile::tempdir().expect("a folder");
    let file = written(&folder, Paper::A4);
    let text = printed(Command::new("pdftotext").arg("-layout").arg(&file).arg("-"));
    for wanted in [
        "lower arm tab",
        "3/8 bolt, close",
        "Print at 100 per cent",
        "100 mm",
        "4 in",
        "Demo buggy",
        "\u{2300}",
        "Caution",
    ] {
        assert!(text.contains(wanted), "{wanted:?} in {text}");
    }
    let fonts = printed(Command::new("pdffonts").arg(&file));
    let rows: Vec<&str> = fonts.lines().skip(2).collect();
    assert!(!rows.is_empty());
    for row in rows {
        assert!(row.contains("DejaVuSans"), "{row}");
        // Embedded, subset, with a way back to letters.
        assert!(row.contains("yes yes yes"), "{row}");
    }
}
