//! Numbers and points that make no linkage.

use proptest::prelude::*;
use trammel_geometry::{
    Axle, Corner, CornerFault, Linkage, Measures, Point, Pose, Vector, Walk,
    travel_for_spring_length,
};

use crate::corners::{any_corner, arm, front, linkage, shaken};

fn fault(change: impl FnOnce(&mut Corner)) -> CornerFault {
    let mut c = front();
    change(&mut c);
    Linkage::new(&c).expect_err("no linkage")
}

const WILD: [f64; 5] = [f64::NAN, f64::INFINITY, f64::NEG_INFINITY, 1.1e6, f64::MAX];

#[test]
fn numbers_that_are_none() {
    for bad in WILD {
        let not_finite = |change: fn(&mut Corner, f64)| match fault(|c| change(c, bad)) {
            CornerFault::NotFinite { what } => what,
            other => panic!("{other:?}"),
        };
        assert_eq!(
            not_finite(|c, v| c.upper_arm.front_pivot.x = v),
            "upper_arm.front_pivot"
        );
        assert_eq!(
            not_finite(|c, v| c.upper_arm.rear_pivot.y = v),
            "upper_arm.rear_pivot"
        );
        assert_eq!(
            not_finite(|c, v| c.upper_arm.ball_joint.z = v),
            "upper_arm.ball_joint"
        );
        assert_eq!(
            not_finite(|c, v| c.lower_arm.front_pivot.x = v),
            "lower_arm.front_pivot"
        );
        assert_eq!(
            not_finite(|c, v| c.lower_arm.rear_pivot.y = v),
            "lower_arm.rear_pivot"
        );
        assert_eq!(
            not_finite(|c, v| c.lower_arm.ball_joint.z = v),
            "lower_arm.ball_joint"
        );
        assert_eq!(not_finite(|c, v| c.tie_rod.inner.x = v), "tie_rod.inner");
        assert_eq!(not_finite(|c, v| c.tie_rod.outer.y = v), "tie_rod.outer");
        assert_eq!(not_finite(|c, v| c.wheel.centre.z = v), "wheel.centre");
        assert_eq!(not_finite(|c, v| c.wheel.toe = v), "wheel.toe_deg");
        assert_eq!(not_finite(|c, v| c.wheel.camber = v), "wheel.camber_deg");
        let chassis = not_finite(|c, v| c.spring.as_mut().unwrap().chassis_mount.x = v);
        assert_eq!(chassis, "spring.chassis_mount");
        let mount = not_finite(|c, v| c.spring.as_mut().unwrap().arm_mount.y = v);
        assert_eq!(mount, "spring.arm_mount");
        assert_eq!(
            not_finite(|c, v| c.rack_axis = Some(Vector::new(0.0, v, 0.0))),
            "rack.axis"
        );
    }
    for bad in [f64::NAN, f64::INFINITY, 1.1e6] {
        let found = fault(|c| c.wheel.loaded_radius = bad);
        assert_eq!(
            found,
            CornerFault::NotFinite {
                what: "wheel.loaded_radius"
            }
        );
    }
    for bad in [0.0, -1.0, f64::NEG_INFINITY] {
        assert_eq!(
            fault(|c| c.wheel.loaded_radius = bad),
            CornerFault::NoRadius
        );
    }
}

#[test]
fn points_at_one_place() {
    let coincident = |change: fn(&mut Corner)| match fault(change) {
        CornerFault::Coincident { first, second } => (first, second),
        other => panic!("{other:?}"),
    };
    assert_eq!(
        coincident(|c| c.upper_arm.front_pivot = c.upper_arm.rear_pivot),
        ("upper_arm.front_pivot", "upper_arm.rear_pivot")
    );
    assert_eq!(
        coincident(|c| c.lower_arm.rear_pivot = c.lower_arm.front_pivot),
        ("lower_arm.front_pivot", "lower_arm.rear_pivot")
    );
    assert_eq!(
        coincident(|c| c.upper_arm.ball_joint = c.lower_arm.ball_joint),
        ("upper_arm.ball_joint", "lower_arm.ball_joint")
    );
    assert_eq!(
        coincident(|c| c.tie_rod.inner = c.tie_rod.outer),
        ("tie_rod.inner", "tie_rod.outer")
    );
    assert_eq!(
        coincident(|c| {
            if let Some(s) = &mut c.spring {
                s.arm_mount = s.chassis_mount;
            }
        }),
        ("spring.chassis_mount", "spring.arm_mount")
    );
}

#[test]
fn joints_on_their_axes() {
    let on_axis = |change: fn(&mut Corner)| match fault(change) {
        CornerFault::OnAxis { joint, .. } => joint,
        other => panic!("{other:?}"),
    };
    let between = |a: Point, b: Point, t: f64| a + (b - a) * t;
    assert_eq!(
        on_axis(|c| c.lower_arm.ball_joint = Point::new(0.0, 0.0, 0.0)
            + (c.lower_arm.front_pivot.coords + c.lower_arm.rear_pivot.coords) * 0.5),
        "lower_arm.ball_joint"
    );
    assert_eq!(
        on_axis(|c| c.upper_arm.ball_joint = c.upper_arm.rear_pivot),
        "upper_arm.ball_joint"
    );
    let c = front();
    let on = between(c.lower_arm.ball_joint, c.upper_arm.ball_joint, 0.3);
    let found = fault(|c| c.tie_rod.outer = on);
    assert!(
        matches!(
            found,
            CornerFault::OnAxis {
                joint: "tie_rod.outer",
                ..
            }
        ),
        "{found:?}"
    );
}

#[test]
fn locked_at_the_design_position() {
    // Upper arm and upright in line, seen along the pivots.
    let found = fault(|c| {
        c.upper_arm = arm(
            [100.0, 630.0, 500.0],
            [-100.0, 630.0, 500.0],
            [4.0, 610.0, 400.0],
        );
        c.lower_arm = arm(
            [100.0, 190.0, 200.0],
            [-100.0, 190.0, 200.0],
            [4.0, 570.0, 200.0],
        );
    });
    assert_eq!(
        found,
        CornerFault::Locked {
            members: "the upper arm and the upright"
        }
    );
    // Tie rod in line with the steering arm: inner and outer joint on one plane through the steering axis.
    let found = fault(|c| {
        let (low, up) = (c.lower_arm.ball_joint, c.upper_arm.ball_joint);
        let aside = Vector::new(-80.0, -120.0, 10.0);
        c.tie_rod.outer = low + (up - low) * 0.2 + aside;
        c.tie_rod.inner = low + (up - low) * 0.4 + aside * 3.0;
    });
    assert_eq!(
        found,
        CornerFault::Locked {
            members: "the tie rod and the steering arm"
        }
    );
}

#[test]
fn no_height_to_gain() {
    let found =
        fault(|c| c.upper_arm.ball_joint = c.lower_arm.ball_joint + Vector::new(-90.0, 150.0, 2.0));
    assert!(matches!(found, CornerFault::NoTravel { .. }), "{found:?}");
    // The lower arm straight up and the wheel centre on its ball joint.
    let found = fault(|c| {
        c.lower_arm = arm(
            [100.0, 500.0, 100.0],
            [-100.0, 500.0, 100.0],
            [0.0, 500.0, 200.0],
        );
        c.upper_arm = arm(
            [100.0, 200.0, 380.0],
            [-100.0, 200.0, 380.0],
            [0.0, 500.0, 380.0],
        );
        c.wheel.centre = c.lower_arm.ball_joint;
    });
    assert!(matches!(found, CornerFault::NoTravel { .. }), "{found:?}");
}

#[test]
fn a_rack_without_direction() {
    assert_eq!(
        fault(|c| c.rack_axis = Some(Vector::zeros())),
        CornerFault::NoRackAxis
    );
}

#[test]
fn faults_speak() {
    let text = fault(|c| c.tie_rod.inner.x = f64::NAN).to_string();
    assert_eq!(text, "tie_rod.inner is not a usable number");
    let text = fault(|c| c.tie_rod.inner = c.tie_rod.outer).to_string();
    assert_eq!(
        text,
        "tie_rod.inner and tie_rod.outer are at the same place"
    );
    let text = linkage(&front())
        .pose(f64::NAN, 0.0)
        .unwrap_err()
        .to_string();
    assert_eq!(text, "the wheel travel asked for is not a number");
    let text = linkage(&front())
        .pose(0.0, f64::NAN)
        .unwrap_err()
        .to_string();
    assert_eq!(text, "the rack travel asked for is not a number");
}

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
        let mut c = front().map(|_| Point::origin(), |v| v);
        c = shaken(&c, &points);
        c.rack_axis = Some(Vector::from(axis));
        if let Ok(l) = Linkage::new(&c) {
            check(&l, travel, rack)?;
        }
    }

    /// Points snapped to a coarse grid: members in line and coincident are common there.
    #[test]
    fn points_on_a_grid(points in prop::array::uniform11(prop::array::uniform3(-2..3_i32)), travel in any_number(), rack in -3..3_i32) {
        let mut c = front().map(|_| Point::origin(), |v| v);
        c = shaken(&c, &points.map(|p| p.map(|v| 100.0 * f64::from(v))));
        if let Ok(l) = Linkage::new(&c) {
            check(&l, travel, 100.0 * f64::from(rack))?;
        }
    }
}
