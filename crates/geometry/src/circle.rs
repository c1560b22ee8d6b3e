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

#[cfg(test)]
mod tests {
    use super::Swing;
    use crate::{Point, Vector};

    /// A radius of 100 and a link of 400 reach 500 less `short` at a sine of `sqrt(0.016 short)` between radius and direction: from the
    /// cosine law, whose cosine falls by 0.008 per millimetre there.
    #[test]
    fn a_sine_of_a_hundred_thousandth_is_the_least_that_counts() {
        let swing = Swing::new(Point::origin(), Vector::x(), Point::new(0.0, 100.0, 0.0));
        let margin_sq = |short: f64| {
            let q = Point::new(0.0, 500.0 - short, 0.0);
            swing.meet(q, 400.0 * 400.0, 1.0).map(|m| m.margin_sq)
        };
        assert_eq!(margin_sq(3e-9), None);
        let found = margin_sq(12e-9);
        assert!(
            found.is_some_and(|m| (m / (0.016 * 12e-9) - 1.0).abs() < 1e-3),
            "{found:?}"
        );
    }
}
