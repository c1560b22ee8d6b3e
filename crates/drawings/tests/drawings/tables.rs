use trammel_drawings::ink::{Ink, strokes};
use trammel_drawings::sheet::{Content, Page, Paper};
use trammel_drawings::table::{Table, lay_out, to_csv};

use crate::sample::{block, metrics};

fn list(rows: usize) -> Table {
    let mut table = Table::new("Cut list", &["Section", "Piece", "#Length", "#Count"]);
    for row in 0..rows {
        let piece = format!(
            "piece {row}, \"upper\" with a name that is far too long to stand on one line of any paper in the shop, so it wraps to the next"
        );
        table.row([
            "round tube 25.4 x 2.1 mm".to_owned(),
            piece,
            "340.0".to_owned(),
            "2".to_owned(),
        ]);
    }
    table
}

fn lettering(pages: &[Page]) -> Vec<String> {
    let m = metrics();
    let placed = pages.iter().flat_map(|page| &page.placed);
    placed
        .flat_map(|placed| strokes(&placed.drawing, &m))
        .filter_map(|stroke| match stroke.ink {
            Ink::Text(text) => Some(text.content),
            _ => None,
        })
        .collect()
}

#[test]
fn a_long_list_goes_on_with_its_heads_repeated() {
    let m = metrics();
    let pages = lay_out(
        Paper::A4,
        &block("Cut list"),
        &[list(60)],
        &Content::default(),
        &m,
    );
    assert!(pages.len() > 1);
    let text = lettering(&pages);
    assert_eq!(
        text.iter().filter(|text| *text == "Section").count(),
        pages.len()
    );
    for row in 0..60 {
        assert!(
            text.iter()
                .any(|text| text.starts_with(&format!("piece {row},"))),
            "{row}"
        );
    }
    for page in &pages {
        let table = page.placed.last().unwrap();
        let room = trammel_drawings::ink::bounds(&table.drawing, &m);
        assert!(
            room.max.x + table.shift.x <= 200.0 && room.min.y + table.shift.y >= 10.0 + 30.0 + 36.0
        );
    }
}

#[test]
fn csv_holds_what_the_table_holds() {
    let text = to_csv(&[list(2)]).unwrap();
    let mut lines = text.lines();
    assert_eq!(lines.next(), Some("Cut list"));
    assert_eq!(lines.next(), Some("Section,Piece,Length,Count"));
    assert!(lines.next().unwrap().contains("\"piece 0, \"\"upper\"\""));
}

#[test]
fn rows_have_as_many_entries_as_columns() {
    let mut table = Table::new("t", &["a", "b"]);
    table.row(["1".to_owned()]);
    table.row(["1", "2", "3"].map(str::to_owned));
    assert_eq!(table.rows(), [["1", ""], ["1", "2"]]);
}
