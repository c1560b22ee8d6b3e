//! The tab's contour.

use super::{Foot, TabForm, TabSize};
use crate::plane::{Contour, ContourError, Point, Vertex};

pub(super) fn of(size: &TabSize) -> Result<Contour, ContourError> {
    let half = size.foot_width / 2.0;
    // From the left end of the foot along it to the right, then up and round.
    let mut vertices = foot(&size.foot, half);
    let [left, right] = corners(&size.foot, half);
    vertices.push(Vertex::straight(right.x, right.y));
    match size.form {
        TabForm::Straight => {
            let top = size.height + size.edge;
            vertices.push(Vertex::straight(half, top));
            vertices.push(Vertex::straight(-half, top));
        }
        TabForm::Radiused => {
            vertices.push(Vertex::arc(half, size.height, std::f64::consts::PI));
            vertices.push(Vertex::straight(-half, size.height));
        }
        TabForm::Tapered => round_end(size, [left, right], &mut vertices),
    }
    Contour::new(vertices)
}

/// The foot's ends, left and right.
fn corners(foot: &Foot, half: f64) -> [Point; 2] {
    [-half, half].map(|x| {
        let y = match *foot {
            Foot::Flat => 0.0,
            Foot::Coped { tube_diameter } => {
                let radius = tube_diameter / 2.0;
                (radius * radius - half * half).sqrt() - radius
            }
            Foot::Askew(saddle) => saddle.at(x),
        };
        Point::new(x, y)
    })
}

/// The foot's edge from its left end, without the right one. The metal lies over the tube, so the edge runs clockwise about the tube's centre.
fn foot(foot: &Foot, half: f64) -> Vec<Vertex> {
    let [left, _] = corners(foot, half);
    match *foot {
        Foot::Flat => vec![Vertex::straight(left.x, left.y)],
        Foot::Coped { tube_diameter } => {
            let sweep = -2.0 * (half / (tube_diameter / 2.0)).asin();
            vec![Vertex::arc(left.x, left.y, sweep)]
        }
        Foot::Askew(saddle) => saddle.edge(half),
    }
}

/// The end about the hole, between the points where lines from the foot's corners touch it.
fn round_end(size: &TabSize, [left, right]: [Point; 2], vertices: &mut Vec<Vertex>) {
    let centre = Point::new(size.lean, size.height);
    let (first, first_angle) = touch(right, centre, size.edge, 1.0);
    let (last, last_angle) = touch(left, centre, size.edge, -1.0);
    let sweep = (last_angle - first_angle).rem_euclid(std::f64::consts::TAU);
    vertices.push(Vertex::arc(first.x, first.y, sweep));
    vertices.push(Vertex::straight(last.x, last.y));
}

/// Where a line from a corner touches the circle, on the side away from the tab's middle, and the angle of that point about the centre.
fn touch(corner: Point, centre: Point, radius: f64, side: f64) -> (Point, f64) {
    let to_corner = corner - centre;
    let angle = to_corner.y.atan2(to_corner.x) + side * (radius / to_corner.norm()).acos();
    let point = centre + radius * crate::plane::Vector::new(angle.cos(), angle.sin());
    (point, angle)
}
