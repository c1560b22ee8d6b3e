//! The build file, format 1: parts, materials, load cases, accepted cautions.

use serde::Deserialize;

use crate::format1_pieces::{BoltAxis, Triple};

#[derive(Debug, Default, Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct Parts {
    #[serde(default)]
    pub tie_rod: TieRodParts,
    #[serde(default)]
    pub upper_arm: ArmParts,
    #[serde(default)]
    pub lower_arm: ArmParts,
    #[serde(default)]
    pub wheel: WheelParts,
    pub spring_diameter: Option<f64>,
    pub rack_mount: Option<RackMount>,
    #[serde(default)]
    pub joints: Vec<JointParts>,
}

#[derive(Debug, Default, Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct TieRodParts {
    pub tube: Option<Tube>,
    pub thread: Option<String>,
    pub grade: Option<String>,
    pub adapter_material: Option<String>,
    pub adapter_length: Option<f64>,
    pub engagement: Option<f64>,
    pub adjustment: Option<f64>,
    pub jam_nut: Option<f64>,
    pub side_hit: Option<Force>,
}

#[derive(Debug, Default, Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct ArmParts {
    pub tube: Option<Tube>,
    pub spring_tubes: Option<u32>,
}

#[derive(Debug, Default, Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct WheelParts {
    pub rim_diameter: Option<f64>,
    pub rim_width: Option<f64>,
    pub rim_thickness: Option<f64>,
    pub tyre_diameter: Option<f64>,
    pub tyre_width: Option<f64>,
}

#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct Tube {
    pub section: Section,
    pub material: Option<String>,
}

#[derive(Clone, Copy, Debug, Deserialize)]
#[serde(rename_all = "snake_case")]
pub(crate) enum Section {
    Round(f64, f64),
    Square(f64, f64),
    Bar(f64),
}

#[derive(Clone, Copy, Debug, Deserialize)]
#[serde(rename_all = "snake_case")]
pub(crate) enum Force {
    N(f64),
    Lbf(f64),
}

#[derive(Clone, Copy, Debug, Deserialize)]
#[serde(rename_all = "snake_case")]
pub(crate) enum Stress {
    Mpa(f64),
    Ksi(f64),
}

#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct JointParts {
    pub at: String,
    pub end: Option<JointEnd>,
    pub bolt: Option<Bolt>,
    pub bracket: Option<Bracket>,
}

#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct JointEnd {
    pub listed: Option<String>,
    pub rating: Option<Force>,
    pub swivel_deg: Option<f64>,
    pub ball_width: Option<f64>,
    pub body_width: Option<f64>,
    pub head_diameter: Option<f64>,
    pub length: Option<f64>,
}

#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct Bolt {
    pub thread: Option<String>,
    pub grade: Option<String>,
    pub spacer: Option<f64>,
    pub shear_plane: Option<ShearPlane>,
    pub direction: Option<BoltAxis>,
}

#[derive(Clone, Copy, Debug, Deserialize)]
#[serde(rename_all = "snake_case")]
pub(crate) enum ShearPlane {
    Shank,
    Thread,
}

#[derive(Clone, Copy, Debug, Deserialize)]
#[serde(rename_all = "snake_case")]
pub(crate) enum Ears {
    Single,
    Double,
}

#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct Bracket {
    pub ears: Option<Ears>,
    pub thickness: f64,
    pub width: f64,
    pub height: f64,
    pub form: Option<TabOutline>,
    pub hole: Option<f64>,
    pub fit: Option<HoleFit>,
    pub edge: Option<f64>,
    pub gap: Option<f64>,
    pub boxing: Option<f64>,
    pub weld: Option<f64>,
    pub electrode: Option<f64>,
    pub material: Option<String>,
    pub tube: Option<FrameTube>,
    pub stands: Option<Triple>,
}

#[derive(Clone, Copy, Debug, Deserialize)]
#[serde(rename_all = "snake_case")]
pub(crate) enum TabOutline {
    Straight,
    Radiused,
    Tapered,
}

#[derive(Clone, Copy, Debug, Deserialize)]
#[serde(rename_all = "snake_case")]
pub(crate) enum HoleFit {
    Reamed,
    Close,
    Normal,
    Loose,
}

#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct RackMount {
    pub width: f64,
    pub height: f64,
    pub thickness: f64,
    pub along: f64,
    pub across: f64,
    pub thread: Option<String>,
}

#[derive(Clone, Copy, Debug, Deserialize)]
#[serde(rename_all = "snake_case")]
pub(crate) enum ShopStep {
    Sixteenth,
    ThirtySecond,
    SixtyFourth,
    TenthMm,
    HalfMm,
    WholeMm,
}

#[derive(Debug, Default, Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct Shop {
    pub owner: Option<String>,
    pub revision: Option<String>,
    pub issued: Option<String>,
    pub step: Option<ShopStep>,
    pub both_units: Option<bool>,
    pub datum: Option<Triple>,
    pub stock_length: Option<f64>,
    pub kerf: Option<f64>,
    pub plate: Option<[f64; 2]>,
}

#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct FrameTube {
    pub from: Triple,
    pub to: Triple,
    pub section: Section,
}

#[derive(Debug, Default, Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct Steering {
    pub wheel_diameter: Option<f64>,
    pub friction: Option<f64>,
    pub stop: Option<f64>,
}

#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct Material {
    pub name: String,
    pub yield_strength: Stress,
    pub tensile: Option<Stress>,
    pub modulus: Option<Stress>,
    #[serde(default)]
    pub source: String,
}

#[derive(Debug, Default, Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct LoadCases {
    #[serde(default)]
    pub own: Vec<LoadCase>,
    #[serde(default)]
    pub off: Vec<String>,
}

#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct LoadCase {
    pub name: String,
    #[serde(default)]
    pub what: String,
    pub actions: Vec<Action>,
    pub hold: Hold,
    #[serde(default)]
    pub braking: f64,
    #[serde(default)]
    pub cornering: f64,
    pub travel: [f64; 2],
    pub lock: [f64; 2],
}

#[derive(Clone, Copy, Debug, Deserialize)]
#[serde(rename_all = "snake_case")]
pub(crate) enum Hold {
    Rolling,
    Braked,
}

#[derive(Clone, Copy, Debug, Deserialize)]
#[serde(rename_all = "snake_case")]
pub(crate) enum LoadUnit {
    Newtons,
    StaticWheelLoad,
    WheelLoad,
    VehicleWeight,
}

#[derive(Clone, Copy, Debug, Deserialize)]
#[serde(rename_all = "snake_case")]
pub(crate) enum LoadAxes {
    Vehicle,
    Wheel,
}

#[derive(Clone, Copy, Debug, Deserialize)]
#[serde(rename_all = "snake_case")]
pub(crate) enum RimHalf {
    Front,
    Rear,
}

#[derive(Clone, Copy, Debug, Deserialize)]
#[serde(rename_all = "snake_case")]
pub(crate) enum LoadPlace {
    Contact,
    WheelCentre,
    Rim(RimHalf, f64, f64),
}

#[derive(Clone, Copy, Debug, Deserialize)]
#[serde(rename_all = "snake_case")]
pub(crate) enum TyrePatch {
    Kpa(f64),
    Psi(f64),
    Length(f64),
}

#[derive(Clone, Copy, Debug, Deserialize)]
#[serde(rename_all = "snake_case")]
pub(crate) enum Action {
    Force(Triple, LoadUnit, LoadPlace, LoadAxes),
    TurnedOnTheSpot(f64, TyrePatch),
    AgainstStop(Force),
}

#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct Accepted {
    pub caution: String,
    pub reason: String,
    pub figure: Option<f64>,
}
