//! The notch of a tube that meets another, as a template to wrap around it.
//!
//! A tube of outside radius r meets a header of radius R; their axes cross at an angle T and pass each other at a distance e. At the angle f around the tube, counted from
//! the side on which T is measured, the surfaces meet this far along the tube from the crossing of the axes:
//!
//! `z(f) = (sqrt(R^2 - (r sin f + e)^2) + r cos f cos T) / sin T`
//!
//! It follows from putting a point of the tube into the header's equation; the metal that stays lies farther out. The template is for the outside of the tube; grind the inner edge until it sits.

use std::f64::consts::PI;

use trammel_strength::BadNumber;

use crate::end_cut::EndCut;
use crate::size::{finite, positive};

/// Two tubes that meet, mm and rad.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Cope {
    tube_radius: f64,
    header_radius: f64,
    angle: f64,
    offset: f64,
}

impl Cope {
    /// A tube of this diameter on a header of that; `angle` between the axes (a right angle is square), `offset` between them.
    ///
    /// # Errors
    /// A diameter not above zero, an angle of nothing or half a turn, a tube that reaches past the header's side.
    pub fn new(tube: f64, header: f64, angle: f64, offset: f64) -> Result<Self, BadNumber> {
        positive("the tube's diameter", tube)?;
        positive("the header's diameter", header)?;
        finite("the offset of the axes", offset)?;
        let fits = angle > 0.05 && angle < PI - 0.05;
        BadNumber::unless(
            "the angle between the tubes",
            angle,
            fits,
            "between 3 and 177 degrees, in rad",
        )?;
        let reach = tube + 2.0 * offset.abs();
        BadNumber::unless(
            "the tube's diameter with twice its offset",
            reach,
            reach <= header,
            "no more than the header's diameter",
        )?;
        Ok(Self {
            tube_radius: tube / 2.0,
            header_radius: header / 2.0,
            angle,
            offset,
        })
    }
}

impl EndCut for Cope {
    fn tube_diameter(&self) -> f64 {
        2.0 * self.tube_radius
    }

    /// From the crossing of the axes.
    fn cut_at(&self, around: f64) -> f64 {
        let (sin, cos) = around.sin_cos();
        let side = self.tube_radius * sin + self.offset;
        let rise = (self.header_radius.powi(2) - side * side).max(0.0).sqrt();
        (rise + self.tube_radius * cos * self.angle.cos()) / self.angle.sin()
    }
}
