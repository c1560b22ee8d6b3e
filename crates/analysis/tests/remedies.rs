//! What a remedy promises is what comes of it.

#![allow(
    clippy::expect_used,
    clippy::panic,
    reason = "a test stops where it fails"
)]

mod common;
#[path = "remedies/next_moves.rs"]
mod next_moves;

use common::{demo, demos, findings, of_kind, plumb, sides_apart};
use trammel_analysis::{Bound, Caution, CautionKind, FigureUnit, Findings};
use trammel_build::{
    Axis, AxleName, Build, Coordinate, Edit, LengthUnit, Limits, PointName, SpringSpec, TravelSpec,
};
use trammel_geometry::ArmName;

/// Builds in all sorts of trouble.
fn troubled() -> Vec<Build> {
    let mut builds = demos();
    builds.push(plumb(90.0, 60.0));
    builds.push(sides_apart(&demo("lifted")));
    for name in ["good", "lifted", "badly-placed-rack"] {
        let mut tight = demo(name);
        tight.limits = Limits {
            toe_change_deg: Some(0.02),
            tie_rod_angle_deg: Some(9.0),
            joint_angle_deg: Some(9.0),
            rack_end_factor: Some(5.0),
            lock_over_deg: Some(50.0),
            ..Limits::default()
        };
        tight.front.rack_end.engagement = Some(0.2);
        let metric = Edit::ConvertUnit(LengthUnit::Millimetre)
            .apply(&tight)
            .expect("converts");
        let mut far = tight.clone();
        far.front.travel = Some(TravelSpec {
            bump: 9.0,
            droop: 14.0,
        });
        let mut sprung = tight.clone();
        sprung.front.travel = None;
        let mut locked_over = tight.clone();
        locked_over.front.rack.travel = Some(4.5);
        let mut own_end = sides_apart(&tight);
        if let Some(p) = own_end.front.right.get_mut(&PointName::TieRodInner) {
            p[2] += 0.75;
        }
        builds.extend([tight, metric, far, sprung, locked_over, own_end]);
    }
    builds
}

fn same<'a>(found: &'a Findings, as_this: &Caution) -> Option<&'a Caution> {
    found.cautions.iter().find(|c| {
        (c.kind, c.axle, c.side) == (as_this.kind, as_this.axle, as_this.side)
            && c.point.map(|p| p.point) == as_this.point.map(|p| p.point)
    })
}

#[test]
fn promises_are_kept_to_the_last_digit() {
    let (mut kept, mut seen) = (0, std::collections::BTreeSet::new());
    for build in troubled() {
        for caution in &findings(&build).cautions {
            for remedy in &caution.remedies {
                let Some(edit) = &remedy.edit else { continue };
                let after = edit.apply(&build).expect("an offered edit can be made");
                assert_ne!(after, build, "{}", remedy.text);
                check_promise(caution, remedy.value, &after, &remedy.text);
                kept += 1;
                seen.insert(caution.kind.word());
            }
        }
    }
    assert!(kept > 100, "{kept} promises looked at");
    let wanted = [
        "rack_end_bending",
        "tie_rod_angle",
        "joint_angle",
        "toe_change",
        "lock_over",
        "out_of_reach",
        "thread_engagement",
    ];
    for kind in wanted {
        assert!(seen.contains(kind), "no remedy of {kind} among {seen:?}");
    }
}

fn check_promise(caution: &Caution, promised: Option<f64>, after: &Build, text: &str) {
    let found = findings(after);
    let now = same(&found, caution);
    let (Some(promised), Some(before)) = (promised, caution.figure) else {
        assert!(
            now.is_none(),
            "{text}: still {}",
            now.map_or("", |c| &c.headline)
        );
        return;
    };
    let better = match before.bound {
        Bound::AtMost => promised < before.value,
        Bound::AtLeast => promised > before.value,
    };
    assert!(better, "{text}: {} becomes {promised}", before.value);
    // A limit in the build's own unit goes with the thread, so it is asked of the caution that may be left.
    match now.and_then(|c| c.figure) {
        Some(figure) => {
            let close = (figure.value - promised).abs() <= 1e-9 * promised.abs();
            assert!(close, "{text}: promised {promised}, found {}", figure.value);
        }
        None if before.unit == FigureUnit::Factor => {
            let mut ends = found.rack_ends.iter();
            let kept = ends.any(|e| (e.factor - promised).abs() <= 1e-9 * promised);
            assert!(kept, "{text}: promised {promised}");
        }
        None => {
            let within = match before.bound {
                Bound::AtMost => promised <= before.limit,
                Bound::AtLeast => promised >= before.limit,
            };
            assert!(
                within,
                "{text}: promised {promised}, limit {}",
                before.limit
            );
        }
    }
}

/// The badly placed demo can be tuned flat by one click, as its story wants.
#[test]
fn the_badly_placed_rack_is_mended_by_the_first_remedy() {
    let build = demo("badly-placed-rack");
    let found = findings(&build);
    let toe = of_kind(&found, CautionKind::ToeChange)[0];
    assert!(toe.figure.expect("a figure").value > 1.0);
    let remedy = &toe.remedies[0];
    assert!(remedy.value.expect("a promise") < 0.1, "{}", remedy.text);
    let after = remedy
        .edit
        .as_ref()
        .expect("an edit")
        .apply(&build)
        .expect("made");
    assert!(of_kind(&findings(&after), CautionKind::ToeChange).is_empty());
}

/// A good build with its rack moved by a known amount: the remedy moves it back.
#[test]
fn a_planted_error_is_found_again() {
    let good = demo("good");
    let at = trammel_build::PointRef::left(AxleName::Front, PointName::TieRodInner);
    let [x, y, z] = good.point(at).expect("a point");
    let mut build = Edit::MovePoint {
        point: at,
        to: [x, y + 0.5, z - 0.75],
    }
    .apply(&good)
    .expect("made");
    build.limits.toe_change_deg = Some(0.05);
    let found = findings(&build);
    let toe = of_kind(&found, CautionKind::ToeChange)[0];
    let after = toe.remedies[0]
        .edit
        .as_ref()
        .expect("an edit")
        .apply(&build)
        .expect("made");
    let [_, y_then, z_then] = after.point(at).expect("a point");
    assert!((z_then - z).abs() < 0.07, "{z_then} for {z}");
    assert!((y_then - y).abs() < 0.35, "{y_then} for {y}");
}

#[test]
fn a_locked_coordinate_is_not_moved() {
    let mut build = demo("badly-placed-rack");
    build.locked.insert(Coordinate {
        axle: AxleName::Front,
        point: PointName::TieRodInner,
        axis: Axis::Z,
    });
    let found = findings(&build);
    let toe = of_kind(&found, CautionKind::ToeChange)[0];
    for remedy in &toe.remedies {
        let edit = remedy.edit.as_ref().expect("an edit");
        assert!(edit.apply(&build).is_ok(), "{}", remedy.text);
        assert!(
            !remedy.text.contains("up") && !remedy.text.contains("down"),
            "{}",
            remedy.text
        );
    }
}

/// Stops from the spring unit's ends move a hair with the tie rod: promises are still kept.
#[test]
fn spring_stops_keep_promises_too() {
    let mut build = plumb(90.0, 60.0);
    build.front.travel = None;
    build.front.spring = Some(SpringSpec {
        arm: ArmName::Lower,
        chassis_mount: [0.0, 250.0, 450.0],
        arm_mount: [0.0, 400.0, 160.0],
        open_length: Some(355.0),
        closed_length: Some(290.0),
        rate: None,
    });
    build.front.rack.travel = Some(30.0);
    build.limits.rack_end_factor = Some(9.0);
    for caution in &findings(&build).cautions {
        for remedy in &caution.remedies {
            let Some(edit) = &remedy.edit else { continue };
            let after = edit.apply(&build).expect("made");
            check_promise(caution, remedy.value, &after, &remedy.text);
        }
    }
}
