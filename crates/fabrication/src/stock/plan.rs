//! Which piece is sawn from which bar.
//!
//! Longest piece first, each from the first bar that still has room: never more than 11/9 of the fewest bars possible and a fraction of one (Johnson's bound for
//! first fit decreasing, from memory). A pure number of bars below the plan's can't be ruled out by it; the total of lengths gives the floor.

use trammel_geometry::greatest_first;
use trammel_strength::BadNumber;

use crate::size::{not_negative, positive};

/// A length that is needed.
#[derive(Clone, Debug, PartialEq)]
pub struct CutPiece {
    /// What it is for.
    pub name: String,
    /// Finished length, mm.
    pub length: f64,
    /// How many.
    pub count: u32,
}

/// What a saw takes.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SawRules {
    /// Length of a bar as bought, mm.
    pub stock_length: f64,
    /// Lost at each cut, mm.
    pub kerf: f64,
    /// Cut off the bar's end before anything is measured, mm.
    pub end_trim: f64,
}

/// One bar.
#[derive(Clone, Debug, PartialEq)]
pub struct Bar {
    /// Names and lengths (mm) in the order they are sawn.
    pub pieces: Vec<(String, f64)>,
    /// What is left at the end, mm.
    pub rest: f64,
}

/// All bars of one section.
#[derive(Clone, Debug, PartialEq)]
pub struct CuttingPlan {
    /// Bar by bar.
    pub bars: Vec<Bar>,
    /// Length of the pieces together, mm.
    pub used: f64,
    /// Length of the bars together, mm.
    pub bought: f64,
    /// Fewer bars than this can't hold it.
    pub least_bars: u32,
}

impl CuttingPlan {
    /// What is bought and not used, as a share; 0 for nothing bought.
    #[must_use]
    pub fn waste(&self) -> f64 {
        if self.bought > 0.0 {
            1.0 - self.used / self.bought
        } else {
            0.0
        }
    }
}

/// Why there is no plan.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum PlanError {
    /// A number that can't be used.
    #[error(transparent)]
    BadNumber(#[from] BadNumber),
    /// A piece longer than a bar.
    #[error(
        "{name} is {length:.1} mm long; a bar gives at most {most:.1} mm after its end is trimmed; no cutting plan was made"
    )]
    TooLong {
        /// Which piece.
        name: String,
        /// Its length, mm.
        length: f64,
        /// What a bar gives, mm.
        most: f64,
    },
    /// More pieces than any shop saws.
    #[error(
        "{found} pieces were asked for; expected {MOST_PIECES} at most; no cutting plan was made"
    )]
    TooMany {
        /// How many.
        found: u64,
    },
}

/// Enough for a season of builds; more is a slip of the keys.
const MOST_PIECES: u64 = 10_000;
/// Rounding of sums of lengths, mm.
const DUST: f64 = 1e-9;

/// A plan for pieces of one section.
///
/// # Errors
/// A length that is no number or not above zero, a piece that no bar gives, far too many pieces.
pub fn cutting_plan(pieces: &[CutPiece], saw: &SawRules) -> Result<CuttingPlan, PlanError> {
    positive("the stock length", saw.stock_length)?;
    not_negative("the kerf", saw.kerf)?;
    not_negative("the end trim", saw.end_trim)?;
    let usable = positive(
        "the stock length less the trim",
        saw.stock_length - saw.end_trim,
    )?;
    let singles = singles(pieces, usable)?;
    let used: f64 = singles.iter().map(|(_, length)| length).sum();
    let with_kerf: f64 = singles.iter().map(|(_, length)| length + saw.kerf).sum();
    let mut bars: Vec<Bar> = Vec::new();
    for (name, length) in singles {
        let fits = |bar: &Bar| bar.rest + DUST >= length;
        let index = bars.iter().position(fits).unwrap_or_else(|| {
            bars.push(Bar {
                pieces: Vec::new(),
                rest: usable,
            });
            bars.len() - 1
        });
        if let Some(bar) = bars.get_mut(index) {
            // The last piece may use the bar's end itself: then there is no cut after it.
            bar.rest = (bar.rest - length - saw.kerf).max(0.0);
            bar.pieces.push((name, length));
        }
    }
    // The last cut of a bar may fall off its end, so a bar holds one kerf more.
    let least_bars = ((with_kerf - DUST) / (usable + saw.kerf)).ceil().max(0.0) as u32;
    let bought = bars.iter().map(|_| saw.stock_length).sum();
    Ok(CuttingPlan {
        bars,
        used,
        bought,
        least_bars,
    })
}

/// Every piece by itself, longest first; equal ones in the order given.
fn singles(pieces: &[CutPiece], usable: f64) -> Result<Vec<(String, f64)>, PlanError> {
    let found: u64 = pieces.iter().map(|piece| u64::from(piece.count)).sum();
    if found > MOST_PIECES {
        return Err(PlanError::TooMany { found });
    }
    let mut singles = Vec::new();
    for piece in pieces {
        let length = positive("the piece's length", piece.length)?;
        if length > usable + DUST {
            return Err(PlanError::TooLong {
                name: piece.name.clone(),
                length,
                most: usable,
            });
        }
        singles.extend((0..piece.count).map(|_| (piece.name.clone(), length)));
    }
    greatest_first(&mut singles, |s| s.1);
    Ok(singles)
}
