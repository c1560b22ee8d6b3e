//! What a build is made of: tubes, joints, bolts, brackets, wheels. Strength checks and cut sheets are both derived from it.
//!
//! Everything may be left out, and is then either taken from [`crate::defaults`] and said so, or not checked and said so. Lengths are in the build's
//! unit. An axle's right side is made like its left.

mod axle;
mod check;
mod joint;
mod lengths;
mod rack_mount;
mod stock;

pub(crate) use check::check_parts;
pub(crate) use lengths::LengthKind;

pub use axle::{ArmParts, AxleParts, TieRodParts, WheelParts};
pub use joint::{
    BoltSpec, BracketSpec, Ears, FrameTube, HoleFit, JointEnd, JointParts, ShearPlane, TabOutline,
};
pub use rack_mount::RackMount;
pub use stock::{Force, MaterialSpec, Pressure, Section, Stress, Tube};
