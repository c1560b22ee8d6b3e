//! New ride heights, and joints on their bolts.
#![allow(
    clippy::unwrap_used,
    clippy::panic,
    reason = "helpers of tests fail by panicking, as tests do"
)]

mod common;

use trammel_geometry::Point;
use trammel_geometry::{Arm, ArmName, Corner, Linkage, Spring, Vector};
use trammel_tuning::{
    BoltDirection, LiftFault, Reset, Stations, TieRodJoint, kindest_bolt, lifted, misalignment,
    most_misalignment,
};

fn with_spring(corner: Corner, arm: ArmName) -> Corner {
    let (mount, on) = match arm {
        ArmName::Lower => (Point::new(6.0, 430.0, 218.0), Point::new(0.0, 330.0, 560.0)),
        ArmName::Upper => (Point::new(0.0, 450.0, 370.0), Point::new(0.0, 330.0, 640.0)),
    };
    Corner {
        spring: Some(Spring {
            arm,
            chassis_mount: on,
            arm_mount: mount,
        }),
        ..corner
    }
}

fn lengths(c: &Corner) -> Vec<f64> {
    let arm = |a: &Arm| {
        [
            (a.ball_joint - a.front_pivot).norm(),
            (a.ball_joint - a.rear_pivot).norm(),
        ]
    };
    let [upper, lower] = [c.upper_arm.ball_joint, c.lower_arm.ball_joint];
    let mut all = vec![
        (upper - lower).norm(),
        (c.tie_rod.outer - lower).norm(),
        (c.tie_rod.outer - upper).norm(),
    ];
    all.extend([
        (c.wheel.centre - lower).norm(),
        (c.wheel.centre - upper).norm(),
    ]);
    all.push((c.wheel.centre - c.tie_rod.outer).norm());
    all.extend(arm(&c.upper_arm));
    all.extend(arm(&c.lower_arm));
    if let Some(s) = c.spring {
        let arm = if s.arm == ArmName::Lower {
            &c.lower_arm
        } else {
            &c.upper_arm
        };
        all.extend([
            (s.arm_mount - arm.front_pivot).norm(),
            (s.arm_mount - arm.rear_pivot).norm(),
        ]);
    }
    all
}

#[test]
fn a_lift_keeps_every_part_and_stands_on_the_ground_with_its_toe() {
    for (name, corner) in common::all() {
        for arm in [ArmName::Lower, ArmName::Upper] {
            let corner = with_spring(corner, arm);
            let linkage = Linkage::new(&corner).unwrap();
            for travel in [-80.0, -50.0, 0.0, 40.0] {
                let lift = lifted(&linkage, travel, Reset::Toe).unwrap();
                for (a, b) in lengths(&corner).iter().zip(lengths(&lift.corner)) {
                    assert!((a - b).abs() < 1e-9, "{name} {travel}: {a} {b}");
                }
                let now = Linkage::new(&lift.corner).unwrap();
                let pose = now.pose(0.0, 0.0).unwrap();
                let contact = linkage.pose(0.0, 0.0).unwrap().contact;
                assert!((pose.contact.z - contact.z).abs() < 1e-9);
                assert!((lift.corner.wheel.toe - corner.wheel.toe).abs() < 1e-11);
                assert!((lift.corner.wheel.centre.x - corner.wheel.centre.x).abs() < 1e-9);
                assert!((lift.travel_shift - travel).abs() < 1e-9);
                // The frame rises about as much as the wheel droops: the tyre leans a little.
                assert!(
                    (lift.frame_shift.z + travel).abs() < 5.0,
                    "{name} {travel}: {:?}",
                    lift.frame_shift
                );
                let pivot = lift.corner.lower_arm.front_pivot - corner.lower_arm.front_pivot;
                assert!((pivot - lift.frame_shift).norm() < 1e-9);
                // Back by the same travel is the old place of the spring, but for the toe that was reset.
                let back = now
                    .measures(&now.pose(-lift.travel_shift, 0.0).unwrap())
                    .spring
                    .unwrap();
                let old = linkage
                    .measures(&linkage.pose(0.0, 0.0).unwrap())
                    .spring
                    .unwrap();
                assert!(
                    (back.length - old.length).abs() < 1.0,
                    "{name} {travel}: {} {}",
                    back.length,
                    old.length
                );
            }
        }
    }
}

#[test]
fn camber_is_put_back_when_asked_and_comes_as_it_does_otherwise() {
    for (name, corner) in common::all() {
        let corner = with_spring(corner, ArmName::Upper);
        let linkage = Linkage::new(&corner).unwrap();
        let as_it_comes = lifted(&linkage, -50.0, Reset::Toe).unwrap().corner.wheel;
        let both = lifted(&linkage, -50.0, Reset::ToeAndCamber).unwrap();
        assert!(
            (both.corner.wheel.camber - corner.wheel.camber).abs() < 1e-11,
            "{name}"
        );
        assert!(
            (both.corner.wheel.toe - corner.wheel.toe).abs() < 1e-11,
            "{name}"
        );
        if name == "behind" {
            assert!(
                (as_it_comes.camber - corner.wheel.camber)
                    .abs()
                    .to_degrees()
                    > 0.5
            );
        }
        // The upright keeps its shape, the lower arm its length.
        let (a, b) = (lengths(&corner), lengths(&both.corner));
        for i in [0, 1, 2, 3, 4, 5, 8, 9] {
            assert!((a[i] - b[i]).abs() < 1e-9, "{name} {i}");
        }
        assert!(Linkage::new(&both.corner).unwrap().pose(30.0, 0.0).is_ok());
    }
}

/// Trade notes (separate model): raising this car 50 mm takes the tie rod's slope from 4.7 to 12.9 deg.
#[test]
fn a_lift_steepens_the_tie_rod() {
    let slope = |c: &Corner| {
        let rod = c.tie_rod.outer - c.tie_rod.inner;
        (-rod.z).atan2(rod.y).to_degrees()
    };
    let corner = common::behind();
    let up = lifted(&Linkage::new(&corner).unwrap(), -50.0, Reset::Toe)
        .unwrap()
        .corner;
    assert!((slope(&corner) - 4.7).abs() < 0.1, "{}", slope(&corner));
    assert!((slope(&up) - 12.9).abs() < 0.3, "{}", slope(&up));
}

#[test]
fn a_lift_beyond_reach_says_so() {
    let linkage = Linkage::new(&common::behind()).unwrap();
    for travel in [2000.0, -2000.0, f64::NAN, f64::INFINITY] {
        assert!(
            matches!(
                lifted(&linkage, travel, Reset::ToeAndCamber),
                Err(LiftFault::OutOfReach(_))
            ),
            "{travel}"
        );
    }
}

/// Trade notes (separate model): a vertical bolt at the rack end takes 21 deg at 100 mm droop, a fore-aft one about 2
/// deg.
#[test]
fn a_vertical_bolt_takes_the_travel_as_tilt_and_a_fore_aft_one_almost_none() {
    let linkage = Linkage::new(&common::behind()).unwrap();
    let pose = linkage.pose(-100.0, 0.0).unwrap();
    let tilt = |bolt| {
        misalignment(&linkage, &pose, TieRodJoint::Inner, bolt)
            .unwrap()
            .to_degrees()
    };
    assert!(
        (tilt(BoltDirection::Vertical) - 21.0).abs() < 1.0,
        "{}",
        tilt(BoltDirection::Vertical)
    );
    assert!(
        tilt(BoltDirection::ForeAft) < 3.0,
        "{}",
        tilt(BoltDirection::ForeAft)
    );
}

#[test]
fn by_hand_a_level_rod_is_not_tilted_on_a_vertical_bolt() {
    let mut corner = common::behind();
    corner.tie_rod.inner.z = corner.tie_rod.outer.z;
    corner.tie_rod.inner.x = corner.tie_rod.outer.x - 10.0;
    let linkage = Linkage::new(&corner).unwrap();
    let pose = linkage.pose(0.0, 0.0).unwrap();
    let length = (corner.tie_rod.outer - corner.tie_rod.inner).norm();
    for joint in [TieRodJoint::Inner, TieRodJoint::Outer] {
        let tilt = |bolt| misalignment(&linkage, &pose, joint, bolt).unwrap();
        assert!(tilt(BoltDirection::Vertical) < 1e-12);
        assert!((tilt(BoltDirection::ForeAft) - (10.0 / length).asin()).abs() < 1e-12);
        let along = BoltDirection::Along(corner.tie_rod.outer - corner.tie_rod.inner);
        assert!((tilt(along) - std::f64::consts::FRAC_PI_2).abs() < 1e-6);
        assert!(
            misalignment(
                &linkage,
                &pose,
                joint,
                BoltDirection::Along(Vector::zeros())
            )
            .is_none()
        );
    }
}

#[test]
fn the_outer_bolt_goes_with_the_upright_and_the_kindest_bolt_is_kind() {
    let stations = Stations::even(-100.0, 125.0, 13, vec![-38.0, -19.0, 0.0, 19.0, 38.0]).unwrap();
    for (name, corner) in common::all() {
        let linkage = Linkage::new(&corner).unwrap();
        let most = |joint, bolt| {
            most_misalignment(&linkage, &stations, joint, bolt)
                .unwrap()
                .unwrap()
        };
        // Steering turns the upright about a near-vertical axis: a vertical outer bolt lets it, a fore-aft one does
        // not.
        let vertical = most(TieRodJoint::Outer, BoltDirection::Vertical).angle;
        let fore_aft = most(TieRodJoint::Outer, BoltDirection::ForeAft).angle;
        assert!(fore_aft > 15.0_f64.to_radians(), "{name}: {fore_aft}");
        for joint in [TieRodJoint::Inner, TieRodJoint::Outer] {
            let axis = kindest_bolt(&linkage, &stations, joint).unwrap();
            let kind = most(joint, BoltDirection::Along(axis)).angle;
            assert!(
                kind <= 1.3 * most(joint, BoltDirection::ForeAft).angle,
                "{name} {joint:?}"
            );
            assert!(
                kind <= 1.3 * most(joint, BoltDirection::Vertical).angle,
                "{name} {joint:?}: {kind} {vertical}"
            );
        }
    }
}
