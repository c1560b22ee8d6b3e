//! Of all places that score alike, the one with the least movement.
//!
//! With both joints free, or one free fore and aft as well, whole valleys of places keep toe: a joint may go a hand's
//! breadth along one for a ten-thousandth of a degree. A builder can't measure that, but has to carry the joint there.
//! So scores within [`EQUAL`] of the least are taken as equal, and of their places the one is chosen to which the
//! joints move least (the sum of the squares of their ways).

use nalgebra::{DMatrix, DVector};

use super::{
    least_squares::{descend, fit, rack_squares, reweigh},
    problem::{Bounds, Evaluated, Problem},
};
use crate::Scoring;

/// Scores this near to each other are equal: a thousandth of a degree, rad, finer than a shop's toe gauge reads
/// (common practice, no source). For the slope the same in 25 mm, rad/mm.
const EQUAL: [f64; 2] = [1.745_329_25e-5, 1.745_329_25e-5 / 25.0];
/// Steps in the pull's strength: how many, the first strength in (rad/mm)^2, and the first, longest and last step of its
/// logarithm.
const STRENGTHS: usize = 120;
const PULL: f64 = 1e-10;
const FIRST_STEP: f64 = 4.0;
const LAST_STEP: f64 = 1e-7;
/// Rounds of multipliers, the penalty's weight, the movement that counts as one, mm, and the change that ends them.
const ROUNDS: usize = 60;
const PENALTY: f64 = 100.0;
const MOVEMENT: f64 = 10.0;
const MET: f64 = 1e-7;

/// How much worse than the least a score is still equal to it.
fn equal(scoring: Scoring) -> f64 {
    let [angle, slope] = EQUAL;
    match scoring {
        Scoring::Largest | Scoring::Rms => angle,
        Scoring::Slope => slope,
    }
}

/// The score up to which places are equal when `least` is the least there is.
pub(crate) fn still_equal(scoring: Scoring, least: f64) -> f64 {
    least + equal(scoring)
}

/// The place of least movement that scores no worse than `target`, given one that does.
pub(crate) fn least_move(
    problem: &Problem<'_>,
    bounds: &Bounds,
    good: &[f64],
    target: f64,
) -> Vec<f64> {
    // Where the joints are, or as near to it as the bounds let.
    let mut home = vec![0.0; good.len()];
    bounds.clamp(&mut home);
    let met = |p: &[f64]| problem.value(p).is_some_and(|v| v <= target * (1.0 + 1e-6));
    if met(&home) {
        return home;
    }
    let way = |p: &[f64]| p.iter().map(|v| v * v).sum::<f64>();
    let tries = match problem.scoring {
        Scoring::Rms => [pulled(problem, bounds, &home, target), None],
        Scoring::Largest | Scoring::Slope => {
            [&home[..], good].map(|start| by_multipliers(problem, bounds, start, target))
        }
    };
    tries
        .into_iter()
        .flatten()
        .filter(|p| met(p))
        .chain([good.to_vec()])
        .min_by(|a, b| way(a).total_cmp(&way(b)))
        .unwrap_or(home)
}

/// For the RMS: the mean square with a pull back home is a sum of squares too; the strongest pull that lets the target
/// be reached is looked for.
fn pulled(problem: &Problem<'_>, bounds: &Bounds, home: &[f64], target: f64) -> Option<Vec<f64>> {
    let mut weights = vec![1.0; problem.stations.racks().len()];
    let mut place = home.to_vec();
    let mut best = None;
    let (mut strength, mut step, mut last) = (PULL.ln(), FIRST_STEP, None);
    // The worst of several rack positions gets its weight on the way, so that an early step may be the wrong one:
    // steps get longer again until they turn back.
    for _ in 0..STRENGTHS {
        let held = Problem {
            pull: strength.exp(),
            ..problem.clone()
        };
        place = fit(&held, bounds, &place, &weights)?;
        reweigh(&mut weights, &rack_squares(&problem.evaluate(&place)?));
        let value = problem.value(&place)?;
        let met = value <= target;
        if met {
            best = Some(place.clone());
        }
        if step < LAST_STEP && met {
            break;
        }
        step = match last {
            Some(before) if before != met => 0.4 * step,
            _ => (1.3 * step).min(FIRST_STEP),
        };
        last = Some(met);
        strength += if met { step } else { -step };
    }
    best
}

/// For the largest: a sum of squares of the movement and of what is too much, with multipliers (Hestenes; Powell, 1969,
/// from memory) so that it ends on the limit and not near it.
fn by_multipliers(
    problem: &Problem<'_>,
    bounds: &Bounds,
    start: &[f64],
    target: f64,
) -> Option<Vec<f64>> {
    let mut place = start.to_vec();
    let mut multipliers = vec![0.0; problem.evaluate(start)?.residuals.len()];
    let excess = |r: f64| (r.abs() - target) / equal(problem.scoring);
    for _ in 0..ROUNDS {
        let at = |p: &[f64]| {
            let here = problem.evaluate(p)?;
            let over = here.residuals.map(excess);
            Some(penalised(
                &here,
                p,
                &over,
                &multipliers,
                equal(problem.scoring),
            ))
        };
        place = descend(at, bounds, &place)?;
        let here = problem.evaluate(&place)?;
        let mut changed = 0.0_f64;
        for (m, r) in multipliers.iter_mut().zip(here.residuals.iter()) {
            let next = (*m + excess(*r)).max(0.0);
            changed = changed.max((next - *m).abs());
            *m = next;
        }
        if changed < MET {
            break;
        }
    }
    Some(place)
}

/// The movement, and what every residual is over the target, in units of what counts as equal.
fn penalised(
    here: &Evaluated,
    p: &[f64],
    over: &DVector<f64>,
    multipliers: &[f64],
    unit: f64,
) -> Evaluated {
    let (n, m) = (p.len(), here.residuals.len());
    let mut residuals = DVector::zeros(n + m);
    let mut jacobian = DMatrix::zeros(n + m, n);
    for (i, v) in p.iter().enumerate() {
        residuals[i] = v / MOVEMENT;
        jacobian[(i, i)] = 1.0 / MOVEMENT;
    }
    let gain = PENALTY.sqrt();
    let terms = here.residuals.iter().zip(over.iter().zip(multipliers));
    for (j, (r, (over, y))) in terms.enumerate() {
        let over = over + y;
        if over > 0.0 {
            residuals[n + j] = gain * over;
            let row = here.jacobian.row(j) * (gain * r.signum() / unit);
            jacobian.row_mut(n + j).copy_from(&row);
        }
    }
    Evaluated {
        residuals,
        jacobian,
        per_rack: n + m,
    }
}
