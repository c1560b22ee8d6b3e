//! DXF for the cutter: release 12, written by hand.
//!
//! Only what is cut, marked or bent: closed contours are single closed polylines with true arcs, circles are circles, bend lines are lines. Millimetres, full size, no
//! kerf taken off. No dimension, frame or note goes in; lettering only on the mark layer. Numbers carry six decimals, and no date is written, so that the same part
//! gives the same file.

mod entities;

use std::fmt::Write as _;

use crate::DrawingError;
use crate::ink::{Ink, Stroke, strokes};
use crate::metrics::Metrics;
use crate::model::{Drawing, Layer};

/// Said in the file's first comment.
const COMMENT: &str = "Millimetres, full size. Kerf is not taken off.";

/// Colours by their number in DXF: white, blue, green.
fn colour(layer: Layer) -> u8 {
    match layer {
        Layer::Cut | Layer::Sheet => 7,
        Layer::Mark => 5,
        Layer::Bend => 3,
    }
}

/// The drawing as a DXF file.
///
/// # Errors
/// A coordinate that is no finite number.
pub fn write(drawing: &Drawing, metrics: &Metrics) -> Result<String, DrawingError> {
    let strokes: Vec<Stroke> = strokes(drawing, metrics)
        .into_iter()
        .filter(for_the_cutter)
        .collect();
    if !strokes.iter().all(|stroke| stroke.ink.is_finite()) {
        return Err(DrawingError::NotFinite {
            drawing: drawing.title.clone(),
        });
    }
    let mut out = Groups::default();
    out.text(999, COMMENT);
    header(&mut out);
    tables(&mut out);
    out.text(0, "SECTION");
    out.text(2, "BLOCKS");
    out.text(0, "ENDSEC");
    out.text(0, "SECTION");
    out.text(2, "ENTITIES");
    for stroke in &strokes {
        entities::write(stroke, metrics, &mut out);
    }
    out.text(0, "ENDSEC");
    out.text(0, "EOF");
    Ok(out.0)
}

fn for_the_cutter(stroke: &Stroke) -> bool {
    match (stroke.layer, &stroke.ink) {
        (Layer::Sheet, _) => false,
        (Layer::Mark, _) => true,
        (_, ink) => matches!(ink, Ink::Path { .. }),
    }
}

/// Pairs of a group code and a value, each on its own line.
#[derive(Default)]
struct Groups(String);

impl Groups {
    fn text(&mut self, code: u16, value: &str) {
        // Writing to a string can't fail.
        let _ = writeln!(self.0, "{code}\n{value}");
    }

    fn number(&mut self, code: u16, value: f64) {
        let text = format!("{value:.6}");
        let plain = if text == "-0.000000" {
            "0.000000"
        } else {
            &text
        };
        self.text(code, plain);
    }

    fn count(&mut self, code: u16, value: u32) {
        self.text(code, &value.to_string());
    }
}

fn header(out: &mut Groups) {
    out.text(0, "SECTION");
    out.text(2, "HEADER");
    out.text(9, "$ACADVER");
    out.text(1, "AC1009");
    // 4 stands for millimetres; 1 for the metric system.
    out.text(9, "$INSUNITS");
    out.count(70, 4);
    out.text(9, "$MEASUREMENT");
    out.count(70, 1);
    out.text(0, "ENDSEC");
}

fn tables(out: &mut Groups) {
    out.text(0, "SECTION");
    out.text(2, "TABLES");
    out.text(0, "TABLE");
    out.text(2, "LTYPE");
    out.count(70, 1);
    out.text(0, "LTYPE");
    out.text(2, "CONTINUOUS");
    out.count(70, 0);
    out.text(3, "Solid line");
    out.count(72, 65);
    out.count(73, 0);
    out.number(40, 0.0);
    out.text(0, "ENDTAB");
    out.text(0, "TABLE");
    out.text(2, "LAYER");
    out.count(70, 4);
    out.layer("0", 7);
    for layer in Layer::FOR_THE_CUTTER {
        out.layer(layer.name(), colour(layer));
    }
    out.text(0, "ENDTAB");
    out.text(0, "TABLE");
    out.text(2, "STYLE");
    out.count(70, 1);
    out.style();
    out.text(0, "ENDTAB");
    out.text(0, "ENDSEC");
}

impl Groups {
    fn layer(&mut self, name: &str, colour: u8) {
        self.text(0, "LAYER");
        self.text(2, name);
        self.count(70, 0);
        self.count(62, u32::from(colour));
        self.text(6, "CONTINUOUS");
    }

    fn style(&mut self) {
        self.text(0, "STYLE");
        self.text(2, "STANDARD");
        self.count(70, 0);
        self.number(40, 0.0);
        self.number(41, 1.0);
        self.number(50, 0.0);
        self.count(71, 0);
        self.number(42, 2.5);
        self.text(3, "txt");
        self.text(4, "");
    }
}
