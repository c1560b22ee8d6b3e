//! Weights on four scales.

/// What four scales show, any one unit.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct CornerWeights {
    /// Front left.
    pub front_left: f64,
    /// Front right.
    pub front_right: f64,
    /// Rear left.
    pub rear_left: f64,
    /// Rear right.
    pub rear_right: f64,
}

/// How the weight is shared, 0 to 1.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Shares {
    /// All four together, in their unit.
    pub total: f64,
    /// On the front axle.
    pub front: f64,
    /// On the left.
    pub left: f64,
    /// On front right and rear left together: half where no spring is wound up against the others.
    pub cross: f64,
}

impl CornerWeights {
    /// The shares. `None` when a weight is negative or no number, or nothing is weighed.
    #[must_use]
    pub fn shares(&self) -> Option<Shares> {
        let all = [
            self.front_left,
            self.front_right,
            self.rear_left,
            self.rear_right,
        ];
        let total: f64 = all.iter().sum();
        let usable = all.iter().all(|w| *w >= 0.0) && total > 0.0 && total < 1e9;
        usable.then(|| Shares {
            total,
            front: (self.front_left + self.front_right) / total,
            left: (self.front_left + self.rear_left) / total,
            cross: (self.front_right + self.rear_left) / total,
        })
    }
}
