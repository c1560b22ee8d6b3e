//! Corners of our own figures, mm and rad, left side, that the kernels' tests and benches share.

use trammel_geometry::{Arm, ArmName, Corner, Point, Spring, TieRod, Vector, Wheel};

fn arm(front: [f64; 3], rear: [f64; 3], ball: [f64; 3]) -> Arm {
    Arm {
        front_pivot: Point::from(front),
        rear_pivot: Point::from(rear),
        ball_joint: Point::from(ball),
    }
}

/// A light buggy's left front corner, its tie rod behind the steering axis.
#[must_use]
pub fn behind() -> Corner {
    Corner {
        upper_arm: arm(
            [110.0, 235.0, 372.0],
            [-130.0, 235.0, 368.0],
            [-11.0, 537.0, 362.0],
        ),
        lower_arm: arm(
            [140.0, 200.0, 235.0],
            [-140.0, 200.0, 235.0],
            [8.0, 560.0, 200.0],
        ),
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
#[must_use]
pub fn ahead() -> Corner {
    Corner {
        tie_rod: TieRod {
            inner: Point::new(95.0, 198.9, 263.3),
            outer: Point::new(95.0, 548.0, 235.0),
        },
        ..behind()
    }
}

/// Skewed axes, static toe and camber, a rack out of square, no spring.
#[must_use]
pub fn skewed() -> Corner {
    Corner {
        upper_arm: arm(
            [95.0, 250.0, 410.0],
            [-150.0, 232.0, 385.0],
            [-22.0, 548.0, 395.0],
        ),
        lower_arm: arm(
            [150.0, 190.0, 222.0],
            [-145.0, 212.0, 240.0],
            [14.0, 575.0, 198.0],
        ),
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
#[must_use]
pub fn parallelogram() -> Corner {
    Corner {
        upper_arm: arm(
            [120.0, 200.0, 372.0],
            [-120.0, 200.0, 372.0],
            [0.0, 540.0, 352.0],
        ),
        lower_arm: arm(
            [120.0, 220.0, 225.0],
            [-120.0, 220.0, 225.0],
            [0.0, 560.0, 205.0],
        ),
        tie_rod: TieRod {
            inner: Point::new(-90.0, 210.0, 298.5),
            outer: Point::new(-90.0, 550.0, 278.5),
        },
        ..behind()
    }
}

/// A kart-like front corner, static toe and camber, its spring leaning.
#[must_use]
pub fn kart() -> Corner {
    Corner {
        upper_arm: arm(
            [90.0, 235.0, 352.0],
            [-130.0, 228.0, 340.0],
            [-18.0, 545.0, 385.0],
        ),
        lower_arm: arm(
            [110.0, 190.0, 205.0],
            [-140.0, 190.0, 198.0],
            [4.0, 575.0, 190.0],
        ),
        tie_rod: TieRod {
            inner: Point::new(-92.0, 215.0, 240.0),
            outer: Point::new(-105.0, 555.0, 238.0),
        },
        wheel: Wheel {
            centre: Point::new(0.0, 650.0, 280.0),
            loaded_radius: 280.0,
            toe: 0.002,
            camber: -0.017,
        },
        spring: Some(Spring {
            arm: ArmName::Lower,
            chassis_mount: Point::new(-5.0, 290.0, 560.0),
            arm_mount: Point::new(-2.0, 460.0, 205.0),
        }),
        rack_axis: Some(Vector::y()),
    }
}

/// The corners that the tuning laws are tried on, by name.
#[must_use]
pub fn all() -> [(&'static str, Corner); 4] {
    [
        ("behind", behind()),
        ("ahead", ahead()),
        ("skewed", skewed()),
        ("parallelogram", parallelogram()),
    ]
}

/// A light kart's front corner, its rack a little askew in plan.
#[must_use]
pub fn askew() -> Corner {
    Corner {
        upper_arm: arm(
            [96.0, 262.0, 334.0],
            [-104.0, 258.0, 328.0],
            [-16.0, 548.0, 324.0],
        ),
        lower_arm: arm(
            [132.0, 214.0, 176.0],
            [-118.0, 216.0, 170.0],
            [5.0, 574.0, 158.0],
        ),
        tie_rod: TieRod {
            inner: Point::new(-87.0, 236.0, 203.0),
            outer: Point::new(-83.0, 557.0, 194.0),
        },
        wheel: Wheel {
            centre: Point::new(0.0, 642.0, 266.0),
            loaded_radius: 266.0,
            toe: 0.0,
            camber: 0.0,
        },
        spring: Some(Spring {
            arm: ArmName::Lower,
            chassis_mount: Point::new(6.0, 328.0, 512.0),
            arm_mount: Point::new(12.0, 436.0, 171.0),
        }),
        rack_axis: Some(Vector::new(0.02, 1.0, 0.0)),
    }
}
