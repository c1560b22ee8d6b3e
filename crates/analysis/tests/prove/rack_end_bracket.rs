//! The bracket on the rack end: room for bolt head and jam nut, its height, and its hole.

use approx::assert_relative_eq;
use trammel_analysis::{ProofPart, ProofRow, bolt_hole};
use trammel_build::{AxleName, Build, Edit, HoleFit, JamNutAt, PartsEdit, PointName};
use trammel_strength::{check::Check, thread::Thread};

use super::{common, proof};

const MM: f64 = 25.4;

fn row(build: &Build, check: Check) -> Option<ProofRow> {
    let rows = proof(build).rows;
    rows.into_iter()
        .find(|row| row.check == check && row.part == ProofPart::Joint(PointName::TieRodInner))
}

/// A bracket of 1/4 in, 1 in tall, 2 1/4 in before the rack's face.
fn build(height: f64) -> Build {
    let mut build = common::demo("lifted");
    let joint = build
        .front
        .parts
        .joints
        .get_mut(&PointName::TieRodInner)
        .unwrap();
    let bracket = joint.bracket.as_mut().unwrap();
    (bracket.height, bracket.thickness) = (height, 0.25);
    build.front.rack.face.as_mut().unwrap()[1] = build.front.tie_rod.inner[1] - 2.25;
    build
}

/// By hand, 1/2-20 and a 5/16 in nut: beside the nut 2 1/4 - 1 - 1/4 - 5/16 - 1/8 = 9/16 in; before the head, the bolt lying fore and aft and the rod swinging about it,
/// 1 - 5/16 - 1.337/2 in, a little less where the disc leans with a rod that is not quite square to its bolt.
#[test]
fn room_by_hand() {
    let build = build(1.0);
    let nut = row(&build, Check::EndNutRoom).unwrap();
    assert_relative_eq!(nut.value, 0.5625 * MM, epsilon = 1e-9);
    assert!(nut.remark.unwrap().contains("wound in by 1/8 in"));
    let head = row(&build, Check::EndHeadRoom).unwrap();
    let square = (1.0 - 0.3125 - 1.337 / 2.0) * MM;
    assert!(
        head.value <= square + 1e-9 && head.value > square - 1.5,
        "{}",
        head.value
    );
    assert!(head.pose.is_some());
    assert!(head.remark.unwrap().contains("5/16 in"));
    // Turns that the build gives go before the usual way: 4 turns of a 20 thread are 0.2 in.
    let mut turned = build;
    turned.set_up.adjusters.rack_end = Some(trammel_build::RackEndRange {
        only: None,
        turns_out: 2.0,
        turns_in: 4.0,
    });
    let nut = row(&turned, Check::EndNutRoom).unwrap();
    assert_relative_eq!(nut.value, (0.6875 - 0.2) * MM, epsilon = 1e-9);
}

/// 2 1/4 in less nut, adjustment, base and a millimetre leave 1.523 in: a bracket of 1 in is not the one that the sheet makes.
#[test]
fn a_height_that_the_rack_end_does_not_leave_is_said_and_mended() {
    let found = row(&build(1.0), Check::StandOff).unwrap();
    assert_relative_eq!(
        found.value,
        (2.25 - 0.3125 - 0.125 - 0.25 - 1.0) * MM - 1.0,
        epsilon = 1e-9
    );
    let remedy = found.remedies.first().unwrap();
    assert!(
        remedy
            .text
            .starts_with("Hole 1 1/2 in over the base instead of 1 in"),
        "{}",
        remedy.text
    );
    let after = remedy.edit.as_ref().unwrap().apply(&build(1.0)).unwrap();
    assert_eq!(row(&after, Check::StandOff), None);
    assert_eq!(row(&build(1.5), Check::StandOff), None);
    // Too tall: no room for the nut, and the way out is a shorter bracket or a longer end.
    let tall = row(&build(2.0), Check::EndNutRoom).unwrap();
    assert!(tall.value < 0.0 && tall.grade().is_some());
    assert!(tall.remedies.iter().any(|r| r.edit.is_some()));
}

#[test]
fn where_the_jam_nut_sits_is_said_with_the_cantilever() {
    let mut build = build(1.5);
    let said = |build: &Build| {
        let rows = proof(build).rows;
        let face = rows.into_iter().find(|r| r.check == Check::RackFaceYield);
        let nut = row(build, Check::EndNutRoom).unwrap();
        (face.unwrap().remark.unwrap(), nut.remark.unwrap())
    };
    let (lever, nut) = said(&build);
    assert!(lever.contains("clamps and supports is not counted"));
    assert!(nut.contains("against the rack's face"));
    build.front.rack_end.jam_nut_at = Some(JamNutAt::Joint);
    let (lever, nut) = said(&build);
    assert!(lever.contains("only the rod keeps it from turning"));
    assert!(nut.contains("against the joint"));
    build.front.rack_end.jam_nut_at = None;
    assert!(said(&build).1.contains("does not say"));
}

/// ASME B18.2.8 for a 1/2 in bolt: loose 0.609 in. A wider hole leaves less across it.
#[test]
fn the_fit_of_the_hole_counts_in_the_proof() {
    let point = PointName::LowerFrontPivot;
    let fitted = |fit| {
        let build = common::demo("good");
        let mut parts = build.front.parts.joints[&point].clone();
        let bracket = parts.bracket.as_mut().unwrap();
        (bracket.hole, bracket.fit) = (None, fit);
        let edit = PartsEdit::Joint(AxleName::Front, point, Box::new(parts));
        Edit::Parts(edit).apply(&build).unwrap()
    };
    let net = |build: &Build| {
        let rows = proof(build).rows;
        let row = rows
            .into_iter()
            .find(|r| r.check == Check::TabNetSection && r.part == ProofPart::Bracket(point));
        row.unwrap().value
    };
    let [close, loose] = [None, Some(HoleFit::Loose)].map(|fit| net(&fitted(fit)));
    assert!(loose > close, "{loose} {close}");
    let thread = Thread::find("1/2-20").unwrap();
    let bracket = fitted(Some(HoleFit::Loose)).front.parts.joints[&point]
        .bracket
        .clone();
    let hole = bolt_hole(bracket.as_ref(), thread, MM);
    assert_relative_eq!(hole.diameter, 0.609 * MM, epsilon = 1e-9);
    assert_eq!(hole.fit, "loose");
    assert_relative_eq!(
        bolt_hole(None, thread, MM).diameter,
        34.0 / 64.0 * MM,
        epsilon = 1e-9
    );
}
