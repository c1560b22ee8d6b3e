//! The template that wraps around a tube to mark its notch.

use trammel_fabrication::BadNumber;
use trammel_fabrication::coping::Cope;
use trammel_fabrication::plane::Point;

use crate::model::{Anchor, Drawing, Layer, Line, Shape, Text};

/// Thickness of printing paper, mm (80 g/m2, common practice).
pub const PAPER: f64 = 0.1;
/// From the cut's lowest point to the paper's square edge, mm.
const SKIRT: f64 = 20.0;
/// Width of the tongue that is glued under, mm.
const TONGUE: f64 = 8.0;

/// The template laid flat. Its lower edge is square to the tube; the metal below the curve stays.
///
/// # Errors
/// A paper thickness below zero.
pub fn wrap_template(title: &str, cope: &Cope) -> Result<Drawing, BadNumber> {
    let curve: Vec<Point> = cope
        .template(PAPER)?
        .into_iter()
        .map(|p| Point::new(p.x, p.y + SKIRT))
        .collect();
    let around = curve.last().map_or(0.0, |last| last.x);
    let mut drawing = Drawing::new(title);
    let ends = [curve.first(), curve.last()].map(|end| end.map_or(SKIRT, |point| point.y));
    let mut outline = curve;
    outline.extend([
        Point::new(around, 0.0),
        Point::new(0.0, 0.0),
        Point::new(0.0, ends[0]),
    ]);
    drawing.add(Layer::Sheet, Line::WIDE, Shape::Polyline(outline));
    let tongue = [
        (around, ends[1]),
        (around + TONGUE, ends[1] - 4.0),
        (around + TONGUE, 4.0),
        (around, 0.0),
    ];
    let tongue = tongue.map(|(x, y)| Point::new(x, y)).to_vec();
    drawing.add(Layer::Sheet, Line::DASHED, Shape::Polyline(tongue));
    // A quarter of a thin tube has little room for a word.
    let height = (around / 30.0).clamp(1.0, 2.0);
    for (quarter, name) in (0..4).zip(["inside", "side", "outside", "side"]) {
        let x = around * f64::from(quarter) / 4.0;
        drawing.stroke(Line::CENTRE, Point::new(x, 0.0), Point::new(x, SKIRT - 2.0));
        drawing.letter(Text::new(x + 1.0, 3.0, height, name));
    }
    drawing.letter(Text::new(around / 2.0, -5.0, 2.5, title).anchored(Anchor::Middle));
    let kept =
        "wrap outside the tube, metal below the curve stays; inside is the inside of the angle";
    drawing.letter(Text::new(around / 2.0, -9.0, 1.8, kept).anchored(Anchor::Middle));
    Ok(drawing)
}
