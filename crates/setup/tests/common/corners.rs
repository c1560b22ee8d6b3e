//! Corners that the tests share.

use trammel_geometry::{Arm, ArmName, Corner, Point, Spring, TieRod, Vector, Wheel};

/// A light buggy's left front corner, our own figures, its tie rod behind the steering axis.
pub(crate) fn behind() -> Corner {
    Corner {
        upper_arm: Arm {
            front_pivot: Point::new(110.0, 235.0, 372.0),
            rear_pivot: Point::new(-130.0, 235.0, 368.0),
            ball_joint: Point::new(-11.0, 537.0, 362.0),
        },
        lower_arm: Arm {
            front_pivot: Point::new(140.0, 200.0, 235.0),
            rear_pivot: Point::new(-140.0, 200.0, 235.0),
            ball_joint: Point::new(8.0, 560.0, 200.0),
        },
        tie_rod: TieRod {
            inner: Point::new(-95.0, 209.8, 263.0),
            outer: Point::new(-95.0, 548.0, 235.0),
        },
        wheel: Wheel {
            centre: Point::new(0.0, 635.0, 260.0),
            loaded_radius: 260.0,
            toe: 0.0,
            camber: 0.0,
        },
        spring: Some(Spring {
            arm: ArmName::Lower,
            chassis_mount: Point::new(0.0, 280.0, 560.0),
            arm_mount: Point::new(0.0, 430.0, 225.0),
        }),
        rack_axis: Some(Vector::y()),
    }
}

/// The same with the tie rod ahead.
pub(crate) fn ahead() -> Corner {
    let tie_rod = TieRod {
        inner: Point::new(95.0, 198.9, 263.3),
        outer: Point::new(95.0, 548.0, 235.0),
    };
    Corner {
        tie_rod,
        ..behind()
    }
}
