//! A circle about an axis, and where it meets a sphere.

use crate::{Point, Vector};

/// Members whose sine has a square below this count as in line. So near their dead point rounding would blur where they are; the reach that this
/// leaves out is a few micrometres.
pub(crate) const IN_LINE_SQ: f64 = 1e-10;

/// The path of a point that swings about an axis. `start` and `quarter` are the radius at angle zero and a quarter turn
/// later, right-handed about the axis.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Swing {
    pub axis: Vector,
    pub centre: Point,
    pub start: Vector,
    pub quarter: Vector,
    pub radius: f64,
}

impl Swing {
    /// The swing of `joint` about the line from `a` along the unit vector `axis`.
    pub(crate) fn new(a: Point, axis: Vector, joint: Point) -> Self {
        let centre = a + axis * axis.dot(&(joint - a));
        let start = joint - centre;
        Self {
            axis,
            centre,
            start,
            quarter: axis.cross(&start),
            radius: start.norm(),
        }
    }

    /// The same swing run the other way.
    pub(crate) fn reversed(self) -> Self {
        Self {
            axis: -self.axis,
            quarter: -self.quarter,
            ..self
        }
    }

    #[inline]
    pub(crate) fn at(&self, sin: f64, cos: f64) -> Point {
        self.centre + self.start * cos + self.quarter * sin
    }

    /// d(position)/d(angle).
    #[inline]
    pub(crate) fn tangent(&self, sin: f64, cos: f64) -> Vector {
        self.quarter * cos - self.start * sin
    }

    /// Where the swinging point is `distance_sq` (squared) from `q`: sine and cosine of its angle, and the sine of the angle between the
    /// radius and the direction of `q`, which is zero where the two solutions meet. `side` (+1 or -1) names the solution.
    /// `None` when the sphere does not reach the circle.
    #[inline]
    pub(crate) fn meet(&self, q: Point, distance_sq: f64, side: f64) -> Option<Meeting> {
        let d = q - self.centre;
        let a = self.start.dot(&d);
        let b = self.quarter.dot(&d);
        let k = 0.5 * (d.norm_squared() + self.radius * self.radius - distance_sq);
        let h_sq = a * a + b * b;
        let s_sq = h_sq - k * k;
        // Written so that a NaN is refused too.
        if !(s_sq > IN_LINE_SQ * h_sq) {
            return None;
        }
        let s = side * s_sq.sqrt();
        let inverse = 1.0 / h_sq;
        Some(Meeting {
            sin: (k * b + s * a) * inverse,
            cos: (k * a - s * b) * inverse,
            margin_sq: s_sq * inverse,
            sine: s,
        })
    }
}

/// One intersection of a swing with a sphere.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Meeting {
    pub sin: f64,
    pub cos: f64,
    /// Square of the sine between the two members that meet there.
    pub margin_sq: f64,
    /// The signed sine itself, times the radius and the distance of `q` from the axis: the tangent times the way from `q` to the point.
    pub sine: f64,
}
