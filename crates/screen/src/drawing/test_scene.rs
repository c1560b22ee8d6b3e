//! A small front axle for the drawing's own tests, made up.

use std::collections::{BTreeMap, BTreeSet};

use trammel_build::{
    ArmPoints, AxleName, AxleSpec, Build, Hit, LengthUnit, Limits, RackEndSpec, RackSpec, Side,
    TieRodPoints, Vehicle, WheelSpec,
};

use super::{scene::Joints, sheet::Sheet};

/// A build in inches.
pub(crate) fn build() -> Build {
    Build {
        title: "Bench build".to_owned(),
        unit: LengthUnit::Inch,
        front: AxleSpec {
            upper_arm: ArmPoints {
                front_pivot: [3.9, 9.8, 13.6],
                rear_pivot: [-4.3, 9.8, 13.2],
                ball_joint: [-0.5, 21.6, 15.4],
            },
            lower_arm: ArmPoints {
                front_pivot: [5.5, 7.9, 7.5],
                rear_pivot: [-5.5, 7.9, 7.5],
                ball_joint: [0.3, 22.6, 6.9],
            },
            tie_rod: TieRodPoints {
                inner: [-3.75, 8.9, 8.75],
                outer: [-4.1, 22.1, 8.4],
            },
            wheel: WheelSpec {
                centre: [0.0, 25.0, 10.5],
                loaded_radius: 10.5,
                toe_deg: 0.0,
                camber_deg: -1.0,
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

/// A sheet of a usual size.
pub(crate) fn sheet() -> Sheet {
    Sheet {
        scale: 0.4,
        origin: [300.0, 500.0],
        plan_down: -800.0,
        side_right: 1100.0,
        column: 800.0,
        row: -600.0,
    }
}

/// Its left wheel.
pub(crate) fn wheel() -> (Sheet, Joints) {
    let joints = Joints::at_rest(&build(), AxleName::Front, Side::Left);
    (sheet(), joints.unwrap())
}
