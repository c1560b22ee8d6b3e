//! The planes that a map lies in: the view that shows each, and the axes that run across and up it.

use trammel_build::Axis;
use trammel_geometry::{Point, Vector};
use trammel_tuning::Plane;

use crate::drawing::Projection;

/// In the order of the switch.
pub(crate) const ALL: [Plane; 3] = [Plane::Front, Plane::Side, Plane::Plan];

/// The plane of a view.
pub(crate) fn of(projection: Projection) -> Plane {
    match projection {
        Projection::Front => Plane::Front,
        Projection::Side => Plane::Side,
        Projection::Plan => Plane::Plan,
    }
}

/// The view that shows a plane as it is.
pub(crate) fn view(plane: Plane) -> Projection {
    match plane {
        Plane::Front => Projection::Front,
        Plane::Side => Projection::Side,
        Plane::Plan => Projection::Plan,
    }
}

/// What the plane's places differ in, for a switch and a sentence.
pub(crate) fn meaning(plane: Plane) -> &'static str {
    match plane {
        Plane::Front => "Places up, down, in and out; fore and aft the joint stays.",
        Plane::Side => "Places up, down, fore and aft; in and out the joint stays.",
        Plane::Plan => "Places in, out, fore and aft; its height stays.",
    }
}

/// The axis that runs across a map and the one that runs up it.
pub(crate) fn axes(plane: Plane) -> [Axis; 2] {
    match plane {
        Plane::Front => [Axis::Y, Axis::Z],
        Plane::Side => [Axis::X, Axis::Z],
        Plane::Plan => [Axis::Y, Axis::X],
    }
}

/// The axis square to the plane.
pub(crate) fn depth(plane: Plane) -> Axis {
    view(plane).towards()
}

/// The parts of a way that run across and up a map, mm.
pub(crate) fn parts(plane: Plane, way: Vector) -> [f64; 2] {
    axes(plane).map(|a| way[a.index()])
}

/// A way so far across and up a map, mm.
pub(crate) fn way(plane: Plane, by: [f64; 2]) -> Vector {
    let mut way = Vector::zeros();
    for (axis, by) in axes(plane).into_iter().zip(by) {
        way[axis.index()] = by;
    }
    way
}

/// The place at a part of the rectangle between two corners of a map.
pub(crate) fn place(plane: Plane, [low, high]: [Point; 2], [u, v]: [f64; 2]) -> Point {
    let [across, up] = parts(plane, high - low);
    low + way(plane, [u * across, v * up])
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn axes_are_those_of_the_kernels_maps_and_of_the_view() {
        for plane in ALL {
            assert_eq!(of(view(plane)), plane);
            let ways = [[1.0, 0.0], [0.0, 1.0]].map(|by| way(plane, by));
            assert_eq!(ways, plane.directions());
            let shown = [view(plane).right().0, view(plane).down().0];
            assert_eq!(axes(plane), shown);
            assert!(!axes(plane).contains(&depth(plane)));
        }
    }
}
