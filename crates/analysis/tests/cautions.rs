//! The other checks: edges, mirror, worst poses against a dense search, order.

#![allow(
    clippy::expect_used,
    clippy::panic,
    reason = "a test stops where it fails"
)]

mod common;

use approx::assert_relative_eq;
use common::{demo, demos, findings, of_kind, plumb, sides_apart};
use trammel_analysis::{Caution, CautionKind, Depth, Findings, Grade, Study};
use trammel_build::{AxleName, Build, PointName, Side, TravelSpec, mirror};
use trammel_geometry::Linkage;

fn value(found: &Findings, kind: CautionKind) -> f64 {
    of_kind(found, kind)[0].figure.expect("a figure").value
}

/// Each limit set a hair to either side of what is found.
#[test]
fn cautions_come_and_go_at_their_limits() {
    let front_only = || {
        let mut build = demo("lifted");
        build.rear = None;
        build
    };
    let mut strict = front_only();
    strict.limits.toe_change_deg = Some(1e-6);
    strict.limits.tie_rod_angle_deg = Some(0.01);
    strict.limits.joint_angle_deg = Some(0.01);
    strict.limits.lock_over_deg = Some(90.0);
    let found = findings(&strict);
    let kinds = [
        CautionKind::ToeChange,
        CautionKind::TieRodAngle,
        CautionKind::LockOver,
    ];
    for kind in kinds {
        let at = value(&found, kind);
        for (limit, past) in [
            (at * (1.0 + 1e-9), kind == CautionKind::LockOver),
            (at * (1.0 - 1e-9), kind != CautionKind::LockOver),
        ] {
            let mut build = front_only();
            let limits = &mut build.limits;
            match kind {
                CautionKind::ToeChange => limits.toe_change_deg = Some(limit),
                CautionKind::TieRodAngle => limits.tie_rod_angle_deg = Some(limit),
                _ => limits.lock_over_deg = Some(limit),
            }
            let there = !of_kind(&findings(&build), kind).is_empty();
            assert_eq!(there, past, "{kind:?} {limit}");
        }
    }
}

/// The worst of a grid of 161 travels by 121 rack positions, without refinement, of a linkage's own measures.
fn dense(build: &Build, side: Side, badness: impl Fn(&Linkage, f64, f64) -> Option<f64>) -> f64 {
    let study = Study::of(build).expect("usable");
    let model = study.front.model;
    let mut worst = f64::NEG_INFINITY;
    for i in 0..=160 {
        let share = f64::from(i) / 160.0;
        let travel = model.travel.droop * (1.0 - share) + model.travel.bump * share;
        for k in 0..=120 {
            let rack = model.lock() * (f64::from(k) / 60.0 - 1.0);
            worst =
                worst.max(badness(model.linkage(side), travel, rack).unwrap_or(f64::NEG_INFINITY));
        }
    }
    worst
}

#[test]
fn the_worst_pose_is_the_worst() {
    for mut build in demos() {
        build.rear = None;
        build.limits.tie_rod_angle_deg = Some(0.01);
        build.limits.joint_angle_deg = Some(0.01);
        build.limits.lock_over_deg = Some(90.0);
        // Without a known bolt a joint is charged with the rod's whole angle.
        build.front.joint_bolts = trammel_build::JointBolts::default();
        let found = findings(&build);
        let angle = dense(&build, Side::Left, |l, t, r| {
            let pose = l.pose(t, r).ok()?;
            Some(l.measures(&pose).tie_rod_angle.to_degrees())
        });
        let ours = value(&found, CautionKind::TieRodAngle);
        assert!(
            ours >= angle - 1e-9 && ours < angle + 0.05,
            "{ours} {angle}"
        );
        let steering = dense(&build, Side::Left, |l, t, r| {
            Some(-l.pose(t, r).ok()?.margins.steering)
        });
        let ours = value(&found, CautionKind::LockOver);
        let dense_angle = (-steering).asin().to_degrees();
        assert!(
            ours <= dense_angle + 1e-9 && ours > dense_angle - 0.05,
            "{ours} {dense_angle}"
        );
        let swivel = dense(&build, Side::Left, |l, t, r| {
            let pose = l.pose(t, r).ok()?;
            let design = l.corner().tie_rod.outer - l.corner().tie_rod.inner;
            Some(
                design
                    .angle(&(pose.tie_rod_outer - pose.tie_rod_inner))
                    .to_degrees(),
            )
        });
        let inner = found
            .cautions
            .iter()
            .find(|c| {
                c.kind == CautionKind::JointAngle
                    && c.point.is_some_and(|p| p.point == PointName::TieRodInner)
            })
            .expect("an inner joint");
        let ours = inner.figure.expect("a figure").value;
        assert!(
            ours >= swivel - 1e-6 && ours < swivel + 0.05,
            "{ours} {swivel}"
        );
    }
}

/// The outer joint's swivel leaves steering out: with the rod in the plane square to a plumb steering axis, lock alone swivels nothing.
#[test]
fn steering_alone_swivels_no_outer_joint() {
    let mut build = plumb(0.0, 40.0);
    build.front.rack.travel = Some(40.0);
    build.limits.joint_angle_deg = Some(0.001);
    let found = findings(&build);
    let outer = found
        .cautions
        .iter()
        .any(|c| c.point.is_some_and(|p| p.point == PointName::TieRodOuter));
    assert!(!outer, "{:?}", found.cautions);
}

fn swap_sides(build: &Build) -> Build {
    let mut next = build.clone();
    for point in PointName::ALL {
        let at = |side| trammel_build::PointRef {
            axle: AxleName::Front,
            side,
            point,
        };
        let (Some(left), Some(right)) = (build.point(at(Side::Left)), build.point(at(Side::Right)))
        else {
            continue;
        };
        next.front.right.insert(point, mirror(left));
        let set = trammel_build::Edit::MovePoint {
            point: at(Side::Left),
            to: mirror(right),
        };
        next = set.apply(&next).expect("a usable mirror image");
    }
    next
}

/// A vehicle with unlike sides and the same one in the mirror: the same cautions, left for right, the rack the other way.
#[test]
fn a_mirrored_build_has_mirrored_cautions() {
    let mut build = sides_apart(&demo("lifted"));
    build.rear = None;
    for (point, by) in [
        (PointName::TieRodInner, [0.0, 0.25, 0.5]),
        (PointName::UpperBallJoint, [0.125, 0.0, 0.0]),
    ] {
        let p = build.front.right.get_mut(&point).expect("its own");
        *p = std::array::from_fn(|i| p[i] + by[i]);
    }
    build.hit.direction = Some([-1.0, 0.3, 0.1]);
    build.limits.toe_change_deg = Some(0.05);
    let (here, there) = (findings(&build), findings(&swap_sides(&build)));
    assert!(here.cautions.len() >= 4);
    assert_eq!(here.cautions.len(), there.cautions.len());
    let other = |side| {
        if side == Side::Left {
            Side::Right
        } else {
            Side::Left
        }
    };
    for caution in &here.cautions {
        let twin = there
            .cautions
            .iter()
            .find(|c| {
                c.kind == caution.kind
                    && c.side == caution.side.map(other)
                    && c.point.map(|p| p.point) == caution.point.map(|p| p.point)
            })
            .expect("its mirror image");
        alike(caution, twin);
    }
    for end in &here.rack_ends {
        let twin = there
            .rack_ends
            .iter()
            .find(|e| e.side == other(end.side))
            .expect("its mirror image");
        assert_relative_eq!(end.factor, twin.factor, max_relative = 1e-9);
        assert_relative_eq!(
            end.force_on_joint.y,
            -twin.force_on_joint.y,
            max_relative = 1e-9
        );
        assert_relative_eq!(end.worst.rack, -twin.worst.rack, epsilon = 1e-6);
    }
}

fn alike(caution: &Caution, twin: &Caution) {
    assert_eq!(caution.grade, twin.grade);
    let (a, b) = (
        caution.figure.expect("a figure"),
        twin.figure.expect("a figure"),
    );
    assert_relative_eq!(a.value, b.value, max_relative = 1e-9);
    let (a, b) = (caution.worst.expect("a pose"), twin.worst.expect("a pose"));
    assert_relative_eq!(a.travel, b.travel, epsilon = 1e-6);
    assert_relative_eq!(a.rack, -b.rack, epsilon = 1e-6);
    assert_eq!(caution.remedies.len(), twin.remedies.len());
    for (a, b) in caution.remedies.iter().zip(&twin.remedies) {
        assert_eq!(a.text, b.text);
    }
}

/// Written out side by side, a symmetric build's two sides are each found as its one was.
#[test]
fn like_sides_are_told_once() {
    let (once, twice) = (
        findings(&demo("lifted")),
        findings(&sides_apart(&demo("lifted"))),
    );
    for caution in &once.cautions {
        assert_eq!(caution.side, None);
        for side in [Side::Left, Side::Right] {
            let twin = twice
                .cautions
                .iter()
                .find(|c| {
                    (c.kind, c.axle, c.side) == (caution.kind, caution.axle, Some(side))
                        && c.point.map(|p| p.point) == caution.point.map(|p| p.point)
                })
                .expect("each side");
            let (a, b) = (
                caution.figure.expect("a figure"),
                twin.figure.expect("a figure"),
            );
            assert_relative_eq!(a.value, b.value, max_relative = 1e-9);
        }
    }
}

#[test]
fn travel_out_of_reach_is_a_danger_when_a_stop_is_given() {
    let mut build = demo("good");
    build.rear = None;
    build.front.spring = None;
    build.front.travel = Some(TravelSpec {
        bump: 3.0,
        droop: 30.0,
    });
    let found = findings(&build);
    let reach = of_kind(&found, CautionKind::OutOfReach)[0];
    assert_eq!(reach.grade, Grade::Danger);
    let figure = reach.figure.expect("a figure");
    assert_eq!(figure.limit, 30.0);
    let study = Study::of(&build).expect("usable");
    let linkage = *study.front.model.linkage(Side::Left);
    // The pose told is the last: a hair less is reached, a hair more is not, at that rack position.
    let worst = reach.worst.expect("a pose");
    assert!(
        linkage
            .pose(worst.travel * (1.0 - 1e-6), worst.rack)
            .is_ok()
    );
    assert!(
        linkage
            .pose(worst.travel * (1.0 + 1e-6), worst.rack)
            .is_err()
    );
}

#[test]
fn a_rack_that_goes_too_far_is_told_once() {
    let mut build = demo("good");
    build.front.rack.travel = Some(8.0);
    let found = findings(&build);
    let reach = of_kind(&found, CautionKind::OutOfReach);
    assert_eq!(reach.len(), 1, "{:?}", found.cautions);
    assert!(
        reach[0].headline.starts_with("Tie rod runs out"),
        "{}",
        reach[0].headline
    );
    assert!(
        of_kind(&found, CautionKind::LockOver).is_empty(),
        "the same thing is not told twice"
    );
    assert!(reach[0].remedies.iter().any(|r| r.edit.is_some()));
}

#[test]
fn thread_engagement_by_the_trade() {
    let mut build = demo("good");
    // 1/2-20: one diameter 0.5 in, three threads 0.15 in.
    build.front.rack_end.thread = Some("1/2-20".into());
    for (engaged, grade) in [
        (0.5, None),
        (0.499, Some(Grade::Caution)),
        (0.151, Some(Grade::Caution)),
        (0.149, Some(Grade::Danger)),
    ] {
        build.front.rack_end.engagement = Some(engaged);
        let found = findings(&build);
        let caution = of_kind(&found, CautionKind::ThreadEngagement);
        assert_eq!(caution.first().map(|c| c.grade), grade, "{engaged}");
    }
    build.front.rack_end.engagement = None;
    assert!(of_kind(&findings(&build), CautionKind::ThreadEngagement).is_empty());
}

#[test]
fn unknown_names_are_located_and_the_nearest_offered() {
    let mut build = demo("good");
    build.front.rack_end.thread = Some("1/2-21".into());
    build.front.rack_end.grade = Some("grade 9".into());
    let found = findings(&build);
    let names = of_kind(&found, CautionKind::UnknownName);
    assert_eq!(names.len(), 2);
    let about = |field: &str| {
        names
            .iter()
            .find(|c| c.detail.contains(field))
            .expect("located")
    };
    let thread = about("front.rack_end.thread");
    assert!(thread.headline.contains("1/2-21"));
    assert!(
        thread.remedies.iter().any(|r| r.text == "Call it 1/2-20"),
        "{:?}",
        thread.remedies
    );
    let grade = about("front.rack_end.grade");
    assert!(
        grade.remedies.iter().any(|r| r.text == "Call it grade 8"),
        "{:?}",
        grade.remedies
    );
    for remedy in thread.remedies.iter().chain(&grade.remedies) {
        let after = remedy
            .edit
            .as_ref()
            .expect("an edit")
            .apply(&build)
            .expect("made");
        assert!(of_kind(&findings(&after), CautionKind::UnknownName).len() < 2);
    }
    assert!(
        found.rack_ends.is_empty(),
        "nothing is reckoned from a name that is not known"
    );
}

#[test]
fn a_thread_outside_its_grades_standard_is_told() {
    let mut build = demo("good");
    build.front.rack_end.thread = Some("M6".into());
    build.front.rack_end.grade = Some("grade 8".into());
    assert_eq!(
        of_kind(&findings(&build), CautionKind::UnknownName).len(),
        1
    );
}

#[test]
fn worst_come_first() {
    let mut build = demo("lifted");
    build.limits.toe_change_deg = Some(0.01);
    build.front.rack_end.engagement = Some(0.25);
    let cautions = findings(&build).cautions;
    assert!(cautions.len() > 3);
    for pair in cautions.windows(2) {
        let (a, b) = (&pair[0], &pair[1]);
        assert!(a.grade > b.grade || (a.grade == b.grade && a.severity() >= b.severity()));
    }
}

/// No text ever says that something is safe, and every caution has all it needs.
#[test]
fn every_caution_is_whole() {
    for build in demos() {
        let mut strict = build.clone();
        strict.limits.toe_change_deg = Some(0.01);
        strict.limits.tie_rod_angle_deg = Some(1.0);
        strict.limits.joint_angle_deg = Some(1.0);
        strict.limits.rack_end_factor = Some(20.0);
        strict.limits.lock_over_deg = Some(80.0);
        for c in findings(&strict).cautions {
            let remedies: String = c.remedies.iter().map(|r| r.text.as_str()).collect();
            let text = format!(
                "{} {} {} {} {remedies}",
                c.headline, c.detail, c.reason, c.source
            );
            assert!(!text.to_lowercase().contains("safe"), "{text}");
            assert!(!text.contains("NaN") && !text.contains("inf "), "{text}");
            assert!(!c.reason.is_empty() && !c.source.is_empty() && c.point.is_some());
            assert!(
                c.figure.is_none_or(|f| f.value.is_finite()
                    && f.limit.is_finite()
                    && f.severity() >= 1.0)
            );
        }
    }
}

/// Without remedies the same things are found.
#[test]
fn a_quick_look_finds_the_same() {
    for build in demos() {
        let study = Study::of(&build).expect("usable");
        let mut full = Findings::of(&build, &study);
        assert!(full.cautions.iter().all(|c| !c.remedies.is_empty()));
        full.cautions.iter_mut().for_each(|c| c.remedies.clear());
        assert_eq!(Findings::to_depth(&build, &study, Depth::Quick), full);
    }
}
