//! Weighted least squares with the covariance of what is found: damped Gauss-Newton steps (Levenberg, Quarterly of Applied
//! Mathematics 2, 1944; Marquardt, SIAM Journal 11, 1963; from memory).

use nalgebra::{DMatrix, DVector};

/// Most steps.
const STEPS: usize = 200;
/// A step this short, mm or rad, ends it.
const SHORT: f64 = 1e-9;
/// Damping against the curvature's diagonal: start, on a bad step, on a good one, and where it gives up.
const DAMPING: [f64; 4] = [1e-4, 10.0, 0.1, 1e10];

/// What is left of each reading, in its standard deviations, and how that changes with the unknowns.
#[derive(Clone, Debug)]
pub(crate) struct Linear {
    /// Computed less read, over the standard deviation.
    pub residuals: DVector<f64>,
    /// One row for each residual, one column for each unknown.
    pub jacobian: DMatrix<f64>,
}

/// Where the sum of squares is least.
#[derive(Clone, Debug)]
pub(crate) struct Least {
    /// The unknowns.
    pub at: DVector<f64>,
    /// The readings there.
    pub linear: Linear,
    /// Whether the steps came to rest.
    pub settled: bool,
}

impl Linear {
    pub(crate) fn cost(&self) -> f64 {
        self.residuals.norm_squared()
    }

    /// Inverse of the curvature: the covariance of the unknowns. `None` where the readings leave something open.
    pub(crate) fn covariance(&self) -> Option<DMatrix<f64>> {
        let curvature = self.jacobian.tr_mul(&self.jacobian);
        curvature.cholesky().map(|c| c.inverse())
    }
}

/// From a start to the least sum of squares nearby. `None` when the start can't be evaluated.
pub(crate) fn descend(
    evaluate: impl Fn(&DVector<f64>) -> Option<Linear>,
    start: DVector<f64>,
) -> Option<Least> {
    let mut at = start;
    let mut linear = evaluate(&at)?;
    let [mut damping, worse, better, most] = DAMPING;
    for _ in 0..STEPS {
        let Some(step) = step(&linear, damping) else {
            damping *= worse;
            if damping > most {
                break;
            }
            continue;
        };
        let short = step.amax() < SHORT;
        let next = &at + step;
        match evaluate(&next).filter(|n| n.cost() <= linear.cost()) {
            Some(there) => {
                at = next;
                linear = there;
                damping = (damping * better).max(1e-14);
            }
            None if damping < most => damping *= worse,
            None => break,
        }
        if short {
            return Some(Least {
                at,
                linear,
                settled: true,
            });
        }
    }
    Some(Least {
        at,
        linear,
        settled: false,
    })
}

fn step(linear: &Linear, damping: f64) -> Option<DVector<f64>> {
    let mut curvature = linear.jacobian.tr_mul(&linear.jacobian);
    let floor = curvature.diagonal().amax().max(f64::MIN_POSITIVE) * 1e-9;
    for i in 0..curvature.nrows() {
        curvature[(i, i)] += damping * curvature[(i, i)].max(floor);
    }
    let slope = linear.jacobian.tr_mul(&linear.residuals);
    let step = -curvature.cholesky()?.solve(&slope);
    step.iter().all(|v| v.is_finite()).then_some(step)
}
