//! A corner whose figures can be worked out by hand, for the tests beside the code.

use crate::{Arm, ArmName, Corner, Linkage, Point, Spring, TieRod, Vector, Wheel};

/// Level parallel arms 360 mm long, an upright steering axis 180 mm high at y = 560, a steering arm of 100 mm straight back, 40 mm above the
/// lower ball joint, a tie rod of 400 mm square to it and a rack along y. The spring stands on the lower arm.
pub(crate) fn square() -> Corner {
    let arm = |height| Arm {
        front_pivot: Point::new(100.0, 200.0, height),
        rear_pivot: Point::new(-100.0, 200.0, height),
        ball_joint: Point::new(0.0, 560.0, height),
    };
    Corner {
        upper_arm: arm(380.0),
        lower_arm: arm(200.0),
        tie_rod: TieRod {
            inner: Point::new(-100.0, 160.0, 240.0),
            outer: Point::new(-100.0, 560.0, 240.0),
        },
        wheel: Wheel {
            centre: Point::new(0.0, 635.0, 260.0),
            loaded_radius: 260.0,
            toe: 0.0,
            camber: 0.0,
        },
        spring: Some(Spring {
            arm: ArmName::Lower,
            chassis_mount: Point::new(0.0, 260.0, 450.0),
            arm_mount: Point::new(0.0, 440.0, 200.0),
        }),
        rack_axis: Some(Vector::y()),
    }
}

/// A corner that moves, as a linkage.
#[allow(clippy::panic, reason = "a test stops where it fails")]
pub(crate) fn linkage(corner: &Corner) -> Linkage {
    match Linkage::new(corner) {
        Ok(linkage) => linkage,
        Err(fault) => panic!("{fault}"),
    }
}
