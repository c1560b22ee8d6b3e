//! Sizes of paper.

use std::fmt;
use std::str::FromStr;

/// Paper that a shop's printer takes; small sizes stand upright, large ones lie.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Paper {
    /// 210 x 297 mm.
    A4,
    /// 420 x 297 mm.
    A3,
    /// 8 1/2 x 11 in.
    Letter,
    /// 17 x 11 in.
    Tabloid,
}

/// A word that is no paper size.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
#[error(
    "\u{201c}{typed}\u{201d} is no paper size; expected a4, a3, letter or tabloid; no paper was chosen"
)]
pub struct PaperError {
    /// What was typed.
    pub typed: String,
}

impl Paper {
    /// Every size.
    pub const ALL: [Self; 4] = [Self::A4, Self::A3, Self::Letter, Self::Tabloid];

    /// Width and height, mm.
    #[must_use]
    pub fn size(self) -> [f64; 2] {
        match self {
            Self::A4 => [210.0, 297.0],
            Self::A3 => [420.0, 297.0],
            Self::Letter => [8.5 * 25.4, 11.0 * 25.4],
            Self::Tabloid => [17.0 * 25.4, 11.0 * 25.4],
        }
    }

    /// Its name.
    #[must_use]
    pub fn name(self) -> &'static str {
        match self {
            Self::A4 => "A4",
            Self::A3 => "A3",
            Self::Letter => "Letter",
            Self::Tabloid => "Tabloid",
        }
    }
}

impl fmt::Display for Paper {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.name())
    }
}

impl FromStr for Paper {
    type Err = PaperError;

    fn from_str(typed: &str) -> Result<Self, PaperError> {
        let same = |paper: &Self| paper.name().eq_ignore_ascii_case(typed.trim());
        Self::ALL.into_iter().find(same).ok_or_else(|| PaperError {
            typed: typed.to_owned(),
        })
    }
}
