//! The set-up part of the build file, format 1, field by field.

use serde::Deserialize;

use crate::format1_pieces::{BoltAxis, Triple};

#[derive(Debug, Default, Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct SetUp {
    #[serde(default)]
    pub adjusters: Adjusters,
    #[serde(default)]
    pub sessions: Vec<Session>,
    #[serde(default)]
    pub surveyed: Vec<Surveyed>,
    #[serde(default)]
    pub survey: Vec<String>,
    #[serde(default)]
    pub statics: Statics,
}

#[derive(Clone, Copy, Debug, Default, Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct Statics {
    pub toe_left_deg: Option<f64>,
    pub toe_right_deg: Option<f64>,
    pub toe_wanted_deg: Option<f64>,
    pub tape_difference: Option<f64>,
    pub camber_left_deg: Option<f64>,
    pub camber_right_deg: Option<f64>,
    pub shock_left: Option<f64>,
    pub shock_right: Option<f64>,
    pub castor_sweep: Option<Triple>,
    pub weights: Option<Weights>,
}

#[derive(Clone, Copy, Debug, Deserialize)]
#[serde(rename_all = "snake_case")]
pub(crate) enum Weights {
    Kg(f64, f64, f64, f64),
    Lb(f64, f64, f64, f64),
}

#[derive(Debug, Default, Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct Adjusters {
    pub rack_end: Option<RackEndRange>,
    pub washers: Option<Stack>,
    pub washers_along: Option<BoltAxis>,
    pub shims: Option<Stack>,
    pub rod: Option<Rod>,
}

#[derive(Clone, Copy, Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct RackEndRange {
    pub turns_out: f64,
    pub turns_in: f64,
    pub only: Option<Side>,
}

#[derive(Clone, Copy, Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct Stack {
    pub thickness: f64,
    pub more: u32,
    pub fewer: u32,
    pub only: Option<Side>,
}

#[derive(Clone, Copy, Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct Rod {
    pub per_turn: f64,
    pub shorter: f64,
    pub longer: f64,
}

#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct Session {
    #[serde(default)]
    pub date: String,
    #[serde(default)]
    pub notes: String,
    #[serde(default)]
    pub adjusted: Vec<Adjusted>,
    pub method: Method,
    pub accuracy: Option<f64>,
    #[serde(default)]
    pub travel_by: TravelBy,
    pub travel_accuracy: Option<f64>,
    pub rows: Vec<Row>,
}

#[derive(Clone, Copy, Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct Adjusted {
    pub part: Part,
    pub side: Side,
    pub by: f64,
}

#[derive(Clone, Copy, Debug, Deserialize)]
#[serde(rename_all = "snake_case")]
pub(crate) enum Part {
    RackEnd,
    Washers,
    Shims,
}

#[derive(Clone, Copy, Debug, Deserialize)]
#[serde(rename_all = "snake_case")]
pub(crate) enum Side {
    Left,
    Right,
}

#[derive(Clone, Copy, Debug, Deserialize)]
#[serde(rename_all = "snake_case")]
pub(crate) enum Method {
    TwoDials(f64, Way),
    OneDial(f64, Way),
    Tape(f64),
    Laser(f64, Board),
    Mirror(f64),
    Degrees,
}

#[derive(Clone, Copy, Debug, Deserialize)]
#[serde(rename_all = "snake_case")]
pub(crate) enum Way {
    ToeIn,
    ToeOut,
}

#[derive(Clone, Copy, Debug, Deserialize)]
#[serde(rename_all = "snake_case")]
pub(crate) enum Board {
    Ahead,
    Behind,
}

#[derive(Clone, Copy, Debug, Default, Deserialize)]
#[serde(rename_all = "snake_case")]
pub(crate) enum TravelBy {
    #[default]
    Travel,
    WheelHeight,
    ShockLength,
    Blocks,
}

#[derive(Clone, Copy, Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct Row {
    pub side: Side,
    #[serde(default = "first_run")]
    pub run: u32,
    #[serde(default)]
    pub rack: f64,
    pub place: f64,
    #[serde(default)]
    pub ride: bool,
    pub shown: Shown,
}

fn first_run() -> u32 {
    1
}

#[derive(Clone, Copy, Debug, Deserialize)]
#[serde(rename_all = "snake_case")]
pub(crate) enum Shown {
    Pair(f64, f64),
    Dial(f64),
    Spot(f64, SpotWay),
    Degrees(f64, Way),
}

#[derive(Clone, Copy, Debug, Deserialize)]
#[serde(rename_all = "snake_case")]
pub(crate) enum SpotWay {
    Inboard,
    Outboard,
    Ahead,
    Back,
}

#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct Surveyed {
    pub point: String,
    pub variances: Triple,
    pub covariances: Triple,
}
