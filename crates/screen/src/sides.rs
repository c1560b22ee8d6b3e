//! From a corner's own frame to the vehicle's.

use trammel_build::Side;
use trammel_geometry::{Point, Vector, mirror_point, mirror_vector};

/// In vehicle axes, of a place in a corner's own frame: a right corner is seen in the mirror of the centre plane.
pub(crate) fn in_vehicle(side: Side, p: Point) -> Point {
    match side {
        Side::Left => p,
        Side::Right => mirror_point(p),
    }
}

/// The same of a direction or a movement.
pub(crate) fn way_in_vehicle(side: Side, v: Vector) -> Vector {
    match side {
        Side::Left => v,
        Side::Right => mirror_vector(v),
    }
}
