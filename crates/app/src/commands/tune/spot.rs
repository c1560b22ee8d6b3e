//! The best spot of the inner joint in the front view.

use trammel_build::{Axis, PointName};
use trammel_geometry::Corner;
use trammel_tuning::{Movable, Search, Spot, TieRodJoint, Ways, best_spot};

use super::{Found, Method, clear};
use crate::{commands::chosen::Chosen, fault::Fault, tune_arguments::TuneArguments};

/// How far a coordinate may move either way when nothing is said, in and mm.
pub(super) const REACH: [f64; 2] = [3.0, 75.0];

pub(super) fn find(chosen: &Chosen, arguments: &TuneArguments) -> Result<Found, Fault> {
    let locked = |axis| chosen.is_locked(PointName::TieRodInner, axis);
    let ways = match (locked(Axis::Y), locked(Axis::Z)) {
        (false, false) => Ways::FrontPlane,
        (true, false) => Ways::Height,
        (false, true) => Ways::Width,
        (true, true) => {
            return Err(Fault::AllLocked(
                "y and z of the inner tie-rod joint".into(),
            ));
        }
    };
    let step = arguments.step.as_deref();
    let search = Search {
        movable: Movable::Inner,
        ways,
        scoring: arguments.score.into(),
        stations: chosen.stations(0.0)?,
        reach: chosen.length_or("--reach", arguments.reach.as_deref(), REACH)?,
        step: step.map(|s| chosen.length("--step", s)).transpose()?,
    };
    let best = best_spot(chosen.corner(), &search)?;
    let at = |spot: &Spot| TieRodJoint::Inner.moved_to(chosen.corner(), spot.tie_rod.inner);
    let (corner, exact) = match &best.snapped {
        Some(snapped) => (at(snapped), Some(at(&best.exact))),
        None => (at(&best.exact), None),
    };
    if chosen.keep_out(corner.tie_rod.inner).is_some()
        && let Some((corner, exact)) = clear::find(chosen, &search)?
    {
        return Ok(found(Method::ClearSpot, corner, exact));
    }
    Ok(found(Method::BestSpot, corner, exact))
}

fn found(method: Method, corner: Corner, exact: Option<Corner>) -> Found {
    Found {
        method,
        corner,
        exact,
        figures: None,
        limits: Vec::new(),
        others: Vec::new(),
        names: Vec::new(),
    }
}
