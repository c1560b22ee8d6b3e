//! Builds with their frame raised.

#![allow(
    clippy::expect_used,
    clippy::panic,
    reason = "a test stops where it fails"
)]

mod common;

use approx::assert_relative_eq;
use common::{demo, demos, sides_apart};
use trammel_analysis::{Raise, RaiseFault, Stops, raised, ride_heights};
use trammel_build::{
    Axis, AxleName, Build, Coordinate, KeepOut, KeepOutCorners, LengthUnit, PointName, PointRef,
    Side,
};
use trammel_tuning::Reset;

const INCH: f64 = 25.4;

fn raise(inches: f64) -> Raise {
    Raise {
        by: inches * INCH,
        reset: Reset::ToeAndCamber,
        stops: Stops::MovedAlong,
    }
}

fn at(build: &Build, raise: &Raise) -> Build {
    let edit = raised(build, raise).unwrap_or_else(|fault| panic!("{fault}"));
    edit.apply(build).unwrap_or_else(|fault| panic!("{fault}"))
}

fn places(build: &Build) -> Vec<(PointRef, [f64; 3])> {
    let mut all = Vec::new();
    for axle in [AxleName::Front, AxleName::Rear] {
        for side in [Side::Left, Side::Right] {
            for point in PointName::ALL {
                let at = PointRef { axle, side, point };
                all.extend(build.point(at).map(|p| (at, p)));
            }
        }
    }
    all
}

fn assert_alike(a: &Build, b: &Build, within: f64) {
    let (a, b) = (places(a), places(b));
    assert_eq!(a.len(), b.len());
    for ((at, p), (_, q)) in a.iter().zip(&b) {
        let apart = p
            .iter()
            .zip(q)
            .map(|(p, q)| (p - q).abs())
            .fold(0.0, f64::max);
        assert!(apart < within, "{at:?}: {p:?} {q:?}");
    }
}

#[test]
fn the_good_demo_raised_stands_as_the_lifted_one() {
    let (good, lifted) = (demo("good"), demo("lifted"));
    let ours = at(&good, &raise(2.75));
    let [high, low] = [&ours, &good].map(|b| b.front.lower_arm.front_pivot[2]);
    assert_relative_eq!(high - low, 2.75, epsilon = 1e-6);
    let [a, b] = [&ours, &lifted].map(|b| b.front.lower_arm.ball_joint);
    for (a, b) in a.iter().zip(b) {
        // The demo is written in sixteenths, its uprights not set back to their camber.
        assert!((a - b).abs() < 0.25, "{a} {b}");
    }
    assert_eq!(ours.front.wheel.camber_deg, good.front.wheel.camber_deg);
    assert_eq!(ours.front.wheel.centre[0], good.front.wheel.centre[0]);
    let rows = ride_heights(
        &good,
        (AxleName::Front, Side::Left),
        &[0.0, 2.75 * INCH],
        &raise(0.0),
    );
    let there = ride_heights(&lifted, (AxleName::Front, Side::Left), &[0.0], &raise(0.0));
    let angle = |row: &Result<trammel_analysis::RideHeightRow, RaiseFault>| {
        let row = row.as_ref().expect("a row");
        row.tie_rod_angle.expect("a rack").to_degrees()
    };
    assert!(angle(&rows[0]) < 13.0, "{}", angle(&rows[0]));
    assert_relative_eq!(angle(&rows[1]), angle(&there[0]), epsilon = 1.5);
}

#[test]
fn up_and_down_again_comes_back_to_the_same_build() {
    for build in demos() {
        for reset in [Reset::Toe, Reset::ToeAndCamber] {
            let up = Raise {
                reset,
                ..raise(1.5)
            };
            let down = Raise { by: -up.by, ..up };
            let there = at(&build, &up);
            let back = at(&there, &down);
            assert_alike(&back, &build, 1e-5);
            let spring = |b: &Build| {
                b.front
                    .spring
                    .and_then(|s| s.open_length)
                    .expect("a length")
            };
            assert_relative_eq!(spring(&back), spring(&build), epsilon = 1e-5);
            assert!(spring(&there) > spring(&build) + 0.5);
            assert_relative_eq!(
                back.vehicle.wheelbase.expect("a wheelbase"),
                build.vehicle.wheelbase.expect("a wheelbase"),
                epsilon = 1e-5
            );
        }
    }
}

#[test]
fn raised_by_nothing_is_the_same_build() {
    for build in demos() {
        for stops in [Stops::Kept, Stops::MovedAlong] {
            let same = at(
                &build,
                &Raise {
                    stops,
                    ..raise(0.0)
                },
            );
            assert_alike(&same, &build, 1e-6);
            assert_eq!(same.front.travel, build.front.travel);
        }
    }
}

#[test]
fn kept_stops_leave_more_bump_and_less_droop_and_can_not_be_passed() {
    let good = demo("good");
    let kept = Raise {
        stops: Stops::Kept,
        ..raise(1.0)
    };
    let there = at(&good, &kept);
    let travel = there.front.travel.expect("stops");
    let before = good.front.travel.expect("stops");
    assert_relative_eq!(
        travel.bump + travel.droop,
        before.bump + before.droop,
        epsilon = 1e-6
    );
    assert_relative_eq!(travel.bump - before.bump, 1.0, epsilon = 0.05);
    assert_eq!(
        there.front.spring.and_then(|s| s.open_length),
        good.front.spring.and_then(|s| s.open_length)
    );
    let far = Raise {
        by: 2.75 * INCH,
        ..kept
    };
    let fault = raised(&good, &far).expect_err("past the stop");
    assert!(
        matches!(
            fault,
            RaiseFault::PastStop {
                axle: AxleName::Front,
                ..
            }
        ),
        "{fault}"
    );
    let out_of_reach = raised(&good, &raise(40.0)).expect_err("out of reach");
    assert!(
        matches!(out_of_reach, RaiseFault::Wheel { .. }),
        "{out_of_reach}"
    );
}

#[test]
fn a_right_side_of_its_own_is_raised_with_the_left() {
    let good = demo("good");
    let apart = at(&sides_apart(&good), &raise(2.0));
    assert_alike(&apart, &at(&good, &raise(2.0)), 1e-6);
    let mut odd = good;
    let [x, y, z] = odd.front.tie_rod.inner;
    odd.front
        .right
        .insert(PointName::TieRodInner, [x, -y, z + 0.5]);
    let there = at(&odd, &raise(2.0));
    // Both rods put the same toe back, so the uprights are still each other's mirror image; only the joint stays its own.
    let own: Vec<_> = there.front.right.keys().collect();
    assert_eq!(own, [&PointName::TieRodInner]);
    let model = there.axle(AxleName::Front).expect("front");
    for side in [Side::Left, Side::Right] {
        let wheel = model.linkage(side).corner().wheel;
        assert_relative_eq!(wheel.toe, 0.0, epsilon = 1e-9);
    }
    let length = |b: &Build| {
        let c = *b
            .axle(AxleName::Front)
            .expect("front")
            .linkage(Side::Right)
            .corner();
        (c.lower_arm.ball_joint - c.lower_arm.front_pivot).norm()
    };
    assert_relative_eq!(length(&there), length(&odd), epsilon = 1e-5);
}

#[test]
fn locks_hold_no_ride_height_and_what_stands_on_the_frame_goes_with_it() {
    let mut good = demo("good");
    good.locked.insert(Coordinate {
        axle: AxleName::Front,
        point: PointName::LowerFrontPivot,
        axis: Axis::Z,
    });
    good.keep_outs = vec![KeepOut {
        name: "tube".into(),
        corners: KeepOutCorners::Front([3.0, 8.0], [4.0, 9.0]),
    }];
    let there = at(&good, &raise(1.0));
    assert_eq!(there.locked, good.locked);
    assert_eq!(there.unit, LengthUnit::Inch);
    let KeepOutCorners::Front(low, high) = there.keep_outs[0].corners else {
        panic!("{:?}", there.keep_outs)
    };
    assert_relative_eq!(low[1], 9.0, epsilon = 1e-6);
    assert_relative_eq!(high[1], 10.0, epsilon = 1e-6);
    let face = |b: &Build| b.front.rack.face.expect("a face")[2];
    assert_relative_eq!(face(&there) - face(&good), 1.0, epsilon = 1e-6);
}

#[test]
fn the_study_is_of_the_corner_that_is_asked_for() {
    let good = demo("good");
    let row = |build: &Build, corner| {
        let mut rows = ride_heights(build, corner, &[1.0 * INCH], &raise(0.0));
        rows.pop().expect("one").expect("a row")
    };
    let [left, right] = [Side::Left, Side::Right].map(|s| row(&good, (AxleName::Front, s)));
    assert_relative_eq!(left.toe_change, right.toe_change, epsilon = 1e-9);
    assert_relative_eq!(left.half_track, right.half_track, epsilon = 1e-6);
    // The right inner joint alone put higher: only the right corner's figures change.
    let mut apart = sides_apart(&good);
    let joint = apart.front.right.get_mut(&PointName::TieRodInner);
    joint.expect("a point of its own")[2] += 0.5;
    let [left_now, right_now] =
        [Side::Left, Side::Right].map(|s| row(&apart, (AxleName::Front, s)));
    assert_relative_eq!(left_now.toe_change, left.toe_change, epsilon = 1e-9);
    assert!(right_now.toe_change > right.toe_change + 1e-3);
    // The rear axle has no rack.
    let rear = row(&good, (AxleName::Rear, Side::Left));
    assert_eq!((rear.tie_rod_angle, rear.rack_end_factor), (None, None));
    assert!(rear.half_track > 0.0 && rear.half_track != left.half_track);
}
