//! Parallel arms of equal length with a tie rod of the same length in the plane of the lower one: the upright is carried without turning.

use trammel_geometry::{Corner, Point, TieRod};

use crate::corners::{arm, kart, linkage, near};

fn corner() -> Corner {
    let along = |x: f64, z: f64| {
        arm(
            [120.0 + x, 200.0, z],
            [-120.0 + x, 200.0, z],
            [x, 560.0, z - 30.0],
        )
    };
    Corner {
        lower_arm: along(5.0, 200.0),
        upper_arm: along(-20.0, 380.0),
        tie_rod: TieRod {
            inner: Point::new(-90.0, 200.0, 200.0),
            outer: Point::new(-90.0, 560.0, 170.0),
        },
        ..kart()
    }
}

#[test]
fn no_toe_change_at_any_travel() {
    let l = linkage(&corner());
    let design = l.measures(&l.pose(0.0, 0.0).unwrap());
    // The arm is 361.2 mm long; up to nine tenths of its swing.
    for i in -32..=32 {
        let travel = 10.0 * f64::from(i);
        let pose = l.pose(travel, 0.0).unwrap();
        let m = l.measures(&pose);
        near(m.toe, design.toe, 1e-12);
        near(m.camber, design.camber, 1e-12);
        near(m.castor, design.castor, 1e-12);
        near(m.toe_rate, 0.0, 1e-13);
        near(m.camber_rate, 0.0, 1e-13);
        // The half-track follows the arm's circle.
        let y = (360.0_f64.powi(2) + 900.0 - (travel - 30.0).powi(2)).sqrt();
        near(m.half_track_change, y - 360.0, 1e-9);
    }
}

/// With the rod 10 mm short the rack end stands nearer, and toe changes: the check above can fail.
#[test]
fn toe_changes_when_the_rod_is_short() {
    let mut c = corner();
    c.tie_rod.inner.y += 10.0;
    let l = linkage(&c);
    let design = l.measures(&l.pose(0.0, 0.0).unwrap());
    let up = l.measures(&l.pose(100.0, 0.0).unwrap());
    assert!((up.toe - design.toe).abs() > 1e-4);
}

/// The wheel stops where the arm stands upright: 361.2 mm above or below its pivot.
#[test]
fn ends_where_the_arm_stands_upright() {
    let l = linkage(&corner());
    let length = 360.0_f64.hypot(30.0);
    let reach = |travel| match l.pose(travel, 0.0).unwrap_err().limit {
        trammel_geometry::Limit::Travel(at) => at,
        trammel_geometry::Limit::Rack(_) => panic!("the rack stands still"),
    };
    near(reach(500.0), length + 30.0, 1e-6);
    near(reach(-500.0), 30.0 - length, 1e-6);
}
