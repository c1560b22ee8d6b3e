//! A build to change.

use std::collections::{BTreeMap, BTreeSet};

use trammel_build::{
    ArmPoints, AxleSpec, Build, Hit, LengthUnit, Limits, RackEndSpec, RackSpec, SpringSpec,
    TieRodPoints, TravelSpec, Vehicle, WheelSpec,
};
use trammel_geometry::ArmName;

/// A usable build in inches, front axle only.
pub(crate) fn build() -> Build {
    let arm = |y: f64, z: f64, ball: [f64; 3]| ArmPoints {
        front_pivot: [5.0, y, z],
        rear_pivot: [-5.0, y, z],
        ball_joint: ball,
    };
    Build {
        title: "Test kart".into(),
        unit: LengthUnit::Inch,
        front: AxleSpec {
            upper_arm: arm(7.75, 12.75, [-0.5, 21.5, 13.25]),
            lower_arm: arm(6.25, 7.0, [0.25, 22.375, 6.75]),
            tie_rod: TieRodPoints {
                inner: [-3.5, 7.0, 8.5],
                outer: [-3.75, 21.75, 8.5],
            },
            wheel: WheelSpec {
                centre: [0.0, 25.0, 10.0],
                loaded_radius: 10.0,
                toe_deg: 0.0,
                camber_deg: -1.0,
            },
            spring: Some(SpringSpec {
                arm: ArmName::Lower,
                chassis_mount: [0.0, 11.0, 19.0],
                arm_mount: [0.0, 17.0, 7.0],
                open_length: None,
                closed_length: None,
                rate: None,
            }),
            travel: Some(TravelSpec {
                bump: 3.0,
                droop: 2.5,
            }),
            rack: RackSpec {
                face: Some([-3.5, 5.5, 8.5]),
                bore_mouth: Some([-3.5, 4.0, 8.5]),
                ..RackSpec::default()
            },
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
