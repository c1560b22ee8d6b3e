//! The least root mean square: damped least squares (Levenberg, Quarterly of Applied Mathematics 2, 1944; Marquardt,
//! SIAM Journal 11, 1963; from
//! memory) by singular values, in a box; and the least of the worst of several rack positions by Lawson's reweighting
//! (1961, from memory).

use nalgebra::{DMatrix, DVector};

use super::problem::{Bounds, Evaluated, Problem};

/// Steps of one fit.
const STEPS: usize = 120;
/// Every so many steps the whole curvature is used instead of the derivatives' squares: where the residuals can't be
/// made
/// small, damped steps creep.
const CURVED: usize = 6;
/// Difference step for the curvature, mm.
const DIFFERENCE: f64 = 1e-2;
/// Fits of the reweighting, and the relative gap between worst and mean at which it ends.
const ROUNDS: usize = 200;
const GAP: f64 = 1e-9;
/// A step this short, mm, ends a fit.
const SHORT: f64 = 1e-10;
/// Damping: start, growth on a bad step, shrinkage on a good one, and where it gives up, all against the largest
/// singular value.
const DAMPING: [f64; 4] = [1e-6, 8.0, 0.1, 1e6];

/// The place of the least RMS, the worst rack position counting, from a start.
pub(crate) fn least_rms(problem: &Problem<'_>, bounds: &Bounds, start: &[f64]) -> Option<Vec<f64>> {
    let racks = problem.stations.racks().len();
    let mut weights = vec![1.0; racks];
    let mut place = fit(problem, bounds, start, &weights)?;
    if racks < 2 {
        return Some(place);
    }
    let mut best = (problem.value(&place)?, place.clone());
    for _ in 0..ROUNDS {
        let squares = rack_squares(&problem.evaluate(&place)?);
        let worst = squares.iter().fold(0.0_f64, |m, s| m.max(*s));
        let total: f64 = weights.iter().sum();
        let mean: f64 = weights
            .iter()
            .zip(&squares)
            .map(|(w, s)| w * s)
            .sum::<f64>()
            / total;
        if worst <= mean * (1.0 + GAP) || worst == 0.0 {
            break;
        }
        reweigh(&mut weights, &squares);
        place = fit(problem, bounds, &place, &weights)?;
        let value = problem.value(&place)?;
        if value < best.0 {
            best = (value, place.clone());
        }
    }
    Some(best.1)
}

/// Gives rack positions weight by how bad they are, the worst what it has.
pub(crate) fn reweigh(weights: &mut [f64], squares: &[f64]) {
    let worst = squares.iter().fold(0.0_f64, |m, s| m.max(*s));
    if worst > 0.0 {
        for (w, s) in weights.iter_mut().zip(squares) {
            *w *= (s / worst).sqrt();
        }
    }
}

/// Sum of the squares of each rack position.
pub(crate) fn rack_squares(e: &Evaluated) -> Vec<f64> {
    e.residuals
        .as_slice()
        .chunks(e.per_rack.max(1))
        .map(|c| c.iter().map(|r| r * r).sum())
        .collect()
}

/// Residuals and derivatives with each rack position's weight.
fn weigh(e: &mut Evaluated, weights: &[f64]) {
    let per_rack = e.per_rack.max(1);
    for (i, (r, mut row)) in e
        .residuals
        .iter_mut()
        .zip(e.jacobian.row_iter_mut())
        .enumerate()
    {
        let w = weights.get(i / per_rack).copied().unwrap_or(0.0).sqrt();
        *r *= w;
        row *= w;
    }
}

/// The place of the least weighed sum of squares, from a start.
pub(crate) fn fit(
    problem: &Problem<'_>,
    bounds: &Bounds,
    start: &[f64],
    weights: &[f64],
) -> Option<Vec<f64>> {
    let at = |p: &[f64]| {
        let mut e = problem.evaluate(p)?;
        weigh(&mut e, weights);
        Some(e)
    };
    descend(at, bounds, start)
}

/// The place of the least sum of squares in a box, from a start. `None` when the start can't be evaluated.
pub(crate) fn descend(
    at: impl Fn(&[f64]) -> Option<Evaluated>,
    bounds: &Bounds,
    start: &[f64],
) -> Option<Vec<f64>> {
    let mut p = start.to_vec();
    bounds.clamp(&mut p);
    let mut here = at(&p)?;
    let [mut damping, worse, better, most] = DAMPING;
    for count in 1..=STEPS {
        if count % CURVED == 0
            && let Some(q) = curved(&at, &here, bounds, &p)
            && let Some(there) = at(&q).filter(|t| squares(t) < squares(&here))
        {
            p = q;
            here = there;
        }
        let next = next(&here, bounds, &p, damping);
        let moved = p
            .iter()
            .zip(&next)
            .fold(0.0_f64, |m, (a, b)| m.max((a - b).abs()));
        if !(moved > SHORT) {
            break;
        }
        match at(&next) {
            Some(there) if squares(&there) <= squares(&here) => {
                p = next;
                here = there;
                damping = (damping * better).max(1e-15);
            }
            _ if damping < most => damping *= worse,
            _ => break,
        }
    }
    Some(p)
}

fn squares(e: &Evaluated) -> f64 {
    e.residuals.norm_squared()
}

/// Where Newton's method would go with the sum of squares' whole curvature, by differences of its gradient; `None`
/// where it is no bowl.
fn curved(
    at: impl Fn(&[f64]) -> Option<Evaluated>,
    here: &Evaluated,
    bounds: &Bounds,
    p: &[f64],
) -> Option<Vec<f64>> {
    let gradient = |e: &Evaluated| e.jacobian.tr_mul(&e.residuals);
    let n = p.len();
    let mut bend = DMatrix::zeros(n, n);
    for (i, mut column) in bend.column_iter_mut().enumerate() {
        let shifted = |by: f64| {
            let mut q = p.to_vec();
            q.iter_mut().skip(i).take(1).for_each(|v| *v += by);
            at(&q).map(|e| gradient(&e))
        };
        column.copy_from(&((shifted(DIFFERENCE)? - shifted(-DIFFERENCE)?) / (2.0 * DIFFERENCE)));
    }
    let mut bend = (&bend + bend.transpose()) * 0.5;
    let mut slope = gradient(here);
    for (i, _) in free_columns(here, bounds, p)
        .iter()
        .enumerate()
        .filter(|f| !f.1)
    {
        bend.row_mut(i).fill(0.0);
        bend.column_mut(i).fill(0.0);
        bend[(i, i)] = 1.0;
        slope[i] = 0.0;
    }
    let step = bend.cholesky()?.solve(&slope);
    let mut q: Vec<f64> = p.iter().zip(step.iter()).map(|(v, d)| v - d).collect();
    bounds.clamp(&mut q);
    Some(q)
}

/// Which directions are not held by the box.
fn free_columns(e: &Evaluated, bounds: &Bounds, p: &[f64]) -> Vec<bool> {
    let gradient = e.jacobian.tr_mul(&e.residuals);
    p.iter()
        .zip(bounds.low.iter().zip(&bounds.high))
        .zip(gradient.iter())
        .map(|((&v, (&l, &h)), &g)| !((v <= l && g > 0.0) || (v >= h && g < 0.0)))
        .collect()
}

/// The place to try next: the damped step, where directions that would leave the box are put on its side and the
/// others are worked out again.
fn next(here: &Evaluated, bounds: &Bounds, p: &[f64], damping: f64) -> Vec<f64> {
    let mut free = free_columns(here, bounds, p);
    let mut residuals = here.residuals.clone();
    let mut next = p.to_vec();
    for _ in 0..=p.len() {
        let step = damped_step(&here.jacobian, &residuals, &free, damping);
        let mut inside = true;
        for (i, v) in next.iter_mut().enumerate() {
            let (Some(&at), Some(&l), Some(&h)) = (p.get(i), bounds.low.get(i), bounds.high.get(i))
            else {
                continue;
            };
            let Some(free) = free.get_mut(i).filter(|f| **f) else {
                continue;
            };
            let wanted = at + step[i];
            *v = wanted.clamp(l, h);
            if *v != wanted {
                *free = false;
                inside = false;
                residuals += here.jacobian.column(i) * (*v - at);
            }
        }
        if inside {
            break;
        }
    }
    next
}

/// The step that makes the linearised residuals least, held back by the damping where they say little.
fn damped_step(j: &DMatrix<f64>, r: &DVector<f64>, free: &[bool], damping: f64) -> DVector<f64> {
    let mut j = j.clone();
    for (mut column, &free) in j.column_iter_mut().zip(free) {
        if !free {
            column.fill(0.0);
        }
    }
    let none = DVector::zeros(j.ncols());
    let svd = j.svd(true, true);
    let (Some(u), Some(v_t)) = (svd.u, svd.v_t) else {
        return none;
    };
    let top = svd.singular_values.max();
    if !(top > 0.0) {
        return none;
    }
    let mut along = u.tr_mul(r);
    for (a, &s) in along.iter_mut().zip(svd.singular_values.iter()) {
        *a *= -s / (s * s + damping * top * top);
    }
    v_t.tr_mul(&along)
}
