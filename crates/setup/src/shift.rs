//! Where adjusters have put the tie-rod joints since the vehicle was built.

use trammel_geometry::{Corner, Vector};

/// How far the joints of a tie rod stand from where they were built, mm, axes of the left corner. The rod is cut to fit: static toe stays.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct JointShift {
    /// Of the inner joint.
    pub inner: Vector,
    /// Of the outer joint.
    pub outer: Vector,
}

impl JointShift {
    /// As built.
    pub const NONE: Self = Self {
        inner: Vector::new(0.0, 0.0, 0.0),
        outer: Vector::new(0.0, 0.0, 0.0),
    };

    /// Both one after the other.
    #[must_use]
    pub fn and(&self, other: &Self) -> Self {
        Self {
            inner: self.inner + other.inner,
            outer: self.outer + other.outer,
        }
    }

    /// So many times this one.
    #[must_use]
    pub fn times(&self, by: f64) -> Self {
        Self {
            inner: self.inner * by,
            outer: self.outer * by,
        }
    }

    /// A corner with its joints moved.
    #[must_use]
    pub fn on(&self, corner: &Corner) -> Corner {
        let mut moved = *corner;
        moved.tie_rod.inner += self.inner;
        moved.tie_rod.outer += self.outer;
        moved
    }
}
