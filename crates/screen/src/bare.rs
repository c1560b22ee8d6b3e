//! The plainest corner that works, for when there is nothing else to put on the table.

use trammel_build::{ArmPoints, AxleSpec, Build, LengthUnit, TieRodPoints, WheelSpec};

/// Equal parallel arms with the tie rod in their plane: no toe change at any travel.
#[must_use]
pub(crate) fn build() -> Build {
    let arm = |z: f64| ArmPoints {
        front_pivot: [100.0, 250.0, z],
        rear_pivot: [-100.0, 250.0, z],
        ball_joint: [0.0, 550.0, z],
    };
    Build::new(
        String::new(),
        LengthUnit::Millimetre,
        AxleSpec::new(
            arm(340.0),
            arm(180.0),
            TieRodPoints {
                inner: [-90.0, 250.0, 200.0],
                outer: [-90.0, 550.0, 200.0],
            },
            WheelSpec {
                centre: [0.0, 620.0, 260.0],
                loaded_radius: 260.0,
                toe_deg: 0.0,
                camber_deg: 0.0,
            },
        ),
    )
}
