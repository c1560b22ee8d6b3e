//! Rack, frame and arms otherwise, without writing it into the build.

#![allow(
    clippy::expect_used,
    clippy::panic,
    reason = "a test stops where it fails"
)]

mod common;

use approx::assert_relative_eq;
use common::{demo, sides_apart};
use trammel_analysis::{Raise, Stops, Study, WhatIf, raised, rise_at};
use trammel_build::{Axis, AxleName, Build, Coordinate, Edit, PointName, PointRef, Side};
use trammel_geometry::Point;
use trammel_tuning::Reset;

const HOW: Raise = Raise {
    by: 0.0,
    reset: Reset::ToeAndCamber,
    stops: Stops::Kept,
};

fn applied(build: &Build, what: &WhatIf) -> Build {
    let edits = what
        .edits(build, AxleName::Front, &HOW)
        .expect("it can be so");
    edits
        .iter()
        .try_fold(build.clone(), |b, edit| edit.apply(&b))
        .expect("it can be applied")
}

fn place(build: &Build, side: Side, point: PointName) -> Point {
    let axle = AxleName::Front;
    build
        .point_mm(PointRef { axle, side, point })
        .expect("the point is there")
}

/// From the ball joint to the line through the pivots.
fn arm_length(build: &Build, side: Side, [front, rear, ball]: [PointName; 3]) -> f64 {
    let [front, rear, ball] = [front, rear, ball].map(|p| place(build, side, p));
    let along = front - rear;
    along.cross(&(ball - rear)).norm() / along.norm()
}

const UPPER: [PointName; 3] = [
    PointName::UpperFrontPivot,
    PointName::UpperRearPivot,
    PointName::UpperBallJoint,
];
const LOWER: [PointName; 3] = [
    PointName::LowerFrontPivot,
    PointName::LowerRearPivot,
    PointName::LowerBallJoint,
];

#[test]
fn nothing_tried_out_is_no_edit() {
    let build = demo("good");
    let what = WhatIf::default();
    assert!(what.is_nothing());
    let edits = what.edits(&build, AxleName::Front, &HOW).expect("nothing");
    assert!(edits.is_empty());
}

#[test]
fn a_longer_arm_is_longer_by_just_so_much_and_the_upright_stays() {
    let what = WhatIf {
        upper_arm: 12.7,
        lower_arm: -6.35,
        ..WhatIf::default()
    };
    let alike = demo("good");
    let mut other_side = sides_apart(&alike);
    for point in [PointName::UpperFrontPivot, PointName::UpperRearPivot] {
        let right = other_side.front.right.get_mut(&point).expect("its own");
        right[1] += 0.5;
    }
    for build in [alike, other_side] {
        let there = applied(&build, &what);
        for side in [Side::Left, Side::Right] {
            for (arm, by) in [(UPPER, 12.7), (LOWER, -6.35)] {
                let grows = arm_length(&there, side, arm) - arm_length(&build, side, arm);
                assert_relative_eq!(grows, by, epsilon = 1e-5);
                let [a, b] = [&build, &there].map(|b| place(b, side, arm[2]));
                assert_eq!(a, b);
            }
        }
    }
}

#[test]
fn a_higher_rack_takes_its_ends_along_and_keeps_everything_else() {
    let build = demo("lifted");
    let what = WhatIf {
        rack_height: 25.4,
        ..WhatIf::default()
    };
    let there = applied(&build, &what);
    for side in [Side::Left, Side::Right] {
        for point in PointName::ALL {
            let by = place(&there, side, point) - place(&build, side, point);
            let on_rack = matches!(
                point,
                PointName::TieRodInner | PointName::RackFace | PointName::RackBoreMouth
            );
            let wanted = if on_rack { 25.4 } else { 0.0 };
            assert_relative_eq!(by.z, wanted, epsilon = 1e-5);
            assert_relative_eq!(by.x.hypot(by.y), 0.0, epsilon = 1e-9);
        }
    }
}

#[test]
fn a_lift_is_the_ride_heights_own_and_the_look_shows_what_comes_of_it() {
    let build = demo("good");
    let raise = Raise { by: 20.0, ..HOW };
    let what = WhatIf {
        lift: 20.0,
        ..WhatIf::default()
    };
    let edits = what.edits(&build, AxleName::Front, &HOW).expect("a lift");
    assert_eq!(edits, [raised(&build, &raise).expect("a lift")]);
    let there = applied(&build, &what);
    let looked = what
        .look(&build, AxleName::Front, Side::Left, &HOW)
        .expect("a look");
    let study = Study::of(&there).expect("usable");
    assert_eq!(looked.curve, study.front.left);
}

#[test]
fn a_lock_holds_the_edit_and_not_the_look() {
    let mut build = demo("good");
    let axle = AxleName::Front;
    let point = PointName::TieRodInner;
    build.locked.insert(Coordinate {
        axle,
        point,
        axis: Axis::Z,
    });
    let what = WhatIf {
        rack_height: 10.0,
        ..WhatIf::default()
    };
    let edits = what.edits(&build, axle, &HOW).expect("edits");
    assert!(edits.iter().all(|e: &Edit| e.apply(&build).is_err()));
    assert!(what.look(&build, axle, Side::Left, &HOW).is_ok());
}

#[test]
fn a_travel_made_the_ride_height_leaves_arms_and_frame_as_the_pose_has_them() {
    let build = demo("good");
    for travel in [-30.0, 18.0] {
        let by =
            rise_at(&build, (AxleName::Front, Side::Left), travel, Reset::Toe).expect("in reach");
        assert!(
            (by + travel).abs() < 2.0,
            "{travel} mm of travel, {by} mm of rise"
        );
        let raise = Raise {
            by,
            reset: Reset::Toe,
            stops: Stops::Kept,
        };
        let there = raised(&build, &raise)
            .map(|e| e.apply(&build).expect("usable"))
            .expect("raised");
        let before = build.axle(AxleName::Front).expect("posed");
        let pose = before.axle.left.pose(travel, 0.0).expect("in reach");
        let pivot = |b: &Build| place(b, Side::Left, PointName::LowerFrontPivot);
        let now = place(&there, Side::Left, PointName::LowerBallJoint) - pivot(&there);
        let then = pose.lower_ball_joint - pivot(&build);
        // Setting toe again turns the wheel, which moves the arms a hair at the same wheel height.
        assert!((now - then).norm() < 5e-3, "{now} {then}");
        assert_eq!(there.front.wheel.toe_deg, build.front.wheel.toe_deg);
    }
}
