//! The notch of a tube that meets another, as a template to wrap around it.
//!
//! A tube of outside radius r meets a header of radius R; their axes cross at an angle T and pass each other at a distance e. At the angle f around the tube, counted from
//! the side on which T is measured, the surfaces meet this far along the tube from the crossing of the axes:
//!
//! `z(f) = (sqrt(R^2 - (r sin f + e)^2) + r cos f cos T) / sin T`
//!
//! It follows from putting a point of the tube into the header's equation. The template is for the outside of the tube; grind the inner edge until it sits.

use std::f64::consts::{PI, TAU};

use trammel_strength::BadNumber;

use crate::plane::Point;
use crate::size::{accept, finite, not_negative, positive};

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
        accept(
            "the angle between the tubes",
            angle,
            fits,
            "between 3 and 177 degrees, in rad",
        )?;
        let reach = tube + 2.0 * offset.abs();
        accept(
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

    /// How far from the crossing of the axes the cut lies at this angle around the tube, mm.
    #[must_use]
    pub fn cut_at(&self, around: f64) -> f64 {
        let (sin, cos) = around.sin_cos();
        let side = self.tube_radius * sin + self.offset;
        let rise = (self.header_radius.powi(2) - side * side).max(0.0).sqrt();
        (rise + self.tube_radius * cos * self.angle.cos()) / self.angle.sin()
    }

    /// The nearest and the farthest that the cut comes to the crossing of the axes, mm, from a fine look around.
    #[must_use]
    pub fn range(&self) -> [f64; 2] {
        self.around()
            .map(|f| self.cut_at(f))
            .fold([f64::INFINITY, f64::NEG_INFINITY], |[least, most], z| {
                [least.min(z), most.max(z)]
            })
    }

    fn around(&self) -> impl Iterator<Item = f64> {
        (0..=STEPS).map(|step| TAU * f64::from(step) / f64::from(STEPS))
    }

    /// The template laid flat: x around the tube from the side on which the angle is measured, y the cut, least 0. `paper` is the paper's thickness, by half of which the wrap lies farther out.
    ///
    /// # Errors
    /// A paper thickness below zero.
    pub fn template(&self, paper: f64) -> Result<Vec<Point>, BadNumber> {
        not_negative("the paper's thickness", paper)?;
        let wrap = self.tube_radius + paper / 2.0;
        let [least, _] = self.range();
        Ok(self
            .around()
            .map(|f| Point::new(wrap * f, self.cut_at(f) - least))
            .collect())
    }

    /// Outside diameter of the tube, mm.
    #[must_use]
    pub fn tube_diameter(&self) -> f64 {
        2.0 * self.tube_radius
    }
}

/// Points around the tube: on a 50 mm tube 0.44 mm apart, where the curve leaves its chords by less than 0.002 mm.
const STEPS: u32 = 360;
