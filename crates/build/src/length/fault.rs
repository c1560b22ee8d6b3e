//! Why a text is no length.

use crate::LengthUnit;

/// A text that can't be read as a length. The old value stands.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
#[error("`{text}` can't be read as a length: {problem}; expected {}", expected(*unit))]
pub struct LengthFault {
    /// What was typed.
    pub text: String,
    /// The unit that a bare number would have had.
    pub unit: LengthUnit,
    /// What is wrong with it.
    pub problem: LengthProblem,
}

/// What is wrong with a text that should be a length.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
pub enum LengthProblem {
    /// Nothing typed.
    #[error("there is no number in it")]
    NoNumber,
    /// `3,25` or `1,250`.
    #[error("its comma may stand for a decimal point or for thousands")]
    Comma,
    /// `5/0`.
    #[error("a fraction can't be over nought")]
    OverNought,
    /// `12 13/8` or `12.5 1/8`.
    #[error("a fraction behind a number must be less than one, and the number a whole one")]
    OddFraction,
    /// `12 - 5/8`: a difference, or a fraction joined by a hyphen?
    #[error("a minus stands in the middle of it")]
    MinusInside,
    /// `1.5' 3"`.
    #[error("feet before inches must be a whole number")]
    BrokenFeet,
    /// A word that is no unit of length.
    #[error("`{0}` is no unit that is known here")]
    UnknownUnit(String),
    /// A sign that has no place.
    #[error("`{0}` has no place there")]
    Unexpected(String),
    /// Beyond any vehicle.
    #[error("it is larger than any vehicle")]
    TooLarge,
}

fn expected(unit: LengthUnit) -> &'static str {
    match unit {
        LengthUnit::Inch => "a length such as 12 5/8, 12.625, 1' 3-1/2\" or 320 mm",
        LengthUnit::Millimetre => "a length such as 320, 320.5, 32 cm or 12 5/8 in",
    }
}
