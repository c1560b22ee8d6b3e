//! Every part under every load case, each check at its worst pose.
//!
//! [`prove`] puts each load case on the wheel at a grid of poses of its window, works out the forces, asks every part, and refines each
//! check's worst pose by itself. What comes out is a list of [`Row`]s, worst first, and a list of what was left out and why.
//!
//! A row says which value was compared with which limit. No row, and no list of rows, says that a part or a vehicle is good enough.

mod effort;
mod engine;
mod part;
mod row;
mod turned;

pub use effort::{Sides, rack_forces, steering_effort, worst_steering_effort};
pub use engine::{Proof, Setup, least_gap, prove, prove_at, stance_at};
pub use part::{JointPlace, Mounted, Part, PartKind, RackEndPart};
pub use row::{Omission, PoseAt, Row, Why};
pub use turned::{Body, Turned};

#[cfg(test)]
mod tests;
