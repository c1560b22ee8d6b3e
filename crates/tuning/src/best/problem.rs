//! What a search makes small, with its derivatives.

use nalgebra::{DMatrix, DVector};
use trammel_geometry::{Corner, Linkage};

use super::freedom::{Direction, moved};
use crate::{Score, Scoring, Stations, ToeCurves, curves_with_sensitivity};

/// Difference step for the slope's derivative, mm.
const STEP: f64 = 1e-2;

/// Residuals and their derivatives at a place.
#[derive(Clone, Debug)]
pub(crate) struct Evaluated {
    /// Toe changes, rack position by rack position, or the slopes.
    pub residuals: DVector<f64>,
    /// A row for each residual, a column for each direction, per mm.
    pub jacobian: DMatrix<f64>,
    /// Residuals of one rack position.
    pub per_rack: usize,
}

/// A corner whose tie-rod joints may move along some directions.
#[derive(Clone, Debug)]
pub(crate) struct Problem<'a> {
    pub corner: &'a Corner,
    pub directions: &'a [Direction],
    pub stations: &'a Stations,
    pub scoring: Scoring,
    /// How hard the joints are pulled back to where they are, (rad/mm)^2: that much of the mean square for each mm^2 of
    /// movement. Nought but where the least movement is looked for.
    pub pull: f64,
}

impl Problem<'_> {
    pub(crate) fn linkage(&self, p: &[f64]) -> Option<Linkage> {
        Linkage::new(&moved(self.corner, self.directions, p)).ok()
    }

    /// The score; `None` where the corner can't be built or doesn't reach.
    pub(crate) fn score(&self, p: &[f64]) -> Option<Score> {
        let curves = ToeCurves::of(&self.linkage(p)?, self.stations).ok()?;
        Some(curves.score())
    }

    pub(crate) fn value(&self, p: &[f64]) -> Option<f64> {
        self.score(p).map(|s| s.by(self.scoring))
    }

    /// Residuals with derivatives; `None` as for [`Problem::score`].
    pub(crate) fn evaluate(&self, p: &[f64]) -> Option<Evaluated> {
        let (curves, rows) = curves_with_sensitivity(&self.linkage(p)?, self.stations).ok()?;
        if self.scoring == Scoring::Slope {
            return self.slopes(p, &curves);
        }
        let jacobian = DMatrix::from_fn(rows.len(), self.directions.len(), |i, j| {
            match (rows.get(i), self.directions.get(j)) {
                (Some(row), Some(d)) if d.outer => row.outer.dot(&d.along),
                (Some(row), Some(d)) => row.inner.dot(&d.along),
                _ => 0.0,
            }
        });
        let plain = Evaluated {
            residuals: DVector::from_iterator(rows.len(), curves.changes()),
            jacobian,
            per_rack: self.stations.travels().len(),
        };
        Some(if self.pull > 0.0 {
            self.pulled(&plain, p)
        } else {
            plain
        })
    }

    /// The same with the pull as further residuals of every rack position.
    fn pulled(&self, plain: &Evaluated, p: &[f64]) -> Evaluated {
        let (n, per_rack) = (p.len(), plain.per_rack + p.len());
        let racks = self.stations.racks().len();
        let gain = (self.pull * plain.per_rack as f64).sqrt();
        let mut residuals = DVector::zeros(racks * per_rack);
        let mut jacobian = DMatrix::zeros(racks * per_rack, n);
        for rack in 0..racks {
            let (from, to) = (rack * plain.per_rack, rack * per_rack);
            let changes = plain.residuals.rows(from, plain.per_rack);
            residuals.rows_mut(to, plain.per_rack).copy_from(&changes);
            let slopes = plain.jacobian.rows(from, plain.per_rack);
            jacobian.rows_mut(to, plain.per_rack).copy_from(&slopes);
            for (i, v) in p.iter().enumerate() {
                residuals[to + plain.per_rack + i] = gain * v;
                jacobian[(to + plain.per_rack + i, i)] = gain;
            }
        }
        Evaluated {
            residuals,
            jacobian,
            per_rack,
        }
    }

    fn slopes(&self, p: &[f64], curves: &ToeCurves) -> Option<Evaluated> {
        let slopes = |p: &[f64]| -> Option<DVector<f64>> {
            let design_height = Stations::new(vec![0.0], self.stations.racks().to_vec()).ok()?;
            let curves = ToeCurves::of(&self.linkage(p)?, &design_height).ok()?;
            let all = curves.curves.iter().map(|c| c.slope);
            Some(DVector::from_iterator(curves.curves.len(), all))
        };
        let count = curves.curves.len();
        let mut jacobian = DMatrix::zeros(count, self.directions.len());
        for (j, mut column) in jacobian.column_iter_mut().enumerate() {
            let shifted = |by: f64| {
                let mut q = p.to_vec();
                q.iter_mut().skip(j).take(1).for_each(|v| *v += by);
                slopes(&q)
            };
            column.copy_from(&((shifted(STEP)? - shifted(-STEP)?) / (2.0 * STEP)));
        }
        Some(Evaluated {
            residuals: DVector::from_iterator(count, curves.curves.iter().map(|c| c.slope)),
            jacobian,
            per_rack: 1,
        })
    }
}

/// A search's box, mm along each direction.
#[derive(Clone, Debug)]
pub(crate) struct Bounds {
    pub low: Vec<f64>,
    pub high: Vec<f64>,
}

impl Bounds {
    pub(crate) fn clamp(&self, p: &mut [f64]) {
        for (v, (&l, &h)) in p.iter_mut().zip(self.low.iter().zip(&self.high)) {
            *v = v.clamp(l, h);
        }
    }

    pub(crate) fn contains(&self, p: &[f64]) -> bool {
        p.iter()
            .zip(self.low.iter().zip(&self.high))
            .all(|(v, (l, h))| v >= l && v <= h)
    }
}
