//! Where a part lies on a plate, and how much room it takes.

use super::{Point, Vector};

/// A part turned over, turned round and shifted, in this order; it keeps its size.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Placement {
    /// Turned over: x becomes -x.
    pub mirrored: bool,
    /// Turned to the left about the origin, rad.
    pub turn: f64,
    /// Shifted, mm.
    pub shift: Vector,
}

impl Placement {
    /// As drawn.
    pub const AS_DRAWN: Self = Self {
        mirrored: false,
        turn: 0.0,
        shift: Vector::new(0.0, 0.0),
    };

    /// Only shifted.
    #[must_use]
    pub fn shifted(shift: Vector) -> Self {
        Self {
            shift,
            ..Self::AS_DRAWN
        }
    }

    /// Where a point of the part comes to lie.
    #[must_use]
    pub fn point(&self, point: Point) -> Point {
        let x = if self.mirrored { -point.x } else { point.x };
        let (sin, cos) = self.turn.sin_cos();
        Point::new(x * cos - point.y * sin, x * sin + point.y * cos) + self.shift
    }
}

/// The upright rectangle around something; empty until a point is in it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Bounds {
    /// Lower left corner.
    pub min: Point,
    /// Upper right corner.
    pub max: Point,
}

impl Bounds {
    /// Around nothing.
    pub const EMPTY: Self = Self {
        min: Point::new(f64::INFINITY, f64::INFINITY),
        max: Point::new(f64::NEG_INFINITY, f64::NEG_INFINITY),
    };

    /// Grows to hold a point.
    pub fn include(&mut self, point: Point) {
        self.min = Point::new(self.min.x.min(point.x), self.min.y.min(point.y));
        self.max = Point::new(self.max.x.max(point.x), self.max.y.max(point.y));
    }

    /// Grows to hold another.
    pub fn join(&mut self, other: &Self) {
        if !other.is_empty() {
            self.include(other.min);
            self.include(other.max);
        }
    }

    /// Whether nothing is in it.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        self.min.x > self.max.x
    }

    /// Width, mm; 0 when empty.
    #[must_use]
    pub fn width(&self) -> f64 {
        (self.max.x - self.min.x).max(0.0)
    }

    /// Height, mm; 0 when empty.
    #[must_use]
    pub fn height(&self) -> f64 {
        (self.max.y - self.min.y).max(0.0)
    }

    /// Whether a point lies in it or on its edge.
    #[must_use]
    pub fn contains(&self, point: Point) -> bool {
        (self.min.x..=self.max.x).contains(&point.x) && (self.min.y..=self.max.y).contains(&point.y)
    }

    /// The same with a margin all round, mm.
    #[must_use]
    pub fn grown(&self, margin: f64) -> Self {
        let by = Vector::new(margin, margin);
        Self {
            min: self.min - by,
            max: self.max + by,
        }
    }
}
