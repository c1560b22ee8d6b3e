//! The build file, format 1, field by field. Each of these stands for one pair of brackets in the file; [`crate::convert`] turns them
//! into a build.

use serde::Deserialize;

use crate::{
    format1_parts::{Accepted, Force, LoadCases, Material, Parts, Shop, Steering},
    format1_pieces::{BoltAxis, Triple},
};

#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields, rename = "build")]
pub(crate) struct BuildFile {
    // Read ahead of everything else; named here so that it is a known field.
    #[serde(rename = "format")]
    pub _format: u32,
    #[serde(default)]
    pub title: String,
    pub unit: Unit,
    pub front: Axle,
    pub rear: Option<Axle>,
    #[serde(default)]
    pub vehicle: Vehicle,
    #[serde(default)]
    pub hit: Hit,
    #[serde(default)]
    pub limits: Limits,
    #[serde(default)]
    pub keep_outs: Vec<KeepOut>,
    #[serde(default)]
    pub tolerances: Tolerances,
    #[serde(default)]
    pub set_up: crate::set_up::file::SetUp,
    #[serde(default)]
    pub steering: Steering,
    #[serde(default)]
    pub materials: Vec<Material>,
    #[serde(default)]
    pub load_cases: LoadCases,
    #[serde(default)]
    pub shop: Shop,
    #[serde(default)]
    pub accepted: Vec<Accepted>,
    #[serde(default)]
    pub locked: Vec<String>,
    #[serde(default)]
    pub notes: String,
}

#[derive(Clone, Copy, Debug, Deserialize)]
#[serde(rename_all = "snake_case")]
pub(crate) enum Unit {
    Inch,
    Mm,
}

#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct Axle {
    pub upper_arm: Arm,
    pub lower_arm: Arm,
    pub tie_rod: TieRod,
    pub wheel: Wheel,
    pub spring: Option<Spring>,
    pub travel: Option<Travel>,
    #[serde(default)]
    pub rack: Rack,
    #[serde(default)]
    pub rack_end: RackEnd,
    #[serde(default)]
    pub joint_bolts: JointBolts,
    #[serde(default)]
    pub parts: Parts,
    #[serde(default)]
    pub right: Right,
}

#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct Arm {
    pub front_pivot: Triple,
    pub rear_pivot: Triple,
    pub ball_joint: Triple,
}

#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct TieRod {
    pub inner: Triple,
    pub outer: Triple,
}

#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct Wheel {
    pub centre: Triple,
    pub loaded_radius: f64,
    pub toe_deg: f64,
    pub camber_deg: f64,
}

#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct Spring {
    pub arm: ArmName,
    pub chassis_mount: Triple,
    pub arm_mount: Triple,
    pub open_length: Option<f64>,
    pub closed_length: Option<f64>,
    pub rate: Option<Rate>,
}

#[derive(Clone, Copy, Debug, Deserialize)]
#[serde(rename_all = "snake_case")]
pub(crate) enum ArmName {
    Lower,
    Upper,
}

#[derive(Clone, Copy, Debug, Deserialize)]
#[serde(rename_all = "snake_case")]
pub(crate) enum Rate {
    NPerMm(f64),
    LbPerIn(f64),
}

#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct Travel {
    pub bump: f64,
    pub droop: f64,
}

#[derive(Debug, Default, Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct Rack {
    pub axis: Option<Triple>,
    pub travel: Option<f64>,
    pub travel_per_turn: Option<f64>,
    pub face: Option<Triple>,
    pub bore_mouth: Option<Triple>,
}

#[derive(Debug, Default, Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct RackEnd {
    pub thread: Option<String>,
    pub grade: Option<String>,
    pub engagement: Option<f64>,
    pub jam_nut: Option<f64>,
    pub jam_nut_at: Option<JamNutAt>,
    pub bar_diameter: Option<f64>,
    pub bar_grade: Option<String>,
    pub bore_depth: Option<f64>,
    pub hard_to: Option<f64>,
    pub making: Option<ThreadMaking>,
}

#[derive(Clone, Copy, Debug, Deserialize)]
#[serde(rename_all = "snake_case")]
pub(crate) enum JamNutAt {
    Rack,
    Joint,
}

#[derive(Clone, Copy, Debug, Deserialize)]
#[serde(rename_all = "snake_case")]
pub(crate) enum ThreadMaking {
    Rolled,
    Cut,
}

#[derive(Debug, Default, Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct Right {
    #[serde(default)]
    pub upper_arm: RightArm,
    #[serde(default)]
    pub lower_arm: RightArm,
    #[serde(default)]
    pub tie_rod: RightTieRod,
    #[serde(default)]
    pub wheel: RightWheel,
    #[serde(default)]
    pub spring: RightSpring,
    #[serde(default)]
    pub rack: RightRack,
}

#[derive(Debug, Default, Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct RightArm {
    pub front_pivot: Option<Triple>,
    pub rear_pivot: Option<Triple>,
    pub ball_joint: Option<Triple>,
}

#[derive(Debug, Default, Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct RightTieRod {
    pub inner: Option<Triple>,
    pub outer: Option<Triple>,
}

#[derive(Debug, Default, Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct RightWheel {
    pub centre: Option<Triple>,
}

#[derive(Debug, Default, Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct RightSpring {
    pub chassis_mount: Option<Triple>,
    pub arm_mount: Option<Triple>,
}

#[derive(Debug, Default, Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct RightRack {
    pub face: Option<Triple>,
    pub bore_mouth: Option<Triple>,
}

#[derive(Debug, Default, Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct Vehicle {
    pub wheelbase: Option<f64>,
    pub mass: Option<Mass>,
    pub front_share: Option<f64>,
    pub centre_of_gravity_height: Option<f64>,
}

#[derive(Clone, Copy, Debug, Deserialize)]
#[serde(rename_all = "snake_case")]
pub(crate) enum Mass {
    Kg(f64),
    Lb(f64),
}

#[derive(Debug, Default, Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct Hit {
    pub weights: Option<f64>,
    pub direction: Option<Triple>,
    pub at: Option<HitPoint>,
}

#[derive(Clone, Copy, Debug, Deserialize)]
#[serde(rename_all = "snake_case")]
pub(crate) enum HitPoint {
    WheelCentre,
    Contact,
}

#[derive(Debug, Default, Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct Limits {
    pub toe_change_deg: Option<f64>,
    pub tie_rod_angle_deg: Option<f64>,
    pub joint_angle_deg: Option<f64>,
    pub rack_end_factor: Option<f64>,
    pub lock_over_deg: Option<f64>,
    pub strength_factor: Option<f64>,
    pub clearance: Option<f64>,
    pub rack_end_toe_deg: Option<f64>,
    pub hand_force: Option<Force>,
    pub kick_back: Option<Force>,
}

#[derive(Debug, Default, Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct JointBolts {
    pub inner: Option<BoltAxis>,
    pub outer: Option<BoltAxis>,
}

#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct KeepOut {
    pub name: String,
    pub corners: KeepOutCorners,
}

#[derive(Clone, Copy, Debug, Deserialize)]
#[serde(rename_all = "snake_case")]
pub(crate) enum KeepOutCorners {
    Front([f64; 2], [f64; 2]),
    Box(Triple, Triple),
}

#[derive(Debug, Default, Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct Tolerances {
    pub jig_drilled: Option<f64>,
    pub tape: Option<f64>,
    pub hand_held: Option<f64>,
    pub usual: Option<MadeBy>,
    #[serde(default)]
    pub points: Vec<PointTolerance>,
}

#[derive(Clone, Copy, Debug, Deserialize)]
#[serde(rename_all = "snake_case")]
pub(crate) enum MadeBy {
    JigDrilled,
    Tape,
    HandHeld,
    Deviation(f64),
}

#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct PointTolerance {
    pub point: String,
    pub made: MadeBy,
}
