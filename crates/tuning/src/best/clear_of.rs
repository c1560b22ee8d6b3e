//! The best spot outside boxes where no joint may be.
//!
//! What is outside a box is on one of its sides, and each side is a search of its own with one bound more. So the search
//! without boxes comes first; where its best place lies in a box, it is split into the searches on the box's sides,
//! and the most promising of all is looked at next (branch and bound: Land and Doig, 1960, from memory). The first place
//! that lies in no box can't be bettered, as far as each search finds its own best.

use trammel_geometry::{Corner, Point};

use super::{
    freedom::{Direction, moved},
    problem::{Bounds, Problem},
    search::{Best, Place, found_in, fresh_bounds, spot_of},
    snap::snapped,
};
use crate::best::{BestSpot, Search, SearchFault};

/// How far outside a box a joint stays, mm: on its edge it would count as inside.
const OFF: f64 = 0.01;
/// Searches at most. Each splits into six for one joint free every way, so that is some dozen boxes passed.
const SEARCHES: usize = 96;

/// A box where no joint may be, mm, in the corner's frame. Infinite along an axis where it counts everywhere.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Block {
    /// Its least coordinates.
    pub low: Point,
    /// Its greatest.
    pub high: Point,
}

impl Block {
    /// Whether a place is inside or on its edge.
    #[must_use]
    pub fn holds(&self, place: Point) -> bool {
        (0..3).all(|i| (self.low[i]..=self.high[i]).contains(&place[i]))
    }

    fn widened(&self, by: f64) -> Self {
        let by = trammel_geometry::Vector::repeat(by);
        Self {
            low: self.low - by,
            high: self.high + by,
        }
    }

    /// Where along a way from a place it begins and ends; `None` where it is passed by or has no end that way.
    fn along(&self, from: Point, direction: &Direction) -> [Option<f64>; 2] {
        let (mut enter, mut leave) = (f64::NEG_INFINITY, f64::INFINITY);
        for i in 0..3 {
            let rate = direction.along[i];
            if rate.abs() < 1e-12 {
                continue;
            }
            let ends = [self.low[i], self.high[i]].map(|v| (v - from[i]) / rate);
            enter = enter.max(ends[0].min(ends[1]));
            leave = leave.min(ends[0].max(ends[1]));
        }
        [enter, leave].map(|t| Some(t).filter(|t| t.is_finite()))
    }
}

/// One of the searches, with what it found.
struct Part {
    bounds: Bounds,
    best: Best,
}

/// The best spot of all, split until it lies in none of `blocks`.
pub(crate) fn clear_of(
    problem: &Problem<'_>,
    search: &Search,
    blocks: &[Block],
    root: Best,
) -> Result<BestSpot, SearchFault> {
    let by = |best: &Best| best.least.by(problem.scoring);
    let all = fresh_bounds(problem, search);
    let without = root.least;
    let mut parts = vec![Part {
        bounds: all.clone(),
        best: root,
    }];
    let mut clear: Option<Part> = None;
    let mut searches = 0;
    while let Some(next) =
        (0..parts.len()).min_by(|a, b| by(&parts[*a].best).total_cmp(&by(&parts[*b].best)))
    {
        let part = parts.swap_remove(next);
        let beaten = clear.as_ref().is_some_and(|c| {
            by(&part.best) > super::least_move::still_equal(problem.scoring, by(&c.best))
        });
        if beaten {
            break;
        }
        match block_in_the_way(problem, blocks, &part.best.place.0) {
            None => clear = Some(nearer(problem, clear, part)),
            Some((block, outer)) => {
                for bounds in sides(problem, &part.bounds, block, outer) {
                    searches += 1;
                    let best = found_in(problem, search, &bounds);
                    parts.extend(best.map(|best| Part { bounds, best }));
                }
            }
        }
        if searches >= SEARCHES {
            break;
        }
    }
    let part = clear.ok_or(SearchFault::NoneClear)?;
    let mut spot = spot_of(problem, search, &part.best);
    let allowed = |p: &[f64]| block_in_the_way(problem, blocks, p).is_none();
    spot.snapped = search
        .step
        .and_then(|step| snapped(problem, &all, &part.best.place.0, step, &allowed))
        .map(|(p, score)| super::Spot {
            tie_rod: moved(problem.corner, problem.directions, &p).tie_rod,
            score,
        });
    spot.without_keep_outs = (without.by(problem.scoring) < by(&part.best)).then_some(without);
    Ok(spot)
}

/// Of two that are as good as each other the one with less movement; the better one otherwise.
fn nearer(problem: &Problem<'_>, before: Option<Part>, part: Part) -> Part {
    let way = |p: &Place| p.0.iter().map(|v| v * v).sum::<f64>();
    let value = |p: &Place| p.1.by(problem.scoring);
    match before {
        Some(b) if way(&b.best.place) <= way(&part.best.place) => b,
        // Found later it is no better; only a shorter way counts, and only where scores count as equal.
        Some(b)
            if value(&part.best.place)
                > super::least_move::still_equal(problem.scoring, value(&b.best.place)) =>
        {
            b
        }
        _ => part,
    }
}

fn joint(corner: &Corner, outer: bool) -> Point {
    if outer {
        corner.tie_rod.outer
    } else {
        corner.tie_rod.inner
    }
}

/// The first box that holds a joint that may move, and whether it is the outer one.
fn block_in_the_way<'b>(
    problem: &Problem<'_>,
    blocks: &'b [Block],
    p: &[f64],
) -> Option<(&'b Block, bool)> {
    let corner = moved(problem.corner, problem.directions, p);
    [false, true]
        .into_iter()
        .filter(|&outer| problem.directions.iter().any(|d| d.outer == outer))
        .find_map(|outer| {
            let place = joint(&corner, outer);
            let block = blocks.iter().find(|b| b.widened(0.5 * OFF).holds(place));
            block.map(|b| (b, outer))
        })
}

/// The parts of some bounds on the sides of a box. Along a slanting line the box begins and ends where the line goes in
/// and out; other directions are square to each other.
fn sides(problem: &Problem<'_>, bounds: &Bounds, block: &Block, outer: bool) -> Vec<Bounds> {
    let from = joint(problem.corner, outer);
    let wide = block.widened(OFF);
    let mut all = Vec::new();
    for (i, direction) in problem.directions.iter().enumerate() {
        if direction.outer != outer {
            continue;
        }
        let [enter, leave] = wide.along(from, direction);
        let [low, high] =
            [bounds.low.get(i), bounds.high.get(i)].map(|v| v.copied().unwrap_or(0.0));
        if let Some(enter) = enter.filter(|e| *e >= low) {
            let mut part = bounds.clone();
            part.high
                .iter_mut()
                .skip(i)
                .take(1)
                .for_each(|h| *h = h.min(enter));
            all.push(part);
        }
        if let Some(leave) = leave.filter(|l| *l <= high) {
            let mut part = bounds.clone();
            part.low
                .iter_mut()
                .skip(i)
                .take(1)
                .for_each(|l| *l = l.max(leave));
            all.push(part);
        }
    }
    all
}
