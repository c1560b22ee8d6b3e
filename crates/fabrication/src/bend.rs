//! How much plate a bend takes up.
//!
//! A bend through an angle A with inside radius R in plate of thickness t takes up the arc of the layer that keeps its length,
//! `A (R + K t)`, where K says how deep that layer lies. With flanges measured to the outside corner, `2 tan(A/2) (R + t)` less the allowance has to be
//! taken off their sum: the deduction.

use trammel_strength::BadNumber;
use trammel_strength::source::{Limit, Source};

use crate::size::{not_negative, positive};

/// Where the allowance comes from.
pub const ALLOWANCE: Source = Source::from_memory(
    "Machinery's Handbook",
    "bending sheet metal: length of the bend as an arc at depth K t; K 0.33 to 0.45 for steel",
);
/// The depth that is taken where nothing else is known: air-bent mild steel, inside radius about the thickness.
pub const USUAL_K: Limit = Limit {
    value: 0.40,
    unit: "of the thickness",
    source: Source {
        document: "between 0.33 and 0.45, as fabricators print it; bend a trial strip and measure",
        clause: "",
        standing: trammel_strength::source::Standing::CommonPractice,
    },
};

/// A bend that can be made.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Bend {
    angle: f64,
    inside_radius: f64,
    thickness: f64,
    k: f64,
}

impl Bend {
    /// A bend through an angle (rad, 0 is flat), with its inside radius and the plate's thickness.
    ///
    /// # Errors
    /// An angle of nothing or of half a turn and more, a radius below nought, a thickness not above it, a K outside 0 to 0.5.
    pub fn new(angle: f64, inside_radius: f64, thickness: f64, k: f64) -> Result<Self, BadNumber> {
        let fits = angle > 0.0 && angle < std::f64::consts::PI;
        Ok(Self {
            angle: BadNumber::unless(
                "the bend's angle",
                angle,
                fits,
                "above 0 and below half a turn, in rad",
            )?,
            inside_radius: not_negative("the bend's inside radius", inside_radius)?,
            thickness: positive("the plate's thickness", thickness)?,
            k: BadNumber::unless(
                "the bend's K",
                k,
                (0.0..=0.5).contains(&k),
                "from 0 to 0.5 of the thickness",
            )?,
        })
    }

    /// Angle that the flange is turned through, rad.
    #[must_use]
    pub fn angle(&self) -> f64 {
        self.angle
    }

    /// Inside radius, mm.
    #[must_use]
    pub fn inside_radius(&self) -> f64 {
        self.inside_radius
    }

    /// Length of plate in the bend, mm.
    #[must_use]
    pub fn allowance(&self) -> f64 {
        self.angle * (self.inside_radius + self.k * self.thickness)
    }

    /// From the start of the bend to the outside corner, mm.
    #[must_use]
    pub fn setback(&self) -> f64 {
        (self.angle / 2.0).tan() * (self.inside_radius + self.thickness)
    }

    /// What to take off the sum of two flanges measured to their outside corner, mm.
    #[must_use]
    pub fn deduction(&self) -> f64 {
        2.0 * self.setback() - self.allowance()
    }
}
