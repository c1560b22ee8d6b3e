//! Laws that hold for any corner, on corners thrown about at random.
#![allow(
    clippy::unwrap_used,
    clippy::panic,
    reason = "helpers of tests fail by panicking, as tests do"
)]

mod common;

use proptest::prelude::*;
use trammel_geometry::{Corner, Linkage, Vector};
use trammel_tuning::{
    Cause, Cell, Coordinate, MapFrame, Movable, Plane, Scoring, Search, Stations, TieRodJoint,
    ToeCurves, ToeMap, Ways, best_spot, two_line_rule,
};

/// A corner of the common ones with every coordinate off by up to `by` mm.
fn corner(by: f64) -> impl Strategy<Value = Corner> {
    let base = prop::sample::select(common::all().map(|c| c.1).to_vec());
    (
        base,
        prop::collection::vec(-by..by, 27),
        -0.1..0.1_f64,
        -0.1..0.1_f64,
    )
        .prop_map(|(mut c, off, tilt, set_back)| {
            for (coordinate, off) in Coordinate::all().zip(off) {
                *coordinate.of(&mut c) += off;
            }
            c.rack_axis = Some(Vector::new(set_back, 1.0, tilt));
            c
        })
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(64))]

    #[test]
    fn the_map_is_the_plain_solvers(
        corner in corner(40.0),
        inner in any::<bool>(),
        plane in prop::sample::select(vec![Plane::Front, Plane::Side, Plane::Plan]),
        size in 5.0..300.0_f64,
        rack in -45.0..45.0_f64,
        bump in 20.0..160.0_f64,
        droop in -160.0..-20.0_f64,
    ) {
        let joint = if inner { TieRodJoint::Inner } else { TieRodJoint::Outer };
        let stations = Stations::even(droop, bump, 8, vec![0.0, rack]).unwrap();
        let frame = MapFrame::new(plane, joint.place(&corner), [size; 2], [9, 9]).unwrap();
        let Ok(mut map) = ToeMap::new(&corner, joint, frame, &stations) else { return Ok(()) };
        map.complete();
        for row in 0..9 {
            for column in 0..9 {
                let place = frame.place(f64::from(column), f64::from(row));
                let plain = Linkage::new(&joint.moved_to(&corner, place))
                    .ok()
                    .and_then(|l| ToeCurves::of(&l, &stations).ok())
                    .map(|c| c.score());
                match (map.cell(column as usize, row as usize), plain) {
                    (Cell::Scored(a), Some(b)) => {
                        let accuracy = 1e-9_f64.to_radians();
                        prop_assert!((a.largest - b.largest).abs() < accuracy, "{a:?} {b:?}");
                        prop_assert!((a.rms - b.rms).abs() < accuracy, "{a:?} {b:?}");
                        prop_assert!((a.slope - b.slope).abs() < accuracy, "{a:?} {b:?}");
                    }
                    (Cell::Barred(_), None) => {}
                    (a, b) => prop_assert!(false, "{a:?} {b:?}"),
                }
            }
        }
    }

    #[test]
    fn a_search_gives_numbers_and_never_makes_it_worse(corner in corner(60.0), largest in any::<bool>(), outer in any::<bool>()) {
        let joint = if outer { TieRodJoint::Outer } else { TieRodJoint::Inner };
        let scoring = if largest { Scoring::Largest } else { Scoring::Rms };
        let stations = Stations::even(-60.0, 60.0, 7, vec![0.0]).unwrap();
        let search = Search {
            movable: if outer { Movable::Outer } else { Movable::Inner },
            ways: Ways::FrontPlane,
            scoring,
            stations: stations.clone(),
            held: vec![],
            reach: 60.0,
            step: Some(2.0),
        };
        if let Ok(found) = best_spot(&corner, &search) {
            let best = found.exact.score.by(scoring);
            prop_assert!(best.is_finite());
            if let Some(now) = found.now {
                prop_assert!(best <= now.by(scoring) * (1.0 + 1e-12), "{best} {now:?}");
            }
            if let Some(snapped) = found.snapped {
                prop_assert!(snapped.score.by(scoring) >= best * (1.0 - 1e-9), "{found:?}");
            }
        }
        if let Some(cause) = Cause::of(&corner, joint, &stations) {
            prop_assert!(cause.cure().iter().all(|v| v.is_finite()), "{cause:?}");
            prop_assert!(cause.cured.rms <= cause.now.rms * (1.0 + 1e-12), "{cause:?}");
        }
        if let Some(rule) = two_line_rule(&corner) {
            prop_assert!(rule.inner.iter().all(|v| v.is_finite()));
        }
    }
}
