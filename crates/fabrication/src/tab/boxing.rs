//! Plates that join a pair of tabs.

use trammel_strength::source::{Limit, Source};

use crate::flat_part::FlatPart;
use crate::plane::{Contour, Point, Vertex};
use crate::size::{SizeError, not_negative, positive};
use trammel_strength::BadNumber;

/// A pair taller than this many of its widths is offered a boxing plate.
pub const BOXING_HEIGHT: Limit = Limit {
    value: 3.0,
    unit: "widths",
    source: Source::COMMON_PRACTICE,
};

/// Whether a tab is so tall that boxing is offered.
#[must_use]
pub fn wants_boxing(height: f64, width: f64) -> bool {
    height > BOXING_HEIGHT.value * width
}

const AFTER: &str = "Weld in after the mock-up, when the travel has been run.";

/// The plate across the back of a pair: as wide as the gap between the tabs, this high, its corners cut off by `corner` so that the weld can go round.
///
/// # Errors
/// A size that is not above zero, corners that leave no width.
pub fn boxing_plate(
    name: impl Into<String>,
    gap: f64,
    height: f64,
    corner: f64,
    thickness: f64,
) -> Result<FlatPart, SizeError> {
    positive("the gap between the tabs", gap)?;
    positive("the boxing plate's height", height)?;
    positive("the boxing plate's thickness", thickness)?;
    not_negative("the boxing plate's corner", corner)?;
    BadNumber::unless(
        "the boxing plate's corner",
        corner,
        2.0 * corner < gap.min(height),
        "less than half of gap and height",
    )?;
    let (h, c) = (gap / 2.0, corner);
    let outline = match corner > 0.0 {
        false => Contour::rectangle(Point::new(-h, 0.0), Point::new(h, height), 0.0)?,
        true => Contour::new(vec![
            Vertex::straight(-h + c, 0.0),
            Vertex::straight(h - c, 0.0),
            Vertex::straight(h, c),
            Vertex::straight(h, height - c),
            Vertex::straight(h - c, height),
            Vertex::straight(-h + c, height),
            Vertex::straight(-h, height - c),
            Vertex::straight(-h, c),
        ])?,
    };
    Ok(noted(FlatPart::plain(name, outline, thickness)))
}

/// A gusset: a right triangle with these legs, the right angle cut off by `corner` to clear the weld, the tips cut square to a `nose` of this width.
///
/// # Errors
/// A size that is not above zero, corner and nose that leave no edge.
pub fn gusset(
    name: impl Into<String>,
    legs: [f64; 2],
    corner: f64,
    nose: f64,
    thickness: f64,
) -> Result<FlatPart, SizeError> {
    let [along, up] = legs;
    positive("the gusset's foot", along)?;
    positive("the gusset's height", up)?;
    positive("the gusset's thickness", thickness)?;
    positive("the gusset's corner", corner)?;
    positive("the gusset's nose", nose)?;
    let fits = corner.max(nose) < along.min(up) / 2.0;
    BadNumber::unless(
        "the gusset's corner or nose",
        corner.max(nose),
        fits,
        "less than half of the shorter leg",
    )?;
    let outline = Contour::new(vec![
        Vertex::straight(corner, 0.0),
        Vertex::straight(along, 0.0),
        Vertex::straight(along, nose),
        Vertex::straight(nose, up),
        Vertex::straight(0.0, up),
        Vertex::straight(0.0, corner),
    ])?;
    Ok(noted(FlatPart::plain(name, outline, thickness)))
}

fn noted(mut part: FlatPart) -> FlatPart {
    part.notes.push(AFTER.to_owned());
    part
}
