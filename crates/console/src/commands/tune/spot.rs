//! The best spot of one joint or both.

use trammel_build::{Axis, PointName};
use trammel_geometry::Corner;
use trammel_tuning::{
    self as tuning, Hardpoint, Search, SearchFault, Spot, best_spot, best_spot_clear_of,
};

use super::{Found, Method};
use crate::arguments::tune::TuneArguments;
use crate::commands::chosen::Chosen;
use crate::fault::Fault;

/// How far a coordinate may move either way when nothing is said, in and mm.
pub(super) const REACH: [f64; 2] = [3.0, 75.0];

pub(super) fn find(chosen: &Chosen, arguments: &TuneArguments) -> Result<Found, Fault> {
    let step = arguments.step.as_deref();
    let search = Search {
        movable: arguments.point.into(),
        ways: arguments.ways.into(),
        scoring: arguments.score.into(),
        stations: chosen.stations(0.0)?,
        held: held(chosen),
        reach: chosen.length_or("--reach", arguments.reach.as_deref(), REACH)?,
        step: step.map(|s| chosen.length("--step", s)).transpose()?,
    };
    let blocks = trammel_analysis::blocks(chosen.build(), chosen.axle());
    let best = match best_spot_clear_of(chosen.corner(), &search, &blocks) {
        // What is said then names the keep-out that it lies in.
        Err(SearchFault::NoneClear) => best_spot(chosen.corner(), &search)?,
        found => found?,
    };
    let at = |spot: &Spot| Corner {
        tie_rod: spot.tie_rod,
        ..*chosen.corner()
    };
    let (corner, exact) = match &best.snapped {
        Some(snapped) => (at(snapped), Some(at(&best.exact))),
        None => (at(&best.exact), None),
    };
    let method = if best.without_keep_outs.is_some() {
        Method::ClearSpot
    } else {
        Method::BestSpot
    };
    let given_away = best.exact.score.by(search.scoring) > best.least.by(search.scoring);
    Ok(Found {
        least: given_away.then_some(best.least),
        ..found(method, corner, exact)
    })
}

/// Coordinates of the tie rod's joints that the build locks.
fn held(chosen: &Chosen) -> Vec<tuning::Coordinate> {
    let joints = [
        (PointName::TieRodInner, Hardpoint::TieRodInner),
        (PointName::TieRodOuter, Hardpoint::TieRodOuter),
    ];
    let axes = [
        (Axis::X, tuning::Axis::X),
        (Axis::Y, tuning::Axis::Y),
        (Axis::Z, tuning::Axis::Z),
    ];
    let all = joints
        .into_iter()
        .flat_map(|joint| axes.map(|axis| (joint, axis)));
    all.filter(|((name, _), (axis, _))| chosen.is_locked(*name, *axis))
        .map(|((_, point), (_, axis))| tuning::Coordinate { point, axis })
        .collect()
}

fn found(method: Method, corner: Corner, exact: Option<Corner>) -> Found {
    Found {
        method,
        corner,
        exact,
        least: None,
        figures: None,
        limits: Vec::new(),
        others: Vec::new(),
        names: Vec::new(),
    }
}
