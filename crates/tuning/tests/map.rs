//! The map against posing every cell's corner, and what must hold of any map.
#![allow(
    clippy::unwrap_used,
    clippy::panic,
    reason = "helpers of tests fail by panicking, as tests do"
)]

mod common;

use trammel_geometry::{Corner, Linkage, Point, Vector, mirror_point, mirror_vector};
use trammel_tuning::{
    Cell, MapFrame, Plane, Reason, Score, Scoring, Stations, TieRodJoint, ToeCurves, ToeMap,
};

/// What the map promises, rad.
const ACCURACY: f64 = 1e-9 * std::f64::consts::PI / 180.0;

fn stations(racks: &[f64]) -> Stations {
    Stations::even(-100.0, 125.0, 21, racks.to_vec()).unwrap()
}

fn map(
    corner: &Corner,
    joint: TieRodJoint,
    plane: Plane,
    size: f64,
    stations: &Stations,
) -> ToeMap {
    let frame = MapFrame::new(plane, joint.place(corner), [size; 2], [25, 25]).unwrap();
    ToeMap::new(corner, joint, frame, stations).unwrap()
}

fn plainly(corner: &Corner, map: &ToeMap, column: usize, row: usize, stations: &Stations) -> Cell {
    let place = map.frame().place(column as f64, row as f64);
    match Linkage::new(&map.joint().moved_to(corner, place)) {
        Err(fault) => Cell::Barred(Reason::NotBuilt(fault)),
        Ok(linkage) => match ToeCurves::of(&linkage, stations) {
            Ok(curves) => Cell::Scored(curves.score()),
            Err(end) => Cell::Barred(Reason::OutOfReach(end)),
        },
    }
}

fn assert_same(name: &str, got: Cell, want: Cell) {
    match (got, want) {
        (Cell::Scored(g), Cell::Scored(w)) => {
            for s in [Scoring::Largest, Scoring::Rms] {
                let off = (g.by(s) - w.by(s)).abs();
                assert!(
                    off < ACCURACY,
                    "{name} {s:?}: {g:?} against {w:?}, off {off:e}"
                );
            }
            assert!(
                (g.slope - w.slope).abs() < ACCURACY / 25.0,
                "{name} slope: {g:?} {w:?}"
            );
        }
        _ => assert_eq!(got, want, "{name}"),
    }
}

#[test]
fn every_cell_scores_as_its_corner_posed_plainly() {
    for (name, corner) in common::all() {
        for joint in [TieRodJoint::Inner, TieRodJoint::Outer] {
            for plane in [Plane::Front, Plane::Side, Plane::Plan] {
                for racks in [&[0.0][..], &[-38.0], &[0.0, 25.0, 38.0]] {
                    let stations = stations(racks);
                    let mut map = map(&corner, joint, plane, 80.0, &stations);
                    map.complete();
                    let mut scored = 0;
                    for row in 0..25 {
                        for column in 0..25 {
                            let got = map.cell(column, row);
                            scored += usize::from(matches!(got, Cell::Scored(_)));
                            let want = plainly(&corner, &map, column, row, &stations);
                            let name =
                                format!("{name} {joint:?} {plane:?} {racks:?} {column},{row}");
                            assert_same(&name, got, want);
                        }
                    }
                    assert!(
                        scored > 100,
                        "{name} {joint:?} {plane:?} {racks:?}: {scored}"
                    );
                }
            }
        }
    }
}

#[test]
fn a_rectangle_far_beyond_what_can_be_built_says_why() {
    let corner = common::behind();
    let stations = stations(&[0.0, 38.0]);
    for joint in [TieRodJoint::Inner, TieRodJoint::Outer] {
        let mut map = map(&corner, joint, Plane::Plan, 600.0, &stations);
        map.complete();
        let (mut not_built, mut out_of_reach) = (0, 0);
        for row in 0..25 {
            for column in 0..25 {
                let got = map.cell(column, row);
                match got {
                    Cell::Barred(Reason::NotBuilt(_)) => not_built += 1,
                    Cell::Barred(Reason::OutOfReach(_)) => out_of_reach += 1,
                    _ => {}
                }
                let want = plainly(&corner, &map, column, row, &stations);
                assert_same(&format!("{joint:?} {column},{row}"), got, want);
            }
        }
        assert!(out_of_reach > 20, "{joint:?}: {not_built} {out_of_reach}");
    }
}

#[test]
fn refining_step_by_step_is_coarse_to_fine_and_ends_as_at_once() {
    let corner = common::skewed();
    let stations = stations(&[0.0]);
    let mut at_once = map(&corner, TieRodJoint::Inner, Plane::Front, 60.0, &stations);
    at_once.complete();
    let mut stepwise = map(&corner, TieRodJoint::Inner, Plane::Front, 60.0, &stations);
    assert_eq!(stepwise.shown(3, 3), Cell::Pending);
    stepwise.refine(4);
    assert!(stepwise.progress() > 0.0 && stepwise.progress() < 0.02);
    for row in 0..25 {
        for column in 0..25 {
            assert_ne!(stepwise.shown(column, row), Cell::Pending, "{column},{row}");
        }
    }
    let mut steps = 0;
    while !stepwise.refine(7) {
        steps += 1;
    }
    assert!(steps > 40);
    assert_eq!(stepwise.progress(), 1.0);
    for row in 0..25 {
        for column in 0..25 {
            let (a, b) = (stepwise.cell(column, row), at_once.cell(column, row));
            assert_same(&format!("{column},{row}"), a, b);
        }
    }
}

#[test]
fn a_mirrored_car_has_the_mirrored_map() {
    let corner = common::skewed();
    // The mirror of the mirror is a left corner again, reached through the right one's points.
    let right = corner.map(mirror_point, mirror_vector);
    let stations = stations(&[0.0, 20.0]);
    let mut left = map(&corner, TieRodJoint::Inner, Plane::Front, 60.0, &stations);
    let mut back = map(
        &right.mirrored(),
        TieRodJoint::Inner,
        Plane::Front,
        60.0,
        &stations,
    );
    left.complete();
    back.complete();
    for row in 0..25 {
        for column in 0..25 {
            assert_eq!(left.cell(column, row), back.cell(column, row));
        }
    }
}

/// Front to back is a mirror too: the tie rod changes sides, toe changes sign, and every score stays.
#[test]
fn a_car_turned_front_to_back_has_the_same_map_turned() {
    let corner = common::skewed();
    let mut turned = corner.map(
        |p| Point::new(-p.x, p.y, p.z),
        |v| Vector::new(-v.x, v.y, v.z),
    );
    turned.wheel.toe = -corner.wheel.toe;
    let stations = stations(&[0.0, 20.0]);
    for plane in [Plane::Front, Plane::Side] {
        let mut one = map(&corner, TieRodJoint::Inner, plane, 60.0, &stations);
        let mut other = map(&turned, TieRodJoint::Inner, plane, 60.0, &stations);
        one.complete();
        other.complete();
        for row in 0..25 {
            for column in 0..25 {
                let there = if plane == Plane::Side {
                    24 - column
                } else {
                    column
                };
                let flipped = match other.cell(there, row) {
                    Cell::Scored(s) => Cell::Scored(Score {
                        slope: -s.slope,
                        ..s
                    }),
                    barred => barred,
                };
                assert_same("turned", flipped, one.cell(column, row));
            }
        }
    }
}

#[test]
fn the_parallelogram_has_a_valley_without_toe_change() {
    let corner = common::parallelogram();
    let stations = stations(&[0.0]);
    // Any tie rod equal and parallel to the arms keeps toe: the outer joint may be anywhere if the inner follows; with
    // the outer joint held one
    // place is left, in the middle of the map.
    let mut map = map(&corner, TieRodJoint::Inner, Plane::Front, 40.0, &stations);
    map.complete();
    let (column, row, score) = map.lowest(Scoring::Largest).unwrap();
    assert_eq!((column, row), (12, 12));
    assert!(score.largest < 1e-12, "{score:?}");
    // Fore and aft of it the tie rod no longer is parallel to the arms, but barely longer.
    let floor = map.valley(Scoring::Largest);
    assert!(floor.len() > 10, "{}", floor.len());
    let at_middle = floor.iter().find(|f| f.column == 12.0).unwrap();
    assert!((at_middle.row - 12.0).abs() < 0.05, "{at_middle:?}");
}

/// In the plan toe changes with the width, and hardly fore and aft: the valley runs up that map, through the best place.
#[test]
fn a_valley_that_runs_up_the_map_is_found_row_by_row() {
    use trammel_tuning::{Movable, Search, Ways, best_spot};
    let stations = stations(&[0.0]);
    let search = Search {
        movable: Movable::Inner,
        ways: Ways::FrontPlane,
        scoring: Scoring::Rms,
        stations: stations.clone(),
        held: vec![],
        reach: 100.0,
        step: None,
    };
    let plain = common::behind();
    let best = best_spot(&plain, &search).unwrap();
    let corner = Corner {
        tie_rod: best.exact.tie_rod,
        ..plain
    };
    for (plane, runs_up) in [
        (Plane::Front, false),
        (Plane::Side, false),
        (Plane::Plan, true),
    ] {
        let mut map = map(&corner, TieRodJoint::Inner, plane, 40.0, &stations);
        map.complete();
        let floor = map.valley(Scoring::Rms);
        assert!(floor.len() > 15, "{plane:?}: {}", floor.len());
        let line = |f: &trammel_tuning::Floor| if runs_up { f.row } else { f.column };
        assert!(floor.iter().all(|f| line(f).fract() == 0.0), "{plane:?}");
        let middle = floor.iter().find(|f| line(f) == 12.0).unwrap();
        let off = (middle.column - 12.0).abs() + (middle.row - 12.0).abs();
        assert!(off < 0.6, "{plane:?}: {middle:?}");
    }
}

#[test]
fn what_can_not_be_mapped_is_refused() {
    use trammel_tuning::{FrameFault, MapFault, StationFault};
    let at = Point::new(0.0, 200.0, 250.0);
    for size in [0.0, -5.0, f64::NAN, f64::INFINITY, 1e9] {
        let frame = MapFrame::new(Plane::Front, at, [size, 50.0], [9, 9]);
        assert_eq!(frame, Err(FrameFault::NotUsable), "{size}");
    }
    let nowhere = Point::new(f64::NAN, 0.0, 0.0);
    assert_eq!(
        MapFrame::new(Plane::Front, nowhere, [50.0; 2], [9, 9]),
        Err(FrameFault::NotUsable)
    );
    for cells in [[0, 9], [9, 1], [9, 1 << 20]] {
        assert!(matches!(
            MapFrame::new(Plane::Front, at, [50.0; 2], cells),
            Err(FrameFault::Cells { .. })
        ));
    }
    assert!(matches!(
        Stations::new(vec![], vec![0.0]),
        Err(StationFault::Count { .. })
    ));
    assert!(matches!(
        Stations::new(vec![0.0], vec![]),
        Err(StationFault::Count { .. })
    ));
    assert!(matches!(
        Stations::even(-10.0, 10.0, usize::MAX, vec![0.0]),
        Err(StationFault::Count { .. })
    ));
    assert!(matches!(
        Stations::new(vec![f64::NAN], vec![0.0]),
        Err(StationFault::NotUsable { .. })
    ));
    assert!(matches!(
        Stations::new(vec![0.0], vec![f64::INFINITY]),
        Err(StationFault::NotUsable { .. })
    ));
    let mut corner = common::behind();
    let frame = MapFrame::new(Plane::Front, at, [50.0; 2], [9, 9]).unwrap();
    corner.upper_arm.ball_joint.z = f64::NAN;
    let map = ToeMap::new(&corner, TieRodJoint::Inner, frame, &stations(&[0.0]));
    assert!(matches!(map, Err(MapFault::Arms(_))));
}

/// The joint's own present place need not be a sound one: the map does not depend on it.
#[test]
fn a_joint_lost_on_top_of_the_other_can_still_be_mapped() {
    let mut corner = common::behind();
    let frame = MapFrame::new(Plane::Front, corner.tie_rod.inner, [40.0; 2], [9, 9]).unwrap();
    let stations = stations(&[0.0, 30.0]);
    let mut whole = ToeMap::new(&corner, TieRodJoint::Inner, frame, &stations).unwrap();
    corner.tie_rod.inner = corner.tie_rod.outer;
    let mut lost = ToeMap::new(&corner, TieRodJoint::Inner, frame, &stations).unwrap();
    whole.complete();
    lost.complete();
    for row in 0..9 {
        for column in 0..9 {
            assert_same("lost", lost.cell(column, row), whole.cell(column, row));
        }
    }
}

/// Travels that no arm reaches: every cell is barred, with the reason.
#[test]
fn a_travel_that_nothing_reaches_bars_every_cell() {
    let corner = common::behind();
    let stations = Stations::even(-600.0, 600.0, 5, vec![0.0]).unwrap();
    let mut map = map(&corner, TieRodJoint::Inner, Plane::Front, 40.0, &stations);
    map.complete();
    for row in 0..25 {
        for column in 0..25 {
            assert!(matches!(
                map.cell(column, row),
                Cell::Barred(Reason::OutOfReach(_))
            ));
        }
    }
    assert!(map.lowest(Scoring::Rms).is_none() && map.valley(Scoring::Rms).is_empty());
}
