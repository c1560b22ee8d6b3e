//! Parts measured once on the bench, and put into any build.

pub mod guide;
mod put;
mod spec;

pub use put::PartFault;
pub(crate) use put::put;
pub use spec::{JointPart, Part, PartKind, RackPart, SpindlePart, SpringPart, SteeringArm};
