//! What a build is made of: tubes, joints, bolts, brackets, wheels. Strength checks and cut sheets are both derived from it.
//!
//! Everything may be left out, and is then either taken from [`crate::defaults`] and said so, or not checked and said so. Lengths are in the build's
//! unit. An axle's right side is made like its left.

mod axle;
mod check;
mod joint;
mod lengths;
mod stock;

pub(crate) use check::check_parts;
pub(crate) use lengths::LengthKind;

pub use axle::{ArmParts, AxleParts, TieRodParts, WheelParts};
pub use joint::{BoltSpec, BracketSpec, Ears, FrameTube, JointEnd, JointParts, ShearPlane};
pub use stock::{Force, MaterialSpec, Pressure, Section, Stress, Tube};
