//! Refusing numbers that can't be computed with, by name.

use nalgebra::{Point3, Unit, Vector3};

/// A number from outside that can't be computed with.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
#[error("{what} is {found}; expected {expected}; nothing was computed from it")]
pub struct BadNumber {
    /// Which quantity, in plain words.
    pub what: &'static str,
    /// The value that came in.
    pub found: f64,
    /// What would have been accepted, with its unit.
    pub expected: &'static str,
}

impl BadNumber {
    /// The value of a quantity if it fits, what it is and what was expected otherwise.
    ///
    /// # Errors
    /// A [`BadNumber`] unless it fits.
    pub fn unless(
        what: &'static str,
        found: f64,
        fits: bool,
        expected: &'static str,
    ) -> Result<f64, Self> {
        if fits {
            Ok(found)
        } else {
            Err(Self {
                what,
                found,
                expected,
            })
        }
    }
}

/// The value, if it is neither NaN nor infinite.
pub(crate) fn finite(what: &'static str, value: f64) -> Result<f64, BadNumber> {
    BadNumber::unless(what, value, value.is_finite(), "a finite number")
}

/// The value, if it is finite and above zero.
pub(crate) fn positive(what: &'static str, value: f64) -> Result<f64, BadNumber> {
    let fits = value.is_finite() && value > 0.0;
    BadNumber::unless(what, value, fits, "a finite number above zero")
}

/// The value, if it is finite and not below zero.
pub(crate) fn not_negative(what: &'static str, value: f64) -> Result<f64, BadNumber> {
    let fits = value.is_finite() && value >= 0.0;
    BadNumber::unless(what, value, fits, "a finite number, zero or above")
}

/// The vector, if all three components are finite.
pub(crate) fn finite_vector(
    what: &'static str,
    value: Vector3<f64>,
) -> Result<Vector3<f64>, BadNumber> {
    value
        .iter()
        .try_for_each(|&part| finite(what, part).map(drop))?;
    Ok(value)
}

/// The point, if all three coordinates are finite.
pub(crate) fn finite_point(
    what: &'static str,
    value: Point3<f64>,
) -> Result<Point3<f64>, BadNumber> {
    finite_vector(what, value.coords).map(Point3::from)
}

/// The direction of a finite vector that has a length.
pub(crate) fn direction(
    what: &'static str,
    value: Vector3<f64>,
) -> Result<Unit<Vector3<f64>>, BadNumber> {
    finite_vector(what, value)?;
    Unit::try_new(value, f64::MIN_POSITIVE).ok_or(BadNumber {
        what,
        found: value.norm(),
        expected: "a vector with a length",
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn names_what_it_refuses() {
        let refused = positive("the bar diameter", -2.0).unwrap_err();
        assert_eq!(
            refused.to_string(),
            "the bar diameter is -2; expected a finite number above zero; nothing was computed from it"
        );
    }

    #[test]
    fn refuses_nan_infinity_and_a_vector_of_no_length() {
        assert!(finite("x", f64::NAN).is_err());
        assert!(positive("x", f64::INFINITY).is_err());
        assert!(positive("x", 0.0).is_err());
        assert!(not_negative("x", 0.0).is_ok());
        assert!(not_negative("x", -1e-300).is_err());
        assert!(finite_vector("v", Vector3::new(0.0, f64::NAN, 0.0)).is_err());
        assert!(finite_point("p", Point3::new(0.0, 0.0, f64::NEG_INFINITY)).is_err());
        assert!(direction("d", Vector3::zeros()).is_err());
        assert!(direction("d", Vector3::new(3.0, 0.0, 4.0)).is_ok());
    }
}
