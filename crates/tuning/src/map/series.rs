//! Power series fitted through Chebyshev points.

/// Points of a fit, and most coefficients of a series.
pub(crate) const POINTS: usize = 13;

/// Coefficients of powers of `s`, -1 <= s <= 1.
pub(crate) type Series = [f64; POINTS];

/// The fit's points and the way from values there to coefficients.
pub(crate) struct Fit {
    pub points: [f64; POINTS],
    to_chebyshev: [Series; POINTS],
    /// Row `n`: the powers' coefficients of the Chebyshev polynomial of degree `n`.
    powers: [Series; POINTS],
}

impl Fit {
    pub(crate) fn new() -> Self {
        let n = POINTS as f64;
        let angle = |j: usize| std::f64::consts::PI * (j as f64 + 0.5) / n;
        let mut powers = [[0.0; POINTS]; POINTS];
        for degree in 0..POINTS {
            powers[degree] = chebyshev_powers(degree, &powers);
        }
        Self {
            points: std::array::from_fn(|j| angle(j).cos()),
            to_chebyshev: std::array::from_fn(|k| {
                let weight = if k == 0 { 1.0 } else { 2.0 } / n;
                std::array::from_fn(|j| weight * (k as f64 * angle(j)).cos())
            }),
            powers,
        }
    }

    /// Chebyshev coefficients of the values at the points.
    pub(crate) fn chebyshev(&self, values: &Series) -> Series {
        std::array::from_fn(|k| {
            self.to_chebyshev[k]
                .iter()
                .zip(values)
                .map(|(w, v)| w * v)
                .sum()
        })
    }

    /// The power series of the first `kept` Chebyshev terms.
    pub(crate) fn powers(&self, chebyshev: &Series, kept: usize) -> Series {
        let mut series = [0.0; POINTS];
        for (c, row) in chebyshev.iter().zip(&self.powers).take(kept) {
            for (s, p) in series.iter_mut().zip(row) {
                *s += c * p;
            }
        }
        series
    }
}

/// By the recurrence T(n+1) = 2 s T(n) - T(n-1).
fn chebyshev_powers(degree: usize, lower: &[Series; POINTS]) -> Series {
    let mut row = [0.0; POINTS];
    match degree {
        0 => row[0] = 1.0,
        1 => row[1] = 1.0,
        _ => {
            for k in 0..POINTS {
                let raised = if k == 0 {
                    0.0
                } else {
                    lower[degree - 1][k - 1]
                };
                row[k] = 2.0 * raised - lower[degree - 2][k];
            }
        }
    }
    row
}

/// Greatest sum of what is left out when `kept` terms stay.
pub(crate) fn left_out(chebyshev: &Series, kept: usize) -> f64 {
    chebyshev.iter().skip(kept).map(|c| c.abs()).sum()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_polynomial_is_fitted_exactly() {
        let fit = Fit::new();
        let p = |s: f64| 3.0 - 2.0 * s + 0.5 * s.powi(5) - 0.25 * s.powi(12);
        let values = fit.points.map(p);
        let series = fit.powers(&fit.chebyshev(&values), POINTS);
        for (k, want) in [(0, 3.0), (1, -2.0), (2, 0.0), (5, 0.5), (12, -0.25)] {
            assert!((series[k] - want).abs() < 1e-10, "power {k}: {}", series[k]);
        }
    }

    #[test]
    fn what_is_left_out_bounds_the_error() {
        let fit = Fit::new();
        let chebyshev = fit.chebyshev(&fit.points.map(f64::exp));
        let series = fit.powers(&chebyshev, 7);
        let bound = left_out(&chebyshev, 7) + 1e-13;
        for i in 0..=100 {
            let s = f64::from(i) / 50.0 - 1.0;
            let value = series.iter().rev().fold(0.0, |sum, c| sum * s + c);
            assert!((value - s.exp()).abs() <= bound * (1.0 + 1e-9));
        }
        assert!(bound > 1e-8);
    }
}
