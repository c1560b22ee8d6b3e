//! What may act on a wheel: load cases as data, and the poses where they may act.
//!
//! A [`LoadCase`] is a set of [`Action`]s (forces in multiples of a wheel load or of the vehicle's weight, or plain newtons) with a
//! [`Window`] of wheel travel and lock. [`Scene`] knows the vehicle and makes a load on the upright of it at a pose; [`worst`] looks for
//! the pose that is worst instead of assuming one.
//!
//! Cases are told for the **left** corner: x forward, y outboard, z up. A right corner is worked out as its mirror image, so the same case
//! holds on both sides.
//!
//! Loads are quasi-static: a multiple of the weight stands for everything that happens in a hit. How fast the hit was, what tyre and
//! spring take of it, and inertia of the wheel are not in it.

mod case;
mod defaults;
mod parking;
mod scene;
mod search;
mod vehicle;

pub use case::{Action, Facing, ForceUnit, Frame, LoadCase, Patch, Place, WheelHold, Window};
pub use defaults::default_cases;
pub use parking::{GOUGH, STATIONARY, scrub_moment, stationary_torque};
pub use scene::{Scene, WheelSize};
pub use search::{Fineness, Reach, Region, Worst, regions, worst};
pub use vehicle::{AxleEnd, Vehicle, VehicleSpec};

use crate::force::ForceError;
use crate::number::BadNumber;

/// Why a load case can't be put on a wheel.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum LoadError {
    /// A number that can't be computed with.
    #[error(transparent)]
    BadNumber(#[from] BadNumber),
    /// The tie rod can't pass the push on the rack.
    #[error(transparent)]
    TieRod(#[from] ForceError),
    /// The case pushes on the rack and there is none, or nothing is known of pinion and steering wheel.
    #[error(
        "the load case pushes against a steering stop; expected a rack, its travel per turn and the steering wheel's radius; the case was left out"
    )]
    NoSteering,
    /// The rod stands square to the rack.
    #[error(
        "the tie rod stands square to the rack (cosine {cosine}); expected a rod that the rack can push; the case was left out here"
    )]
    RodAcrossRack {
        /// Cosine between rod and rack.
        cosine: f64,
    },
}

#[cfg(test)]
pub(crate) mod tests;
