//! The data of a build. Lengths are in the build's own unit, angles in degrees, exactly as they were typed. `None` means
//! that the builder left it out: [`crate::defaults`] says what is taken then.

use std::collections::{BTreeMap, BTreeSet};

use trammel_geometry::ArmName;

use crate::{
    AcceptedCaution, AxleParts, Coordinate, Force, JointBolts, KeepOut, LengthUnit, LoadCases,
    MaterialSpec, PointName, SetUp, ShopSpec, SteeringSpec, Tolerances,
};

/// Three coordinates in the build's unit: x forward, y left, z up.
pub type Triple = [f64; 3];

/// One vehicle as its builder describes it.
#[derive(Clone, Debug, PartialEq)]
pub struct Build {
    /// What the builder calls it.
    pub title: String,
    /// Unit of every length in it.
    pub unit: LengthUnit,
    /// Steered front axle.
    pub front: AxleSpec,
    /// Rear axle, if it is laid out too.
    pub rear: Option<AxleSpec>,
    /// Vehicle figures.
    pub vehicle: Vehicle,
    /// The hit that the rack end is checked against.
    pub hit: Hit,
    /// Where cautions begin.
    pub limits: Limits,
    /// Coordinates that must not be moved by hand or by tuning.
    pub locked: BTreeSet<Coordinate>,
    /// Places that tie-rod joints are kept out of.
    pub keep_outs: Vec<KeepOut>,
    /// How exactly its points are made.
    pub tolerances: Tolerances,
    /// What can be adjusted, and every session of readings.
    pub set_up: SetUp,
    /// Steering wheel, friction, stops.
    pub steering: SteeringSpec,
    /// Materials of its own.
    pub materials: Vec<MaterialSpec>,
    /// What it does to the usual load cases.
    pub load_cases: LoadCases,
    /// How the shop prints and saws.
    pub shop: ShopSpec,
    /// Cautions that stay on purpose.
    pub accepted: Vec<AcceptedCaution>,
    /// Free text.
    pub notes: String,
}

impl Build {
    /// A build of a front axle alone; everything else stands as in a file that leaves it out.
    #[must_use]
    pub fn new(title: impl Into<String>, unit: LengthUnit, front: AxleSpec) -> Self {
        Self {
            title: title.into(),
            unit,
            front,
            rear: None,
            vehicle: Vehicle::default(),
            hit: Hit::default(),
            limits: Limits::default(),
            locked: BTreeSet::new(),
            keep_outs: Vec::new(),
            tolerances: Tolerances::default(),
            set_up: SetUp::default(),
            steering: SteeringSpec::default(),
            materials: Vec::new(),
            load_cases: LoadCases::default(),
            shop: ShopSpec::default(),
            accepted: Vec::new(),
            notes: String::new(),
        }
    }

    /// The same without locks: they hold the user's hand, not a look at what would be.
    #[must_use]
    pub fn unlocked(&self) -> Self {
        Self {
            locked: BTreeSet::new(),
            ..self.clone()
        }
    }
}

/// An axle: the left corner, and what differs on the right.
#[derive(Clone, Debug, PartialEq)]
pub struct AxleSpec {
    /// Upper A-arm.
    pub upper_arm: ArmPoints,
    /// Lower A-arm.
    pub lower_arm: ArmPoints,
    /// Tie rod, or the rear's toe link.
    pub tie_rod: TieRodPoints,
    /// Wheel.
    pub wheel: WheelSpec,
    /// Spring unit.
    pub spring: Option<SpringSpec>,
    /// Wheel travel that the builder wants or has stops for.
    pub travel: Option<TravelSpec>,
    /// Rack, on a steered axle.
    pub rack: RackSpec,
    /// Threaded end that carries the inner tie-rod joint.
    pub rack_end: RackEndSpec,
    /// Which way the bolts of the tie-rod joints stand.
    pub joint_bolts: JointBolts,
    /// What it is made of.
    pub parts: AxleParts,
    /// Points of the right side that are not the left's mirror image, in vehicle axes (y negative on the right).
    pub right: RightPoints,
}

impl AxleSpec {
    /// An axle of bare hardpoints: no spring, no stops, rack and parts left out, both sides alike.
    #[must_use]
    pub fn new(
        upper_arm: ArmPoints,
        lower_arm: ArmPoints,
        tie_rod: TieRodPoints,
        wheel: WheelSpec,
    ) -> Self {
        Self {
            upper_arm,
            lower_arm,
            tie_rod,
            wheel,
            spring: None,
            travel: None,
            rack: RackSpec::default(),
            rack_end: RackEndSpec::default(),
            joint_bolts: JointBolts::default(),
            parts: AxleParts::default(),
            right: RightPoints::new(),
        }
    }
}

/// Right-side points of their own.
pub type RightPoints = BTreeMap<PointName, Triple>;

/// Points of an A-arm.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ArmPoints {
    /// Forward chassis pivot.
    pub front_pivot: Triple,
    /// Rearward chassis pivot.
    pub rear_pivot: Triple,
    /// Ball joint.
    pub ball_joint: Triple,
}

/// Points of a tie rod.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct TieRodPoints {
    /// On the rack end, or on the chassis.
    pub inner: Triple,
    /// On the upright.
    pub outer: Triple,
}

/// Wheel at the design position.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct WheelSpec {
    /// Wheel centre.
    pub centre: Triple,
    /// Radius of the tyre under load.
    pub loaded_radius: f64,
    /// Static toe, degrees, toe-in positive.
    pub toe_deg: f64,
    /// Static camber, degrees, top outboard positive.
    pub camber_deg: f64,
}

/// Spring unit.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SpringSpec {
    /// The arm it stands on.
    pub arm: ArmName,
    /// Mount on the chassis.
    pub chassis_mount: Triple,
    /// Mount on the arm.
    pub arm_mount: Triple,
    /// Length between the mounts fully extended.
    pub open_length: Option<f64>,
    /// Length between the mounts at the bump stop.
    pub closed_length: Option<f64>,
    /// Spring rate.
    pub rate: Option<SpringRate>,
}

/// A spring rate in the unit it was typed in.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum SpringRate {
    /// Newtons per millimetre.
    NewtonsPerMillimetre(f64),
    /// Pounds-force per inch.
    PoundsPerInch(f64),
}

impl SpringRate {
    /// N/mm.
    #[must_use]
    pub fn n_per_mm(self) -> f64 {
        match self {
            Self::NewtonsPerMillimetre(v) => v,
            Self::PoundsPerInch(v) => v * defaults::NEWTONS_PER_POUND_FORCE / 25.4,
        }
    }
}

use crate::defaults;

/// Wheel travel between the stops, both positive.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct TravelSpec {
    /// Up from the design position.
    pub bump: f64,
    /// Down from the design position.
    pub droop: f64,
}

/// A rack and pinion. Everything may be left out.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct RackSpec {
    /// Direction of the rack, positive to the left.
    pub axis: Option<Triple>,
    /// Travel each way from centre.
    pub travel: Option<f64>,
    /// Rack travel for one turn of the pinion.
    pub travel_per_turn: Option<f64>,
    /// Centre of the left end face of the rack bar, where the threaded end leaves it, with the rack at centre.
    pub face: Option<Triple>,
    /// Where the bar leaves the housing on the left.
    pub bore_mouth: Option<Triple>,
}

/// The threaded rack end. Names are kept as typed; the strength crate knows their figures.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct RackEndSpec {
    /// Thread, such as `1/2-20` or `M12x1.25`.
    pub thread: Option<String>,
    /// Grade, such as `grade 8` or `8.8`.
    pub grade: Option<String>,
    /// Length of thread engaged in the rack bar.
    pub engagement: Option<f64>,
    /// Thickness of the jam nut on the rack end.
    pub jam_nut: Option<f64>,
    /// What the jam nut is tightened against.
    pub jam_nut_at: Option<JamNutAt>,
    /// Diameter of the rack bar that is tapped.
    pub bar_diameter: Option<f64>,
    /// Steel of the rack bar, by name.
    pub bar_grade: Option<String>,
    /// Depth of the tapped hole.
    pub bore_depth: Option<f64>,
    /// From the middle of the bar to where its hardened teeth end; nothing can be cut or drilled inboard of it.
    pub hard_to: Option<f64>,
    /// How its thread was made.
    pub making: Option<ThreadMaking>,
}

/// What a jam nut on the rack end is tightened against.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum JamNutAt {
    /// The face of the rack bar.
    Rack,
    /// The joint.
    Joint,
}

/// How a thread was made.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ThreadMaking {
    /// Rolled, as on bought bolts and studs.
    Rolled,
    /// Cut with a die or in the lathe.
    Cut,
}

/// Vehicle figures.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Vehicle {
    /// Distance between the axles.
    pub wheelbase: Option<f64>,
    /// All-up mass.
    pub mass: Option<Mass>,
    /// Part of the weight on the front axle, 0 to 1.
    pub front_share: Option<f64>,
    /// Height of the centre of gravity above the ground.
    pub centre_of_gravity_height: Option<f64>,
}

/// A mass in the unit it was typed in.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Mass {
    /// Kilograms.
    Kilograms(f64),
    /// Pounds.
    Pounds(f64),
}

impl Mass {
    /// kg.
    #[must_use]
    pub fn kg(self) -> f64 {
        match self {
            Self::Kilograms(v) => v,
            Self::Pounds(v) => v * defaults::KILOGRAMS_PER_POUND,
        }
    }
}

/// Where the hit acts.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum HitPoint {
    /// Through the wheel centre: a free-rolling wheel passes no moment about its spin axis.
    WheelCentre,
    /// At the contact point: a braked wheel.
    Contact,
}

/// The force that the rack end is checked against.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Hit {
    /// Size in vehicle weights.
    pub weights: Option<f64>,
    /// Direction of the force on the left wheel, vehicle axes; its length does not matter.
    pub direction: Option<Triple>,
    /// Where it acts.
    pub at: Option<HitPoint>,
}

/// Where cautions begin. Degrees, factors, lengths in the build's unit.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Limits {
    /// Greatest toe change over the travel, degrees.
    pub toe_change_deg: Option<f64>,
    /// Steepest tie rod at the rack, degrees.
    pub tie_rod_angle_deg: Option<f64>,
    /// Greatest swivel of a tie-rod joint over travel and lock, degrees.
    pub joint_angle_deg: Option<f64>,
    /// Wanted factor against yield in the rack end.
    pub rack_end_factor: Option<f64>,
    /// Least angle between tie rod and steering arm, seen along the steering axis, degrees.
    pub lock_over_deg: Option<f64>,
    /// Wanted factor against yield, buckling and rupture in every other part.
    pub strength_factor: Option<f64>,
    /// Wanted gap between parts that pass each other.
    pub clearance: Option<f64>,
    /// Toe that the rack end's bending may cost, degrees.
    pub rack_end_toe_deg: Option<f64>,
    /// Greatest force at the rim of the steering wheel that is asked of the driver.
    pub hand_force: Option<Force>,
    /// Greatest force with which a hit may tear at the rim of the steering wheel.
    pub kick_back: Option<Force>,
}
