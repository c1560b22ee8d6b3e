//! Mount plates: a rectangle with a pattern of holes.

use crate::flat_part::{FlatPart, Hole};
use crate::plane::{Contour, Point};
use crate::size::{SizeError, not_negative, positive};
use trammel_strength::BadNumber;

/// Sizes of a mount plate, mm.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PlateSize {
    /// Across.
    pub width: f64,
    /// Up.
    pub height: f64,
    /// Radius of the corners; 0 for sharp.
    pub corner: f64,
    /// Thickness.
    pub thickness: f64,
    /// Diameter of the holes.
    pub hole: f64,
    /// Distance of neighbouring holes, across and up; not looked at where there is one only.
    pub spacing: [f64; 2],
    /// How many holes, across and up.
    pub count: [u32; 2],
}

/// A plate with its holes in rows about the middle; its lower left corner is at (0, 0), so that all measures run from two edges.
///
/// # Errors
/// A size that is not above zero, a corner that doesn't fit, holes that leave the plate or run into each other.
pub fn mount_plate(
    name: impl Into<String>,
    size: &PlateSize,
    purpose: &str,
) -> Result<FlatPart, SizeError> {
    let (w, h) = (
        positive("the plate's width", size.width)?,
        positive("the plate's height", size.height)?,
    );
    positive("the plate's thickness", size.thickness)?;
    positive("the plate's hole", size.hole)?;
    not_negative("the plate's corner radius", size.corner)?;
    BadNumber::unless(
        "the plate's corner radius",
        size.corner,
        2.0 * size.corner < w.min(h),
        "less than half of the shorter side",
    )?;
    let columns = positions(w, size.spacing[0], size.count[0], size.hole)?;
    let rows = positions(h, size.spacing[1], size.count[1], size.hole)?;
    let outline = Contour::rectangle(Point::origin(), Point::new(w, h), size.corner)?;
    let mut part = FlatPart::plain(name, outline, size.thickness);
    for &y in &rows {
        part.holes.extend(columns.iter().map(|&x| Hole {
            centre: Point::new(x, y),
            diameter: size.hole,
            purpose: purpose.to_owned(),
            pulled_through: false,
        }));
    }
    Ok(part)
}

/// Places of holes along one side, about its middle.
fn positions(side: f64, spacing: f64, count: u32, hole: f64) -> Result<Vec<f64>, SizeError> {
    if count > 1 {
        let fits = spacing.is_finite() && spacing > hole;
        BadNumber::unless(
            "the distance of neighbouring holes",
            spacing,
            fits,
            "more than a hole's diameter, in mm",
        )?;
    }
    let gaps = f64::from(count.saturating_sub(1));
    let span = if gaps > 0.0 { gaps * spacing } else { 0.0 };
    BadNumber::unless(
        "the row of holes",
        span + hole,
        span + hole < side,
        "shorter than the plate's side",
    )?;
    Ok((0..count)
        .map(|i| side / 2.0 - span / 2.0 + f64::from(i) * spacing * f64::from(gaps > 0.0))
        .collect())
}
