//! A part with everything on it.

use trammel_drawings::metrics::Metrics;
use trammel_drawings::sheet::{Content, TitleBlock};
use trammel_fabrication::flat_part::FlatPart;
use trammel_fabrication::rack_bracket::{BracketSize, Making, RackBracket};
use trammel_fabrication::shown::LengthStyle;
use trammel_fabrication::tab::{Foot, Tab, TabForm, TabSize};

pub fn metrics() -> Metrics {
    Metrics::new().unwrap()
}

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
        .unwrap()
        .part("lower arm tab", "3/8 bolt, close")
        .unwrap()
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
        .unwrap()
        .parts("rack-end bracket")
        .unwrap()
        .remove(0)
}

pub fn block(title: &str) -> TitleBlock {
    TitleBlock {
        owner: "A shop".to_owned(),
        title: title.to_owned(),
        supplementary: "Demo buggy".to_owned(),
        kind: "template, full size".to_owned(),
        number: "T-01".to_owned(),
        revision: "A".to_owned(),
        material: "4.8 mm mild steel".to_owned(),
        quantity: "make 2 + 2 mirrored".to_owned(),
        units: LengthStyle::INCH.unit_word().to_owned(),
        scale: "1:1".to_owned(),
        ..TitleBlock::default()
    }
}

pub fn content(part: &FlatPart) -> Content {
    Content {
        drawing: trammel_drawings::part::template(part, LengthStyle::INCH),
        notes: part.notes.clone(),
        caution: vec!["Nothing on this sheet says that the part is strong enough. Check every measure on the frame before you cut.".to_owned()],
        sign_offs: ["Paper measured", "Cut and drilled", "Welded", "Fitted"].map(str::to_owned).to_vec(),
        ..Content::default()
    }
}
