//! Which part of the travel counts most.

/// What the toe change at a travel counts against that at the others.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Emphasis {
    /// All alike.
    Whole,
    /// Most at the ride height, falling evenly to a tenth of that at the farther stop.
    Middle,
}

/// What the farther stop counts where the middle counts one.
const AT_THE_STOP: f64 = 0.1;

impl Emphasis {
    /// All of them.
    pub const ALL: [Self; 2] = [Self::Whole, Self::Middle];

    /// The weight of each travel, mm from the ride height.
    #[must_use]
    pub fn weights(self, travels: &[f64]) -> Vec<f64> {
        let farthest = travels.iter().fold(0.0_f64, |m, t| m.max(t.abs()));
        let falling = |t: &f64| 1.0 - (1.0 - AT_THE_STOP) * t.abs() / farthest;
        match self {
            Self::Middle if farthest > 0.0 => travels.iter().map(falling).collect(),
            _ => vec![1.0; travels.len()],
        }
    }
}
