//! IN and OUT, in words.

use std::fmt;

/// Which way a wheel points.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Way {
    /// Toe-in.
    In,
    /// Toe-out.
    Out,
}

impl Way {
    /// Of a signed toe, toe-in positive; `None` for nought.
    #[must_use]
    pub fn of(toe: f64) -> Option<Self> {
        if toe > 0.0 {
            Some(Self::In)
        } else if toe < 0.0 {
            Some(Self::Out)
        } else {
            None
        }
    }

    /// A size with its sign: toe-in positive.
    #[must_use]
    pub fn signed(self, size: f64) -> f64 {
        match self {
            Self::In => size,
            Self::Out => -size,
        }
    }
}

impl fmt::Display for Way {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Self::In => "IN",
            Self::Out => "OUT",
        })
    }
}
