//! Every kind of row that does not keep its limit says what would mend it, and each figure is that of the edited build.

use approx::assert_relative_eq;
use trammel_analysis::{Proof, ProofDepth, ProofPart, ProofRow, prove};
use trammel_build::{AxleName, Build, Edit, Force, LengthUnit, PartsEdit, PointName};
use trammel_strength::check::Check;

use super::{common, proof};

fn is_same(a: &ProofRow, b: &ProofRow) -> bool {
    a.axle == b.axle
        && a.side == b.side
        && a.part == b.part
        && a.check == b.check
        && a.load_case == b.load_case
}

/// Every remedy of the rows of these checks, proved on the build that its edit makes; how many there were.
fn proved_anew(build: &Build, found: &Proof, of: impl Fn(&ProofRow) -> bool) -> usize {
    let mut count = 0;
    for row in found.rows.iter().filter(|row| of(row)) {
        for remedy in &row.remedies {
            let Some(edit) = &remedy.edit else { continue };
            let then = proof(&edit.apply(build).unwrap());
            let same = then.rows.iter().find(|r| is_same(r, row)).unwrap();
            let name = format!("{}: {}", row.key(), remedy.text);
            let (said, comes) = (remedy.value.unwrap(), same.factor.unwrap());
            assert!(said > row.factor.unwrap(), "{name}");
            assert_relative_eq!(said, comes, max_relative = 1e-9);
            count += 1;
        }
    }
    count
}

fn worst(found: &Proof, check: Check) -> ProofRow {
    let row = found.rows.iter().find(|row| row.check == check);
    row.cloned().unwrap_or_else(|| panic!("no row of {check}"))
}

/// No row that misses its limit is left without a word on what would mend it, and the last word is a sentence where no edit is enough.
#[test]
fn every_missed_limit_says_what_would_mend_it() {
    for name in ["good", "lifted", "badly-placed-rack"] {
        let mut build = common::demo(name);
        // Limits that nearly nothing keeps.
        build.limits.strength_factor = Some(40.0);
        build.limits.rack_end_factor = Some(40.0);
        build.limits.clearance = Some(6.0);
        build.limits.hand_force = Some(Force::Newtons(20.0));
        build.limits.kick_back = Some(Force::Newtons(20.0));
        build.limits.lock_over_deg = Some(75.0);
        let found = proof(&build);
        let mut seen: Vec<(AxleName, ProofPart, Check)> = Vec::new();
        for row in found.rows.iter().filter(|row| row.grade().is_some()) {
            let kind = (row.axle, row.part, row.check);
            if seen.contains(&kind) {
                continue;
            }
            seen.push(kind);
            assert!(!row.remedies.is_empty(), "{name}: {}", row.key());
            let enough = |value: Option<f64>| value.is_some_and(|v| v >= row.wanted);
            let last = row.remedies.last().unwrap();
            let said = row.remedies.iter().any(|r| enough(r.value)) || last.edit.is_none();
            assert!(said, "{name}: {}", row.key());
            assert!(last.text.len() > 20, "{name}: {}", last.text);
        }
        assert!(seen.len() > 25, "{name}: {}", seen.len());
    }
}

#[test]
fn the_steering_is_mended_by_wheel_pinion_stops_and_arm() {
    let mut build = common::demo("good");
    build.limits.hand_force = Some(Force::Newtons(45.0));
    build.limits.kick_back = Some(Force::Newtons(200.0));
    build.limits.lock_over_deg = Some(50.0);
    let found = proof(&build);
    let texts = |check| {
        let row = worst(&found, check);
        let texts: Vec<String> = row.remedies.into_iter().map(|r| r.text).collect();
        texts.join("; ")
    };
    for check in [Check::HandForce, Check::KickBack] {
        assert!(texts(check).contains("steering wheel"), "{}", texts(check));
        assert!(texts(check).contains("pinion"), "{}", texts(check));
    }
    assert!(
        texts(Check::OverCentre).contains("stops at"),
        "{}",
        texts(Check::OverCentre)
    );
    let of_steering = |row: &ProofRow| row.part == ProofPart::Steering;
    assert!(proved_anew(&build, &found, of_steering) >= 5);
    // Force at the rim goes with one over the wheel's diameter: 12 in to 13 in.
    let larger = worst(&found, Check::HandForce).remedies;
    let larger = larger
        .iter()
        .find(|r| r.text.contains("steering wheel 13 in"));
    if let Some(larger) = larger {
        let now = worst(&found, Check::HandForce).factor.unwrap();
        assert_relative_eq!(
            larger.value.unwrap(),
            now * 13.0 / 12.0,
            max_relative = 1e-9
        );
    }
}

#[test]
fn gaps_are_mended_by_parts_moved_or_made_slimmer() {
    let mut build = common::demo("good");
    build.limits.clearance = Some(1.25);
    let found = proof(&build);
    let is_gap = |row: &ProofRow| matches!(row.part, ProofPart::Gap(_));
    let gaps = found
        .rows
        .iter()
        .filter(|r| is_gap(r) && r.grade().is_some());
    let mended = gaps
        .clone()
        .filter(|r| r.remedies.iter().any(|x| x.edit.is_some()));
    assert!(mended.count() >= 2, "{}", gaps.count());
    let mut shown = 0;
    let few = |row: &ProofRow| is_gap(row) && row.grade().is_some();
    shown += proved_anew(&build, &found, few);
    assert!(shown >= 4, "{shown}");
    for row in gaps {
        assert!(row.remark.as_ref().unwrap().starts_with("Assumed: "));
    }
}

#[test]
fn a_rating_is_asked_for_in_plain_words() {
    let mut build = common::demo("good");
    let mut parts = build.front.parts.joints[&PointName::TieRodOuter].clone();
    parts.end.as_mut().unwrap().rating = Some(Force::PoundsForce(50.0));
    build = Edit::Parts(PartsEdit::Joint(
        AxleName::Front,
        PointName::TieRodOuter,
        Box::new(parts),
    ))
    .apply(&build)
    .unwrap();
    let row = worst(&proof(&build), Check::JointRating);
    assert!(row.factor.unwrap() < 1.0);
    let [only] = row.remedies.as_slice() else {
        panic!("{:?}", row.remedies)
    };
    assert!(only.edit.is_none());
    let needed = row.shown(LengthUnit::Inch).value;
    assert!(
        only.text.contains(&format!("{needed:.0} lbf")),
        "{}",
        only.text
    );
}

#[test]
fn a_tight_thread_or_joint_gets_its_room() {
    let mut build = common::demo("lifted");
    build.front.rack_end.engagement = Some(0.375);
    build.front.rack_end.bore_depth = Some(0.375);
    build.front.parts.tie_rod.engagement = Some(0.5);
    build.front.rack_end.bar_diameter = Some(0.625);
    let joint = build
        .front
        .parts
        .joints
        .get_mut(&PointName::TieRodOuter)
        .unwrap();
    joint.end.as_mut().unwrap().length = Some(1.0);
    let found = proof(&build);
    for check in [
        Check::ThreadEngagement,
        Check::WallLeft,
        Check::BodyRoom,
        Check::NutRoom,
    ] {
        let row = worst(&found, check);
        assert!(row.grade().is_some(), "{check}");
        assert!(
            row.remedies.iter().any(|r| r.edit.is_some()),
            "{check}: {:?}",
            row.remedies
        );
    }
    let asked = |row: &ProofRow| {
        matches!(
            row.check,
            Check::ThreadEngagement | Check::WallLeft | Check::BodyRoom | Check::NutRoom
        )
    };
    assert!(proved_anew(&build, &found, asked) >= 5);
    assert!(prove(&build, ProofDepth::Full, &|| true).is_none());
}

/// A build that nearly nothing holds is proved in little more time than a sound one: the worst checks of a side are worked out, the rest wait and say so.
#[test]
fn remedies_go_to_the_worst_checks_first() {
    let mut build = common::demo("lifted");
    build.limits.strength_factor = Some(400.0);
    let found = proof(&build);
    let left: Vec<&ProofRow> = found
        .rows
        .iter()
        .filter(|r| r.axle == AxleName::Front && r.grade().is_some() && !r.remedies.is_empty())
        .collect();
    let waits = |r: &&&ProofRow| {
        r.remedies
            .iter()
            .any(|m| m.text.contains("worst checks first"))
    };
    let standing = |r: &ProofRow| r.standing().unwrap_or(f64::INFINITY);
    let worked: Vec<f64> = left
        .iter()
        .filter(|r| !waits(r))
        .map(|r| standing(r))
        .collect();
    let waiting: Vec<f64> = left.iter().filter(waits).map(|r| standing(r)).collect();
    assert!(
        worked.len() >= 12 && waiting.len() > 12,
        "{} {}",
        worked.len(),
        waiting.len()
    );
    let best_worked = worked.iter().copied().fold(0.0, f64::max);
    let worst_waiting = waiting.iter().copied().fold(f64::INFINITY, f64::min);
    assert!(
        worst_waiting >= 0.2 * best_worked,
        "{worst_waiting} {best_worked}"
    );
}
