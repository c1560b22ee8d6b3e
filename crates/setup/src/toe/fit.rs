//! The shape of readings by themselves: slope and bowl with their uncertainty, no model of the car needed.

use nalgebra::{DMatrix, DVector, Matrix3, Vector3};
use trammel_tuning::Split;

use super::{Curve, ToePoint};
use crate::least_squares::Linear;

/// A figure with its standard deviation.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Uncertain {
    /// The figure.
    pub value: f64,
    /// Its standard deviation.
    pub deviation: f64,
}

impl Uncertain {
    /// Whether it is more than chance: beyond two standard deviations.
    #[must_use]
    pub fn is_clear(&self) -> bool {
        self.value.abs() > 2.0 * self.deviation
    }
}

/// Slope and bowl of readings at one rack position.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Shape {
    /// The travel that bump and droop reach equally, mm.
    pub reach: f64,
    /// Toe per travel at ride height, rad/mm, toe-in in bump positive.
    pub slope: Uncertain,
    /// Toe that the bowl makes at the reach, rad, toe-in both ways positive.
    pub bowl: Uncertain,
    /// The two half sums of the trade at the reach: see [`Split`].
    pub split: Split,
    third: f64,
}

/// Readings that let a curve of the third degree be told from one of the second.
const FOR_CUBIC: usize = 5;

impl Shape {
    /// Of readings that go both ways, by a curve `a z + b z^2 + c z^3` (without `c` when there are few) and an unknown zero.
    #[must_use]
    pub fn of(curve: &Curve) -> Option<Self> {
        let travel = |p: Option<&ToePoint>| p.map(|p| p.travel);
        let (first, last) = (travel(curve.points.first())?, travel(curve.points.last())?);
        let reach = (-first).min(last);
        if !(reach > 0.0) {
            return None;
        }
        let (found, covariance) = polynomial(curve, reach)?;
        let with_zero: Vec<(f64, f64)> = with_zero(curve);
        Some(Self {
            reach,
            slope: Uncertain {
                value: found.x / reach,
                deviation: covariance.m11.max(0.0).sqrt() / reach,
            },
            bowl: Uncertain {
                value: found.y,
                deviation: covariance.m22.max(0.0).sqrt(),
            },
            split: Split::of(&with_zero)?,
            third: found.z,
        })
    }

    /// Toe change on the fitted curve at a wheel travel, rad.
    #[must_use]
    pub fn at(&self, travel: f64) -> f64 {
        let z = travel / self.reach;
        self.slope.value * travel + z * z * (self.bowl.value + z * self.third)
    }

    /// The slope in degrees per 25 mm.
    #[must_use]
    pub fn degrees_per_25_mm(&self) -> Uncertain {
        let by = 25.0_f64.to_degrees();
        Uncertain {
            value: self.slope.value * by,
            deviation: self.slope.deviation * by,
        }
    }
}

fn with_zero(curve: &Curve) -> Vec<(f64, f64)> {
    let mut all: Vec<(f64, f64)> = curve.points.iter().map(|p| (p.travel, p.change)).collect();
    let at = all.partition_point(|p| p.0 < 0.0);
    all.insert(at, (0.0, 0.0));
    all
}

/// Coefficients in travels of the reach, with their covariance; the shared zero is a fourth unknown with its own accuracy.
fn polynomial(curve: &Curve, reach: f64) -> Option<(Vector3<f64>, Matrix3<f64>)> {
    let n = curve.points.len();
    let cubic = n >= FOR_CUBIC;
    let mut residuals = DVector::zeros(n + 2);
    let mut jacobian = DMatrix::zeros(n + 2, 4);
    for (i, p) in curve.points.iter().enumerate() {
        let z = p.travel / reach;
        let row = [z, z * z, if cubic { z * z * z } else { 0.0 }, 1.0];
        residuals[i] = -p.change / p.deviation;
        for (k, v) in row.into_iter().enumerate() {
            jacobian[(i, k)] = v / p.deviation;
        }
    }
    jacobian[(n, 3)] = 1.0 / curve.zero_deviation.max(1e-9);
    // Keeps the unused third degree from leaving the sums open.
    jacobian[(n + 1, 2)] = if cubic { 0.0 } else { 1.0 };
    let linear = Linear {
        residuals,
        jacobian,
    };
    let covariance = linear.covariance()?;
    let found = -&covariance * linear.jacobian.tr_mul(&linear.residuals);
    Some((
        found.fixed_rows::<3>(0).into_owned(),
        covariance.fixed_view::<3, 3>(0, 0).into_owned(),
    ))
}
