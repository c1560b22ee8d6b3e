//! Refusing sizes that no part can be made from.

use trammel_strength::BadNumber;

use crate::plane::ContourError;

/// Why a part can't be made.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum SizeError {
    /// A size that can't be used at all, or not with the others.
    #[error(transparent)]
    BadNumber(#[from] BadNumber),
    /// The sizes give an outline that doesn't close around an area.
    #[error(transparent)]
    Contour(#[from] ContourError),
}

/// The value, if it is finite and above zero.
pub(crate) fn positive(what: &'static str, found: f64) -> Result<f64, BadNumber> {
    let fits = found.is_finite() && found > 0.0;
    BadNumber::unless(what, found, fits, "a finite number above zero, in mm")
}

/// The value, if it is finite and not below zero.
pub(crate) fn not_negative(what: &'static str, found: f64) -> Result<f64, BadNumber> {
    let fits = found.is_finite() && found >= 0.0;
    BadNumber::unless(what, found, fits, "a finite number, zero or above, in mm")
}

/// The value, if it is finite.
pub(crate) fn finite(what: &'static str, found: f64) -> Result<f64, BadNumber> {
    BadNumber::unless(what, found, found.is_finite(), "a finite number, in mm")
}
