//! What is sold by the length.

use std::f64::consts::PI;
use std::fmt;

use trammel_strength::BadNumber;

use crate::size::positive;

/// The section of a bar or tube; it can only be had with sizes that go together.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct StockSection(Shape);

#[derive(Clone, Copy, Debug, PartialEq)]
enum Shape {
    FlatBar { width: f64, thickness: f64 },
    RoundBar { diameter: f64 },
    RoundTube { diameter: f64, wall: f64 },
    SquareTube { side: f64, wall: f64 },
}

impl StockSection {
    /// Flat bar, mm.
    ///
    /// # Errors
    /// A size not above zero.
    pub fn flat_bar(width: f64, thickness: f64) -> Result<Self, BadNumber> {
        positive("the bar's width", width)?;
        positive("the bar's thickness", thickness)?;
        Ok(Self(Shape::FlatBar { width, thickness }))
    }

    /// Round bar, mm.
    ///
    /// # Errors
    /// A size not above zero.
    pub fn round_bar(diameter: f64) -> Result<Self, BadNumber> {
        positive("the bar's diameter", diameter)?;
        Ok(Self(Shape::RoundBar { diameter }))
    }

    /// Round tube by outside diameter and wall, mm.
    ///
    /// # Errors
    /// A size not above zero, a wall that leaves no bore.
    pub fn round_tube(diameter: f64, wall: f64) -> Result<Self, BadNumber> {
        let (diameter, wall) = tube("the tube's diameter", diameter, wall)?;
        Ok(Self(Shape::RoundTube { diameter, wall }))
    }

    /// Square tube by outside and wall, mm; its corners count as sharp.
    ///
    /// # Errors
    /// A size not above zero, a wall that leaves no bore.
    pub fn square_tube(side: f64, wall: f64) -> Result<Self, BadNumber> {
        let (side, wall) = tube("the tube's side", side, wall)?;
        Ok(Self(Shape::SquareTube { side, wall }))
    }

    /// Area of metal, mm2.
    #[must_use]
    pub fn area(&self) -> f64 {
        match self.0 {
            Shape::FlatBar { width, thickness } => width * thickness,
            Shape::RoundBar { diameter } => PI / 4.0 * diameter * diameter,
            Shape::RoundTube { diameter, wall } => PI * wall * (diameter - wall),
            Shape::SquareTube { side, wall } => 4.0 * wall * (side - wall),
        }
    }

    /// Mass of a length (mm), kg, for a density in kg/m3.
    #[must_use]
    pub fn mass(&self, length: f64, density: f64) -> f64 {
        self.area() * length * density * 1e-9
    }

    /// Its name with each size written by the caller: `flat bar 38.1 x 4.8`.
    #[must_use]
    pub fn name(&self, size: impl Fn(f64) -> String) -> String {
        match self.0 {
            Shape::FlatBar { width, thickness } => {
                format!("flat bar {} x {}", size(width), size(thickness))
            }
            Shape::RoundBar { diameter } => format!("round bar {}", size(diameter)),
            Shape::RoundTube { diameter, wall } => {
                format!("round tube {} x {}", size(diameter), size(wall))
            }
            Shape::SquareTube { side, wall } => {
                format!("square tube {} x {}", size(side), size(wall))
            }
        }
    }
}

impl fmt::Display for StockSection {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{} mm", self.name(|mm| format!("{mm:.1}")))
    }
}

fn tube(what: &'static str, outside: f64, wall: f64) -> Result<(f64, f64), BadNumber> {
    positive(what, outside)?;
    positive("the tube's wall", wall)?;
    BadNumber::unless(
        "the tube's wall",
        wall,
        2.0 * wall < outside,
        "less than half of the tube's outside size",
    )?;
    Ok((outside, wall))
}
