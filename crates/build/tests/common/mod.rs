//! A build to change.

use trammel_build::{
    ArmPoints, AxleSpec, Build, LengthUnit, RackSpec, SpringSpec, TieRodPoints, TravelSpec,
    WheelSpec,
};
use trammel_geometry::ArmName;

/// A usable build in inches, front axle only.
pub(crate) fn build() -> Build {
    let arm = |y: f64, z: f64, ball: [f64; 3]| ArmPoints {
        front_pivot: [5.0, y, z],
        rear_pivot: [-5.0, y, z],
        ball_joint: ball,
    };
    Build::new(
        "Test kart",
        LengthUnit::Inch,
        AxleSpec {
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
            ..AxleSpec::new(
                arm(7.75, 12.75, [-0.5, 21.5, 13.25]),
                arm(6.25, 7.0, [0.25, 22.375, 6.75]),
                TieRodPoints {
                    inner: [-3.5, 7.0, 8.5],
                    outer: [-3.75, 21.75, 8.5],
                },
                WheelSpec {
                    centre: [0.0, 25.0, 10.0],
                    loaded_radius: 10.0,
                    toe_deg: 0.0,
                    camber_deg: -1.0,
                },
            )
        },
    )
}
