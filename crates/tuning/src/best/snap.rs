//! The best spot in whole steps of the shop.

use super::problem::{Bounds, Problem};
use crate::Score;

/// Steps looked at either side of the exact place, for searches of so many directions, and of more.
const WIDTHS: [i32; 5] = [0, 12, 5, 4, 2];
const WIDTH: i32 = 1;

/// The best place near `p` whose coordinates in the vehicle are multiples of `step` along every direction. In a long
/// narrow valley it need not be the nearest.
pub(crate) fn snapped(
    problem: &Problem<'_>,
    bounds: &Bounds,
    p: &[f64],
    step: f64,
    allowed: &dyn Fn(&[f64]) -> bool,
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
        if !bounds.contains(&q) || !allowed(&q) {
            return None;
        }
        problem.score(&q).map(|score| (q, score))
    };
    let value = |s: &Score| s.by(problem.scoring);
    let width = WIDTHS.get(p.len()).copied().unwrap_or(WIDTH);
    grid(&whole, width)
        .iter()
        .filter_map(|steps| look(steps))
        .min_by(|a, b| value(&a.1).total_cmp(&value(&b.1)))
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
