//! The map against posing every cell's corner, and what must hold of any map.

mod common;

use trammel_geometry::{Corner, Linkage, mirror_point, mirror_vector};
use trammel_tuning::{Cell, MapFrame, Plane, Reason, Scoring, Stations, TieRodJoint, ToeCurves, ToeMap};

/// What the map promises, rad.
const ACCURACY: f64 = 1e-9 * std::f64::consts::PI / 180.0;

fn stations(racks: &[f64]) -> Stations {
    Stations::even(-100.0, 125.0, 21, racks.to_vec()).unwrap()
}

fn map(corner: &Corner, joint: TieRodJoint, plane: Plane, size: f64, stations: &Stations) -> ToeMap {
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
                assert!(off < ACCURACY, "{name} {s:?}: {g:?} against {w:?}, off {off:e}");
            }
            assert!((g.slope - w.slope).abs() < ACCURACY / 25.0, "{name} slope: {g:?} {w:?}");
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
                            let name = format!("{name} {joint:?} {plane:?} {racks:?} {column},{row}");
                            assert_same(&name, got, want);
                        }
                    }
                    assert!(scored > 100, "{name} {joint:?} {plane:?} {racks:?}: {scored}");
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
    let mut back = map(&right.mirrored(), TieRodJoint::Inner, Plane::Front, 60.0, &stations);
    left.complete();
    back.complete();
    for row in 0..25 {
        for column in 0..25 {
            assert_eq!(left.cell(column, row), back.cell(column, row));
        }
    }
}

#[test]
fn the_parallelogram_has_a_valley_without_toe_change() {
    let corner = common::parallelogram();
    let stations = stations(&[0.0]);
    // Any tie rod equal and parallel to the arms keeps toe: the outer joint may be anywhere if the inner follows; with the outer joint held one
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
