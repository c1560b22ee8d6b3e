//! The hole for a bolt: one place for the proof and the sheets.

use trammel_build::{BracketSpec, HoleFit, defaults};
use trammel_fabrication::clearance_hole::{Fit, clearance_hole};
use trammel_strength::thread::Thread;

/// A bracket's hole.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct BoltHole {
    /// Its diameter, mm.
    pub diameter: f64,
    /// The class of fit, or `as typed`.
    pub fit: &'static str,
}

/// The hole of a bracket for a bolt with this thread: as typed, or by its fit; the standard's close class where the bracket says neither. `mm` are the
/// millimetres of the build's unit.
#[must_use]
pub fn bolt_hole(bracket: Option<&BracketSpec>, thread: Thread, mm: f64) -> BoltHole {
    if let Some(typed) = bracket.and_then(|b| b.hole) {
        return BoltHole {
            diameter: typed * mm,
            fit: "as typed",
        };
    }
    let fit = match bracket.and_then(|b| b.fit) {
        Some(HoleFit::Reamed) => Fit::Reamed,
        Some(HoleFit::Normal) => Fit::Normal,
        Some(HoleFit::Loose) => Fit::Loose,
        Some(HoleFit::Close) | None => Fit::Close,
    };
    BoltHole {
        diameter: clearance(thread, fit),
        fit: fit.word(),
    }
}

/// The hole of a class, mm; the bolt with the usual play where the tables don't hold the size.
#[must_use]
pub fn clearance(thread: Thread, fit: Fit) -> f64 {
    clearance_hole(thread, fit).map_or(thread.major_diameter() + defaults::HOLE_PLAY_MM, |hole| {
        hole.diameter
    })
}
