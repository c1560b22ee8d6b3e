//! Planted errors are found and the right move is named, on both layouts.

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    reason = "a test stops where it fails"
)]

mod common;

use common::kart::{Noise, ROD, Shop, adjusters, judged, largest, misbuilt, read, tolerances};
use trammel_geometry::{Corner, Vector};
use trammel_setup::{
    Adjuster, AdjusterKind, Flip, JointShift, Question, ReadCause, Round, Shared, advise,
    advise_axle, flip_doubt, learn, moved, turns_and_flats,
};
use trammel_specimens::{ahead, behind};
use trammel_tuning::{Hardpoint, HeightError, LengthError, RodSide};

const FINE: Shop = Shop {
    build: 0.8,
    reading: 1e-5,
    travel: 0.0,
    moving: 0.0,
    limit: 2e-3,
};

fn readings_of(truth: &Corner) -> trammel_setup::ToeReadings {
    read(
        truth,
        &Shop {
            reading: 1e-6,
            ..FINE
        },
        &mut Noise::new(3),
    )
}

#[test]
fn planted_errors_are_named_on_both_layouts() {
    for (drawn, side) in [(behind(), RodSide::Behind), (ahead(), RodSide::Ahead)] {
        for (off, height, length) in [
            (
                Vector::new(0.0, 0.0, 4.0),
                Some(HeightError::InnerTooHigh),
                None,
            ),
            (
                Vector::new(0.0, 0.0, -4.0),
                Some(HeightError::InnerTooLow),
                None,
            ),
            (
                Vector::new(0.0, -12.0, 1.0),
                None,
                Some(LengthError::TooLong),
            ),
            (
                Vector::new(0.0, 12.0, -1.0),
                None,
                Some(LengthError::TooShort),
            ),
        ] {
            let mut truth = drawn;
            truth.tie_rod.inner += off;
            let cause = ReadCause::of(&drawn, &readings_of(&truth)).unwrap();
            assert_eq!(cause.side, side);
            if height.is_some() {
                assert_eq!(cause.height(), height, "{off:?} {cause:?}");
                assert!(
                    (cause.height_error.value - off.z).abs() < 0.8,
                    "{off:?} {cause:?}"
                );
            }
            if length.is_some() {
                assert_eq!(cause.length(), length, "{off:?} {cause:?}");
                assert!(
                    (cause.length_error.value + off.y).abs() < 3.0,
                    "{off:?} {cause:?}"
                );
            }
        }
    }
}

fn best(
    drawn: &Corner,
    truth: &Corner,
    adjusters: &[Adjuster],
    limit: f64,
) -> trammel_setup::Advice {
    let round = Round {
        shift: JointShift::NONE,
        readings: readings_of(truth),
    };
    let learned = learn(drawn, &tolerances(2.0), &[round]).unwrap();
    let stations = judged();
    let question = Question {
        learned: &learned,
        now: JointShift::NONE,
        adjusters,
        stations: &stations,
        limit,
        rod: ROD,
    };
    advise(&question).unwrap()
}

#[test]
fn a_high_inner_joint_is_cured_by_one_kind_of_move() {
    for drawn in [behind(), ahead()] {
        let mut truth = drawn;
        truth.tie_rod.inner.z += 3.175;
        let advice = best(&drawn, &truth, &adjusters(), 3e-3);
        assert!(advice.cured && advice.reweld.is_none());
        assert_eq!(advice.best.moves.len(), 1, "{:?}", advice.best.moves);
        let m = advice.best.moves[0];
        match m.kind {
            AdjusterKind::RackShim => assert!(m.steps < 0, "the inner joint comes down: {m}"),
            AdjusterKind::OuterWasher { .. } => assert!(m.steps > 0, "or the outer goes up: {m}"),
            AdjusterKind::RackEnd { .. } => panic!("a rack end does not cure a height: {m}"),
        }
        let after = largest(&advice.best.shift.on(&truth));
        assert!(after < 3e-3 && after < largest(&truth), "{after}");
        assert!(
            (after - advice.best.largest).abs() < 3e-4,
            "what it promises it keeps"
        );
    }
}

#[test]
fn a_long_rod_is_cured_by_the_rack_end() {
    for drawn in [behind(), ahead()] {
        let mut truth = drawn;
        truth.tie_rod.inner.y -= 7.62;
        let advice = best(&drawn, &truth, &adjusters(), 1.5e-3);
        let rack = advice
            .best
            .moves
            .iter()
            .find(|m| matches!(m.kind, AdjusterKind::RackEnd { .. }));
        let rack = rack.unwrap_or_else(|| panic!("{:?}", advice.best.moves));
        assert!(rack.steps > 0, "out, towards the wheel: {rack}");
        assert!(advice.cured, "{advice:?}");
        assert!(advice.best.rod_longer < 0.0, "and the rod shorter");
        assert!(largest(&advice.best.shift.on(&truth)) < 1.6e-3);
    }
}

#[test]
fn without_an_adjuster_that_helps_it_says_where_to_weld() {
    let drawn = behind();
    let mut truth = drawn;
    truth.tie_rod.inner += Vector::new(0.0, 0.0, 12.0);
    let only = [Adjuster::rack_end(1.27, 1.0, 1.0).unwrap()];
    let advice = best(&drawn, &truth, &only, 1e-3);
    assert!(!advice.cured);
    let weld = advice.reweld.unwrap();
    assert!(weld.by.z < -5.0, "down: {weld:?}");
    truth.tie_rod.inner += weld.by;
    assert!(largest(&truth) < 2e-3, "{}", largest(&truth));
}

#[test]
fn a_good_kart_is_left_alone() {
    let drawn = behind();
    let advice = best(&drawn, &drawn, &adjusters(), 5e-3);
    assert!(
        advice.best.moves.is_empty() && advice.best.confidence > 0.9,
        "{:?}",
        advice.best
    );
}

#[test]
fn learning_predicts_the_next_readings_better_than_the_drawing() {
    let mut better = 0;
    for seed in 0..20 {
        let mut noise = Noise::new(seed);
        let drawn = behind();
        let truth = misbuilt(&drawn, 0.8, &mut noise);
        let shop = Shop {
            reading: 1e-4,
            ..FINE
        };
        let readings = read(&truth, &shop, &mut noise);
        let learned = learn(
            &drawn,
            &tolerances(0.8),
            &[Round {
                shift: JointShift::NONE,
                readings,
            }],
        )
        .unwrap();
        assert!(
            learned.settled && learned.misfit < 2.5,
            "{}",
            learned.misfit
        );
        // A washer that was not read before.
        let shift = JointShift {
            outer: Vector::new(0.0, 0.0, 1.5875),
            ..JointShift::NONE
        };
        let off = |guess: &Corner| {
            let curve = |c: &Corner| {
                let linkage = trammel_geometry::Linkage::new(&shift.on(c)).unwrap();
                trammel_tuning::ToeCurves::of(&linkage, &judged()).unwrap()
            };
            let (a, b) = (curve(guess), curve(&truth));
            a.changes()
                .zip(b.changes())
                .fold(0.0_f64, |m, (a, b)| m.max((a - b).abs()))
        };
        better += u32::from(off(&learned.corner) < 0.3 * off(&drawn));
    }
    assert!(better >= 18, "{better} of 20");
}

/// The prior is the posterior of no readings, and readings never make a coordinate less known.
#[test]
fn readings_only_ever_narrow() {
    let drawn = behind();
    let none = learn(&drawn, &tolerances(0.8), &[]).unwrap();
    assert!(
        none.errors
            .iter()
            .all(|e| e.error == 0.0 && (e.after - 0.8).abs() < 1e-9)
    );
    assert_eq!(none.told.figures, 0);
    let round = Round {
        shift: JointShift::NONE,
        readings: readings_of(&drawn),
    };
    let some = learn(&drawn, &tolerances(0.8), &[round]).unwrap();
    assert!(some.errors.iter().all(|e| e.after <= e.before + 1e-9));
    assert!((2..=6).contains(&some.told.figures), "{:?}", some.told);
    let heights = some.told.alike.iter().find(|g| {
        g.iter().any(|c| c.point == Hardpoint::TieRodInner)
            && g.iter().any(|c| c.point == Hardpoint::TieRodOuter)
    });
    assert!(
        heights.is_some(),
        "the two joints' heights can't be told apart: {:?}",
        some.told
    );
}

#[test]
fn a_sheet_with_in_and_out_swapped_is_asked_about() {
    let drawn = behind();
    let mut off = drawn;
    off.tie_rod.inner.z += 20.0;
    // The drawing itself has a clear slope here, so a mirrored sheet stands out.
    let right = Round {
        shift: JointShift::NONE,
        readings: readings_of(&off),
    };
    assert_eq!(flip_doubt(&off, &tolerances(0.8), &right), None);
    let mut mirrored = drawn;
    mirrored.tie_rod.inner.z -= 20.0;
    let wrong = Round {
        shift: JointShift::NONE,
        readings: readings_of(&mirrored),
    };
    let doubt = flip_doubt(&off, &tolerances(0.8), &wrong);
    assert!(
        matches!(doubt, Some(Flip::InAndOut | Flip::UpAndDown)),
        "{doubt:?}"
    );
}

#[test]
fn a_shared_shim_serves_both_sides() {
    let drawn = behind();
    let mut truth = drawn;
    truth.tie_rod.inner.z += 2.4;
    let round = Round {
        shift: JointShift::NONE,
        readings: readings_of(&truth),
    };
    let learned = learn(&drawn, &tolerances(2.0), &[round]).unwrap();
    let stations = judged();
    let own = [Adjuster::outer_washer(1.5875, Vector::z(), 4, 0).unwrap()];
    let question = Question {
        learned: &learned,
        now: JointShift::NONE,
        adjusters: &own,
        stations: &stations,
        limit: 2e-3,
        rod: ROD,
    };
    let shim = Shared(Adjuster::rack_shim(0.79375, 0, 4).unwrap());
    let both = advise_axle(&question, &question, Some(shim)).unwrap();
    assert!(both.shared_steps < 0, "{both:?}");
    assert_eq!(
        both.moved(),
        1,
        "one shim pack instead of washers on both sides"
    );
    let without = advise_axle(&question, &question, None).unwrap();
    assert!(without.moved() >= 2);
}

#[test]
fn as_built_against_as_drawn_lists_what_matters_first() {
    let drawn = behind();
    let mut built = drawn;
    built.tie_rod.inner.z += 2.0;
    built.lower_arm.front_pivot.x += 2.0;
    let list = moved(&drawn, &built, &judged(), 0.01);
    assert_eq!(list.len(), 2);
    assert_eq!(list[0].point, Hardpoint::TieRodInner);
    assert!(list[0].toe_change.unwrap().abs() > 2e-3);
    assert!(list[1].toe_change.unwrap().abs() < 1e-3);
}

#[test]
fn turns_are_said_in_turns_and_flats() {
    for (length, said) in [
        (1.27, "1 turn"),
        (-2.54, "2 turns"),
        (1.27 * 7.0 / 6.0, "1 turn and 1 flat"),
        (1.27 * 2.5, "2 turns and 3 flats"),
        (0.21, "1 flat"),
        (0.0, "0 flats"),
    ] {
        assert_eq!(turns_and_flats(length, 1.27).to_string(), said);
    }
    assert_eq!(turns_and_flats(f64::NAN, 1.27).to_string(), "0 flats");
}

#[test]
fn adjusters_that_make_no_sense_are_refused() {
    assert!(Adjuster::rack_end(0.0, 1.0, 1.0).is_err());
    assert!(Adjuster::rack_end(1.27, f64::NAN, 1.0).is_err());
    assert!(Adjuster::outer_washer(1.0, Vector::zeros(), 1, 1).is_err());
    assert!(Adjuster::rack_shim(1.0, 1000, 0).is_err());
    let used = Adjuster::rack_shim(1.0, 3, 1).unwrap().after(2);
    assert_eq!(used.range(), -3..=1);
}
