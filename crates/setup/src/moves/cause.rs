//! Why toe changes, from readings: height and length error of this car with their uncertainty, in words.

use nalgebra::{DMatrix, DVector};
use trammel_geometry::{Corner, Linkage, Vector};
use trammel_tuning::{HeightError, LengthError, RodSide, Stations, curves_with_sensitivity};

use crate::{Shape, ToeReadings, Uncertain, least_squares::Linear};

/// What readings say is wrong with the inner joint's place.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ReadCause {
    /// Ahead or behind.
    pub side: RodSide,
    /// Slope and bowl as read nearest to rack centre; `None` when the readings go one way only.
    pub shape: Option<Shape>,
    /// How much too high the inner joint is, mm, square to the tie rod.
    pub height_error: Uncertain,
    /// How much too long the tie rod is, mm.
    pub length_error: Uncertain,
}

impl ReadCause {
    /// The move of the inner joint, square to the tie rod and along it, that would take the most out of the readings, taken backwards.
    /// `None` when the corner can't be posed where it was read, or its tie rod points straight up.
    #[must_use]
    pub fn of(corner: &Corner, readings: &ToeReadings) -> Option<Self> {
        let lengthwise = (corner.tie_rod.inner - corner.tie_rod.outer).try_normalize(1e-6)?;
        let up = (Vector::z() - lengthwise * lengthwise.z).try_normalize(1e-3)?;
        let linkage = Linkage::new(corner).ok()?;
        let count = readings.count();
        let zeros = readings.curves().len();
        let mut residuals = DVector::zeros(count + zeros);
        let mut jacobian = DMatrix::zeros(count + zeros, 2 + zeros);
        let mut row = 0;
        for (n, curve) in readings.curves().iter().enumerate() {
            let travels: Vec<f64> = curve.points.iter().map(|p| p.travel).collect();
            let rack = curve.points.first()?.rack;
            let stations = Stations::new(travels, vec![rack]).ok()?;
            let (_, slopes) = curves_with_sensitivity(&linkage, &stations).ok()?;
            for (p, s) in curve.points.iter().zip(slopes) {
                residuals[row] = p.change / p.deviation;
                jacobian[(row, 0)] = s.inner.dot(&up) / p.deviation;
                jacobian[(row, 1)] = s.inner.dot(&lengthwise) / p.deviation;
                jacobian[(row, 2 + n)] = 1.0 / p.deviation;
                row += 1;
            }
            jacobian[(count + n, 2 + n)] = 1.0 / curve.zero_deviation.max(1e-9);
        }
        let linear = Linear {
            residuals,
            jacobian,
        };
        let covariance = linear.covariance()?;
        let cure = -&covariance * linear.jacobian.tr_mul(&linear.residuals);
        let of = |i: usize| Uncertain {
            value: -cure.get(i).copied().unwrap_or(0.0),
            deviation: covariance.get((i, i)).map_or(0.0, |v| v.max(0.0).sqrt()),
        };
        Some(Self {
            side: RodSide::of(corner),
            shape: readings.central().and_then(Shape::of),
            height_error: of(0),
            length_error: of(1),
        })
    }

    /// Which way the height is off, where the readings are clear about it.
    #[must_use]
    pub fn height(&self) -> Option<HeightError> {
        self.height_error
            .is_clear()
            .then_some(if self.height_error.value > 0.0 {
                HeightError::InnerTooHigh
            } else {
                HeightError::InnerTooLow
            })
    }

    /// Which way the length is off, where the readings are clear about it.
    #[must_use]
    pub fn length(&self) -> Option<LengthError> {
        self.length_error
            .is_clear()
            .then_some(if self.length_error.value > 0.0 {
                LengthError::TooLong
            } else {
                LengthError::TooShort
            })
    }
}
