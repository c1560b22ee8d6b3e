//! The plainest corner that works, for when there is nothing else to put on the table.

use std::collections::{BTreeMap, BTreeSet};

use trammel_build::{
    ArmPoints, AxleSpec, Build, Hit, LengthUnit, Limits, RackEndSpec, RackSpec, TieRodPoints,
    Vehicle, WheelSpec,
};

/// Equal parallel arms with the tie rod in their plane: no toe change at any travel.
#[must_use]
pub(crate) fn build() -> Build {
    let arm = |z: f64| ArmPoints {
        front_pivot: [100.0, 250.0, z],
        rear_pivot: [-100.0, 250.0, z],
        ball_joint: [0.0, 550.0, z],
    };
    Build {
        title: String::new(),
        unit: LengthUnit::Millimetre,
        front: AxleSpec {
            upper_arm: arm(340.0),
            lower_arm: arm(180.0),
            tie_rod: TieRodPoints {
                inner: [-90.0, 250.0, 200.0],
                outer: [-90.0, 550.0, 200.0],
            },
            wheel: WheelSpec {
                centre: [0.0, 620.0, 260.0],
                loaded_radius: 260.0,
                toe_deg: 0.0,
                camber_deg: 0.0,
            },
            spring: None,
            travel: None,
            rack: RackSpec::default(),
            rack_end: RackEndSpec::default(),
            joint_bolts: trammel_build::JointBolts::default(),
            parts: trammel_build::AxleParts::default(),
            right: BTreeMap::new(),
        },
        rear: None,
        vehicle: Vehicle::default(),
        hit: Hit::default(),
        limits: Limits::default(),
        keep_outs: Vec::new(),
        set_up: trammel_build::SetUp::default(),
        tolerances: trammel_build::Tolerances::default(),
        steering: trammel_build::SteeringSpec::default(),
        materials: Vec::new(),
        load_cases: trammel_build::LoadCases::default(),
        shop: trammel_build::ShopSpec::default(),
        accepted: Vec::new(),
        locked: BTreeSet::new(),
        notes: String::new(),
    }
}
