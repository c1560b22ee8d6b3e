//! Moves as they are said in the shop.

use std::fmt;

use super::{AdjusterKind, Move, adjuster::FLATS};

/// A turn of a thread in whole turns and flats of a hexagon.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct TurnsAndFlats {
    /// Whole turns.
    pub turns: u32,
    /// Flats over, 0 to 5.
    pub flats: u32,
}

/// The nearest turns and flats to a length along a thread; its sign does not matter.
#[must_use]
pub fn turns_and_flats(length: f64, per_turn: f64) -> TurnsAndFlats {
    let flats = (length / per_turn * f64::from(FLATS)).abs().round();
    let flats = if flats < 1e6 { flats as u32 } else { 0 };
    TurnsAndFlats {
        turns: flats / FLATS,
        flats: flats % FLATS,
    }
}

impl fmt::Display for TurnsAndFlats {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let turns = |n| if n == 1 { "turn" } else { "turns" };
        let flats = |n| if n == 1 { "flat" } else { "flats" };
        match (self.turns, self.flats) {
            (0, n) => write!(f, "{n} {}", flats(n)),
            (t, 0) => write!(f, "{t} {}", turns(t)),
            (t, n) => write!(f, "{t} {} and {n} {}", turns(t), flats(n)),
        }
    }
}

impl fmt::Display for Move {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let count = self.steps.unsigned_abs();
        let more = self.steps > 0;
        match self.kind {
            AdjusterKind::RackEnd { pitch } => {
                let way = if more { "out" } else { "in" };
                write!(f, "rack end {} {way}", turns_and_flats(self.length, pitch))
            }
            AdjusterKind::OuterWasher { .. } | AdjusterKind::RackShim => {
                let (one, many, place) = match self.kind {
                    AdjusterKind::RackShim => ("shim", "shims", "under the rack"),
                    _ => ("washer", "washers", "under the outer joint"),
                };
                let verb = if more { "add" } else { "take out" };
                let thing = if count == 1 { one } else { many };
                write!(f, "{verb} {count} {thing} {place}")
            }
        }
    }
}
