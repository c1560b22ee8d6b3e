//! Lengths as they are typed and shown in the shop: `12 5/8`, `1' 3-1/2"`, `320 mm`.

mod fault;
mod format;
mod parse;
mod token;

pub use fault::{LengthFault, LengthProblem};
pub use format::{TapeReading, format_length};
pub use parse::parse_length;

use crate::LengthUnit;

/// Converted lengths are rounded to this many parts of a unit, far below anything a shop can measure, so that no float dust shows.
const PARTS: f64 = 1e7;

/// A length in another unit, rounded to a ten-millionth of it; the same number where the units are the same.
#[must_use]
pub fn convert_length(value: f64, from: LengthUnit, to: LengthUnit) -> f64 {
    if from == to {
        value
    } else {
        (value * from.mm() / to.mm() * PARTS).round() / PARTS
    }
}
