//! The same corner seen in a mirror, scaled, moved.

use proptest::prelude::*;
use trammel_geometry::{
    ArmName, Axle, Corner, Limit, Linkage, Measures, Point, Vector, mirror_point, mirror_vector,
};

use crate::corners::{any_corner, kart, linkage, near};

/// Angles, lengths, per-length and plain figures of the measures.
fn angles(m: &Measures) -> [f64; 8] {
    [
        m.toe,
        m.camber,
        m.castor,
        m.steering_axis_inclination,
        m.steer,
        m.tie_rod_angle,
        m.tie_rod_angle_front,
        m.tie_rod_angle_plan,
    ]
}

fn lengths(m: &Measures) -> [f64; 5] {
    [
        m.scrub_radius,
        m.mechanical_trail,
        m.half_track_change,
        m.roll_centre_height,
        m.spring.map_or(0.0, |s| s.length),
    ]
}

fn all_near(a: &[f64], b: &[f64], within: f64) -> bool {
    a.iter()
        .zip(b)
        .all(|(p, q)| (p - q).abs() <= within * (1.0 + q.abs()))
}

fn scaled(corner: &Corner, by: f64) -> Corner {
    let mut c = corner.map(|p| p * by, |v| v);
    c.wheel.loaded_radius *= by;
    c
}

fn moved(corner: &Corner, by: Vector) -> Corner {
    corner.map(|p| p + by, |v| v)
}

#[test]
fn the_mirror_stands_in_the_centre_plane() {
    let seen = mirror_point(Point::new(1.0, 2.0, 3.0));
    assert_eq!(seen, Point::new(1.0, -2.0, 3.0));
    let seen = mirror_vector(Vector::new(1.0, 2.0, 3.0));
    assert_eq!(seen, Vector::new(1.0, -2.0, 3.0));
}

proptest! {
    /// The right side of a symmetrical axle: its rack end moves to its own inboard when the left one moves outboard.
    #[test]
    fn right_side_is_the_mirror_of_the_left(corner in any_corner(), travel in -60.0..60.0_f64, rack in -30.0..30.0_f64) {
        // The right corner's points in vehicle axes, and the rack as it moves: along the left's own axis seen in the mirror, reversed.
        let mut right = corner.mirrored();
        right.rack_axis = corner.rack_axis.map(|e| -mirror_vector(e));
        let axle = Axle { left: linkage(&corner), right_mirrored: linkage(&right.mirrored()) };
        let (Ok(one), Ok(other)) = (axle.pose(travel, -travel, rack), axle.pose(-travel, travel, -rack)) else {
            return Err(TestCaseError::reject("out of reach"));
        };
        let (l, r) = (one.left_measures, other.right_measures);
        prop_assert!((l.toe - r.toe).abs() < 1e-11);
        prop_assert!((l.steer + r.steer).abs() < 1e-11);
        prop_assert!((r.steer - r.toe).abs() == 0.0 && (l.steer + l.toe).abs() == 0.0);
        prop_assert!(all_near(&lengths(&l), &lengths(&r), 1e-8));
        prop_assert!((l.tie_rod_angle - r.tie_rod_angle).abs() < 1e-11);
        prop_assert!((l.tie_rod_angle_front - r.tie_rod_angle_front).abs() < 1e-11);
        prop_assert!((l.tie_rod_angle_plan - r.tie_rod_angle_plan).abs() < 1e-11);
        prop_assert_eq!(corner.mirrored().mirrored(), corner);
    }

    #[test]
    fn scale_does_not_matter(corner in any_corner(), scale in 0.05..20.0_f64, travel in -60.0..60.0_f64, rack in -30.0..30.0_f64) {
        let (a, b) = (linkage(&corner), linkage(&scaled(&corner, scale)));
        let (Ok(p), Ok(q)) = (a.pose(travel, rack), b.pose(scale * travel, scale * rack)) else {
            return Err(TestCaseError::reject("out of reach"));
        };
        prop_assume!(p.margins.least() > 0.05);
        let (m, n) = (a.measures(&p), b.measures(&q));
        prop_assert!(all_near(&angles(&m), &angles(&n), 1e-10));
        prop_assert!(all_near(&lengths(&m).map(|v| v * scale), &lengths(&n), 1e-8));
        prop_assert!((m.toe_rate - n.toe_rate * scale).abs() < 1e-9);
        prop_assert!((m.camber_rate - n.camber_rate * scale).abs() < 1e-9);
        prop_assert!((p.margins.least() - q.margins.least()).abs() < 1e-9);
    }

    /// Moved along x nothing changes; along z only heights in the vehicle; along y the roll centre moves too, as its plane stays.
    #[test]
    fn a_corner_moved_whole(corner in any_corner(), by in prop::array::uniform3(-500.0..500.0_f64), travel in -60.0..60.0_f64, rack in -30.0..30.0_f64) {
        let by = Vector::from(by);
        let (a, b) = (linkage(&corner), linkage(&moved(&corner, by)));
        let (Ok(p), Ok(q)) = (a.pose(travel, rack), b.pose(travel, rack)) else {
            return Err(TestCaseError::reject("out of reach"));
        };
        prop_assume!(p.margins.least() > 0.05);
        prop_assert!((p.tie_rod_outer + by - q.tie_rod_outer).norm() < 1e-9);
        prop_assert!((p.contact + by - q.contact).norm() < 1e-9);
        let (m, n) = (a.measures(&p), b.measures(&q));
        prop_assert!(all_near(&angles(&m), &angles(&n), 1e-10));
        let slope = m.roll_centre_height / p.contact.y;
        prop_assert!((m.roll_centre_height + slope * by.y - n.roll_centre_height).abs() < 1e-7);
        prop_assert!((m.scrub_radius - n.scrub_radius).abs() < 1e-8);
        prop_assert!((m.half_track_change - n.half_track_change).abs() < 1e-8);
    }

    /// Limits scale and move with the corner.
    #[test]
    fn limits_scale(corner in any_corner(), scale in 0.1..10.0_f64) {
        let (a, b) = (linkage(&corner), linkage(&scaled(&corner, scale)));
        let at = |l: &Linkage, travel: f64| match l.pose(travel, 0.0) {
            Err(stop) => match stop.limit { Limit::Travel(t) | Limit::Rack(t) => t },
            Ok(_) => f64::NAN,
        };
        for way in [-1.0, 1.0] {
            let (one, other) = (at(&a, way * 5000.0), at(&b, way * 5000.0 * scale));
            prop_assert!((one * scale - other).abs() < 1e-4 * scale.max(1.0), "{} {}", one * scale, other);
        }
    }
}

/// Which end of an arm is called its front doesn't matter.
#[test]
fn arms_turned_end_for_end_move_the_same() {
    for spring_on in [ArmName::Lower, ArmName::Upper] {
        let mut c = kart();
        if let Some(s) = &mut c.spring {
            s.arm = spring_on;
        }
        let mut turned = c;
        for arm in [&mut turned.upper_arm, &mut turned.lower_arm] {
            std::mem::swap(&mut arm.front_pivot, &mut arm.rear_pivot);
        }
        let (l, t) = (linkage(&c), linkage(&turned));
        for (travel, rack) in [(-60.0, 10.0), (0.0, 0.0), (45.0, -20.0)] {
            let (p, q) = (l.pose(travel, rack).unwrap(), t.pose(travel, rack).unwrap());
            assert!((p.tie_rod_outer - q.tie_rod_outer).norm() < 1e-9);
            assert!((p.spring_arm_mount.unwrap() - q.spring_arm_mount.unwrap()).norm() < 1e-9);
            let (m, n) = (l.measures(&p), t.measures(&q));
            near(m.toe, n.toe, 1e-12);
            near(
                m.spring.unwrap().motion_ratio,
                n.spring.unwrap().motion_ratio,
                1e-12,
            );
        }
    }
}
