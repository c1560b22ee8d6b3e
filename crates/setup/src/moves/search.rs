//! The best whole steps of a few adjusters, by quadratic curves in the steps and a fixed set of likely vehicles.

use nalgebra::{DMatrix, DVector};

/// Likely vehicles that a plan is tried on.
pub(super) const VEHICLES: usize = 192;
/// Step counts kept by their largest toe change before the likely vehicles are asked.
const KEPT: usize = 24;
/// A few hundredths of chance are worth no further steps.
const SAME_CHANCE: f64 = 0.02;

/// What steps do to the curve, and what may be different about it.
pub(super) struct Field {
    /// Toe changes now, rad.
    pub base: Vec<f64>,
    /// For each adjuster, its range and what the first and second power of its steps add to every change.
    pub adjusters: Vec<Response>,
    /// Toe changes of likely vehicles less those of the likeliest, one column each.
    pub vehicles: DMatrix<f64>,
    /// Largest toe change allowed, rad.
    pub limit: f64,
}

pub(super) struct Response {
    pub range: std::ops::RangeInclusive<i32>,
    pub linear: Vec<f64>,
    pub square: Vec<f64>,
}

/// Steps of each adjuster, with the chance that they do.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Choice {
    pub steps: Vec<i32>,
    pub largest: f64,
    pub chance: f64,
}

impl Field {
    /// The best steps with only these adjusters moved.
    pub(super) fn best_of(&self, subset: &[usize]) -> Choice {
        let mut kept: Vec<(f64, Vec<i32>)> = Vec::new();
        let mut steps = vec![0; self.adjusters.len()];
        self.each(subset, &self.base, &mut steps, &mut |steps, curve| {
            let largest = curve.iter().fold(0.0_f64, |m, v| m.max(v.abs()));
            if kept.len() == KEPT && kept.last().is_some_and(|l| l.0 <= largest) {
                return;
            }
            let at = kept.partition_point(|k| k.0 <= largest);
            kept.insert(at, (largest, steps.to_vec()));
            kept.truncate(KEPT);
        });
        let choices = kept.into_iter().map(|(largest, steps)| Choice {
            chance: self.chance(&self.curve(&steps)),
            largest,
            steps,
        });
        choices.reduce(better).unwrap_or_else(|| Choice {
            chance: self.chance(&self.base),
            largest: f64::INFINITY,
            steps: vec![0; self.adjusters.len()],
        })
    }

    fn each(
        &self,
        subset: &[usize],
        curve: &[f64],
        steps: &mut Vec<i32>,
        visit: &mut impl FnMut(&[i32], &[f64]),
    ) {
        let Some((&first, rest)) = subset.split_first() else {
            visit(steps, curve);
            return;
        };
        let Some(response) = self.adjusters.get(first) else {
            return;
        };
        for n in response.range.clone().filter(|n| *n != 0) {
            let moved = response.added(curve, n);
            set(steps, first, n);
            self.each(rest, &moved, steps, visit);
        }
        set(steps, first, 0);
    }

    pub(super) fn curve(&self, steps: &[i32]) -> Vec<f64> {
        let moved = steps.iter().zip(&self.adjusters);
        moved.fold(self.base.clone(), |curve, (&n, r)| r.added(&curve, n))
    }

    /// Share of the likely vehicles whose curve stays within the limit.
    pub(super) fn chance(&self, curve: &[f64]) -> f64 {
        let curve = DVector::from_column_slice(curve);
        let within = self.vehicles.column_iter().filter(|v| {
            v.iter()
                .zip(curve.iter())
                .all(|(off, change)| (off + change).abs() <= self.limit)
        });
        within.count() as f64 / self.vehicles.ncols().max(1) as f64
    }
}

impl Response {
    fn added(&self, curve: &[f64], n: i32) -> Vec<f64> {
        let n = f64::from(n);
        curve
            .iter()
            .zip(self.linear.iter().zip(&self.square))
            .map(|(c, (a, b))| c + n * (a + n * b))
            .collect()
    }
}

fn set(steps: &mut [i32], at: usize, to: i32) {
    if let Some(s) = steps.get_mut(at) {
        *s = to;
    }
}

/// The likelier one; of two about alike the one with the smaller largest change.
fn better(a: Choice, b: Choice) -> Choice {
    let likelier = b.chance > a.chance + SAME_CHANCE;
    let alike = (b.chance - a.chance).abs() <= SAME_CHANCE;
    if likelier || (alike && b.largest < a.largest) {
        b
    } else {
        a
    }
}
