//! Wheel travel by how it was measured.

use trammel_geometry::{Linkage, Unreachable, travel_for_spring_length};

/// How the wheel's place was measured, mm.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum TravelBy {
    /// The wheel's way from ride height, up positive.
    Travel(f64),
    /// Height of the wheel centre above the frame's stand, and what it is at ride height.
    WheelHeight {
        /// Now.
        height: f64,
        /// At ride height.
        at_ride: f64,
    },
    /// Length of the spring unit between its mounts, by tape; and what it is at ride height by the same tape.
    ShockLength {
        /// Now.
        length: f64,
        /// At ride height.
        at_ride: f64,
    },
    /// Blocks under the frame with the wheels on the floor, and the blocks that hold it at ride height: more blocks are droop.
    Blocks {
        /// Now.
        height: f64,
        /// At ride height.
        at_ride: f64,
    },
}

/// Why a wheel's place is not known.
#[derive(Clone, Copy, Debug, PartialEq, thiserror::Error)]
pub enum TravelFault {
    /// A number is none, or no vehicle's.
    #[error("{value} mm is no usable {what}")]
    NotUsable {
        /// What it is.
        what: &'static str,
        /// What was given.
        value: f64,
    },
    /// There is no spring unit to go by.
    #[error(
        "travel is given by shock length, but the build has no spring unit; give its two mounts, or measure wheel height"
    )]
    NoSpring,
    /// The spring unit never has this length.
    #[error("the spring unit does not reach a length of {length:.1} mm")]
    NeverSo {
        /// The length looked for in the model, mm.
        length: f64,
    },
    /// A member runs out first.
    #[error(transparent)]
    OutOfReach(#[from] Unreachable),
}

/// Wheel travel, mm, up positive.
///
/// A shock length counts by its difference to ride height, so that a tape held to the eyes' edges does no harm.
///
/// # Errors
/// [`TravelFault`].
pub fn travel(linkage: &Linkage, by: TravelBy) -> Result<f64, TravelFault> {
    let usable = |what, value: f64| {
        if value.abs() <= 1e4 {
            Ok(value)
        } else {
            Err(TravelFault::NotUsable { what, value })
        }
    };
    match by {
        TravelBy::Travel(v) => usable("wheel travel", v),
        TravelBy::WheelHeight { height, at_ride } => {
            Ok(usable("wheel height", height)? - usable("wheel height", at_ride)?)
        }
        TravelBy::Blocks { height, at_ride } => {
            Ok(usable("height of the blocks", at_ride)? - usable("height of the blocks", height)?)
        }
        TravelBy::ShockLength { length, at_ride } => {
            let change = usable("shock length", length)? - usable("shock length", at_ride)?;
            let spring = linkage.corner().spring.ok_or(TravelFault::NoSpring)?;
            let length = (spring.arm_mount - spring.chassis_mount).norm() + change;
            travel_for_spring_length(linkage, length)?.ok_or(TravelFault::NeverSo { length })
        }
    }
}
