//! Quantiles of many curves.

/// Five points of a distribution.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Quantiles {
    /// 5 per cent lie below.
    pub low: f64,
    /// 25 per cent lie below.
    pub lower: f64,
    /// Half lie below.
    pub median: f64,
    /// 75 per cent lie below.
    pub upper: f64,
    /// 95 per cent lie below.
    pub high: f64,
}

/// Toe change of all builds at one travel, rad.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Band {
    /// Wheel travel, mm.
    pub travel: f64,
    /// As drawn.
    pub drawn: f64,
    /// As built.
    pub built: Quantiles,
    /// Mean of the builds.
    pub mean: f64,
    /// Their standard deviation.
    pub deviation: f64,
    /// The standard deviation that linear propagation of the tolerances foretells.
    pub linear_deviation: f64,
}

/// The band at one rack position.
#[derive(Clone, Debug, PartialEq)]
pub struct RackBand {
    /// Rack position, mm.
    pub rack: f64,
    /// One for each travel, rising.
    pub bands: Vec<Band>,
}

impl Band {
    /// Of the builds' toe changes at one travel, which are put in another order; the drawing's own where there are
    /// none.
    pub(crate) fn of(travel: f64, drawn: f64, changes: &mut [f64], linear_deviation: f64) -> Self {
        let (mean, deviation) = moments(changes);
        let built = Quantiles::of(changes).unwrap_or(Quantiles {
            low: drawn,
            lower: drawn,
            median: drawn,
            upper: drawn,
            high: drawn,
        });
        Self {
            travel,
            drawn,
            built,
            mean,
            deviation,
            linear_deviation,
        }
    }
}

impl Quantiles {
    /// Of some values, which are put in another order. `None` when there are none.
    pub(crate) fn of(values: &mut [f64]) -> Option<Self> {
        let last = values.len().checked_sub(1)?;
        let mut at = |share: f64| {
            // Between the two nearest ranks.
            let rank = share * last as f64;
            let low = rank.floor() as usize;
            let (_, &mut a, rest) = values.select_nth_unstable_by(low, f64::total_cmp);
            let b = rest.iter().copied().min_by(f64::total_cmp).unwrap_or(a);
            a + (b - a) * (rank - low as f64)
        };
        Some(Self {
            low: at(0.05),
            lower: at(0.25),
            median: at(0.5),
            upper: at(0.75),
            high: at(0.95),
        })
    }
}

/// Mean and standard deviation.
fn moments(values: &[f64]) -> (f64, f64) {
    let n = values.len().max(1) as f64;
    let mean = values.iter().sum::<f64>() / n;
    let squares: f64 = values.iter().map(|v| (v - mean) * (v - mean)).sum();
    (mean, (squares / (n - 1.0).max(1.0)).sqrt())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn quantiles_of_a_hundred_and_one_numbers() {
        let mut v: Vec<f64> = (0..=100).rev().map(f64::from).collect();
        let q = Quantiles::of(&mut v).unwrap();
        assert_eq!(
            (q.low, q.lower, q.median, q.upper, q.high),
            (5.0, 25.0, 50.0, 75.0, 95.0)
        );
        assert!(Quantiles::of(&mut []).is_none());
        let q = Quantiles::of(&mut [1.0, 2.0]).unwrap();
        assert!((q.median - 1.5).abs() < 1e-15);
    }
}
