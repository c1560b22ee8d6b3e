//! Every force of a corner at one pose: quasi-static equilibrium of the upright and of both arms.
//!
//! The upright is held by six unknowns: the tension in the tie rod, two components at the ball joint of the arm that carries no spring
//! (that arm is hinged and weightless, so its ball joint passes no force across the arm's plane) and three at the ball joint of
//! the arm that carries the spring. Six equations, solved exactly by taking them in turn:
//!
//! 1. moments about the steering axis give the tie rod ([`crate::force`]);
//! 2. moments about the sprung arm's ball joint give the other ball joint's force across the steering axis, and its arm's hinge the part along it;
//! 3. the sum of the forces gives the sprung arm's ball joint;
//! 4. moments about each arm's hinge give the spring and the pivots.
//!
//! An arm's two pivots share the force along their common axis in a way that statics can't tell: **half is given to each**, and the
//! sum is given too. Parts are rigid and weightless, joints without friction; bushes, preload and impact are not in it.
//!
//! | force | on what | sign |
//! |---|---|---|
//! | tie rod | | tension positive |
//! | spring | | compression positive |
//! | ball joint | arm on upright | vehicle axes |
//! | pivot | chassis on arm | vehicle axes |
//! | inner joint | rod on rack end | vehicle axes |
//! | rack | both rods on the rack, along its axis | towards the vehicle's left positive |

mod equilibrium;
mod forces;
mod joints;
mod steering;

pub use equilibrium::Equilibrium;
pub use forces::{ArmForces, CornerForces};
pub use joints::{ArmJoints, Joints, SpringMounts};
pub use steering::{Steering, SteeringEffort};

use trammel_geometry::ArmName;

use crate::force::ForceError;
use crate::number::BadNumber;

/// Why the forces at a pose are not known.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum StaticsError {
    /// A number that can't be computed with, or two joints in one place.
    #[error(transparent)]
    BadNumber(#[from] BadNumber),
    /// The tie rod can't turn the upright.
    #[error(transparent)]
    TieRod(#[from] ForceError),
    /// Nothing holds the wheel up.
    #[error(
        "no spring is given; expected its mounts on chassis and arm, since nothing else carries the wheel's weight; no force but the tie rod's is known"
    )]
    NoSpring,
    /// The upright lies in the plane of the arm without the spring.
    #[error(
        "the {} arm lies in a plane with the steering axis (sine {sine}); expected an angle between them; the forces are without bound there", arm_word(*.arm)
    )]
    ArmInLine {
        /// The arm without the spring.
        arm: ArmName,
        /// Sine of the angle between the arm's plane and the steering axis.
        sine: f64,
    },
    /// The spring has no lever about its arm's pivots.
    #[error(
        "the spring points at the {} arm's pivot axis (sine {sine}); expected a lever about it; the spring's force is without bound there", arm_word(*.arm)
    )]
    SpringInLine {
        /// The arm with the spring.
        arm: ArmName,
        /// Lever per distance of the mount from the pivot.
        sine: f64,
    },
}

fn arm_word(arm: ArmName) -> &'static str {
    match arm {
        ArmName::Upper => "upper",
        ArmName::Lower => "lower",
    }
}

#[cfg(test)]
mod tests;
