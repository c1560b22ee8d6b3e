//! From several starts to the one best spot.

use trammel_geometry::{Corner, CornerFault, Linkage, TieRod, Unreachable, Vector, least_first};

use super::{
    clear_of::{Block, clear_of},
    freedom::{Direction, Movable, Ways, coordinates, directions, moved},
    least_move::{least_move, still_equal},
    least_squares::least_rms,
    minimax::least_of_largest,
    problem::{Bounds, Problem},
    snap::snapped,
};
use crate::{Coordinate, Score, Scoring, Stations, ToeCurves, two_line_rule};

/// Starts taken from places spread over the reach.
const FROM_SPREAD: usize = 4;
/// Descents from whole steps that turned out better than the exact place.
const ROUNDS: usize = 6;
/// Reach of a search from the present place only, mm.
const NEARBY: f64 = 200.0;

/// What to look for.
#[derive(Clone, Debug, PartialEq)]
pub struct Search {
    /// Joints that may move.
    pub movable: Movable,
    /// Ways they may move.
    pub ways: Ways,
    /// What makes a place better.
    pub scoring: Scoring,
    /// Poses judged.
    pub stations: Stations,
    /// Coordinates of the joints that stay where they are.
    pub held: Vec<Coordinate>,
    /// How far a joint may move along each way from where it is, mm.
    pub reach: f64,
    /// The shop's step, mm: coordinates of the vehicle are rounded to its multiples.
    pub step: Option<f64>,
}

/// Places of the tie rod's joints with their score.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Spot {
    /// The joints at the design position.
    pub tie_rod: TieRod,
    /// Score of the toe curves there.
    pub score: Score,
}

/// What a search found.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct BestSpot {
    /// The best place; of equally good ones that with the least movement.
    pub exact: Spot,
    /// The least score found anywhere within reach. That of `exact` may be worse by a thousandth of a degree (in 25 mm of
    /// travel, if by the slope) where both joints move, or one of them every way.
    pub least: Score,
    /// The best place in whole steps, if a step was given.
    pub snapped: Option<Spot>,
    /// Score of the corner as it is, if it reaches every station.
    pub now: Option<Score>,
    /// Whether the best place lies at the end of the reach.
    pub at_end_of_reach: bool,
    /// The least score there would be without the keep-outs, where they are in the way of it.
    pub without_keep_outs: Option<Score>,
}

/// Why there is no best spot.
#[derive(Clone, Copy, Debug, PartialEq, thiserror::Error)]
pub enum SearchFault {
    /// The reach or the step is not a positive number.
    #[error("{what} is {value} mm; expected a positive number of mm")]
    NotUsable {
        /// Reach or step.
        what: &'static str,
        /// What was given.
        value: f64,
    },
    /// The line has no direction.
    #[error("the line along which the joint may move has no direction")]
    NoDirection,
    /// Every way the joints may move is held.
    #[error("every coordinate of the joint that may move is locked")]
    AllHeld,
    /// The corner itself is not a linkage, and no place tried makes it one.
    #[error("no place of the joint within reach makes a linkage: {0}")]
    NotBuilt(CornerFault),
    /// The corner itself does not reach the travel, and no place tried does.
    #[error("no place of the joint that was tried reaches the whole travel: {0}")]
    OutOfReach(Unreachable),
    /// Whatever was tried lies in a keep-out.
    #[error("no place that was tried is clear of the keep-outs and reaches the whole travel")]
    NoneClear,
}

/// The best spot for a corner.
///
/// Independent of where the joint is now: descents from the present place, from the two-line rule's and from places
/// spread over the reach; the best is kept. RMS
/// by damped least squares, the largest by linear programmes with an exact finish; either is good to well under 0.01
/// mm where the score tells places that far
/// apart. With one rack position the slope is made nought by the shortest move.
///
/// With both joints moving, or one moving every way, there is a valley of places that no builder could tell apart. All
/// that are within a thousandth of a degree of the least score count as equal, and the one is chosen to which the joints
/// move least.
///
/// # Errors
/// A [`SearchFault`] when the search makes no sense or no start reaches the travel.
pub fn best_spot(corner: &Corner, search: &Search) -> Result<BestSpot, SearchFault> {
    best_spot_clear_of(corner, search, &[])
}

/// The best spot for a corner, no joint that may move inside one of `blocks`.
///
/// # Errors
/// As [`best_spot`], and [`SearchFault::NoneClear`].
pub fn best_spot_clear_of(
    corner: &Corner,
    search: &Search,
    blocks: &[Block],
) -> Result<BestSpot, SearchFault> {
    check(search)?;
    let directions = directions(search.movable, search.ways, &search.held);
    if directions.is_empty() {
        return Err(match search.ways {
            Ways::Line(v) if !(v.norm() > 0.0) => SearchFault::NoDirection,
            _ => SearchFault::AllHeld,
        });
    }
    let problem = Problem {
        corner,
        directions: &directions,
        stations: &search.stations,
        scoring: search.scoring,
        pull: 0.0,
    };
    let bounds = fresh_bounds(&problem, search);
    let Some(best) = found_in(&problem, search, &bounds) else {
        return Err(why_none(corner, &search.stations));
    };
    clear_of(&problem, search, blocks, best)
}

/// What a search found within some bounds.
#[derive(Clone, Debug)]
pub(crate) struct Best {
    /// The place with the least movement of those that are as good as the best.
    pub place: Place,
    /// The least score.
    pub least: Score,
    /// The best in whole steps.
    pub whole: Option<Place>,
}

/// The reach of a search.
pub(crate) fn fresh_bounds(problem: &Problem<'_>, search: &Search) -> Bounds {
    let count = problem.directions.len();
    Bounds {
        low: vec![-search.reach; count],
        high: vec![search.reach; count],
    }
}

/// The best place within some bounds; `None` where nothing that is tried reaches the travel.
pub(crate) fn found_in(problem: &Problem<'_>, search: &Search, bounds: &Bounds) -> Option<Best> {
    let mut starts = starts(problem, search.reach);
    starts.iter_mut().for_each(|start| bounds.clamp(start));
    let best = descend_from_all(problem, bounds, &starts)?;
    if is_a_valley(problem.directions) {
        let place = shortest(problem, bounds, best.clone());
        let whole = in_steps(problem, bounds, &place.0, search.step);
        return Some(Best {
            place,
            least: best.1,
            whole,
        });
    }
    let (place, whole) = past_the_edge(problem, bounds, best, search.step);
    let least = place.1;
    Some(Best {
        place,
        least,
        whole,
    })
}

/// The answer of a search, of what it found.
pub(crate) fn spot_of(problem: &Problem<'_>, search: &Search, best: &Best) -> BestSpot {
    let spot = |(p, score): &Place| Spot {
        tie_rod: moved(problem.corner, problem.directions, p).tie_rod,
        score: *score,
    };
    let margin = 1e-9 * search.reach;
    let far = |v: &f64| v.abs() >= search.reach - margin;
    BestSpot {
        exact: spot(&best.place),
        least: best.least,
        snapped: best.whole.as_ref().map(spot),
        now: problem.score(&vec![0.0; problem.directions.len()]),
        at_end_of_reach: best.place.0.iter().any(far),
        without_keep_outs: None,
    }
}

/// Whether many places are equally good: both joints move, or one of them fore and aft and another way.
fn is_a_valley(directions: &[Direction]) -> bool {
    let outer = directions.iter().filter(|d| d.outer).count();
    let fore_and_aft = directions.iter().any(|d| d.along == Vector::x());
    (fore_and_aft && directions.len() > 1)
        || directions.len() > 2
        || (outer > 0 && outer < directions.len())
}

/// A place along a search's directions with its score.
pub(crate) type Place = (Vec<f64>, Score);

/// Of all places as good as this one, the one with the least movement.
fn shortest(problem: &Problem<'_>, bounds: &Bounds, best: Place) -> Place {
    let target = still_equal(problem.scoring, best.1.by(problem.scoring));
    let nearer = least_move(problem, bounds, &best.0, target);
    match problem.score(&nearer) {
        Some(score) => (nearer, score),
        None => best,
    }
}

fn in_steps(
    problem: &Problem<'_>,
    bounds: &Bounds,
    from: &[f64],
    step: Option<f64>,
) -> Option<Place> {
    snapped(problem, bounds, from, step?, &|_| true)
}

/// Where the corner runs out of reach next to the best place, a descent may have stopped early; whole steps may have
/// got past that, and it is gone on from there. The best place, and the best in whole steps.
fn past_the_edge(
    problem: &Problem<'_>,
    bounds: &Bounds,
    mut best: Place,
    step: Option<f64>,
) -> (Place, Option<Place>) {
    let by = |s: &Score| s.by(problem.scoring);
    let mut whole = in_steps(problem, bounds, &best.0, step);
    for _ in 0..ROUNDS {
        let Some(start) = whole.clone().filter(|w| by(&w.1) < by(&best.1)) else {
            break;
        };
        let further = descend_from_all(problem, bounds, std::slice::from_ref(&start.0));
        best = further.filter(|f| by(&f.1) < by(&start.1)).unwrap_or(start);
        whole = in_steps(problem, bounds, &best.0, step);
    }
    match whole.clone().filter(|w| by(&w.1) < by(&best.1)) {
        Some(better) => (better, whole),
        None => (best, whole),
    }
}

fn check(search: &Search) -> Result<(), SearchFault> {
    let positive = |what, value: f64| {
        if value > 0.0 && value <= 1e4 {
            Ok(())
        } else {
            Err(SearchFault::NotUsable { what, value })
        }
    };
    positive("the reach", search.reach)?;
    search.step.map_or(Ok(()), |s| positive("the step", s))
}

/// The present place, the rule's, and the best of many places spread over the reach.
fn starts(problem: &Problem<'_>, reach: f64) -> Vec<Vec<f64>> {
    let (corner, directions) = (problem.corner, problem.directions);
    let n = directions.len();
    let mut all = vec![vec![0.0; n]];
    if let Some(rule) = two_line_rule(corner) {
        let tie_rod = TieRod {
            inner: rule.inner,
            ..corner.tie_rod
        };
        all.push(coordinates(corner, directions, &tie_rod));
    }
    let mut found: Vec<(f64, Vec<f64>)> = spread(n, reach)
        .into_iter()
        .filter_map(|p| problem.value(&p).map(|v| (v, p)))
        .collect();
    least_first(&mut found, |f| f.0);
    all.extend(found.into_iter().take(FROM_SPREAD).map(|f| f.1));
    all
}

/// Places spread over the reach: a grid for up to three directions, otherwise out and back along each.
fn spread(directions: usize, reach: f64) -> Vec<Vec<f64>> {
    let shares: &[f64] = match directions {
        1 | 2 => &[-0.8, -0.4, -0.15, 0.15, 0.4, 0.8],
        3 => &[-0.5, 0.0, 0.5],
        _ => &[-0.2, 0.2],
    };
    if directions <= 3 {
        return (0..directions).fold(vec![Vec::new()], |all, _| {
            let longer = |start: &Vec<f64>, share: f64| {
                let mut p = start.clone();
                p.push(share * reach);
                p
            };
            all.iter()
                .flat_map(|start| shares.iter().map(move |&s| longer(start, s)))
                .collect()
        });
    }
    let along = |i: usize, share: f64| {
        let mut p = vec![0.0; directions];
        p.iter_mut()
            .skip(i)
            .take(1)
            .for_each(|v| *v = share * reach);
        p
    };
    (0..directions)
        .flat_map(|i| shares.iter().map(move |&s| along(i, s)))
        .collect()
}

fn descend_from_all(problem: &Problem<'_>, bounds: &Bounds, starts: &[Vec<f64>]) -> Option<Place> {
    let better = |a: &Place, b: &Place| a.1.by(problem.scoring).total_cmp(&b.1.by(problem.scoring));
    let scored = |p: Vec<f64>| problem.score(&p).map(|s| (p, s));
    let one_slope = problem.scoring == Scoring::Slope && problem.stations.racks().len() == 1;
    if one_slope {
        // Many places have no slope at all: the one nearest to where the joint is now is wanted.
        let found = starts.iter().find_map(|s| least_rms(problem, bounds, s));
        return found.and_then(scored);
    }
    let smooth: Vec<_> = starts
        .iter()
        .filter_map(|s| least_rms(problem, bounds, s).and_then(scored))
        .collect();
    if problem.scoring == Scoring::Rms {
        return smooth.into_iter().min_by(better);
    }
    let mut roots: Vec<&Vec<f64>> = starts.iter().take(2).collect();
    roots.extend(smooth.iter().min_by(|a, b| better(a, b)).map(|s| &s.0));
    roots
        .into_iter()
        .filter_map(|s| least_of_largest(problem, bounds, s).and_then(scored))
        .min_by(better)
}

/// The place of the least RMS along a problem's directions, from where the joints are now, within a hand's breadth or
/// two.
pub(crate) fn least_rms_along(problem: &Problem<'_>) -> Option<Vec<f64>> {
    let count = problem.directions.len();
    let bounds = Bounds {
        low: vec![-NEARBY; count],
        high: vec![NEARBY; count],
    };
    least_rms(problem, &bounds, &vec![0.0; count])
}

/// What keeps the corner as it is from being judged.
fn why_none(corner: &Corner, stations: &Stations) -> SearchFault {
    match Linkage::new(corner) {
        Err(fault) => SearchFault::NotBuilt(fault),
        Ok(linkage) => match ToeCurves::of(&linkage, stations) {
            Err(end) => SearchFault::OutOfReach(end),
            // The corner itself is always a start, so this does not come up.
            Ok(_) => SearchFault::NoDirection,
        },
    }
}
