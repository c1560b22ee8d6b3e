//! The two length units.

use std::fmt;

/// The unit of every length in a build.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum LengthUnit {
    /// International inch, 25.4 mm exactly.
    Inch,
    /// Millimetre.
    Millimetre,
}

impl LengthUnit {
    /// Millimetres in one of these.
    #[must_use]
    pub fn mm(self) -> f64 {
        match self {
            Self::Inch => 25.4,
            Self::Millimetre => 1.0,
        }
    }

    /// A length in this unit, given in mm.
    #[must_use]
    pub fn from_mm(self, mm: f64) -> f64 {
        mm / self.mm()
    }

    /// The word in files.
    #[must_use]
    pub fn word(self) -> &'static str {
        match self {
            Self::Inch => "inch",
            Self::Millimetre => "mm",
        }
    }

    /// The sign behind numbers.
    #[must_use]
    pub fn sign(self) -> &'static str {
        match self {
            Self::Inch => "in",
            Self::Millimetre => "mm",
        }
    }
}

impl fmt::Display for LengthUnit {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.word())
    }
}
