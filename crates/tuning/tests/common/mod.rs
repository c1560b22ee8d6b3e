//! Corners that the tests share.
#![allow(dead_code, reason = "each test file uses its part")]

pub(crate) mod reference;

use trammel_geometry::{Arm, Corner, Point, TieRod, Vector, Wheel};

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
        spring: None,
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

/// Skewed axes, static toe and camber, a rack out of square.
pub(crate) fn skewed() -> Corner {
    Corner {
        upper_arm: Arm {
            front_pivot: Point::new(95.0, 250.0, 410.0),
            rear_pivot: Point::new(-150.0, 232.0, 385.0),
            ball_joint: Point::new(-22.0, 548.0, 395.0),
        },
        lower_arm: Arm {
            front_pivot: Point::new(150.0, 190.0, 222.0),
            rear_pivot: Point::new(-145.0, 212.0, 240.0),
            ball_joint: Point::new(14.0, 575.0, 198.0),
        },
        tie_rod: TieRod {
            inner: Point::new(-92.0, 215.0, 262.0),
            outer: Point::new(-88.0, 552.0, 240.0),
        },
        wheel: Wheel {
            centre: Point::new(2.0, 655.0, 268.0),
            loaded_radius: 268.0,
            toe: -0.008,
            camber: -0.021,
        },
        spring: None,
        rack_axis: Some(Vector::new(0.05, 1.0, -0.03)),
    }
}

/// Equal parallel arms with the tie rod equal and parallel to both: no toe change anywhere.
pub(crate) fn parallelogram() -> Corner {
    let base = behind();
    Corner {
        upper_arm: Arm {
            front_pivot: Point::new(120.0, 200.0, 372.0),
            rear_pivot: Point::new(-120.0, 200.0, 372.0),
            ball_joint: Point::new(0.0, 540.0, 352.0),
        },
        lower_arm: Arm {
            front_pivot: Point::new(120.0, 220.0, 225.0),
            rear_pivot: Point::new(-120.0, 220.0, 225.0),
            ball_joint: Point::new(0.0, 560.0, 205.0),
        },
        tie_rod: TieRod {
            inner: Point::new(-90.0, 210.0, 298.5),
            outer: Point::new(-90.0, 550.0, 278.5),
        },
        ..base
    }
}

pub(crate) fn all() -> [(&'static str, Corner); 4] {
    [
        ("behind", behind()),
        ("ahead", ahead()),
        ("skewed", skewed()),
        ("parallelogram", parallelogram()),
    ]
}
