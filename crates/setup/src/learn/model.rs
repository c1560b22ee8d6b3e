//! Readings of several rounds as a function of the hardpoints' errors.

use nalgebra::{DMatrix, DVector};
use trammel_geometry::{Corner, Linkage};
use trammel_tuning::Tolerance;

use super::Round;
use crate::least_squares::Linear;

/// Difference step, in standard deviations of the coordinate.
const DIFFERENCE: f64 = 0.01;
/// Keeps a zero that was read without any error usable, rad.
const LEAST_ZERO: f64 = 1e-9;

/// The unknowns are first the errors of the coordinates in their standard deviations, then one zero for each curve, in its own.
pub(super) struct Model<'a> {
    pub drawn: &'a Corner,
    pub tolerances: &'a [Tolerance],
    pub rounds: &'a [Round],
}

impl Model<'_> {
    pub(super) fn zeros(&self) -> usize {
        self.rounds.iter().map(|r| r.readings.curves().len()).sum()
    }

    pub(super) fn unknowns(&self) -> usize {
        self.tolerances.len() + self.zeros()
    }

    fn readings(&self) -> usize {
        self.rounds.iter().map(|r| r.readings.count()).sum()
    }

    /// The corner with these errors, each in its standard deviations.
    pub(super) fn corner(&self, scaled: &[f64]) -> Corner {
        let mut corner = *self.drawn;
        for (t, e) in self.tolerances.iter().zip(scaled) {
            *t.coordinate.of(&mut corner) += e * t.spread.deviation();
        }
        corner
    }

    /// Toe changes of all readings, the zeros taken as exact. `None` where a pose can't be reached.
    pub(super) fn changes(&self, scaled: &[f64]) -> Option<Vec<f64>> {
        let corner = self.corner(scaled);
        let mut all = Vec::with_capacity(self.readings());
        for round in self.rounds {
            let linkage = Linkage::new(&round.shift.on(&corner)).ok()?;
            all.extend(round.readings.predicted(&linkage).ok()?);
        }
        Some(all)
    }

    /// Readings, what is likely of the coordinates, and the zeros.
    pub(super) fn linear(&self, x: &DVector<f64>) -> Option<Linear> {
        let coordinates = self.tolerances.len();
        let (n, rows) = (self.unknowns(), self.readings());
        let scaled = x.as_slice().get(..coordinates)?;
        let here = self.changes(scaled)?;
        let mut residuals = DVector::zeros(rows + n);
        let mut jacobian = DMatrix::zeros(rows + n, n);
        let points = || self.rounds.iter().flat_map(|r| r.readings.points());
        for (i, (p, c)) in points().zip(&here).enumerate() {
            residuals[i] = (c - p.change) / p.deviation;
        }
        let mut off = scaled.to_vec();
        for k in 0..coordinates {
            shift(&mut off, k, DIFFERENCE);
            let there = self.changes(&off)?;
            shift(&mut off, k, -DIFFERENCE);
            for (i, (p, (a, b))) in points().zip(there.iter().zip(&here)).enumerate() {
                jacobian[(i, k)] = (a - b) / DIFFERENCE / p.deviation;
            }
        }
        self.add_zeros(x, &mut residuals, &mut jacobian);
        for k in 0..n {
            residuals[rows + k] = x[k];
            jacobian[(rows + k, k)] = 1.0;
        }
        Some(Linear {
            residuals,
            jacobian,
        })
    }

    fn add_zeros(
        &self,
        x: &DVector<f64>,
        residuals: &mut DVector<f64>,
        jacobian: &mut DMatrix<f64>,
    ) {
        let curves = self.rounds.iter().flat_map(|r| r.readings.curves());
        let mut row = 0;
        for (curve, column) in curves.zip(self.tolerances.len()..) {
            let zero = curve.zero_deviation.max(LEAST_ZERO);
            for p in &curve.points {
                // A zero read too far in makes every change read too far out.
                residuals[row] -= x[column] * zero / p.deviation;
                jacobian[(row, column)] = -zero / p.deviation;
                row += 1;
            }
        }
    }
}

fn shift(values: &mut [f64], at: usize, by: f64) {
    if let Some(v) = values.get_mut(at) {
        *v += by;
    }
}
