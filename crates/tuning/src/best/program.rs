//! The small linear programme inside the minimax search: the step for which the largest of the linearised residuals is
//! least.
//!
//! Its dual has one row more than there are directions, and as many columns as residuals, so the simplex method on the
//! dual (Dantzig; textbook) works on
//! matrices of seven by seven at most.

use nalgebra::{DMatrix, DVector};

/// Exchanges before giving up, and from which the lowest-numbered column is taken so that no cycle lasts (Bland's
/// rule, 1977, from memory).
const EXCHANGES: usize = 400;
const CAREFUL: usize = 200;
/// Violations below this, against the largest residual, count as none.
const TOLERANCE: f64 = 1e-13;

/// What the programme found.
#[derive(Clone, Debug)]
pub(crate) struct Step {
    pub by: Vec<f64>,
    /// Largest linearised residual after it.
    pub largest: f64,
    /// Residuals that hold it there: index, sign, multiplier.
    pub holding: Vec<(usize, f64, f64)>,
}

/// A column of the dual: a residual with a sign, or a bound of a direction.
#[derive(Clone, Copy, PartialEq)]
enum Column {
    Residual(usize, f64),
    Low(usize),
    High(usize),
}

struct Programme<'a> {
    residuals: &'a DVector<f64>,
    jacobian: &'a DMatrix<f64>,
    low: &'a [f64],
    high: &'a [f64],
}

/// The step within `low..high` (around nought) that makes the largest |residual + jacobian step| least. `None` when
/// there is nothing to do, or the numbers are not.
pub(crate) fn least_largest(
    residuals: &DVector<f64>,
    jacobian: &DMatrix<f64>,
    low: &[f64],
    high: &[f64],
) -> Option<Step> {
    let scale = residuals.amax();
    let numbers = residuals
        .iter()
        .chain(jacobian.iter())
        .all(|v| v.is_finite());
    if !(scale > 0.0 && numbers) {
        return None;
    }
    let (residuals, jacobian) = (&(residuals / scale), &(jacobian / scale));
    let step = Programme {
        residuals,
        jacobian,
        low,
        high,
    }
    .solve()?;
    Some(Step {
        largest: step.largest * scale,
        ..step
    })
}

impl Programme<'_> {
    fn size(&self) -> usize {
        self.jacobian.ncols() + 1
    }

    fn column(&self, c: Column) -> DVector<f64> {
        let mut a = DVector::zeros(self.size());
        match c {
            Column::Residual(j, sign) => {
                a[0] = 1.0;
                for i in 1..self.size() {
                    a[i] = -sign * self.jacobian[(j, i - 1)];
                }
            }
            Column::Low(i) => a[i + 1] = 1.0,
            Column::High(i) => a[i + 1] = -1.0,
        }
        a
    }

    fn worth(&self, c: Column) -> f64 {
        match c {
            Column::Residual(j, sign) => sign * self.residuals[j],
            Column::Low(i) => self.low.get(i).copied().unwrap_or(0.0),
            Column::High(i) => -self.high.get(i).copied().unwrap_or(0.0),
        }
    }

    fn all(&self) -> impl Iterator<Item = Column> {
        let residuals = (0..self.residuals.len())
            .flat_map(|j| [Column::Residual(j, 1.0), Column::Residual(j, -1.0)]);
        let bounds = (0..self.size() - 1).flat_map(|i| [Column::Low(i), Column::High(i)]);
        residuals.chain(bounds)
    }

    /// The largest residual carries all the weight, and bounds hold every direction against it.
    fn first_basis(&self) -> Vec<Column> {
        let worst = self.residuals.iamax();
        let sign = if self.residuals[worst] < 0.0 {
            -1.0
        } else {
            1.0
        };
        let bounds = (0..self.size() - 1).map(|i| {
            if sign * self.jacobian[(worst, i)] > 0.0 {
                Column::Low(i)
            } else {
                Column::High(i)
            }
        });
        std::iter::once(Column::Residual(worst, sign))
            .chain(bounds)
            .collect()
    }

    fn solve(&self) -> Option<Step> {
        let mut basis = self.first_basis();
        let mut whole = DVector::zeros(self.size());
        whole[0] = 1.0;
        for exchange in 0..EXCHANGES {
            let columns: Vec<_> = basis.iter().map(|&c| self.column(c)).collect();
            let matrix = DMatrix::from_columns(&columns);
            let worth = DVector::from_iterator(basis.len(), basis.iter().map(|&c| self.worth(c)));
            let prices = matrix.transpose().lu().solve(&worth)?;
            let lu = matrix.lu();
            let weights = lu.solve(&whole)?;
            let Some(entering) = self.entering(&prices, exchange >= CAREFUL) else {
                return Some(self.found(&basis, &prices, &weights));
            };
            let change = lu.solve(&self.column(entering))?;
            let leaving = leaving(&weights, &change)?;
            *basis.get_mut(leaving)? = entering;
        }
        None
    }

    fn entering(&self, prices: &DVector<f64>, careful: bool) -> Option<Column> {
        let mut most = TOLERANCE * prices.amax().max(1.0);
        let mut entering = None;
        for c in self.all() {
            let violation = self.worth(c) - self.column(c).dot(prices);
            if violation > most {
                entering = Some(c);
                if careful {
                    return entering;
                }
                most = violation;
            }
        }
        entering
    }

    fn found(&self, basis: &[Column], prices: &DVector<f64>, weights: &DVector<f64>) -> Step {
        let holding = basis
            .iter()
            .zip(weights.iter())
            .filter_map(|(c, &w)| match c {
                Column::Residual(j, sign) if w > 1e-12 => Some((*j, *sign, w)),
                _ => None,
            })
            .collect();
        Step {
            by: prices.iter().skip(1).copied().collect(),
            largest: prices[0],
            holding,
        }
    }
}

/// The basis column whose weight runs out first.
fn leaving(weights: &DVector<f64>, change: &DVector<f64>) -> Option<usize> {
    let mut first: Option<(usize, f64)> = None;
    for (i, (&w, &c)) in weights.iter().zip(change.iter()).enumerate() {
        if c > 1e-11 {
            let ratio = w.max(0.0) / c;
            if first.is_none_or(|(_, r)| ratio < r) {
                first = Some((i, ratio));
            }
        }
    }
    first.map(|f| f.0)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_middle_of_three_numbers_is_the_mean_of_the_outer_two() {
        let r = DVector::from_vec(vec![1.0, 2.0, 7.0]);
        let j = DMatrix::from_element(3, 1, 1.0);
        let step = least_largest(&r, &j, &[-100.0], &[100.0]).unwrap();
        assert!((step.by[0] + 4.0).abs() < 1e-12, "{step:?}");
        assert!((step.largest - 3.0).abs() < 1e-12);
        assert_eq!(step.holding.len(), 2);
    }

    #[test]
    fn a_bound_stops_the_step() {
        let r = DVector::from_vec(vec![1.0, 2.0, 7.0]);
        let j = DMatrix::from_element(3, 1, 1.0);
        let step = least_largest(&r, &j, &[-1.5], &[100.0]).unwrap();
        assert!((step.by[0] + 1.5).abs() < 1e-12, "{step:?}");
        assert!((step.largest - 5.5).abs() < 1e-12);
    }

    /// Best straight line through a parabola in the sense of Chebyshev: x^2 on -1..1 misses by a half, by the
    /// classical theorem.
    #[test]
    fn the_best_line_through_a_parabola_misses_by_a_half() {
        let x: Vec<f64> = (0..=200).map(|i| f64::from(i) / 100.0 - 1.0).collect();
        let r = DVector::from_iterator(x.len(), x.iter().map(|x| x * x + 0.3 * x - 2.0));
        let j = DMatrix::from_fn(x.len(), 2, |i, k| if k == 0 { 1.0 } else { x[i] });
        let step = least_largest(&r, &j, &[-10.0; 2], &[10.0; 2]).unwrap();
        assert!((step.largest - 0.5).abs() < 1e-12, "{step:?}");
        assert!((step.by[0] - 1.5).abs() < 1e-9 && (step.by[1] + 0.3).abs() < 1e-9);
    }

    #[test]
    fn what_is_no_number_is_refused() {
        let r = DVector::from_vec(vec![f64::NAN, 1.0]);
        let j = DMatrix::from_element(2, 1, 1.0);
        assert!(least_largest(&r, &j, &[-1.0], &[1.0]).is_none());
    }
}
