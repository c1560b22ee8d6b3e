//! The upright on its arms alone, against the whole linkage's poses, and its motions against difference quotients.
#![allow(
    clippy::unwrap_used,
    reason = "helpers of tests fail by panicking, as tests do"
)]

use trammel_geometry::{Arms, CornerFault, Linkage, Point, Pose, Vector};
use trammel_specimens::skewed;

/// The turn at which the arms' upright has its outer joint where a pose has it, by halving.
fn turn_of(arms: &Arms, pose: &Pose) -> f64 {
    let outer = skewed().tie_rod.outer;
    let ahead = |turn: f64| {
        let stance = arms.stance(pose.travel, turn, 0.0).unwrap();
        let off = pose.tie_rod_outer - stance.place(outer);
        off.dot(
            &stance
                .per_turn
                .at(stance.place(outer), stance.lower_ball_joint),
        )
    };
    let (mut low, mut high) = (-1.2, 1.2);
    for _ in 0..70 {
        let middle = 0.5 * (low + high);
        if ahead(middle) > 0.0 {
            low = middle;
        } else {
            high = middle;
        }
    }
    0.5 * (low + high)
}

#[test]
fn every_pose_is_a_stance() {
    let corner = skewed();
    let (linkage, arms) = (Linkage::new(&corner).unwrap(), Arms::new(&corner).unwrap());
    for travel in [-110.0, -40.0, 0.0, 35.0, 120.0] {
        for rack in [-40.0, -12.0, 0.0, 25.0, 40.0] {
            let pose = linkage.pose(travel, rack).unwrap();
            let stance = arms.stance(travel, turn_of(&arms, &pose), 0.0).unwrap();
            assert!((stance.place(corner.tie_rod.outer) - pose.tie_rod_outer).norm() < 1e-8);
            assert!((stance.place(corner.wheel.centre) - pose.wheel_centre).norm() < 1e-8);
            assert!(
                (stance.place(corner.upper_arm.ball_joint) - pose.upper_ball_joint).norm() < 1e-8
            );
            assert!((stance.lower_ball_joint - pose.lower_ball_joint).norm() < 1e-8);
            assert!((stance.spin_axis - pose.spin_axis).norm() < 1e-10);
            let toe = linkage.measures(&pose).toe - corner.wheel.toe;
            assert!(
                (stance.toe_change - toe).abs() < 1e-10,
                "{travel} {rack}: {} {toe}",
                stance.toe_change
            );
        }
    }
}

#[test]
fn at_the_design_position_nothing_has_moved() {
    let corner = skewed();
    let stance = Arms::new(&corner).unwrap().stance(0.0, 0.0, 0.0).unwrap();
    assert!((stance.place(corner.tie_rod.outer) - corner.tie_rod.outer).norm() < 1e-12);
    assert!(stance.toe_change.abs() < 1e-15 && stance.arm_angle.abs() < 1e-15);
}

#[test]
fn motions_are_difference_quotients() {
    let corner = skewed();
    let arms = Arms::new(&corner).unwrap();
    let h = 1e-4;
    for travel in [-100.0, 0.0, 90.0] {
        for turn in [-0.6, -0.05, 0.0, 0.4] {
            let here = arms.stance(travel, turn, 0.0).unwrap();
            let turned = |by: f64| arms.stance(travel, turn + by, 0.0).unwrap();
            let moved = |by: f64| arms.stance(travel + by, turn, 0.0).unwrap();
            for p in [
                corner.tie_rod.outer,
                corner.wheel.centre,
                corner.upper_arm.ball_joint,
            ] {
                let at = |m| -> Vector { here_velocity(&here, m, p) };
                let quotient = (turned(h).place(p) - turned(-h).place(p)) / (2.0 * h);
                assert!(
                    (quotient - at(here.per_turn)).norm() < 1e-5,
                    "{quotient} {}",
                    at(here.per_turn)
                );
                let quotient = (moved(h).place(p) - moved(-h).place(p)) / (2.0 * h);
                assert!((quotient - at(here.per_travel)).norm() < 1e-7);
            }
            let toe = (turned(h).toe_change - turned(-h).toe_change) / (2.0 * h);
            assert!((toe - here.toe_rate(&here.per_turn)).abs() < 1e-7);
            let toe = (moved(h).toe_change - moved(-h).toe_change) / (2.0 * h);
            assert!((toe - here.toe_rate(&here.per_travel)).abs() < 1e-9);
            assert!(
                here_velocity(&here, here.per_turn, corner.wheel.centre)
                    .z
                    .abs()
                    < 1e-9
            );
            assert!(
                (here_velocity(&here, here.per_travel, corner.wheel.centre).z - 1.0).abs() < 1e-12
            );
        }
    }
}

fn here_velocity(
    stance: &trammel_geometry::Stance,
    motion: trammel_geometry::Twist,
    p: Point,
) -> Vector {
    motion.at(stance.place(p), stance.lower_ball_joint)
}

#[test]
fn the_tie_rod_does_not_matter_and_the_arms_do() {
    let mut loose = skewed();
    loose.tie_rod.inner = loose.tie_rod.outer;
    assert!(Linkage::new(&loose).is_err());
    assert!(Arms::new(&loose).unwrap().stance(50.0, 0.1, 0.0).is_some());
    let mut bad = skewed();
    bad.upper_arm.rear_pivot = bad.upper_arm.front_pivot;
    assert!(matches!(
        Arms::new(&bad),
        Err(CornerFault::Coincident { .. })
    ));
    let mut not_a_number = skewed();
    not_a_number.lower_arm.ball_joint.y = f64::NAN;
    assert!(matches!(
        Arms::new(&not_a_number),
        Err(CornerFault::NotFinite { .. })
    ));
    let arms = Arms::new(&skewed()).unwrap();
    for travel in [900.0, -900.0, f64::NAN, f64::INFINITY] {
        assert!(arms.stance(travel, 0.0, 0.0).is_none());
        assert!(arms.stance(0.0, f64::NAN, travel).is_none());
    }
}

/// About an upright steering axis the wheel's heading turns with the steering, once round and further.
#[test]
fn toe_is_followed_through_whole_turns() {
    let mut corner = skewed();
    let across = corner.lower_arm.ball_joint;
    corner.upper_arm.ball_joint = across + 180.0 * Vector::z();
    corner.upper_arm.front_pivot = across + Vector::new(100.0, -300.0, 200.0);
    corner.upper_arm.rear_pivot = across + Vector::new(-100.0, -300.0, 200.0);
    let arms = Arms::new(&corner).unwrap();
    for turn in [-9.0, -4.0, -1.0, 0.0, 0.5, 2.5, 3.5, 7.0] {
        let stance = arms.stance(0.0, turn, 0.0).unwrap();
        assert!(
            (stance.toe_change + turn).abs() < 1e-12,
            "{} {turn}",
            stance.toe_change
        );
    }
}
