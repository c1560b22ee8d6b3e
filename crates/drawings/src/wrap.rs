//! Templates that wrap around a tube to mark the cuts of its ends.

use trammel_fabrication::BadNumber;
use trammel_fabrication::end_cut::EndCut;
use trammel_fabrication::plane::{Point, Vector};

use crate::model::{Anchor, Drawing, Layer, Line, Shape, Text};

/// Thickness of printing paper, mm (80 g/m2, common practice).
pub const PAPER: f64 = 0.1;
/// From the bottom of the notch to the paper's square edge, mm.
pub const SKIRT: f64 = 20.0;
/// Width of the tongue that is glued under, mm.
const TONGUE: f64 = 8.0;
/// From a template's square edge down to its lowest line of words, mm.
const WORDS: f64 = 10.0;
/// Between a template's lowest words and the one below, mm.
const GAP: f64 = 10.0;

/// The templates of a tube's ends laid flat, one below the other. The lower edge of each is square to the tube; the metal below the curve stays.
///
/// # Errors
/// A paper thickness below zero.
pub fn wrap_templates(title: &str, ends: &[(&str, &dyn EndCut)]) -> Result<Drawing, BadNumber> {
    let mut drawing = Drawing::new(title);
    let mut top = 0.0;
    for (name, cut) in ends {
        let curve = cut.template(PAPER)?;
        let height = curve.iter().fold(0.0_f64, |most, p| most.max(p.y));
        let foot = Vector::new(0.0, top - SKIRT - height);
        template(&mut drawing, &format!("{title}: {name}"), curve, foot);
        top = foot.y - WORDS - GAP;
    }
    Ok(drawing)
}

/// One template with the left end of its square edge at `foot`.
fn template(drawing: &mut Drawing, title: &str, mut curve: Vec<Point>, foot: Vector) {
    for point in &mut curve {
        point.y += SKIRT;
    }
    let at = |x: f64, y: f64| Point::new(x, y) + foot;
    let around = curve.last().map_or(0.0, |last| last.x);
    let ends = [curve.first(), curve.last()].map(|end| end.map_or(SKIRT, |point| point.y));
    let mut outline: Vec<Point> = curve.into_iter().map(|p| p + foot).collect();
    outline.extend([at(around, 0.0), at(0.0, 0.0), at(0.0, ends[0])]);
    drawing.add(Layer::Sheet, Line::WIDE, Shape::Polyline(outline));
    let tongue = [
        (around, ends[1]),
        (around + TONGUE, ends[1] - 4.0),
        (around + TONGUE, 4.0),
        (around, 0.0),
    ];
    let tongue = tongue.map(|(x, y)| at(x, y)).to_vec();
    drawing.add(Layer::Sheet, Line::DASHED, Shape::Polyline(tongue));
    // A quarter of a thin tube has little room for a word.
    let height = (around / 30.0).clamp(1.0, 2.0);
    for (quarter, name) in (0..4).zip(["inside", "side", "outside", "side"]) {
        let x = around * f64::from(quarter) / 4.0;
        drawing.stroke(Line::CENTRE, at(x, 0.0), at(x, SKIRT - 2.0));
        let place = at(x + 1.0, 3.0);
        drawing.letter(Text::new(place.x, place.y, height, name));
    }
    let kept =
        "wrap outside the tube, metal below the curve stays; inside is the inside of the arm";
    for (down, height, text) in [(5.0, 2.5, title), (9.0, 1.8, kept)] {
        let place = at(around / 2.0, -down);
        drawing.letter(Text::new(place.x, place.y, height, text).anchored(Anchor::Middle));
    }
}
