//! The best spot in whole steps of the shop.

use super::problem::{Bounds, Problem};
use crate::Score;

/// Steps looked at either side of the exact place, for searches of so many directions.
const WIDTHS: [i32; 4] = [0, 12, 5, 2];
/// Rounds of going from neighbour to neighbour when there are more directions.
const ROUNDS: usize = 60;

/// The best place near `p` whose coordinates in the vehicle are multiples of `step` along every direction. In a long
/// narrow valley it need not be the nearest.
pub(crate) fn snapped(
    problem: &Problem<'_>,
    bounds: &Bounds,
    p: &[f64],
    step: f64,
) -> Option<(Vec<f64>, Score)> {
    let origin: Vec<f64> = problem
        .directions
        .iter()
        .map(|d| {
            let rod = &problem.corner.tie_rod;
            let joint = if d.outer { rod.outer } else { rod.inner };
            d.along.dot(&joint.coords)
        })
        .collect();
    let whole: Vec<f64> = p
        .iter()
        .zip(&origin)
        .map(|(v, o)| ((o + v) / step).round())
        .collect();
    let look = |steps: &[f64]| {
        let q: Vec<f64> = steps
            .iter()
            .zip(&origin)
            .map(|(s, o)| s * step - o)
            .collect();
        if !bounds.contains(&q) {
            return None;
        }
        problem.score(&q).map(|score| (q, score))
    };
    let value = |s: &Score| s.by(problem.scoring);
    match WIDTHS.get(p.len()) {
        Some(&width) => grid(&whole, width)
            .iter()
            .filter_map(|steps| look(steps))
            .min_by(|a, b| value(&a.1).total_cmp(&value(&b.1))),
        None => neighbours(&whole, look, value),
    }
}

/// All points within `width` steps each way.
fn grid(middle: &[f64], width: i32) -> Vec<Vec<f64>> {
    middle.iter().fold(vec![Vec::new()], |all, &m| {
        all.iter()
            .flat_map(|start| {
                (-width..=width).map(move |k| {
                    let mut p = start.clone();
                    p.push(m + f64::from(k));
                    p
                })
            })
            .collect()
    })
}

/// Downhill over single and double steps in one or two directions at a time.
fn neighbours(
    start: &[f64],
    look: impl Fn(&[f64]) -> Option<(Vec<f64>, Score)>,
    value: impl Fn(&Score) -> f64,
) -> Option<(Vec<f64>, Score)> {
    let mut steps = start.to_vec();
    let mut best = look(&steps);
    for _ in 0..ROUNDS {
        let around = around(&steps);
        let next = around
            .into_iter()
            .filter_map(|trial| look(&trial).map(|found| (trial, found)))
            .min_by(|a, b| value(&a.1.1).total_cmp(&value(&b.1.1)));
        match next {
            Some((trial, found)) if best.as_ref().is_none_or(|b| value(&found.1) < value(&b.1)) => {
                steps = trial;
                best = Some(found);
            }
            _ => break,
        }
    }
    best
}

/// Every point one step away in one direction or in two, and two steps in one.
fn around(steps: &[f64]) -> Vec<Vec<f64>> {
    let ways = [
        (1.0, 0.0),
        (-1.0, 0.0),
        (1.0, 1.0),
        (1.0, -1.0),
        (-1.0, 1.0),
        (-1.0, -1.0),
    ];
    let pairs = (0..steps.len()).flat_map(|i| (0..=i).map(move |j| (i, j)));
    pairs
        .flat_map(|(i, j)| ways.map(|(a, b)| (i, j, a, b)))
        .map(|(i, j, a, b)| {
            let mut p = steps.to_vec();
            p.iter_mut().skip(i).take(1).for_each(|v| *v += a);
            p.iter_mut().skip(j).take(1).for_each(|v| *v += b);
            p
        })
        .collect()
}
