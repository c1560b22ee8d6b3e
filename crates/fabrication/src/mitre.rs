//! The end of a tube that meets its twin at a round housing: two legs of an arm at the ball joint.
//!
//! Both axes run to the housing's axis, which stands square to their plane. A line along the tube at the distance q from the tube's axis, towards the twin, ends where it
//! meets the housing, `sqrt(R^2 - q^2)` before the crossing of the axes, or the plane midway between the twins, `q / tan(a)` before it with a half the angle between the
//! axes: at whichever comes first. A line that passes beside the housing ends level with its axis.

use std::f64::consts::FRAC_PI_2;

use trammel_strength::BadNumber;

use crate::end_cut::EndCut;
use crate::size::{not_negative, positive};

/// A tube's end against housing and twin, mm and rad.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Mitre {
    tube_radius: f64,
    housing_radius: f64,
    half_angle: f64,
}

impl Mitre {
    /// Two tubes of this diameter whose axes cross at `angle` in a housing of that diameter.
    ///
    /// # Errors
    /// A diameter not above zero, a housing below zero, an angle of nothing or half a turn.
    pub fn new(tube: f64, housing: f64, angle: f64) -> Result<Self, BadNumber> {
        positive("the tube's diameter", tube)?;
        not_negative("the housing's diameter", housing)?;
        let half_angle = angle / 2.0;
        BadNumber::unless(
            "the angle between an arm's tubes",
            angle,
            half_angle > 0.025 && half_angle < FRAC_PI_2 - 0.025,
            "between 3 and 177 degrees, in rad",
        )?;
        Ok(Self {
            tube_radius: tube / 2.0,
            housing_radius: housing / 2.0,
            half_angle,
        })
    }
}

impl EndCut for Mitre {
    fn tube_diameter(&self) -> f64 {
        2.0 * self.tube_radius
    }

    fn cut_at(&self, around: f64) -> f64 {
        let towards_twin = self.tube_radius * around.cos();
        let beside = self.housing_radius.powi(2) - towards_twin * towards_twin;
        let housing = beside.max(0.0).sqrt();
        housing.max(towards_twin / self.half_angle.tan())
    }
}
