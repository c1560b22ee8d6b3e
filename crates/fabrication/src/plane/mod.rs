//! Closed contours of straight edges and true arcs, in mm.

mod contour;
mod edge;
mod placement;

pub use contour::{Contour, ContourError, Vertex};
pub use edge::{Arc, Edge};
pub use placement::{Bounds, Placement};

/// A point of the part's plane, mm.
pub type Point = nalgebra::Point2<f64>;
/// A displacement in the part's plane, mm.
pub type Vector = nalgebra::Vector2<f64>;

/// A quarter turn to the left.
pub(crate) fn left_of(v: Vector) -> Vector {
    Vector::new(-v.y, v.x)
}
