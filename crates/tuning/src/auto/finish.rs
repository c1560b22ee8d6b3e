//! A candidate's worth as a sum of squares, and the finish on it.

use nalgebra::{DMatrix, DVector};
use trammel_geometry::Corner;

use super::{
    figure::Figure,
    figures::{Judge, Judged},
    request::{Aim, Wish},
    variable::{Variable, moved},
};
use crate::best::{Bounds, Evaluated, descend};

/// Difference step for derivatives, mm.
const STEP: f64 = 1e-3;

/// What makes a candidate good.
pub(crate) struct Objective {
    pub corner: Corner,
    pub variables: Vec<Variable>,
    pub wishes: Vec<Wish>,
    /// What each travel counts, their mean one.
    pub weights: Vec<f64>,
    pub judge: Judge,
}

/// A candidate that can be built, with its worth: the less the better, nought when every wish is fulfilled.
#[derive(Clone, Debug)]
pub(crate) struct Candidate {
    pub values: Vec<f64>,
    pub worth: f64,
    pub judged: Judged,
}

impl Objective {
    pub(crate) fn candidate(&self, values: &[f64]) -> Option<Candidate> {
        let judged = self.judge.judge(&self.moved(values))?;
        let worth = self.residuals(&judged)?.iter().map(|r| r * r).sum();
        Some(Candidate {
            values: values.to_vec(),
            worth,
            judged,
        })
    }

    pub(crate) fn moved(&self, values: &[f64]) -> Corner {
        moved(&self.corner, &self.variables, values)
    }

    pub(crate) fn bounds(&self) -> Bounds {
        Bounds {
            low: self.variables.iter().map(|v| v.low).collect(),
            high: self.variables.iter().map(|v| v.high).collect(),
        }
    }

    /// How far off every wish is. Toe changes count station by station, so that their squares are smooth; the figures
    /// shown are the largest.
    fn residuals(&self, judged: &Judged) -> Option<Vec<f64>> {
        let mut all = Vec::with_capacity(judged.changes.len() + self.wishes.len());
        for wish in &self.wishes {
            let gain = wish.weight.sqrt() / wish.scale;
            let toe = match wish.figure {
                Figure::ToeChange => Some(&judged.changes),
                Figure::ToeChangeAtLock => Some(&judged.changes_at_lock),
                _ => None,
            };
            match toe {
                Some(changes) => {
                    let part = gain / (changes.len().max(1) as f64).sqrt();
                    let weights = self.weights.iter().cycle();
                    all.extend(
                        changes
                            .iter()
                            .zip(weights)
                            .map(|(c, w)| part * w.sqrt() * off(wish.aim, c.abs()).copysign(*c)),
                    );
                }
                None => all.push(gain * off(wish.aim, judged.figures.get(wish.figure)?)),
            }
        }
        all.iter().all(|r| r.is_finite()).then_some(all)
    }

    /// Downhill from a candidate as far as it goes; never to a worse one.
    pub(crate) fn finished(&self, start: &Candidate) -> Candidate {
        let bounds = self.bounds();
        let found = descend(|p| self.evaluated(p, &bounds), &bounds, &start.values)
            .and_then(|values| self.candidate(&values));
        match found {
            Some(better) if better.worth <= start.worth => better,
            _ => start.clone(),
        }
    }

    /// Derivatives by central differences, one-sided at the ends of a variable's range.
    fn evaluated(&self, p: &[f64], bounds: &Bounds) -> Option<Evaluated> {
        let residuals_at = |p: &[f64]| -> Option<DVector<f64>> {
            let judged = self.judge.judge(&self.moved(p))?;
            self.residuals(&judged).map(DVector::from_vec)
        };
        let residuals = residuals_at(p)?;
        let mut jacobian = DMatrix::zeros(residuals.len(), p.len());
        for (i, mut column) in jacobian.column_iter_mut().enumerate() {
            let shifted = |by: f64| {
                let mut q = p.to_vec();
                q.iter_mut().skip(i).take(1).for_each(|v| *v += by);
                bounds.clamp(&mut q);
                let at = q.get(i).copied()?;
                residuals_at(&q).map(|r| (at, r))
            };
            let (up, at_up) = shifted(STEP)?;
            let (down, at_down) = shifted(-STEP)?;
            if up > down {
                column.copy_from(&((at_up - at_down) / (up - down)));
            }
        }
        Some(Evaluated {
            per_rack: residuals.len(),
            residuals,
            jacobian,
        })
    }

    /// The best candidate in whole steps near one: rounded, then downhill over neighbours. Variables without a step
    /// stay as they are.
    pub(crate) fn in_steps(&self, exact: &Candidate) -> Option<Candidate> {
        if self.variables.iter().all(|v| v.step.is_none()) {
            return None;
        }
        let rounded: Vec<f64> = self
            .variables
            .iter()
            .zip(&exact.values)
            .map(|(v, &value)| match v.step {
                Some(step) => {
                    let origin = v.origin(&self.corner);
                    let nearest = ((origin + value) / step).round() * step - origin;
                    into_range(v, nearest, step)
                }
                None => value,
            })
            .collect();
        let mut best = self.candidate(&rounded)?;
        for _ in 0..4 * self.variables.len() {
            match self
                .neighbours(&best)
                .into_iter()
                .min_by(|a, b| a.worth.total_cmp(&b.worth))
            {
                Some(next) if next.worth < best.worth => best = next,
                _ => break,
            }
        }
        Some(best)
    }

    fn neighbours(&self, from: &Candidate) -> Vec<Candidate> {
        let mut all = Vec::new();
        let shift = |values: &mut Vec<f64>, i: usize, way: f64| {
            if let (Some(v), Some(variable)) = (values.get_mut(i), self.variables.get(i)) {
                *v += way * variable.step.unwrap_or(0.0);
            }
        };
        let bounds = self.bounds();
        for i in 0..self.variables.len() {
            for j in 0..=i {
                for (a, b) in [
                    (1.0, 0.0),
                    (-1.0, 0.0),
                    (1.0, 1.0),
                    (1.0, -1.0),
                    (-1.0, 1.0),
                    (-1.0, -1.0),
                ] {
                    if i == j && b != 0.0 {
                        continue;
                    }
                    let mut values = from.values.clone();
                    shift(&mut values, i, a);
                    shift(&mut values, j, b);
                    if bounds.contains(&values) {
                        all.extend(self.candidate(&values));
                    }
                }
            }
        }
        all
    }
}

/// A rounded value one step back inside its range, if rounding took it out.
fn into_range(v: &Variable, value: f64, step: f64) -> f64 {
    if value > v.high {
        value - step
    } else if value < v.low {
        value + step
    } else {
        value
    }
}

fn off(aim: Aim, value: f64) -> f64 {
    match aim {
        Aim::Near(wanted) => value - wanted,
        Aim::AtMost(limit) => (value - limit).max(0.0),
        Aim::AtLeast(limit) => (value - limit).min(0.0),
    }
}
