//! The proof of whole builds.

#![allow(
    clippy::expect_used,
    clippy::unwrap_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "a test stops where it fails"
)]

#[path = "prove/acting.rs"]
mod acting;
mod common;
#[path = "prove/rack_end_bracket.rs"]
mod rack_end_bracket;
#[path = "prove/remedies.rs"]
mod remedies;
#[path = "prove/stances.rs"]
mod stances;
#[path = "prove/steering.rs"]
mod steering;

use approx::assert_relative_eq;
use trammel_analysis::{
    CautionKind, Findings, ForceRequest, Grade, Proof, ProofDepth, ProofPart, Raise, Span, Stops,
    Study, effective_load_cases, forces_under_case, prove, raised, thread_comparison,
    thread_comparison_raised, usual_load_cases,
};
use trammel_build::{
    AcceptedCaution, AxleName, Build, Edit, Force, LengthUnit, LoadAction, PartsEdit, PointName,
    Section, Side,
};
use trammel_strength::check::Check;
use trammel_tuning::Reset;

fn proof(build: &Build) -> Proof {
    prove(build, ProofDepth::Full, &|| false).expect("not called off")
}

fn request(side: Side, unit: LengthUnit) -> ForceRequest {
    ForceRequest {
        axle: AxleName::Front,
        side,
        travel: Some(Span::new(-2.0, 2.5, 4).unwrap()),
        rack: Some(Span::new(-1.25, 1.25, 3).unwrap()),
        unit,
    }
}

#[test]
fn every_demo_is_proved_whole() {
    for name in ["good", "lifted", "badly-placed-rack"] {
        let build = common::demo(name);
        let proof = proof(&build);
        assert!(
            proof
                .rows
                .iter()
                .all(|row| row.value.is_finite() && row.limit.is_finite())
        );
        assert!(
            proof
                .rows
                .iter()
                .map(trammel_analysis::ProofRow::grade)
                .is_sorted_by(|a, b| a >= b),
            "{name}"
        );
        let kept = proof.rows.iter().filter(|row| row.grade().is_none());
        let standings: Vec<f64> = kept
            .filter_map(trammel_analysis::ProofRow::standing)
            .collect();
        assert!(standings.is_sorted_by(|a, b| a <= b), "{name}");
        for (case, _) in effective_load_cases(&build) {
            let there = proof
                .rows
                .iter()
                .any(|row| row.load_case.as_deref() == Some(&case.name));
            assert!(there, "{name}: {}", case.name);
        }
        for part in [
            ProofPart::RackEnd,
            ProofPart::TieRod,
            ProofPart::Steering,
            ProofPart::Bracket(PointName::LowerFrontPivot),
        ] {
            assert!(
                proof.rows.iter().any(|row| row.part == part),
                "{name}: {}",
                part.label()
            );
        }
    }
}

#[test]
fn no_demo_breaks_and_the_lifted_ones_rack_end_does_not_keep_its_factor() {
    let dangers = |name: &str| {
        let rows = proof(&common::demo(name)).rows;
        let dangers = rows
            .into_iter()
            .filter(|row| row.grade() == Some(Grade::Danger));
        dangers.map(|row| row.part).collect::<Vec<_>>()
    };
    assert_eq!(dangers("good"), []);
    assert_eq!(dangers("badly-placed-rack"), []);
    assert_eq!(dangers("lifted"), []);
    let lifted = proof(&common::demo("lifted")).rows;
    let bent = lifted
        .iter()
        .find(|row| row.check == Check::RackFaceYield)
        .unwrap();
    assert_eq!(bent.grade(), Some(Grade::Caution));
    // A thinner thread breaks under the same load.
    let mut thin = common::demo("lifted");
    thin.front.rack_end.thread = Some("3/8-24".into());
    let broken = proof(&thin).rows;
    assert_eq!(broken[0].part, ProofPart::RackEnd);
    assert_eq!(broken[0].grade(), Some(Grade::Danger));
}

/// A remedy's figure is what a proof of the edited build comes to.
#[test]
fn remedies_come_to_what_they_say() {
    let build = common::demo("lifted");
    let found = proof(&build);
    let mut tried = 0;
    for row in found
        .rows
        .iter()
        .filter(|row| !row.remedies.is_empty())
        .take(4)
    {
        for remedy in row.remedies.iter().take(2) {
            let after = remedy.edit.as_ref().unwrap().apply(&build).unwrap();
            let then = proof(&after);
            let same = then.rows.iter().find(|r| {
                r.axle == row.axle
                    && r.part == row.part
                    && r.check == row.check
                    && r.load_case == row.load_case
            });
            assert_relative_eq!(
                same.unwrap().factor.unwrap(),
                remedy.value.unwrap(),
                max_relative = 1e-9
            );
            assert!(
                remedy.value.unwrap() > row.factor.unwrap(),
                "{}",
                remedy.text
            );
            tried += 1;
        }
    }
    assert!(tried >= 3, "{tried}");
}

/// The sides are made alike: a build whose right side is written out has the same rows on both sides.
#[test]
fn a_written_right_side_is_proved_like_the_left() {
    let build = common::demo("lifted");
    let own = Edit::SeparateRight(AxleName::Front, PointName::TieRodOuter);
    let both = proof(&own.apply(&build).unwrap());
    let alike = proof(&build);
    let front = |rows: &Proof, side: Option<Side>| {
        let rows = rows.rows.iter().filter(|r| {
            r.axle == AxleName::Front && r.side == side && r.part != ProofPart::Steering
        });
        let mut rows: Vec<_> = rows
            .map(|r| (r.part.label(), r.check, r.load_case.clone(), r.factor))
            .collect();
        rows.sort_by(|a, b| (&a.0, a.1, &a.2).cmp(&(&b.0, b.1, &b.2)));
        rows
    };
    let [left, right, one] = [
        front(&both, Some(Side::Left)),
        front(&both, Some(Side::Right)),
        front(&alike, None),
    ];
    assert_eq!(left.len(), one.len());
    assert_eq!(right.len(), one.len());
    for (a, b) in left.iter().chain(&right).zip(one.iter().chain(&one)) {
        assert_eq!((&a.0, a.1, &a.2), (&b.0, b.1, &b.2));
        assert_eq!(a.3.is_some(), b.3.is_some());
        if let Some((a, b)) = a.3.zip(b.3) {
            assert_relative_eq!(a, b, max_relative = 1e-6);
        }
    }
}

#[test]
fn a_quick_proof_has_the_same_checks_and_no_worse_factor_is_hidden() {
    let build = common::demo("lifted");
    let quick = prove(&build, ProofDepth::Quick, &|| false).unwrap();
    let full = proof(&build);
    for row in full
        .rows
        .iter()
        .filter(|row| row.check != Check::StopMargin)
    {
        let same = quick
            .rows
            .iter()
            .find(|q| q.key() == row.key() && q.load_case == row.load_case)
            .unwrap_or_else(|| panic!("{}", row.key()));
        assert!(same.remedies.is_empty());
        if let Some((quick, full)) = same.factor.zip(row.factor) {
            assert!(
                quick >= full - 1e-6 * full.abs(),
                "{} {quick} {full}",
                row.key()
            );
        }
    }
    assert!(prove(&build, ProofDepth::Full, &|| true).is_none());
}

#[test]
fn load_cases_are_changed_added_and_switched_off() {
    let build = common::demo("good");
    let usual = usual_load_cases(build.unit);
    let mut landing = usual.iter().find(|c| c.name == "landing").unwrap().clone();
    let LoadAction::Force(size, ..) = &mut landing.actions[0] else {
        panic!()
    };
    size[2] *= 2.0;
    let after = Edit::Parts(PartsEdit::LoadCase(Box::new(landing)))
        .apply(&build)
        .unwrap();
    let of = |build: &Build, check| {
        let rows = proof(build).rows;
        let row = rows.into_iter().find(|r| {
            r.check == check
                && r.load_case.as_deref() == Some("landing")
                && r.axle == AxleName::Front
        });
        row.map(|r| r.value)
    };
    let [before, then] = [&build, &after].map(|b| of(b, Check::AxialYield).unwrap());
    assert_relative_eq!(then, 2.0 * before, max_relative = 1e-6);
    let off = Edit::Parts(PartsEdit::SwitchLoadCase("landing".into(), false))
        .apply(&after)
        .unwrap();
    assert_eq!(of(&off, Check::AxialYield), None);
    let dropped = Edit::Parts(PartsEdit::DropLoadCase("landing".into()))
        .apply(&after)
        .unwrap();
    assert_eq!(dropped.load_cases, build.load_cases);
    let missing = forces_under_case(&off, &request(Side::Left, build.unit), "landing", 1.0);
    assert!(missing.unwrap_err().to_string().contains("at rest"));
}

#[test]
fn an_accepted_row_keeps_its_place_with_the_reason() {
    let build = common::demo("lifted");
    let study = Study::of(&build).unwrap();
    let row = proof(&build)
        .rows
        .into_iter()
        .find(|row| row.grade().is_some())
        .unwrap();
    let accepted = AcceptedCaution {
        caution: row.key(),
        reason: "walking pace only".into(),
        figure: row.factor.map(|f| f + 1.0),
    };
    let after = Edit::Parts(PartsEdit::Accept(accepted.clone()))
        .apply(&build)
        .unwrap();
    let found = proof(&after);
    let same = found.rows.iter().find(|r| r.key() == row.key()).unwrap();
    assert_eq!(same.accepted.as_ref(), Some(&accepted));
    assert!(same.worse_than_accepted());
    let findings = Findings::of(&after, &study).with_proof(&after, &study, &found);
    let caution = findings
        .cautions
        .iter()
        .find(|c| c.key() == row.key())
        .unwrap();
    assert_eq!(caution.kind, CautionKind::Proof(row.part, row.check));
    assert_eq!(caution.accepted(&after), Some(&accepted));
    let without = Edit::Parts(PartsEdit::Accept(AcceptedCaution {
        reason: " ".into(),
        ..accepted
    }))
    .apply(&build);
    assert!(without.unwrap_err().to_string().contains("written reason"));
}

/// '3/8 or 1/2?' is answered by numbers, for this very load.
#[test]
fn threads_stand_side_by_side() {
    let build = common::demo("lifted");
    let rows = thread_comparison(&build, Side::Left);
    let own: Vec<_> = rows.iter().filter(|row| row.own).collect();
    assert_eq!(own.len(), 1);
    let worst = proof(&build)
        .rows
        .into_iter()
        .find(|r| r.check == Check::RackFaceYield)
        .unwrap();
    assert_relative_eq!(
        own[0].factor.unwrap(),
        worst.factor.unwrap(),
        max_relative = 1e-9
    );
    let find = |thread: &str, grade: &str| {
        let row = rows
            .iter()
            .find(|r| r.thread.designation().starts_with(thread) && r.grade.name().contains(grade));
        row.and_then(|row| row.factor).unwrap()
    };
    assert!(find("1/2-20", "grade 5") > 2.0 * find("3/8-24", "grade 5"));
    assert!(find("1/2-20", "grade 8") > find("1/2-20", "grade 5"));
}

/// What a build leaves out is said, and a stouter part stands better.
#[test]
fn what_is_left_out_is_said() {
    let build = common::demo("good");
    let mut bare = build.clone();
    bare.front.parts = trammel_build::AxleParts::default();
    let notes = proof(&bare).notes;
    for about in ["tie rod", "lower arm tubes", "joints"] {
        assert!(notes.iter().any(|note| note.about == about), "{about}");
    }
    let mut stout = build.front.parts.tie_rod.clone();
    stout.tube.as_mut().unwrap().section = Section::Round(1.0, 0.12);
    stout.side_hit = Some(Force::PoundsForce(200.0));
    let after = Edit::Parts(PartsEdit::TieRod(AxleName::Front, Box::new(stout)))
        .apply(&build)
        .unwrap();
    let least = |build: &Build| {
        let rows = proof(build).rows;
        let row = rows.into_iter().find(|r| {
            r.axle == AxleName::Front && r.check == Check::Buckling && r.factor.is_some()
        });
        row.unwrap().factor.unwrap()
    };
    assert!(least(&after) > 1.2 * least(&build));
    // Without a spring nothing carries the wheel, and that is said instead of a figure.
    let mut springless = build;
    springless.front.spring = None;
    springless
        .front
        .parts
        .joints
        .remove(&PointName::SpringChassisMount);
    let found = proof(&springless);
    assert!(
        found
            .notes
            .iter()
            .any(|note| note.text.contains("no spring is given"))
    );
}

/// The comparison at another ride height is that of the build that the lift makes; far up, the steep rods ask more of the thread.
#[test]
fn a_raised_frame_asks_more_of_the_thread() {
    let build = common::demo("good");
    let factor = |rows: &[trammel_analysis::ThreadRow]| {
        let own = rows.iter().find(|row| row.own);
        own.and_then(|row| row.factor).unwrap()
    };
    let raise = Raise {
        by: 100.0,
        reset: Reset::ToeAndCamber,
        stops: Stops::MovedAlong,
    };
    let rows = thread_comparison_raised(&build, &raise, Side::Left).unwrap();
    let after = raised(&build, &raise).unwrap().apply(&build).unwrap();
    assert_eq!(rows, thread_comparison(&after, Side::Left));
    let [now, then] = [
        factor(&thread_comparison(&build, Side::Left)),
        factor(&rows),
    ];
    assert!(then < now, "{then} {now}");
}

/// The room of a rod end between its ears, and before its jam nut, is among the rows; a longer shank makes room.
#[test]
fn a_longer_rod_end_makes_room_for_its_jam_nut() {
    let build = common::demo("good");
    let room = |build: &Build| {
        let rows = proof(build).rows;
        let row = rows.into_iter().find(|row| {
            row.check == Check::NutRoom && row.part == ProofPart::Joint(PointName::TieRodInner)
        });
        row.unwrap().value
    };
    let mut parts = build.front.parts.joints[&PointName::TieRodInner].clone();
    parts.end.as_mut().unwrap().length = Some(2.4375 + 0.25);
    let edit = PartsEdit::Joint(AxleName::Front, PointName::TieRodInner, Box::new(parts));
    let longer = Edit::Parts(edit).apply(&build).unwrap();
    assert_relative_eq!(room(&longer) - room(&build), 0.25 * 25.4, epsilon = 1e-9);
}

/// NIST SP 811, appendix B.8: 1 ksi is 6.894757 MPa, 1 lbf is 4.448222 N.
#[test]
fn rows_speak_the_shops_own_units() {
    let build = common::demos().remove(0);
    let proof = proof(&build);
    let mut seen = [false; 2];
    for row in &proof.rows {
        let (inch, mm) = (
            row.shown(LengthUnit::Inch),
            row.shown(LengthUnit::Millimetre),
        );
        let (n, factor, unit) = match mm.unit {
            "MPa" => (0, 6.894_757, "ksi"),
            "N" => (1, 4.448_222, "lbf"),
            _ => continue,
        };
        seen[n] = true;
        assert_eq!(inch.unit, unit);
        assert_relative_eq!(inch.value * factor, mm.value, max_relative = 1e-6);
        assert_relative_eq!(inch.limit * factor, mm.limit, max_relative = 1e-6);
    }
    assert_eq!(seen, [true, true]);
}
