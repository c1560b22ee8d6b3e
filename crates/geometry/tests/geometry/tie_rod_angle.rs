//! Tie-rod angle at the rack and its two views.

use trammel_geometry::{Point, Vector};

use crate::corners::{kart, linkage, near};

#[test]
fn parts_seen_from_the_front_and_from_above() {
    let mut c = kart();
    c.tie_rod.inner = Point::new(-90.0, 200.0, 230.0);
    c.tie_rod.outer = Point::new(-120.0, 540.0, 260.0);
    for axis in [Some(Vector::y()), Some(-Vector::y() * 3.0), None] {
        c.rack_axis = axis;
        let l = linkage(&c);
        let m = l.measures(&l.pose(0.0, 0.0).unwrap());
        near(m.tie_rod_angle_front, (30.0_f64 / 340.0).atan(), 1e-14);
        near(m.tie_rod_angle_plan, (-30.0_f64 / 340.0).atan(), 1e-14);
        near(m.tie_rod_angle, (1800.0_f64.sqrt() / 340.0).atan(), 1e-14);
    }
}

/// A rack that points at the outer joint has no angle to the rod.
#[test]
fn along_a_slanted_rack() {
    let mut c = kart();
    c.rack_axis = Some(c.tie_rod.outer - c.tie_rod.inner);
    let l = linkage(&c);
    let m = l.measures(&l.pose(0.0, 0.0).unwrap());
    near(m.tie_rod_angle, 0.0, 1e-12);
    near(m.tie_rod_angle_front, 0.0, 1e-12);
    near(m.tie_rod_angle_plan, 0.0, 1e-12);
}

/// Seen from above a rack turned by 17 degrees takes its angle off the rod's, seen from the front a rack tilted by 9 degrees does.
#[test]
fn against_a_rack_out_of_square() {
    let mut c = kart();
    c.tie_rod.inner = Point::new(-90.0, 200.0, 230.0);
    c.tie_rod.outer = Point::new(-120.0, 540.0, 260.0);
    let (turn, tilt) = (17.0_f64.to_radians(), 9.0_f64.to_radians());
    c.rack_axis = Some(Vector::new(turn.sin(), turn.cos(), 0.0));
    let l = linkage(&c);
    let m = l.measures(&l.pose(0.0, 0.0).unwrap());
    near(
        m.tie_rod_angle_plan,
        (-30.0_f64 / 340.0).atan() - turn,
        1e-14,
    );
    c.rack_axis = Some(Vector::new(0.0, tilt.cos(), tilt.sin()));
    let l = linkage(&c);
    let m = l.measures(&l.pose(0.0, 0.0).unwrap());
    near(
        m.tie_rod_angle_front,
        (30.0_f64 / 340.0).atan() - tilt,
        1e-14,
    );
}

/// A rack that lies along the vehicle, or stands upright, has no view from one side; the angle there is nothing, not a number that is none.
#[test]
fn against_a_rack_that_points_at_the_eye() {
    let mut c = kart();
    c.tie_rod.inner = Point::new(-90.0, 200.0, 230.0);
    c.tie_rod.outer = Point::new(-120.0, 540.0, 260.0);
    c.rack_axis = Some(Vector::x());
    let l = linkage(&c);
    let m = l.measures(&l.pose(0.0, 0.0).unwrap());
    assert_eq!(m.tie_rod_angle_front, 0.0);
    c.rack_axis = Some(Vector::z());
    let l = linkage(&c);
    let m = l.measures(&l.pose(0.0, 0.0).unwrap());
    assert_eq!(m.tie_rod_angle_plan, 0.0);
}
