//! Setting up as plain data, lengths in the build's unit.

use std::collections::BTreeMap;

use trammel_setup::{Board, Raw, Way};

use super::Statics;
use crate::{BoltAxis, PointRef, Side};

/// All of it. Everything may be left out.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct SetUp {
    /// What can be adjusted.
    pub adjusters: Adjusters,
    /// Sessions of readings, the oldest first.
    pub sessions: Vec<Session>,
    /// Points that were surveyed, with how well they are known.
    pub surveyed: BTreeMap<PointRef, SurveyedPoint>,
    /// The tape survey as it was written down, a line each: marks, sought points, readings. It names its own unit.
    pub survey: Vec<String>,
    /// The vehicle at rest as it was read.
    pub statics: Statics,
}

/// What this vehicle can adjust. What is left out can't be.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Adjusters {
    /// The rack end on its thread.
    pub rack_end: Option<RackEndRange>,
    /// Washers under the outer joint.
    pub washers: Option<StackRange>,
    /// Which way the washers move the outer joint: along its bolt; upright where it is left out.
    pub washers_along: Option<BoltAxis>,
    /// Shims under the rack, which raise both sides.
    pub shims: Option<StackRange>,
    /// The tie rod's own thread.
    pub rod: Option<RodRange>,
}

/// Turns that a rack end can take from where it is.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct RackEndRange {
    /// Turns out, towards the wheel.
    pub turns_out: f64,
    /// Turns in.
    pub turns_in: f64,
    /// The only side that has it; both where it is left out.
    pub only: Option<Side>,
}

/// Washers or shims of one thickness.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct StackRange {
    /// Thickness of one.
    pub thickness: f64,
    /// How many more fit.
    pub more: u32,
    /// How many can be taken out.
    pub fewer: u32,
    /// The only side that has them; both where it is left out. Shims under one end of the rack move that side's joint alone.
    pub only: Option<Side>,
}

/// The tie rod's adjuster.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct RodRange {
    /// How much one turn changes the rod.
    pub per_turn: f64,
    /// How much shorter it can get.
    pub shorter: f64,
    /// How much longer it can get.
    pub longer: f64,
}

/// One session of readings.
#[derive(Clone, Debug, PartialEq)]
pub struct Session {
    /// The day, as it was typed.
    pub date: String,
    /// Free text.
    pub notes: String,
    /// What was adjusted since the session before.
    pub adjusted: Vec<Adjusted>,
    /// How toe was measured.
    pub method: ToeMethod,
    /// Standard deviation of one number of it, the build's unit or degrees; the method's usual one where it is left out.
    pub accuracy: Option<f64>,
    /// How wheel travel was measured.
    pub travel_by: TravelMeasure,
    /// Standard deviation of wheel travel; a millimetre where it is left out.
    pub travel_accuracy: Option<f64>,
    /// The readings in the order they were taken.
    pub rows: Vec<ReadingRow>,
}

/// How toe was measured. Lengths in the build's unit; see [`trammel_setup::Method`].
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum ToeMethod {
    /// Two dials on a plate: spacing, and which way the plate goes when a number grows.
    TwoDials(f64, Way),
    /// One dial and a roller: spacing, and which way.
    OneDial(f64, Way),
    /// A tape across both tyres: from front mark to rear mark on one tyre.
    Tape(f64),
    /// A laser on the hub: distance of the board, and where it stands.
    Laser(f64, Board),
    /// A mirror on the hub: distance of the board.
    Mirror(f64),
    /// Straight degrees.
    Degrees,
}

/// How wheel travel was measured.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum TravelMeasure {
    /// As travel from ride height, up positive.
    Travel,
    /// As the wheel centre's height.
    WheelHeight,
    /// As the spring unit's length.
    ShockLength,
    /// As blocks under the frame.
    Blocks,
}

/// One line of readings.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ReadingRow {
    /// Which wheel; with a tape across both, either.
    pub side: Side,
    /// Which way through the travel, from 1.
    pub run: u32,
    /// Rack position, to the left positive.
    pub rack: f64,
    /// Where the wheel was, as it was measured.
    pub place: f64,
    /// Whether this is ride height, from which the others count.
    pub ride: bool,
    /// What the instruments showed, in the build's unit or degrees.
    pub shown: Raw,
}

/// An adjuster that was moved.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Adjusted {
    /// Which.
    pub part: AdjustedPart,
    /// On which side; shims under the rack are on both, unless the vehicle has them under one end only.
    pub side: Side,
    /// By how much, the build's unit: out, or more of them, is positive.
    pub by: f64,
}

/// What was moved.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum AdjustedPart {
    /// The rack end.
    RackEnd,
    /// Washers under the outer joint.
    Washers,
    /// Shims under the rack.
    Shims,
}

/// How well a surveyed point is known: covariance, the build's unit squared.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SurveyedPoint {
    /// xx, yy, zz.
    pub variances: [f64; 3],
    /// xy, xz, yz.
    pub covariances: [f64; 3],
}

impl ToeMethod {
    /// What it is called.
    #[must_use]
    pub fn name(self) -> &'static str {
        self.kernel(crate::LengthUnit::Millimetre).name()
    }

    /// Whether it reads both wheels together.
    #[must_use]
    pub fn reads_both_wheels(self) -> bool {
        matches!(self, Self::Tape(_))
    }
}

impl AdjustedPart {
    /// The word for it in files and on the command line.
    #[must_use]
    pub fn word(self) -> &'static str {
        match self {
            Self::RackEnd => "rack_end",
            Self::Washers => "washers",
            Self::Shims => "shims",
        }
    }
}
