//! The least largest toe change: linear programmes in a trust region, then Newton's method on the conditions of a
//! minimum.

use nalgebra::{DMatrix, DVector};

use super::{
    problem::{Bounds, Evaluated, Problem},
    program::{Step, least_largest},
};

/// Steps of the search.
const STEPS: usize = 150;
/// First trust region, mm, and the one that ends the search.
const FIRST_REGION: f64 = 20.0;
const LAST_REGION: f64 = 1e-11;
/// Newton steps of the finish, and its difference step, mm.
const FINISH: usize = 8;
const DIFFERENCE: f64 = 1e-2;

/// The place of the least largest residual, from a start.
pub(crate) fn least_of_largest(
    problem: &Problem<'_>,
    bounds: &Bounds,
    start: &[f64],
) -> Option<Vec<f64>> {
    let mut p = start.to_vec();
    bounds.clamp(&mut p);
    let mut here = problem.evaluate(&p)?;
    let mut region = FIRST_REGION;
    let mut last = None;
    for _ in 0..STEPS {
        let Some(step) = programme(&here, bounds, &p, region) else {
            break;
        };
        let length = step.by.iter().fold(0.0_f64, |m, d| m.max(d.abs()));
        let value = here.residuals.amax();
        let foretold = value - step.largest;
        if length < LAST_REGION || region < LAST_REGION || !(foretold > 1e-15 * value) {
            last = Some(step);
            break;
        }
        let next = within(bounds, &p, &step.by);
        match problem.evaluate(&next) {
            Some(there) if there.residuals.amax() < value => {
                let kept = (value - there.residuals.amax()) / foretold;
                region = if kept > 0.7 {
                    (2.0 * region).min(4.0 * FIRST_REGION)
                } else if kept < 0.3 {
                    0.5 * length
                } else {
                    region
                };
                p = next;
                here = there;
            }
            _ => region = 0.3 * length,
        }
        last = Some(step);
    }
    let finished = last.and_then(|step| finish(problem, bounds, &p, &step));
    Some(finished.unwrap_or(p))
}

fn programme(here: &Evaluated, bounds: &Bounds, p: &[f64], region: f64) -> Option<Step> {
    let side = |ends: &[f64], way: f64| -> Vec<f64> {
        ends.iter()
            .zip(p)
            .map(|(e, v)| ((e - v) * way).clamp(0.0, region) * way)
            .collect()
    };
    least_largest(
        &here.residuals,
        &here.jacobian,
        &side(&bounds.low, -1.0),
        &side(&bounds.high, 1.0),
    )
}

fn within(bounds: &Bounds, p: &[f64], by: &[f64]) -> Vec<f64> {
    let mut next: Vec<f64> = p.iter().zip(by).map(|(a, b)| a + b).collect();
    bounds.clamp(&mut next);
    next
}

/// Solves the conditions of a minimum on the residuals that hold it: they are all equal, and their weighted
/// derivatives cancel. Gives the place only if it is
/// no worse than where it started.
fn finish(problem: &Problem<'_>, bounds: &Bounds, start: &[f64], step: &Step) -> Option<Vec<f64>> {
    let value = problem.value(start)?;
    let n = start.len();
    let mut p = start.to_vec();
    let mut weights: Vec<f64> = step.holding.iter().map(|h| h.2).collect();
    for _ in 0..FINISH {
        let here = problem.evaluate(&p)?;
        let by = newton(problem, &p, &here, step, &weights)?;
        for (v, d) in p.iter_mut().zip(by.iter()) {
            *v += d;
        }
        for (w, d) in weights.iter_mut().zip(by.iter().skip(n + 1)) {
            *w += d;
        }
        if !bounds.contains(&p) {
            return None;
        }
    }
    let better = problem.value(&p)? <= value * (1.0 + 1e-12);
    (better && weights.iter().all(|&w| w > -1e-9)).then_some(p)
}

/// One Newton step in place, largest and multipliers.
fn newton(
    problem: &Problem<'_>,
    p: &[f64],
    here: &Evaluated,
    step: &Step,
    weights: &[f64],
) -> Option<DVector<f64>> {
    let (n, held) = (p.len(), step.holding.len());
    let bend = bend(problem, p, step, weights)?;
    let scale = here.residuals.amax().max(f64::MIN_POSITIVE);
    let mut matrix = DMatrix::zeros(n + 1 + held, n + 1 + held);
    let mut wanted = DVector::zeros(n + 1 + held);
    let top = here.residuals.amax();
    for (k, (&(j, sign, _), &w)) in step.holding.iter().zip(weights).enumerate() {
        let row = n + 1 + k;
        for i in 0..n {
            let slope = sign * here.jacobian[(j, i)] / scale;
            matrix[(row, i)] = slope;
            matrix[(i, row)] = slope;
            wanted[i] -= w * slope;
        }
        matrix[(row, n)] = -1.0;
        matrix[(n, row)] = -1.0;
        wanted[row] = (top - sign * here.residuals[j]) / scale;
        wanted[n] += w;
    }
    wanted[n] -= 1.0;
    matrix.view_mut((0, 0), (n, n)).copy_from(&(bend / scale));
    // Directions that nothing depends on leave the matrix singular: the shortest step is wanted then.
    matrix.svd(true, true).solve(&wanted, 1e-13).ok()
}

/// Second derivatives of the weighted residuals, by differences of their derivatives.
fn bend(problem: &Problem<'_>, p: &[f64], step: &Step, weights: &[f64]) -> Option<DMatrix<f64>> {
    let n = p.len();
    let weighted = |q: &[f64]| -> Option<DVector<f64>> {
        let e = problem.evaluate(q)?;
        let mut sum = DVector::zeros(n);
        for (&(j, sign, _), w) in step.holding.iter().zip(weights) {
            sum += e.jacobian.row(j).transpose() * (sign * w);
        }
        Some(sum)
    };
    let mut bend = DMatrix::zeros(n, n);
    for (i, mut column) in bend.column_iter_mut().enumerate() {
        let shifted = |by: f64| {
            let mut q = p.to_vec();
            q.iter_mut().skip(i).take(1).for_each(|v| *v += by);
            weighted(&q)
        };
        column.copy_from(&((shifted(DIFFERENCE)? - shifted(-DIFFERENCE)?) / (2.0 * DIFFERENCE)));
    }
    Some((&bend + bend.transpose()) * 0.5)
}
