//! Castor, static toe, turns and weights.

mod common;

use nalgebra::{Rotation3, Unit};
use trammel_geometry::{Linkage, Vector};
use trammel_setup::{
    CastorFault, CastorSweep, CornerWeights, TurnsFault, castor_factor, difference_of_toe,
    toe_of_difference, turn_effect, turns_for_toe,
};
use trammel_specimens::{ahead, behind};

/// The trade's table: 1.55 at 20 degrees each way, 2 at 15, 2.92 at 10 (workshop page).
#[test]
fn castor_factors_as_published() {
    for (degrees, factor) in [(20.0_f64, 1.55), (15.0, 2.0), (10.0, 2.92)] {
        let found = castor_factor(degrees.to_radians());
        assert!((found - factor).abs() < 0.0062, "{degrees}: {found}");
    }
}

/// An upright really turned about its steering axis, its camber read as a gauge reads it, gives back the castor it was drawn with.
#[test]
fn a_real_sweep_gives_the_drawn_castor() {
    let corner = behind();
    let linkage = Linkage::new(&corner).unwrap();
    let castor = linkage.measures(&linkage.pose(0.0, 0.0).unwrap()).castor;
    let (upper, lower) = (corner.upper_arm.ball_joint, corner.lower_arm.ball_joint);
    let axis = Unit::new_normalize(upper - lower);
    for degrees in [10.0_f64, 15.0, 20.0] {
        let steered = degrees.to_radians();
        // The turn about the steering axis that swings the wheel by this much over the ground, halved in until it is met.
        let camber = |toe: f64| {
            let spin = |turn: f64| Rotation3::from_axis_angle(&axis, turn) * Vector::y();
            let (mut low, mut high) = (-0.7, 0.7);
            for _ in 0..60 {
                let turn = 0.5 * (low + high);
                let there = spin(turn);
                if there.x.atan2(there.y) > toe {
                    low = turn;
                } else {
                    high = turn;
                }
            }
            let there = spin(0.5 * (low + high));
            assert!((there.x.atan2(there.y) - toe).abs() < 1e-9);
            -there.z.asin()
        };
        let sweep = CastorSweep {
            camber_toed_in: camber(steered),
            camber_toed_out: camber(-steered),
            steered,
            deviation: 0.001,
        };
        let found = sweep.castor().unwrap();
        assert!(
            (found - castor).abs() < 0.005 * castor,
            "{degrees}: {found} {castor}"
        );
        let ratio = sweep.by_factor().unwrap() / found.tan();
        assert!(
            (ratio - 1.0 / steered.cos()).abs() < 2e-3,
            "the factors read 1/cos too much: {ratio}"
        );
    }
}

#[test]
fn a_sweep_out_of_range_is_refused() {
    let sweep = CastorSweep {
        camber_toed_in: 0.0,
        camber_toed_out: 0.0,
        steered: 0.02,
        deviation: 0.001,
    };
    assert!(matches!(sweep.castor(), Err(CastorFault::Steered(_))));
    let sweep = CastorSweep {
        camber_toed_in: f64::NAN,
        steered: 0.3,
        ..sweep
    };
    assert!(matches!(sweep.castor(), Err(CastorFault::Camber(_))));
}

/// Printed: 1/16 in on 26 in is 0.138 degrees; 0.15 degrees on 24 in is 0.0628 in (workshop pages).
#[test]
fn toe_as_a_difference() {
    let toe = toe_of_difference(0.0625, 26.0).unwrap().to_degrees();
    assert!((toe - 0.138).abs() < 5e-4, "{toe}");
    assert!((difference_of_toe(0.15_f64.to_radians(), 24.0) - 0.0628).abs() < 5e-5);
    assert_eq!(toe_of_difference(1.0, 0.0), None);
    assert_eq!(toe_of_difference(f64::NAN, 500.0), None);
}

/// A turn of 1/2-20 is about 0.75 degrees with a 95 mm steering arm (own sums of the trade page), a longer rod toes in behind and out ahead.
#[test]
fn turns_do_what_they_say() {
    for (corner, sign) in [(behind(), 1.0), (ahead(), -1.0)] {
        let e = turn_effect(&corner, 1.27, 533.0).unwrap();
        assert!(e.per_turn.signum() == sign, "{e:?}");
        assert!((e.per_turn.abs().to_degrees() - 0.75).abs() < 0.08, "{e:?}");
        assert!((e.per_turn / e.per_flat - 6.0).abs() < 0.05);
        assert!((e.per_turn_at_tyre.abs() - 7.0).abs() < 0.7, "{e:?}");
        let wanted = turns_for_toe(&corner, 0.0, e.per_turn, 1.27).unwrap();
        assert!((wanted.turns - 1.0).abs() < 1e-7, "{wanted:?}");
    }
    assert!(matches!(
        turn_effect(&behind(), 0.0, 533.0),
        Err(TurnsFault::Thread(_))
    ));
    assert!(matches!(
        turns_for_toe(&behind(), 0.0, f64::NAN, 1.27),
        Err(TurnsFault::OutOfReach(_))
    ));
}

#[test]
fn weights_share_out() {
    let w = CornerWeights {
        front_left: 80.0,
        front_right: 100.0,
        rear_left: 120.0,
        rear_right: 100.0,
    };
    let s = w.shares().unwrap();
    assert!((s.total - 400.0).abs() < 1e-12 && (s.front - 0.45).abs() < 1e-12);
    assert!((s.left - 0.5).abs() < 1e-12 && (s.cross - 0.55).abs() < 1e-12);
    assert_eq!(
        CornerWeights {
            front_left: -1.0,
            ..w
        }
        .shares(),
        None
    );
    assert_eq!(
        CornerWeights {
            front_left: f64::NAN,
            ..w
        }
        .shares(),
        None
    );
}
