//! The quick look that the clear area asks for at hundreds of places, against the full checks at the same places.

#![allow(
    clippy::expect_used,
    clippy::panic,
    reason = "a test stops where it fails"
)]

mod common;

use common::{demos, findings, of_kind};
use trammel_analysis::{CautionKind, Findings, QuickLook};
use trammel_build::{
    AxleName, BoltAxis, Build, Edit, JointBolts, PointName, PointRef, Side, TravelSpec,
};

/// A quick look takes its poses from a coarser grid and doesn't refine between them, so it may miss the very worst one, by this much at most.
const MISSED_DEG: f64 = 0.1;
const MISSED_FACTOR: f64 = 0.01;

/// The demos, one on longer travel, and one each on fore-and-aft and upright bolts, with limits so low that the full check tells every swivel.
fn builds() -> Vec<Build> {
    let mut all = demos();
    let mut long = all.first().cloned().expect("a demo");
    long.front.travel = Some(TravelSpec {
        bump: 4.0,
        droop: 4.0,
    });
    all.push(long);
    let lifted = all.get(1).cloned().expect("a demo");
    // A crosswise bolt lies along the rod, where every figure is near 90 degrees and none is worth a comparison.
    for bolt in [BoltAxis::ForeAft, BoltAxis::Vertical] {
        let mut build = lifted.clone();
        build.front.joint_bolts = JointBolts {
            inner: Some(bolt),
            outer: Some(bolt),
        };
        all.push(build);
    }
    for build in &mut all {
        build.rear = None;
        build.limits.joint_angle_deg = Some(1e-6);
    }
    all
}

/// The build with its inner joint, and the rack with it, moved by so much in its unit.
fn moved(build: &Build, [y, z]: [f64; 2]) -> Build {
    let point = PointRef::left(AxleName::Front, PointName::TieRodInner);
    let mut to = build.point(point).expect("an inner joint");
    to[1] += y;
    to[2] += z;
    let edit = Edit::MoveRack { point, to };
    edit.apply(build).expect("a place that can be built")
}

fn swivel(found: &Findings, point: PointName) -> f64 {
    of_kind(found, CautionKind::JointAngle)
        .into_iter()
        .find(|c| c.side != Some(Side::Right) && c.point.is_some_and(|p| p.point == point))
        .and_then(|c| c.figure)
        .map_or(0.0, |f| f.value)
}

#[test]
fn it_agrees_with_the_full_check_at_the_same_place() {
    let mut places = 0;
    for (n, build) in builds().iter().enumerate() {
        for by in [[0.0, 0.0], [-1.0, 0.5], [0.75, -0.5], [1.0, 1.0]] {
            let build = moved(build, by);
            let model = build.axle(AxleName::Front).expect("an axle");
            let quick = QuickLook::of(&build, &model, Side::Left);
            let full = findings(&build);
            for (point, ours) in [
                (PointName::TieRodInner, quick.inner_swivel),
                (PointName::TieRodOuter, quick.outer_swivel),
            ] {
                let (ours, theirs) = (ours.to_degrees(), swivel(&full, point));
                assert!(
                    ours <= theirs + 1e-6 && ours > theirs - MISSED_DEG,
                    "build {n} moved by {by:?}, {point}: {ours} {theirs}"
                );
            }
            let theirs = full.rack_ends.iter().find(|e| e.side == Side::Left);
            let theirs = theirs.expect("a rack end").factor;
            let ours = quick.rack_end_factor.expect("a rack end");
            assert!(
                ours >= theirs * (1.0 - 1e-9) && ours < theirs * (1.0 + MISSED_FACTOR),
                "build {n} moved by {by:?}: {ours} {theirs}"
            );
            places += 1;
        }
    }
    assert_eq!(places, 4 * builds().len());
}
