//! Parts to measure.

use trammel_drawings::metrics::Metrics;
use trammel_drawings::part::template;
use trammel_drawings::sheet::{Content, Page, Paper, SheetSet, TitleBlock, lay_out};
use trammel_fabrication::flat_part::FlatPart;
use trammel_fabrication::rack_bracket::{BracketSize, Making, RackBracket};
use trammel_fabrication::shown::LengthStyle;
use trammel_fabrication::tab::{Foot, Tab, TabForm, TabSize};

pub fn tab() -> FlatPart {
    let size = TabSize {
        form: TabForm::Tapered,
        foot: Foot::Coped {
            tube_diameter: 80.0,
        },
        foot_width: 60.0,
        height: 40.0,
        lean: 0.0,
        hole: 10.0,
        edge: 16.0,
        thickness: 4.7625,
    };
    Tab::new(size)
        .expect("a tab")
        .part("lower arm tab", "3/8 bolt, close")
        .expect("a part")
}

pub fn bracket() -> FlatPart {
    let size = BracketSize {
        width: 38.1,
        thickness: 4.7625,
        gap: 24.0,
        stand_off: 35.0,
        edge: 15.875,
        ear_hole: 10.0,
        base_hole: 13.0,
    };
    let making = Making::Bent {
        inside_radius: 5.0,
        k: 0.4,
    };
    RackBracket::new(size, making)
        .expect("a bracket")
        .parts("rack-end bracket")
        .expect("parts")
        .remove(0)
}

pub fn pages(part: &FlatPart, paper: Paper, metrics: &Metrics) -> Vec<Page> {
    let block = TitleBlock {
        title: part.name.clone(),
        supplementary: "Demo buggy".to_owned(),
        kind: "template, full size".to_owned(),
        material: "4.8 mm mild steel".to_owned(),
        quantity: part.quantity.to_string(),
        units: LengthStyle::INCH.unit_word().to_owned(),
        scale: "1:1".to_owned(),
        ..TitleBlock::default()
    };
    let content = Content {
        drawing: template(part, LengthStyle::INCH),
        notes: part.notes.clone(),
        caution: vec!["Nothing on this sheet says that the part is strong enough. Check every measure on the frame before you cut.".to_owned()],
        sign_offs: ["Paper measured", "Cut and drilled", "Welded", "Fitted"].map(str::to_owned).to_vec(),
        ..Content::default()
    };
    lay_out(paper, &block, &content, metrics)
}

pub fn set(part: &FlatPart, paper: Paper, metrics: &Metrics) -> SheetSet {
    SheetSet {
        title: part.name.clone(),
        pages: pages(part, paper, metrics),
    }
}
