//! How exactly a tape reads.

/// Class of a steel tape.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum TapeClass {
    /// Class I of the European measuring instruments directive.
    One,
    /// Class II of it, the usual one.
    Two,
}

/// How well the tape could be held.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Reach {
    /// Straight to a hole or ball that can be seen.
    Open,
    /// Round something, or to a place that is felt rather than seen.
    RoundObstacle,
    /// With this standard deviation, mm.
    Deviation(f64),
}

/// Holding the tape to an exposed hole, mm (1/32 in: common practice, no source).
const OPEN: f64 = 0.8;
/// Round an obstacle, mm (common practice, no source: 2 to 3 mm).
const ROUND_OBSTACLE: f64 = 2.5;

impl TapeClass {
    /// Greatest error of the tape itself over a length, mm: 0.1 + 0.1 L for class I and 0.3 + 0.2 L for class II, L in metres
    /// rounded up (formula from memory; 0.4 and 0.9 mm at 3 m were seen in a retailer's table).
    #[must_use]
    pub fn greatest_error(self, length: f64) -> f64 {
        let metres = (length.abs() / 1000.0).ceil();
        match self {
            Self::One => 0.1 + 0.1 * metres,
            Self::Two => 0.3 + 0.2 * metres,
        }
    }
}

/// Standard deviation of a tape reading, mm: half the tape's greatest error and the reach, as a root of squares.
#[must_use]
pub fn tape_deviation(length: f64, class: TapeClass, reach: Reach) -> f64 {
    let hand = match reach {
        Reach::Open => OPEN,
        Reach::RoundObstacle => ROUND_OBSTACLE,
        Reach::Deviation(v) => v,
    };
    hand.hypot(0.5 * class.greatest_error(length))
}
