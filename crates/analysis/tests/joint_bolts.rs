//! Tie-rod joints on bolts whose direction is known.

#![allow(
    clippy::expect_used,
    clippy::panic,
    reason = "a test stops where it fails"
)]

mod common;

use approx::assert_relative_eq;
use common::{demos, findings, of_kind, plumb, sides_apart};
use trammel_analysis::{BoltStudy, Caution, CautionKind, Findings};
use trammel_build::{AxleName, BoltAxis, Build, JointBolts, PointName, Side, TravelSpec};
use trammel_tuning::{BoltDirection, TieRodJoint, misalignment};

fn joint(found: &Findings, point: PointName, side: Option<Side>) -> Option<&Caution> {
    of_kind(found, CautionKind::JointAngle)
        .into_iter()
        .find(|c| c.side == side && c.point.is_some_and(|p| p.point == point))
}

fn value(found: &Findings, point: PointName, side: Option<Side>) -> f64 {
    let caution = joint(found, point, side).expect("a caution");
    caution.figure.expect("a figure").value
}

/// A parallelogram of arms and rod 300 mm long whose wheel goes 100 mm either way: the rod swings by asin(1/3) in a plane square to x.
fn swinging(inner: Option<BoltAxis>) -> Build {
    let mut build = plumb(0.0, 40.0);
    build.front.travel = Some(TravelSpec {
        bump: 100.0,
        droop: 100.0,
    });
    build.front.joint_bolts.inner = inner;
    build
}

#[test]
fn an_upright_bolt_takes_the_whole_swing_and_a_fore_and_aft_one_none() {
    let swing = (1.0_f64 / 3.0).asin().to_degrees();
    for bolt in [None, Some(BoltAxis::Vertical)] {
        let build = swinging(bolt);
        let found = findings(&build);
        let here = joint(&found, PointName::TieRodInner, None).expect("a caution");
        assert_relative_eq!(here.figure.expect("a figure").value, swing, epsilon = 1e-3);
        assert_eq!(here.detail.contains("doesn't say which"), bolt.is_none());
        let turn = here.remedies.first().expect("a remedy");
        assert!(
            turn.text.contains("fore-and-aft: 19.5° becomes 0"),
            "{}",
            turn.text
        );
        let edit = turn.edit.as_ref().expect("an edit");
        let turned = edit.apply(&build).expect("turns");
        assert_eq!(turned.front.joint_bolts.inner, Some(BoltAxis::ForeAft));
        assert_eq!(
            joint(&findings(&turned), PointName::TieRodInner, None),
            None
        );
    }
}

#[test]
fn a_bolt_along_the_rod_is_square_to_nothing() {
    let found = findings(&swinging(Some(BoltAxis::Lateral)));
    assert_relative_eq!(
        value(&found, PointName::TieRodInner, None),
        90.0,
        epsilon = 1e-6
    );
}

/// The greatest tilt on a grid, by the tuning kernel's own definition.
fn dense(build: &Build, side: Side, joint: TieRodJoint, bolt: BoltAxis) -> f64 {
    let model = build.axle(AxleName::Front).expect("front");
    let bolt = BoltDirection::Along(bolt.direction());
    let mut most = 0.0_f64;
    for i in 0..=60 {
        let share = f64::from(i) / 60.0;
        let travel = model.travel.droop * (1.0 - share) + model.travel.bump * share;
        for k in 0..=40 {
            let linkage = model.linkage(side);
            let pose = linkage
                .pose(travel, model.lock() * (f64::from(k) / 20.0 - 1.0))
                .expect("in reach");
            most = most.max(misalignment(linkage, &pose, joint, bolt).expect("a direction"));
        }
    }
    most.to_degrees()
}

#[test]
fn what_is_charged_is_the_tilt_of_the_tuning_kernel_on_either_side() {
    let odd = BoltAxis::Direction([2.0, 0.3, 0.5]);
    for mut build in demos() {
        build.rear = None;
        build.limits.joint_angle_deg = Some(1e-3);
        for bolt in [BoltAxis::ForeAft, BoltAxis::Vertical, odd] {
            build.front.joint_bolts = JointBolts {
                inner: Some(bolt),
                outer: Some(bolt),
            };
            let together = findings(&build);
            let apart = findings(&sides_apart(&build));
            for (point, joint) in [
                (PointName::TieRodInner, TieRodJoint::Inner),
                (PointName::TieRodOuter, TieRodJoint::Outer),
            ] {
                let wanted = dense(&build, Side::Left, joint, bolt);
                let ours = value(&together, point, None);
                assert!(
                    ours >= wanted - 1e-6 && ours < wanted + 0.05,
                    "{point} {bolt:?}: {ours} {wanted}"
                );
                for side in [Side::Left, Side::Right] {
                    let own = value(&apart, point, Some(side));
                    assert_relative_eq!(own, ours, epsilon = 0.02);
                }
            }
        }
    }
}

fn study(build: &Build) -> [BoltStudy; 2] {
    let model = build.axle(AxleName::Front).expect("front");
    BoltStudy::of(build, &model).expect("poses")
}

#[test]
fn side_by_side_the_swing_is_tilt_on_one_bolt_and_turning_on_the_other() {
    let swing = (1.0_f64 / 3.0).asin();
    let [inner, _] = study(&swinging(Some(BoltAxis::Vertical)));
    assert_relative_eq!(inner.present.most, swing, epsilon = 1e-5);
    assert_relative_eq!(inner.present.travel.abs(), 100.0, epsilon = 1e-6);
    let on = |axis| {
        let found = inner.plain.iter().find(|(a, _)| *a == axis);
        found.map(|(_, s)| *s).expect("a plain one")
    };
    assert_eq!(inner.present, on(BoltAxis::Vertical));
    assert_relative_eq!(
        on(BoltAxis::Vertical).turn.expect("turns"),
        0.0,
        epsilon = 1e-5
    );
    assert_relative_eq!(on(BoltAxis::ForeAft).most, 0.0, epsilon = 1e-5);
    // Up and down by the swing.
    let turn = on(BoltAxis::ForeAft).turn.expect("turns");
    assert_relative_eq!(turn, 2.0 * swing, epsilon = 1e-5);
}

#[test]
fn side_by_side_figures_are_the_cautions_own() {
    for mut build in demos() {
        build.limits.joint_angle_deg = Some(1e-6);
        for bolts in [None, Some(BoltAxis::ForeAft), Some(BoltAxis::Vertical)] {
            build.front.joint_bolts = JointBolts {
                inner: bolts,
                outer: bolts,
            };
            let found = findings(&build);
            let points = [PointName::TieRodInner, PointName::TieRodOuter];
            for (study, point) in study(&build).iter().zip(points) {
                assert_eq!(study.bolt, bolts);
                assert_eq!(study.present.turn.is_some(), bolts.is_some());
                let front = |c: &&Caution| c.axle == AxleName::Front;
                let own = of_kind(&found, CautionKind::JointAngle)
                    .into_iter()
                    .filter(front)
                    .find(|c| c.point.is_some_and(|p| p.point == point))
                    .and_then(|c| c.figure)
                    .expect("a figure");
                assert_relative_eq!(study.present.most.to_degrees(), own.value, epsilon = 1e-9);
            }
        }
    }
}
