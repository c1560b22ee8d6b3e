//! The heart of Trammel: where every joint of a wheel corner is, at any wheel travel and rack position, and what
//! the wheel does there.
//!
//! Millimetres and radians throughout; ISO 8855 axes (x forward, y left, z up). A corner is described for the left
//! side; [`Corner::mirrored`] turns a right side into one. Pure functions: no I/O, nothing allocated per pose, no panic,
//! no NaN. A pose that can't be reached is an [`Unreachable`] that names the member that ran out and how far it got.
//!
//! | where | what |
//! |---|---|
//! | [`Corner`], [`Arm`], [`TieRod`], [`Wheel`], [`Spring`] | hardpoints as plain data |
//! | [`Linkage`] | a checked corner, ready to be posed: [`Linkage::pose`] |
//! | [`Pose`] | joints, velocities and margins at one travel and rack position |
//! | [`Arms`] | the upright on its arms with no tie rod, turned at will |
//! | [`Measures`] | toe, camber, castor, scrub, roll centre and the rest, by [`Linkage::measures`] |
//! | [`Walk`] | many poses along travel at one rack position, warm-started |
//! | [`Axis`] | the vehicle's axes by name |
//! | [`Axle`] | both sides: heave, roll, steer, Ackermann, turning circle |
//! | [`ToeScore`] | largest, RMS, slope and bowl of a toe curve |
//! | [`least_first`], [`greatest_first`], [`in_order`] | lists in the order of a number or two |
//! | [`travel_for_spring_length`] | the travel at which the spring unit reaches a length |
#![doc = include_str!("../BENCHMARKS.md")]
#![allow(
    clippy::neg_cmp_op_on_partial_ord,
    reason = "`!(x > 0.0)` refuses what is not a number too"
)]

mod arms;
mod axis;
mod axle;
mod check;
mod circle;
mod configuration;
mod corner;
mod fault;
mod linkage;
mod measures;
mod order;
mod pose;
mod reach;
mod roll;
mod score;
mod solve;
mod spring_range;
#[cfg(test)]
mod square;
mod walk;

pub use arms::{Arms, Stance, Twist};
pub use axis::Axis;
pub use axle::{Axle, AxlePose, ackermann_percentage, turning_circle_diameter, turns_lock_to_lock};
pub use corner::{Arm, ArmName, Corner, Spring, TieRod, Wheel, mirror_point, mirror_vector};
pub use fault::{CornerFault, Limit, Member, Unreachable};
pub use linkage::Linkage;
pub use measures::{InstantCentre, Measures, SpringMeasures};
pub use order::{greatest_first, in_order, least_first};
pub use pose::{Margins, Pose, Rates};
pub use score::ToeScore;
pub use spring_range::travel_for_spring_length;
pub use walk::Walk;

/// A position in vehicle axes, mm.
pub type Point = nalgebra::Point3<f64>;
/// A displacement or direction in vehicle axes.
pub type Vector = nalgebra::Vector3<f64>;
