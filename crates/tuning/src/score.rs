//! One figure for the whole travel, the worst of several rack positions.

/// What a toe curve is judged by.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Scoring {
    /// Greatest magnitude of toe change, rad.
    Largest,
    /// Root of the mean square toe change, rad.
    Rms,
    /// Magnitude of the slope at the design height, rad/mm.
    Slope,
}

/// All three scores. Each is the worst of the rack positions judged.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Score {
    /// Greatest magnitude of toe change, rad.
    pub largest: f64,
    /// Root of the mean square toe change, rad.
    pub rms: f64,
    /// Slope at the design height with its sign, toe-in in bump positive, rad/mm.
    pub slope: f64,
}

impl Score {
    /// The score of a curve without any toe change.
    pub const NOTHING: Self = Self {
        largest: 0.0,
        rms: 0.0,
        slope: 0.0,
    };

    /// Of one rack position's toe changes, rad, and its slope, rad/mm.
    #[must_use]
    pub fn of(changes: &[f64], slope: f64) -> Self {
        let squares: f64 = changes.iter().map(|c| c * c).sum();
        Self {
            largest: changes.iter().fold(0.0, |m: f64, c| m.max(c.abs())),
            rms: (squares / changes.len().max(1) as f64).sqrt(),
            slope,
        }
    }

    /// The worse of two in each figure.
    #[must_use]
    pub fn worse(self, other: Self) -> Self {
        Self {
            largest: self.largest.max(other.largest),
            rms: self.rms.max(other.rms),
            slope: if other.slope.abs() > self.slope.abs() {
                other.slope
            } else {
                self.slope
            },
        }
    }

    /// The figure asked for; never negative.
    #[must_use]
    pub fn by(&self, scoring: Scoring) -> f64 {
        match scoring {
            Scoring::Largest => self.largest,
            Scoring::Rms => self.rms,
            Scoring::Slope => self.slope.abs(),
        }
    }
}
