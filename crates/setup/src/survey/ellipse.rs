//! Error ellipses in the views.

use nalgebra::{Matrix2, Matrix3};
use trammel_geometry::Vector;

/// Semi-axes of the ellipse that holds 95 % of a plane normal distribution, in standard deviations: sqrt(-2 ln 0.05).
const NINETY_FIVE: f64 = 2.447_746_830_680_816;

/// A view of the vehicle, with its two axes across and up.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum View {
    /// y and z.
    Front,
    /// x and z.
    Side,
    /// x and y.
    Plan,
}

/// An error ellipse in a view.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Ellipse {
    /// Longer semi-axis, one standard deviation, mm.
    pub major: f64,
    /// Shorter semi-axis, one standard deviation, mm.
    pub minor: f64,
    /// Direction of the longer one against the view's first axis, rad.
    pub angle: f64,
}

impl Ellipse {
    /// Of a point's covariance seen in a view.
    #[must_use]
    pub fn seen(covariance: &Matrix3<f64>, view: View) -> Self {
        let (i, j) = match view {
            View::Front => (1, 2),
            View::Side => (0, 2),
            View::Plan => (0, 1),
        };
        let c = |a, b| covariance.fixed_view::<1, 1>(a, b).x;
        let m = Matrix2::new(c(i, i), c(i, j), c(j, i), c(j, j));
        let (mean, half) = (0.5 * m.trace(), 0.5 * (m.m11 - m.m22));
        let spread = half.hypot(m.m12);
        Self {
            major: (mean + spread).max(0.0).sqrt(),
            minor: (mean - spread).max(0.0).sqrt(),
            angle: 0.5 * (2.0 * m.m12).atan2(m.m11 - m.m22),
        }
    }

    /// The ellipse that holds 19 of 20 such points.
    #[must_use]
    pub fn nineteen_of_twenty(&self) -> Self {
        Self {
            major: self.major * NINETY_FIVE,
            minor: self.minor * NINETY_FIVE,
            ..*self
        }
    }
}

/// The direction in which a covariance is widest, and its standard deviation there, mm.
pub(super) fn widest(covariance: &Matrix3<f64>) -> (Vector, f64) {
    let parts = covariance.symmetric_eigen();
    let (at, square) = parts.eigenvalues.argmax();
    (
        parts.eigenvectors.column(at).into_owned(),
        square.max(0.0).sqrt(),
    )
}
