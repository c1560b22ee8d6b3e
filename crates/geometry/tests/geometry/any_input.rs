//! Whatever is asked of whatever corner: no panic, and nothing found that is not a number.

use proptest::prelude::*;
use trammel_geometry::{
    Axle, Linkage, Measures, Point, Pose, Vector, Walk, travel_for_spring_length,
};

use crate::corners::{any_corner, kart, linkage, shaken};

fn pose_is_finite(p: &Pose) -> bool {
    let points = [
        p.upper_ball_joint,
        p.lower_ball_joint,
        p.tie_rod_outer,
        p.tie_rod_inner,
        p.wheel_centre,
        p.contact,
    ];
    let r = p.rates;
    let vectors = [
        p.spin_axis,
        p.steering_axis,
        r.lower_ball_joint,
        r.upper_ball_joint,
        r.upright,
        r.wheel_centre,
        r.spring_arm_mount.unwrap_or_default(),
        p.spring_arm_mount.unwrap_or_default().coords,
    ];
    let m = p.margins;
    let numbers = [
        p.travel,
        p.rack,
        p.arm_angle,
        r.arm_angle,
        m.upper_arm,
        m.steering,
        m.lift,
    ];
    points.iter().all(|q| q.iter().all(|v| v.is_finite()))
        && vectors.iter().all(|q| q.iter().all(|v| v.is_finite()))
        && numbers.iter().all(|v| v.is_finite())
}

fn measures_are_finite(m: &Measures) -> bool {
    let numbers = [
        m.toe,
        m.camber,
        m.castor,
        m.steering_axis_inclination,
        m.scrub_radius,
        m.mechanical_trail,
        m.half_track_change,
        m.roll_centre_height,
        m.steer,
        m.toe_rate,
        m.camber_rate,
        m.tie_rod_angle,
        m.tie_rod_angle_front,
        m.tie_rod_angle_plan,
    ];
    let centre = m
        .instant_centre
        .is_none_or(|c| (c.y + c.z + c.swing_arm_length).is_finite());
    let spring = m
        .spring
        .is_none_or(|s| (s.length + s.motion_ratio).is_finite());
    numbers.iter().all(|v| v.is_finite())
        && m.axis_at_ground.iter().all(|v| v.is_finite())
        && centre
        && spring
}

/// Everything that is found is made of numbers, and nothing panics.
fn check(l: &Linkage, travel: f64, rack: f64) -> Result<(), TestCaseError> {
    let sound = |p: &Pose| {
        prop_assert!(pose_is_finite(p), "{p:?}");
        prop_assert!(measures_are_finite(&l.measures(p)), "{:?}", l.measures(p));
        Ok(())
    };
    match l.pose(travel, rack) {
        Ok(p) => sound(&p)?,
        Err(stop) => {
            let (trammel_geometry::Limit::Travel(at) | trammel_geometry::Limit::Rack(at)) =
                stop.limit;
            prop_assert!(at.is_finite());
            prop_assert!(!stop.to_string().contains("NaN"));
        }
    }
    if let Ok(mut walk) = Walk::new(l, rack) {
        for t in [travel, 0.0, -travel, 0.5 * travel] {
            if let Ok(p) = walk.pose(t) {
                sound(&p)?;
            }
        }
    }
    if let Ok(Some(t)) = travel_for_spring_length(l, travel) {
        prop_assert!(t.is_finite());
    }
    let axle = Axle {
        left: *l,
        right_mirrored: *l,
    };
    for angle in [travel, 0.01 * travel] {
        if let Ok(p) = axle.roll(angle, rack) {
            sound(&p.left)?;
            prop_assert!(p.ackermann(1500.0).is_none_or(f64::is_finite));
            prop_assert!(p.turning_circle(1500.0).is_none_or(f64::is_finite));
        }
    }
    Ok(())
}

fn any_number() -> impl Strategy<Value = f64> {
    prop_oneof![
        4 => -200.0..200.0_f64,
        1 => prop::num::f64::ANY,
        1 => prop::sample::select(vec![f64::NAN, f64::INFINITY, f64::NEG_INFINITY, 0.0, -0.0, 1e-310, 1e6, -1e6]),
    ]
}

fn any_coordinate() -> impl Strategy<Value = f64> {
    prop_oneof![
        3 => -1000.0..1000.0_f64,
        2 => -1e6..1e6_f64,
        1 => prop::sample::select(vec![0.0, -0.0, 1e-310, 1.0, 100.0, 1e6, -1e6]),
        1 => (-3..3_i32).prop_map(f64::from),
    ]
}

proptest! {
    #[test]
    fn any_travel_and_rack(corner in any_corner(), travel in any_number(), rack in any_number()) {
        check(&linkage(&corner), travel, rack)?;
    }

    #[test]
    fn any_points(points in prop::array::uniform11(prop::array::uniform3(any_coordinate())), travel in any_number(), rack in any_number(), axis in prop::array::uniform3(any_coordinate())) {
        let mut c = kart().map(|_| Point::origin(), |v| v);
        c = shaken(&c, &points);
        c.rack_axis = Some(Vector::from(axis));
        if let Ok(l) = Linkage::new(&c) {
            check(&l, travel, rack)?;
        }
    }

    /// Points snapped to a coarse grid: members in line and coincident are common there.
    #[test]
    fn points_on_a_grid(points in prop::array::uniform11(prop::array::uniform3(-2..3_i32)), travel in any_number(), rack in -3..3_i32) {
        let mut c = kart().map(|_| Point::origin(), |v| v);
        c = shaken(&c, &points.map(|p| p.map(|v| 100.0 * f64::from(v))));
        if let Ok(l) = Linkage::new(&c) {
            check(&l, travel, 100.0 * f64::from(rack))?;
        }
    }
}
