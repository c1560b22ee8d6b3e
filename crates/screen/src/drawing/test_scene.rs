//! A small front axle for the drawing's own tests, made up.

use trammel_build::{
    ArmPoints, AxleName, AxleSpec, Build, LengthUnit, Side, TieRodPoints, WheelSpec,
};

use super::{scene::Joints, sheet::Sheet};

/// A build in inches.
pub(crate) fn build() -> Build {
    Build::new(
        "Bench build",
        LengthUnit::Inch,
        AxleSpec::new(
            ArmPoints {
                front_pivot: [3.9, 9.8, 13.6],
                rear_pivot: [-4.3, 9.8, 13.2],
                ball_joint: [-0.5, 21.6, 15.4],
            },
            ArmPoints {
                front_pivot: [5.5, 7.9, 7.5],
                rear_pivot: [-5.5, 7.9, 7.5],
                ball_joint: [0.3, 22.6, 6.9],
            },
            TieRodPoints {
                inner: [-3.75, 8.9, 8.75],
                outer: [-4.1, 22.1, 8.4],
            },
            WheelSpec {
                centre: [0.0, 25.0, 10.5],
                loaded_radius: 10.5,
                toe_deg: 0.0,
                camber_deg: -1.0,
            },
        ),
    )
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
