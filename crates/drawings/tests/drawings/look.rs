//! Sheets to look at.

use trammel_drawings::sheet::{Content, Paper, SheetSet, lay_out};
use trammel_drawings::table::{self, Table};
use trammel_drawings::{part, pdf, wrap};
use trammel_fabrication::coping::Cope;
use trammel_fabrication::flat_part::FlatPart;
use trammel_fabrication::plane::{Contour, Point};
use trammel_fabrication::shown::LengthStyle;

use crate::sample::{block, bracket, content, metrics, tab};

#[test]
#[ignore = "writes PDF files to look at, and measures nothing"]
fn a_sheet_of_every_kind() {
    let m = metrics();
    let folder = std::path::Path::new(env!("CARGO_TARGET_TMPDIR")).join("sheets");
    std::fs::create_dir_all(&folder).unwrap();
    let outline = Contour::rectangle(Point::origin(), Point::new(300.0, 220.0), 10.0).unwrap();
    let deck = FlatPart::plain("deck", outline, 3.0);
    let cope = Cope::new(25.4, 38.1, 1.2, 0.0).unwrap();
    let notch = Content {
        drawing: wrap::wrap_templates("rear tube", &[("inner end", &cope)]).unwrap(),
        ..content(&tab())
    };
    let mut list = Table::new(
        "Tubes",
        &["Section", "Piece", "#Length, mm", "#Count", "#Mass, kg"],
    );
    for side in ["front", "rear"] {
        let name = format!(
            "lower arm, {side} tube; notch at the pivot end only, square at the ball joint"
        );
        list.row([
            "round tube 25.4 x 2.1 mm".to_owned(),
            name,
            "341.2".to_owned(),
            "2".to_owned(),
            "0.82".to_owned(),
        ]);
    }
    for paper in Paper::ALL {
        let mut pages = Vec::new();
        for part in [tab(), bracket(), deck.clone()] {
            pages.extend(part::lay_out(
                paper,
                &block(&part.name),
                &part,
                LengthStyle::INCH,
                &Content {
                    notes: Vec::new(),
                    ..content(&part)
                },
                &m,
            ));
        }
        pages.extend(lay_out(paper, &block("rear tube, inner end"), &notch, &m));
        pages.extend(table::lay_out(
            paper,
            &block("Cut list"),
            &[list.clone(), list.clone()],
            &Content::default(),
            &m,
        ));
        let set = SheetSet {
            title: "Sheets to look at".to_owned(),
            pages,
        };
        let file = folder.join(format!("{}.pdf", paper.name().to_lowercase()));
        std::fs::write(&file, pdf::write(&set, &m).unwrap()).unwrap();
        println!("{}", file.display());
    }
}
