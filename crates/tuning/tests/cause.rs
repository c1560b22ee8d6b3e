//! Height and length errors planted and found again, on both layouts; what adjusters do.
#![allow(
    clippy::unwrap_used,
    clippy::panic,
    reason = "helpers of tests fail by panicking, as tests do"
)]

mod common;

use trammel_geometry::{Corner, Linkage, Vector};
use trammel_tuning::{
    Adjustment, Cause, EffectFault, HeightError, LengthError, Movable, RodSide, Scoring, Search,
    Split, Stations, TieRodJoint, ToeCurves, Ways, best_spot, effect,
};

const INCH: f64 = 25.4;

fn stations() -> Stations {
    Stations::even(-100.0, 100.0, 21, vec![0.0]).unwrap()
}

/// A corner whose inner joint is at the best spot.
fn tuned(corner: &Corner) -> Corner {
    tuned_by(corner, Movable::Inner)
}

/// The same by its outer joint.
fn tuned_outer(corner: &Corner) -> Corner {
    tuned_by(corner, Movable::Outer)
}

fn tuned_by(corner: &Corner, movable: Movable) -> Corner {
    let found = best_spot(
        corner,
        &Search {
            movable,
            ways: Ways::FrontPlane,
            scoring: Scoring::Rms,
            stations: stations(),
            held: vec![],
            reach: 80.0,
            step: None,
        },
    )
    .unwrap();
    Corner {
        tie_rod: found.exact.tie_rod,
        ..*corner
    }
}

fn curve(corner: &Corner) -> Vec<(f64, f64)> {
    let curves = ToeCurves::of(&Linkage::new(corner).unwrap(), &stations()).unwrap();
    stations()
        .travels()
        .iter()
        .copied()
        .zip(curves.curves[0].changes.iter().copied())
        .collect()
}

fn planted(corner: &Corner, high: f64, long: f64) -> Corner {
    let lengthwise = (corner.tie_rod.inner - corner.tie_rod.outer).normalize();
    let up = (Vector::z() - lengthwise * lengthwise.z).normalize();
    let mut planted = *corner;
    planted.tie_rod.inner += up * high + lengthwise * long;
    planted
}

#[test]
fn planted_errors_are_found_again_on_both_layouts() {
    for (side, corner) in [
        (RodSide::Behind, common::behind()),
        (RodSide::Ahead, common::ahead()),
    ] {
        let tuned = tuned(&corner);
        assert_eq!(RodSide::of(&tuned), side);
        for (high, long) in [
            (5.0, 0.0),
            (-5.0, 0.0),
            (0.0, 12.0),
            (0.0, -12.0),
            (4.0, -9.0),
            (-3.0, 15.0),
        ] {
            let planted = planted(&tuned, high, long);
            let cause = Cause::of(&planted, TieRodJoint::Inner, &stations()).unwrap();
            // The planted move's own directions turn a little with the tie rod.
            assert!(
                (cause.height_error - high).abs() < 0.3,
                "{side} {high} {long}: {cause:?}"
            );
            assert!(
                (cause.length_error - long).abs() < 0.3,
                "{side} {high} {long}: {cause:?}"
            );
            let cured = planted.tie_rod.inner + cause.cure();
            assert!(
                (cured - tuned.tie_rod.inner).norm() < 0.05,
                "{side}: {cured}"
            );
            assert!(cause.cured.rms < 0.05 * cause.now.rms);
        }
    }
}

/// The same at the outer joint: what is planted there is found there, and what it is called agrees with the reading on
/// either side of the steering axis.
#[test]
fn errors_planted_at_the_outer_joint_are_found_there() {
    for corner in [common::behind(), common::ahead()] {
        let tuned = tuned_outer(&corner);
        let side = RodSide::of(&tuned);
        let lengthwise = (tuned.tie_rod.outer - tuned.tie_rod.inner).normalize();
        let up = (Vector::z() - lengthwise * lengthwise.z).normalize();
        for (high, long) in [
            (5.0, 0.0),
            (-5.0, 0.0),
            (0.0, 9.0),
            (0.0, -9.0),
            (4.0, -7.0),
        ] {
            let mut planted = tuned;
            planted.tie_rod.outer += up * high + lengthwise * long;
            let cause = Cause::of(&planted, TieRodJoint::Outer, &stations()).unwrap();
            assert!((cause.height_error - high).abs() < 0.3, "{side} {cause:?}");
            assert!((cause.length_error - long).abs() < 0.3, "{side} {cause:?}");
            let cured = planted.tie_rod.outer + cause.cure();
            assert!(
                (cured - tuned.tie_rod.outer).norm() < 0.05,
                "{side}: {cured}"
            );
            let split = Split::of(&curve(&planted)).unwrap();
            if high != 0.0 && long == 0.0 {
                assert_eq!(
                    cause.height(1.0),
                    side.height_error(&split),
                    "{side} {high}"
                );
                let too_high = HeightError::InnerTooLow.cure(TieRodJoint::Outer);
                assert_eq!(too_high, "lower the outer joint");
                assert_eq!(
                    cause.height(1.0) == Some(HeightError::InnerTooLow),
                    high > 0.0
                );
            }
            if high == 0.0 {
                assert_eq!(
                    cause.length(1.0),
                    side.length_error(&split),
                    "{side} {long}"
                );
                assert_eq!(cause.length(1.0) == Some(LengthError::TooLong), long > 0.0);
            }
        }
    }
}

/// The diagnosis table of the trade notes (computed there with a separate small rigid model): which reading means
/// what, on either side.
#[test]
fn what_a_reading_means_flips_with_the_layout() {
    for corner in [common::behind(), common::ahead()] {
        let tuned = tuned(&corner);
        let side = RodSide::of(&tuned);
        let of = |high, long| Split::of(&curve(&planted(&tuned, high, long))).unwrap();
        let (high, low) = (of(5.0, 0.0), of(-5.0, 0.0));
        let toe_in_in_bump = |s: &Split| s.slope > 0.0;
        assert_eq!(toe_in_in_bump(&high), side == RodSide::Behind);
        assert_eq!(toe_in_in_bump(&low), side == RodSide::Ahead);
        assert_eq!(side.height_error(&high), Some(HeightError::InnerTooHigh));
        assert_eq!(side.height_error(&low), Some(HeightError::InnerTooLow));
        let (long, short) = (of(0.0, 15.0), of(0.0, -15.0));
        assert_eq!(long.bowl > 0.0, side == RodSide::Behind, "toe-in both ways");
        assert_eq!(side.length_error(&long), Some(LengthError::TooLong));
        assert_eq!(side.length_error(&short), Some(LengthError::TooShort));
        for (high, long) in [(5.0, 0.0), (-5.0, 0.0), (0.0, 15.0), (0.0, -15.0)] {
            let planted = planted(&tuned, high, long);
            let split = Split::of(&curve(&planted)).unwrap();
            let cause = Cause::of(&planted, TieRodJoint::Inner, &stations()).unwrap();
            if high != 0.0 {
                assert_eq!(cause.height(1.0), side.height_error(&split));
                assert_eq!(cause.length(1.0), None);
            } else {
                assert_eq!(cause.length(1.0), side.length_error(&split));
                assert_eq!(cause.height(1.0), None);
            }
        }
        assert!(side.rule().contains(if side == RodSide::Behind {
            "behind"
        } else {
            "ahead"
        }));
    }
}

/// Sizes from the trade notes (separate model, tie rod 340 mm, steering arm 95 mm): 5 mm of inner height is 0.21 deg
/// per 25 mm, 20 mm of length 0.5 deg at 100 mm.
#[test]
fn sizes_are_those_of_the_trade_notes() {
    let tuned = tuned(&common::behind());
    let high = Split::of(&curve(&planted(&tuned, 5.0, 0.0))).unwrap();
    let per_25 = high.slope.to_degrees() * 25.0 / high.reach;
    assert!((per_25 - 0.21).abs() < 0.02, "{per_25}");
    let long = Split::of(&curve(&planted(&tuned, 0.0, 20.0))).unwrap();
    assert!(
        (long.bowl.to_degrees() - 0.5).abs() < 0.1,
        "{}",
        long.bowl.to_degrees()
    );
}

#[test]
fn a_split_needs_both_ways() {
    assert!(Split::of(&[]).is_none());
    assert!(Split::of(&[(0.0, 0.0), (10.0, 0.1)]).is_none());
    let split = Split::of(&[(-20.0, 0.1), (0.0, 0.0), (10.0, 0.3)]).unwrap();
    assert!((split.reach - 10.0).abs() < 1e-12);
    assert!((split.slope - 0.125).abs() < 1e-12 && (split.bowl - 0.175).abs() < 1e-12);
}

/// One turn of a half-inch 20-thread rod end: 0.75 deg of static toe by the trade notes, and next to nothing on the
/// curve.
#[test]
fn the_tie_rods_adjuster_sets_static_toe_and_does_not_cure_toe_change() {
    for corner in [common::behind(), common::ahead()] {
        let bad = planted(&tuned(&corner), 5.0, 0.0);
        let turn = effect(&bad, Adjustment::RodLength(INCH / 20.0), &stations()).unwrap();
        let sign = if RodSide::of(&bad) == RodSide::Behind {
            -1.0
        } else {
            1.0
        };
        // Behind, a longer rod pushes the back of the wheel out: toe-in. Toe-in is positive.
        assert!(
            (turn.static_toe.to_degrees() + sign * 0.75).abs() < 0.08,
            "{}",
            turn.static_toe.to_degrees()
        );
        let before = turn.before.score().largest;
        assert!((turn.as_turned.score().largest - before).abs() < 0.1 * before);
        assert_eq!(turn.toe_reset, turn.before);
        let shim = effect(&bad, Adjustment::RackShim(-INCH / 16.0), &stations()).unwrap();
        assert!(shim.toe_reset.score().largest < 0.75 * before);
        // 1/16 in shim = about 0.066 deg per inch by the trade notes.
        let per_inch =
            (shim.toe_reset.curves[0].slope - shim.before.curves[0].slope).to_degrees() * INCH;
        assert!((per_inch.abs() - 0.066).abs() < 0.01, "{per_inch}");
        let washer = effect(
            &bad,
            Adjustment::OuterWasher(INCH / 16.0, Vector::z()),
            &stations(),
        )
        .unwrap();
        assert!(washer.toe_reset.score().largest < 0.8 * before);
    }
}

/// One rack-end turn out and one tie-rod turn in, 1.27 mm: 0.034 deg of bowl at 100 mm by the trade notes.
#[test]
fn the_rack_end_changes_the_bowl_once_toe_is_put_back() {
    let tuned = tuned(&common::behind());
    let turn = effect(&tuned, Adjustment::RackEnd(INCH / 20.0), &stations()).unwrap();
    let bowl = |c: &ToeCurves| {
        let c = &c.curves[0].changes;
        0.5 * (c[0] + c[20]).to_degrees()
    };
    let change = bowl(&turn.toe_reset) - bowl(&turn.before);
    assert!((change.abs() - 0.034).abs() < 0.006, "{change}");
    assert!(turn.static_toe.to_degrees().abs() > 0.7);
    // A rack end screwed in is the mirror of one screwed out.
    let back = effect(&tuned, Adjustment::RackEnd(-INCH / 20.0), &stations()).unwrap();
    assert!((back.static_toe + turn.static_toe).abs() < 0.02 * turn.static_toe.abs());
}

#[test]
fn adjustments_without_sense_are_refused() {
    let corner = common::behind();
    for a in [
        Adjustment::RackEnd(f64::NAN),
        Adjustment::RackShim(f64::INFINITY),
        Adjustment::OuterWasher(1.0, Vector::zeros()),
        Adjustment::OuterWasher(1.0, Vector::new(f64::NAN, 0.0, 0.0)),
        Adjustment::RodLength(f64::NAN),
    ] {
        assert_eq!(
            effect(&corner, a, &stations()),
            Err(EffectFault::NotUsable),
            "{a:?}"
        );
    }
    let fixed = Corner {
        rack_axis: None,
        ..corner
    };
    assert_eq!(
        effect(&fixed, Adjustment::RackEnd(1.0), &stations()),
        Err(EffectFault::NoRack)
    );
    assert_eq!(
        effect(&corner, Adjustment::RodLength(300.0), &stations()),
        Err(EffectFault::NotFitted)
    );
    let gone = TieRodJoint::Inner.moved_to(&corner, corner.tie_rod.outer);
    assert!(matches!(
        effect(&gone, Adjustment::RackShim(0.0), &stations()),
        Err(EffectFault::NotBuilt(_))
    ));
    let mut flat = corner;
    flat.tie_rod.inner = flat.tie_rod.outer;
    assert!(Cause::of(&flat, TieRodJoint::Inner, &stations()).is_none());
}
