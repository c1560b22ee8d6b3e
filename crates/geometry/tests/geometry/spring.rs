//! The spring unit: length, motion ratio, wheel rate, and the travel that its length allows.

use proptest::prelude::*;
use trammel_geometry::{ArmName, Limit, Point, travel_for_spring_length};

use crate::corners::{any_corner, arm, kart, linkage, near};

/// Level parallel arms turn the mount about the pivot in closed form.
#[test]
fn closed_form_on_level_arms() {
    let mut c = kart();
    c.lower_arm = arm(
        [100.0, 200.0, 200.0],
        [-100.0, 200.0, 200.0],
        [0.0, 560.0, 200.0],
    );
    c.upper_arm = arm(
        [100.0, 200.0, 380.0],
        [-100.0, 200.0, 380.0],
        [0.0, 560.0, 380.0],
    );
    c.tie_rod.inner = Point::new(-90.0, 200.0, 200.0);
    c.tie_rod.outer = Point::new(-90.0, 560.0, 200.0);
    for (on, z) in [(ArmName::Lower, 200.0), (ArmName::Upper, 380.0)] {
        let spring = c.spring.as_mut().unwrap();
        spring.arm = on;
        spring.arm_mount = Point::new(0.0, 440.0, z);
        spring.chassis_mount = Point::new(0.0, 260.0, z + 250.0);
        let l = linkage(&c);
        for travel in [-80.0_f64, 0.0, 60.0] {
            let angle = (travel / 360.0).asin();
            let (y, up) = (240.0 * angle.cos() - 60.0, 240.0 * angle.sin() - 250.0);
            let length = y.hypot(up);
            let mount_rate =
                [-240.0 * angle.sin(), 240.0 * angle.cos()].map(|v| v / (360.0 * angle.cos()));
            let ratio = -(y * mount_rate[0] + up * mount_rate[1]) / length;
            let found = l.measures(&l.pose(travel, 0.0).unwrap()).spring.unwrap();
            near(found.length, length, 1e-9);
            near(found.motion_ratio, ratio, 1e-12);
            near(found.wheel_rate(30.0), 30.0 * ratio * ratio, 1e-10);
        }
    }
}

proptest! {
    #[test]
    fn travel_for_a_length_is_the_inverse(corner in any_corner(), change in -60.0..60.0_f64) {
        let l = linkage(&corner);
        let design = l.measures(&l.pose(0.0, 0.0).unwrap()).spring.unwrap();
        let length = design.length + change;
        match travel_for_spring_length(&l, length) {
            Ok(Some(travel)) => {
                let there = l.measures(&l.pose(travel, 0.0).unwrap()).spring.unwrap();
                prop_assert!((there.length - length).abs() < 1e-8);
                prop_assert!(travel * change * design.motion_ratio <= 0.0);
            }
            Ok(None) => prop_assert!(false, "the reach ends before 600 mm"),
            Err(stop) => {
                // The last pose in reach has not got there.
                let Limit::Travel(at) = stop.limit else { panic!("the rack stands still") };
                let last = l.measures(&l.pose(at - at.signum() * 1e-6, 0.0).unwrap()).spring.unwrap();
                let left = (last.length - length) * (design.length - length);
                prop_assert!(left > -1e-3, "{left}");
            }
        }
    }
}

/// A length that is met within the last stride before the end of the reach.
#[test]
fn a_length_just_before_the_end_of_reach() {
    let mut c = kart();
    if let Some(s) = &mut c.spring {
        s.chassis_mount = Point::new(0.0, 150.0, 900.0);
    }
    let l = linkage(&c);
    for way in [-1.0, 1.0] {
        let Limit::Travel(end) = l.pose(way * 900.0, 0.0).unwrap_err().limit else {
            panic!("the rack stands still");
        };
        for before in [0.1, 0.5, 2.0] {
            let wanted = end - way * before;
            let pose = l.pose(wanted, 0.0).unwrap();
            let length = l.measures(&pose).spring.unwrap().length;
            let found = travel_for_spring_length(&l, length).unwrap().unwrap();
            near(found, wanted, 1e-6);
        }
    }
}

#[test]
fn none_without_a_spring_or_a_length() {
    let mut c = kart();
    for bad in [f64::NAN, f64::INFINITY, f64::NEG_INFINITY] {
        assert_eq!(travel_for_spring_length(&linkage(&c), bad), Ok(None));
    }
    c.spring = None;
    assert_eq!(travel_for_spring_length(&linkage(&c), 300.0), Ok(None));
}

/// A little shorter is a little bump, a little longer a little droop: by the motion ratio.
#[test]
fn small_changes_of_length_go_the_right_way() {
    let l = linkage(&kart());
    let design = l.measures(&l.pose(0.0, 0.0).unwrap()).spring.unwrap();
    for change in [-0.2, -0.01, 0.01, 0.2] {
        let travel = travel_for_spring_length(&l, design.length + change)
            .unwrap()
            .unwrap();
        near(travel, -change / design.motion_ratio, 2e-3 * change.abs());
    }
    assert_eq!(travel_for_spring_length(&l, design.length), Ok(Some(0.0)));
}
