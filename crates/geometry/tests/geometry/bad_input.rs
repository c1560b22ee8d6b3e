//! Numbers and points that make no linkage.

use trammel_geometry::{Corner, CornerFault, Linkage, Point, Vector};

use crate::corners::{arm, kart, linkage};

fn fault(change: impl FnOnce(&mut Corner)) -> CornerFault {
    let mut c = kart();
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
    for bad in [std::f64::consts::FRAC_PI_2, -std::f64::consts::FRAC_PI_2] {
        let what = "wheel.toe_deg";
        assert_eq!(
            fault(|c| c.wheel.toe = bad),
            CornerFault::NotFinite { what }
        );
        let what = "wheel.camber_deg";
        assert_eq!(
            fault(|c| c.wheel.camber = bad),
            CornerFault::NotFinite { what }
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
    let c = kart();
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

/// Two members count as in line below a sine of a ten-thousandth between them, whatever their lengths.
#[test]
fn in_line_is_a_matter_of_angle() {
    let mut level = kart();
    level.lower_arm = arm(
        [100.0, 200.0, 200.0],
        [-100.0, 200.0, 200.0],
        [0.0, 560.0, 200.0],
    );
    level.upper_arm = arm(
        [100.0, 200.0, 380.0],
        [-100.0, 200.0, 380.0],
        [0.0, 560.0, 380.0],
    );
    level.tie_rod.outer = Point::new(-100.0, 560.0, 240.0);
    level.tie_rod.inner = Point::new(-100.0, 160.0, 240.0);
    let rod = |angle: f64| {
        let mut c = level;
        c.tie_rod.inner = Point::new(-400.0 * angle.cos(), 560.0 - 400.0 * angle.sin(), 240.0);
        Linkage::new(&c).map(|_| ())
    };
    let members = "the tie rod and the steering arm";
    assert_eq!(rod(5e-5), Err(CornerFault::Locked { members }));
    assert_eq!(rod(2e-4), Ok(()));
    // The upper arm hangs down 100 mm over the upright of 180 mm: pivots out of line by `aside` make an angle of aside / 100 - aside / 280.
    let hanging = |angle: f64| {
        let mut c = level;
        let aside = 560.0 + angle / (1.0 / 100.0 - 1.0 / 280.0);
        c.upper_arm = arm(
            [100.0, aside, 480.0],
            [-100.0, aside, 480.0],
            [0.0, 560.0, 380.0],
        );
        Linkage::new(&c).map(|_| ())
    };
    let members = "the upper arm and the upright";
    assert_eq!(hanging(5e-5), Err(CornerFault::Locked { members }));
    assert_ne!(hanging(2e-4), Err(CornerFault::Locked { members }));
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
    // The wheel rises by less, and by more, than a ten-thousandth of the arm's length per radian.
    let leaning = |by: f64| {
        let mut c = kart();
        c.lower_arm = arm(
            [100.0, 500.0, 100.0],
            [-100.0, 500.0, 100.0],
            [0.0, 500.0 + by, 200.0],
        );
        c.upper_arm = arm(
            [100.0, 200.0, 380.0],
            [-100.0, 200.0, 380.0],
            [0.0, 500.0, 380.0],
        );
        c.wheel.centre = c.lower_arm.ball_joint;
        Linkage::new(&c)
    };
    let found = leaning(0.005);
    assert!(
        matches!(found, Err(CornerFault::NoTravel { .. })),
        "{found:?}"
    );
    assert!(leaning(0.02).is_ok());
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
    let text = linkage(&kart())
        .pose(f64::NAN, 0.0)
        .unwrap_err()
        .to_string();
    assert_eq!(text, "the wheel travel asked for is not a number");
    let text = linkage(&kart())
        .pose(0.0, f64::NAN)
        .unwrap_err()
        .to_string();
    assert_eq!(text, "the rack travel asked for is not a number");
}
