//! From the tie rods to the driver's hands.

use std::f64::consts::TAU;

use super::CornerForces;
use crate::number::{BadNumber, finite, positive};

/// Rack, pinion and steering wheel.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Steering {
    travel_per_turn: f64,
    wheel_radius: f64,
}

/// What the driver feels. Without friction, at rest: rack, pinion, column and boots add to a steering force and take from a kick.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SteeringEffort {
    /// Both tie rods on the rack along its axis, N; to the vehicle's left positive.
    pub rack_force: f64,
    /// What holds it at the pinion, and so at the steering wheel, N mm; positive when the driver has to pull the rack to the left.
    pub pinion_torque: f64,
    /// The same as one force at the rim of the steering wheel, N.
    pub hand_force: f64,
}

impl Steering {
    /// A rack that moves this far per turn of the pinion (mm), and a steering wheel of this radius (mm) fixed to the pinion's shaft.
    ///
    /// # Errors
    /// A length that is not finite and above zero.
    pub fn new(travel_per_turn: f64, wheel_radius: f64) -> Result<Self, BadNumber> {
        positive("the rack travel per turn", travel_per_turn)?;
        positive("the steering wheel's radius", wheel_radius)?;
        Ok(Self {
            travel_per_turn,
            wheel_radius,
        })
    }

    /// What this force on the rack (N, to the left positive) asks of the driver.
    ///
    /// # Errors
    /// A force that is not finite, or overflows on the way.
    pub fn effort(&self, rack_force: f64) -> Result<SteeringEffort, BadNumber> {
        finite("the force on the rack", rack_force)?;
        let pinion_torque = finite(
            "the pinion torque",
            -rack_force * self.travel_per_turn / TAU,
        )?;
        Ok(SteeringEffort {
            rack_force,
            pinion_torque,
            hand_force: finite("the hand force", pinion_torque / self.wheel_radius)?,
        })
    }

    /// What both sides ask of the driver together; a side without a rack counts nothing. Either side may be in vehicle axes or a mirror image.
    ///
    /// # Errors
    /// As [`effort`](Self::effort).
    pub fn effort_of(
        &self,
        left: &CornerForces,
        right: &CornerForces,
    ) -> Result<SteeringEffort, BadNumber> {
        let along = |side: &CornerForces| side.rack_force.unwrap_or(0.0);
        self.effort(along(left) + along(right))
    }

    /// Force on the rack that a driver can make with this force at the rim of the steering wheel, N.
    #[must_use]
    pub fn rack_force_by_hand(&self, hand_force: f64) -> f64 {
        hand_force * self.wheel_radius * TAU / self.travel_per_turn
    }
}
