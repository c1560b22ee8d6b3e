//! The best spot clear of the build's keep-outs, by maps that close in on it.

use trammel_geometry::{Corner, Point};
use trammel_tuning::{
    Axis, Cell, Coordinate, Hardpoint, MapFrame, Plane, Search, TieRodJoint, ToeMap, Ways,
};

use crate::{commands::chosen::Chosen, fault::Fault};

/// Cells each way of every map.
const CELLS: usize = 97;
/// Maps, each a quarter as wide and high as the one before: the last one's cells are some ten-thousandths of a millimetre.
const ROUNDS: usize = 8;
const CLOSER: f64 = 0.25;
/// Extent along a locked coordinate, mm: none to speak of.
const THIN: f64 = 1e-9;
/// Cells each way of the look over whole steps.
const STEPS: usize = 33;

/// The corner with a joint at the best place clear of the keep-outs, in whole steps where a step is asked for, and then the exact one too.
/// `None` where no place on the maps is clear and reaches the travel.
pub(super) fn find(
    chosen: &Chosen,
    joint: TieRodJoint,
    search: &Search,
) -> Result<Option<(Corner, Option<Corner>)>, Fault> {
    let start = joint.place(chosen.corner());
    let free = free(joint, search);
    let mut centre = start;
    let mut size = 2.0 * search.reach;
    for _ in 0..ROUNDS {
        let frame = frame(centre, free, size, CELLS)?;
        let within = |p: Point| (p - start).amax() <= search.reach * (1.0 + 1e-9);
        let Some(best) = lowest(chosen, joint, search, frame, within)? else {
            return Ok(None);
        };
        centre = best;
        size *= CLOSER;
    }
    let at = |place| joint.moved_to(chosen.corner(), place);
    let Some(step) = search.step else {
        return Ok(Some((at(centre), None)));
    };
    let whole = |v: f64, free: bool| if free { (v / step).round() * step } else { v };
    let middle = Point::new(centre.x, whole(centre.y, free[0]), whole(centre.z, free[1]));
    let around = frame(middle, free, step * (STEPS - 1) as f64, STEPS)?;
    let best = lowest(chosen, joint, search, around, |_| true)?;
    Ok(best.map(|place| (at(place), Some(at(centre)))))
}

/// Whether y and z may move.
fn free(joint: TieRodJoint, search: &Search) -> [bool; 2] {
    let point = match joint {
        TieRodJoint::Inner => Hardpoint::TieRodInner,
        TieRodJoint::Outer => Hardpoint::TieRodOuter,
    };
    let held = |axis| search.held.contains(&Coordinate { point, axis });
    [
        search.ways != Ways::Height && !held(Axis::Y),
        search.ways != Ways::Width && !held(Axis::Z),
    ]
}

fn frame(centre: Point, free: [bool; 2], size: f64, cells: usize) -> Result<MapFrame, Fault> {
    let extents = free.map(|f| if f { size } else { THIN });
    // A locked coordinate has two cells, both where it is.
    let counts = free.map(|f| if f { cells } else { 2 });
    Ok(MapFrame::new(Plane::Front, centre, extents, counts)?)
}

/// The best clear place of a map.
fn lowest(
    chosen: &Chosen,
    joint: TieRodJoint,
    search: &Search,
    frame: MapFrame,
    within: impl Fn(Point) -> bool,
) -> Result<Option<Point>, Fault> {
    let mut map = ToeMap::new(chosen.corner(), joint, frame, &search.stations)?;
    map.complete();
    let mut best: Option<(f64, Point)> = None;
    for row in 0..frame.rows() {
        for column in 0..frame.columns() {
            let place = frame.place(column as f64, row as f64);
            let Cell::Scored(score) = map.cell(column, row) else {
                continue;
            };
            let value = score.by(search.scoring);
            let better = best.is_none_or(|(least, _)| value < least);
            if better && within(place) && chosen.keep_out(place).is_none() {
                best = Some((value, place));
            }
        }
    }
    Ok(best.map(|(_, place)| place))
}
