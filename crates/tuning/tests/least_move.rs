//! Where many places are equally good, the one with the least movement, against an independent optimiser.
#![allow(
    clippy::unwrap_used,
    clippy::panic,
    reason = "helpers of tests fail by panicking, as tests do"
)]

mod common;

use common::reference::{self, number};
use trammel_geometry::{Corner, Linkage, Vector};
use trammel_tuning::{Movable, Scoring, Search, Stations, ToeCurves, Ways, best_spot};

const EQUAL_DEG: f64 = 0.001;

fn search(movable: Movable, ways: Ways, scoring: Scoring, stations: &Stations) -> Search {
    Search {
        movable,
        ways,
        scoring,
        stations: stations.clone(),
        held: vec![],
        reach: 75.0,
        step: None,
    }
}

/// One joint every way and both in the front plane, by SciPy's SLSQP and the conditions of a minimum in
/// another implementation.
#[test]
fn the_least_movement_is_the_independent_optimisers() {
    let cases = reference::read("least_move");
    let cases = cases.as_array().unwrap();
    let mut compared = 0;
    for case in cases {
        let name = case["corner"].as_str().unwrap();
        let (corner, stations) = reference::corner(name);
        let (movable, ways) = match case["ways"].as_str().unwrap() {
            "inner free" => (Movable::Inner, Ways::Free),
            "outer free" => (Movable::Outer, Ways::Free),
            _ => (Movable::Both, Ways::FrontPlane),
        };
        for (scoring, block) in [(Scoring::Rms, "rms"), (Scoring::Largest, "largest")] {
            let found = best_spot(&corner, &search(movable, ways, scoring, &stations)).unwrap();
            let least = found.least.by(scoring).to_degrees();
            let want = &case[block];
            if want.is_null() {
                continue;
            }
            let apart = (least - number(&want["least_deg"])).abs();
            assert!(
                apart < 1e-5,
                "{name} {movable:?} {scoring:?}: {least} {}",
                want["least_deg"]
            );
            // Where next to nothing is left, either search may stop a few millionths of a degree early; that shifts what counts as equal.
            if apart > 1e-6 {
                continue;
            }
            compared += 1;
            for (direction, by) in case["directions"]
                .as_array()
                .unwrap()
                .iter()
                .zip(want["moves"].as_array().unwrap())
            {
                let moved = match direction[0].as_str().unwrap() {
                    "inner" => found.exact.tie_rod.inner - corner.tie_rod.inner,
                    _ => found.exact.tie_rod.outer - corner.tie_rod.outer,
                };
                let axis = "xyz".find(direction[1].as_str().unwrap()).unwrap();
                let off = moved[axis] - by.as_f64().unwrap();
                assert!(
                    off.abs() < 0.01,
                    "{name} {movable:?} {scoring:?} {direction}: off {off} mm"
                );
            }
        }
    }
    assert!(compared >= 19, "{compared}");
}

/// A valley without any toe change: every tie rod equal and parallel to a parallelogram's arms. With the inner joint set
/// off, moving both by half as much each way is the shortest cure.
#[test]
fn a_parallelogram_is_cured_by_half_a_move_of_each_joint() {
    let mut corner = common::parallelogram();
    let off = Vector::new(0.0, 3.0, -8.0);
    corner.tie_rod.inner += off;
    let stations = Stations::even(-80.0, 100.0, 13, vec![0.0]).unwrap();
    for scoring in [Scoring::Rms, Scoring::Largest, Scoring::Slope] {
        let found = best_spot(
            &corner,
            &search(Movable::Both, Ways::FrontPlane, scoring, &stations),
        )
        .unwrap();
        let inner = found.exact.tie_rod.inner - corner.tie_rod.inner;
        let outer = found.exact.tie_rod.outer - corner.tie_rod.outer;
        assert!(found.least.by(scoring) < 1e-9, "{:?}", found.least);
        if scoring != Scoring::Slope {
            // The thousandth of a degree that is given away is worth a little over a tenth of a millimetre here.
            assert!((inner + 0.5 * off).norm() < 0.3, "{scoring:?} {inner}");
            assert!((outer - 0.5 * off).norm() < 0.3, "{scoring:?} {outer}");
        }
        let way = inner.norm_squared() + outer.norm_squared();
        assert!(way <= 0.5 * off.norm_squared() + 1e-6, "{scoring:?} {way}");
    }
}

#[test]
fn what_is_as_good_as_it_gets_stays_where_it_is() {
    let corner = common::parallelogram();
    let stations = Stations::even(-80.0, 100.0, 13, vec![0.0]).unwrap();
    for (movable, ways) in [
        (Movable::Both, Ways::FrontPlane),
        (Movable::Both, Ways::Free),
        (Movable::Inner, Ways::Free),
        (Movable::Outer, Ways::Free),
    ] {
        let found =
            best_spot(&corner, &search(movable, ways, Scoring::Largest, &stations)).unwrap();
        assert_eq!(found.exact.tie_rod, corner.tie_rod, "{movable:?} {ways:?}");
    }
}

/// What is given away is a thousandth of a degree and no more, and whatever moves less scores worse than that.
#[test]
fn little_is_given_away_and_nothing_shorter_does() {
    for (name, corner) in common::all() {
        let corner = off_its_spot(&corner);
        for racks in [vec![0.0], vec![-25.0, 0.0, 25.0]] {
            let stations = Stations::even(-80.0, 100.0, 11, racks).unwrap();
            for scoring in [Scoring::Rms, Scoring::Largest] {
                for (movable, ways) in [
                    (Movable::Both, Ways::FrontPlane),
                    (Movable::Inner, Ways::Free),
                ] {
                    let found =
                        best_spot(&corner, &search(movable, ways, scoring, &stations)).unwrap();
                    let given =
                        (found.exact.score.by(scoring) - found.least.by(scoring)).to_degrees();
                    assert!(
                        given < EQUAL_DEG * 1.001,
                        "{name} {scoring:?} {movable:?}: {given}"
                    );
                    let plane = search(Movable::Inner, Ways::FrontPlane, scoring, &stations);
                    let plane = best_spot(&corner, &plane).unwrap();
                    let equal = (plane.exact.score.by(scoring) - found.least.by(scoring))
                        .to_degrees()
                        < EQUAL_DEG;
                    let way = |rod: &trammel_geometry::TieRod| {
                        ((rod.inner - corner.tie_rod.inner).norm_squared()
                            + (rod.outer - corner.tie_rod.outer).norm_squared())
                        .sqrt()
                    };
                    assert!(
                        !equal || way(&found.exact.tie_rod) <= way(&plane.exact.tie_rod) + 1e-3,
                        "{name} {scoring:?} {movable:?} {:?}: the plane's spot is as good and nearer: {found:?} {plane:?}",
                        stations.racks()
                    );
                }
            }
        }
    }
}

fn off_its_spot(corner: &Corner) -> Corner {
    let mut moved = *corner;
    moved.tie_rod.inner += Vector::new(0.0, 9.0, -7.0);
    moved
}

#[test]
fn whole_steps_of_both_joints_are_whole_and_near() {
    let (corner, stations) = reference::corner("corner_02_rod_ahead");
    let step = 25.4 / 16.0;
    for (movable, ways) in [
        (Movable::Both, Ways::FrontPlane),
        (Movable::Inner, Ways::Free),
        (Movable::Both, Ways::Free),
    ] {
        let mut s = search(movable, ways, Scoring::Largest, &stations);
        s.step = Some(step);
        let found = best_spot(&corner, &s).unwrap();
        let snapped = found.snapped.unwrap();
        let (exact, whole) = (found.exact.tie_rod, snapped.tie_rod);
        for axis in 0..3 {
            for (e, w, o) in [
                (
                    exact.inner[axis],
                    whole.inner[axis],
                    corner.tie_rod.inner[axis],
                ),
                (
                    exact.outer[axis],
                    whole.outer[axis],
                    corner.tie_rod.outer[axis],
                ),
            ] {
                let steps = w / step;
                assert!((steps - steps.round()).abs() < 1e-9 || w == o, "{w}");
                assert!((e - w).abs() <= 5.0 * step, "{movable:?} {ways:?}: {e} {w}");
            }
        }
        let nearest = |p: trammel_geometry::Point, o: trammel_geometry::Point| {
            let axis = |i: usize| {
                if p[i] == o[i] {
                    p[i]
                } else {
                    (p[i] / step).round() * step
                }
            };
            trammel_geometry::Point::new(axis(0), axis(1), axis(2))
        };
        let plainly = trammel_geometry::TieRod {
            inner: nearest(exact.inner, corner.tie_rod.inner),
            outer: nearest(exact.outer, corner.tie_rod.outer),
        };
        let linkage = Linkage::new(&Corner {
            tie_rod: plainly,
            ..corner
        })
        .unwrap();
        let plain = ToeCurves::of(&linkage, &stations).unwrap().score().largest;
        assert!(snapped.score.largest <= plain, "{snapped:?} {plain}");
    }
}
