//! Parts as plain data, lengths in the part's own unit.
//!
//! A spindle is described by words that are the same on both sides (outboard, ahead, up along the steering axis), so that the left and the
//! right one of a pair are mirror images by themselves.

use crate::{LengthUnit, SpringRate};

/// A measured part.
#[derive(Clone, Debug, PartialEq)]
pub struct Part {
    /// What its owner calls it.
    pub name: String,
    /// Unit of its lengths.
    pub unit: LengthUnit,
    /// Free text.
    pub notes: String,
    /// What it is.
    pub kind: PartKind,
}

/// What a part is, with its figures.
#[derive(Clone, Debug, PartialEq)]
pub enum PartKind {
    /// An upright with its spindle.
    Spindle(SpindlePart),
    /// A rack and pinion.
    Rack(RackPart),
    /// A spring unit.
    Spring(SpringPart),
    /// A spherical joint of a tie rod.
    Joint(JointPart),
}

/// On which side of the steering axis a steering arm stands.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum SteeringArm {
    /// Ahead of it.
    Ahead,
    /// Behind it.
    Behind,
}

/// An upright, measured between ball centres, not bolt heads.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SpindlePart {
    /// From the centre of the lower ball joint to that of the upper one.
    pub ball_joint_spacing: f64,
    /// Between the steering axis and the plane of the wheel, seen from the front, degrees; the top leaning inboard is positive.
    pub inclination_deg: f64,
    /// Where the spindle's line crosses the steering axis, up along it from the lower ball joint.
    pub spindle_height: f64,
    /// From there out along the spindle to the wheel's centre plane.
    pub wheel_out: f64,
    /// From the steering axis to the hole of the steering arm, square to the axis, fore and aft.
    pub arm_length: f64,
    /// Which way the steering arm points.
    pub arm: SteeringArm,
    /// Height of that hole along the steering axis above the lower ball joint.
    pub arm_height: f64,
    /// How far that hole is outboard of the steering axis; inboard is negative.
    pub arm_out: f64,
}

/// A rack, measured at its centre.
#[derive(Clone, Debug, PartialEq)]
pub struct RackPart {
    /// Between the centres of the inner tie-rod joints.
    pub joint_to_joint: f64,
    /// Travel each way.
    pub travel: f64,
    /// Travel for one turn of the pinion.
    pub travel_per_turn: f64,
    /// Thread of its ends, such as `1/2-20`.
    pub end_thread: String,
    /// From the centre to where the hard teeth end; nothing can be cut or drilled inboard of it.
    pub hard_to: Option<f64>,
}

/// A spring unit.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SpringPart {
    /// Length between the eyes fully extended.
    pub open: f64,
    /// Length between the eyes at the bump stop.
    pub closed: f64,
    /// Spring rate.
    pub rate: Option<SpringRate>,
}

/// A spherical joint.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct JointPart {
    /// Width of the ball.
    pub ball_width: f64,
    /// Swivel either way from square, degrees.
    pub swivel_deg: f64,
    /// Radial rating as its maker gives it, N.
    pub rating: Option<f64>,
}
