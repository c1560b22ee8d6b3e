//! Contours that can't be open.

use super::{Bounds, Edge, Placement, Point};

/// Two vertices nearer than this are one, mm.
const SAME: f64 = 1e-6;
/// An area below this is none, mm2.
const NO_AREA: f64 = 1e-6;

/// Why vertices give no contour.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum ContourError {
    /// Too few vertices, or none of them makes an area.
    #[error(
        "{found} vertices enclose no area; expected an outline around an area; no outline was made"
    )]
    NoArea {
        /// How many vertices.
        found: usize,
    },
    /// A coordinate or bulge that is no number.
    #[error(
        "vertex {at} is not a finite point; expected finite coordinates and bulge; no outline was made"
    )]
    NotFinite {
        /// Which vertex, counted from nought.
        at: usize,
    },
    /// Two vertices in one place.
    #[error(
        "vertex {at} lies on the one after it; expected an edge with a length; no outline was made"
    )]
    NoLength {
        /// Which vertex, counted from nought.
        at: usize,
    },
}

/// A corner of a contour, and how the edge that leaves it goes.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Vertex {
    /// Where.
    pub point: Point,
    /// Tangent of a quarter of the angle that the edge to the next vertex goes through, anticlockwise positive; 0 is straight.
    pub bulge: f64,
}

impl Vertex {
    /// A corner with a straight edge after it.
    #[must_use]
    pub fn straight(x: f64, y: f64) -> Self {
        Self::arc(x, y, 0.0)
    }

    /// A corner with an arc after it that goes through this angle, rad, anticlockwise positive.
    #[must_use]
    pub fn arc(x: f64, y: f64, sweep: f64) -> Self {
        Self {
            point: Point::new(x, y),
            bulge: (sweep / 4.0).tan(),
        }
    }
}

/// A closed contour, anticlockwise. The last vertex is joined to the first.
#[derive(Clone, Debug, PartialEq)]
pub struct Contour {
    vertices: Vec<Vertex>,
}

impl Contour {
    /// A contour through these vertices, given either way round.
    ///
    /// # Errors
    /// No area, a coordinate that is no number, two vertices in one place.
    pub fn new(vertices: Vec<Vertex>) -> Result<Self, ContourError> {
        let bad =
            |v: &Vertex| !(v.point.x.is_finite() && v.point.y.is_finite() && v.bulge.is_finite());
        if let Some(at) = vertices.iter().position(bad) {
            return Err(ContourError::NotFinite { at });
        }
        let found = vertices.len();
        let contour = Self { vertices };
        let short = |edge: Edge| (edge.to() - edge.from()).norm() < SAME;
        if let Some(at) = contour.edges().position(short) {
            return Err(ContourError::NoLength { at });
        }
        let area: f64 = contour.edges().map(|edge| edge.area_share()).sum();
        if area.abs() < NO_AREA {
            return Err(ContourError::NoArea { found });
        }
        Ok(if area > 0.0 {
            contour
        } else {
            contour.reversed()
        })
    }

    /// An upright rectangle between two corners, its corners rounded with this radius (0 for sharp).
    ///
    /// # Errors
    /// No area, or a radius that doesn't fit.
    pub fn rectangle(min: Point, max: Point, radius: f64) -> Result<Self, ContourError> {
        let (x0, y0, x1, y1) = (min.x, min.y, max.x, max.y);
        let sharp = [(x0, y0), (x1, y0), (x1, y1), (x0, y1)];
        if radius <= 0.0 {
            return Self::new(sharp.map(|(x, y)| Vertex::straight(x, y)).to_vec());
        }
        let quarter = std::f64::consts::FRAC_PI_2;
        Self::new(vec![
            Vertex::straight(x0 + radius, y0),
            Vertex::arc(x1 - radius, y0, quarter),
            Vertex::straight(x1, y0 + radius),
            Vertex::arc(x1, y1 - radius, quarter),
            Vertex::straight(x1 - radius, y1),
            Vertex::arc(x0 + radius, y1, quarter),
            Vertex::straight(x0, y1 - radius),
            Vertex::arc(x0, y0 + radius, quarter),
        ])
    }

    /// The vertices, anticlockwise.
    #[must_use]
    pub fn vertices(&self) -> &[Vertex] {
        &self.vertices
    }

    /// The edges in order; each starts where the one before ends.
    pub fn edges(&self) -> impl Iterator<Item = Edge> + '_ {
        let next = self.vertices.iter().cycle().skip(1);
        self.vertices
            .iter()
            .zip(next)
            .map(|(from, to)| Edge::between(from.point, to.point, from.bulge))
    }

    /// Area inside, mm2.
    #[must_use]
    pub fn area(&self) -> f64 {
        self.edges().map(|edge| edge.area_share()).sum()
    }

    /// Length of the cut along it, mm.
    #[must_use]
    pub fn length(&self) -> f64 {
        self.edges().map(|edge| edge.length()).sum()
    }

    /// The room it takes.
    #[must_use]
    pub fn bounds(&self) -> Bounds {
        let mut bounds = Bounds::EMPTY;
        self.edges().for_each(|edge| bounds.join(&edge.bounds()));
        bounds
    }

    /// Least distance of a point from the contour, mm, from either side.
    #[must_use]
    pub fn distance_to(&self, point: Point) -> f64 {
        self.edges()
            .map(|edge| edge.distance_to(point))
            .fold(f64::INFINITY, f64::min)
    }

    /// Whether a point lies inside: the contour turns once around it.
    #[must_use]
    pub fn contains(&self, point: Point) -> bool {
        let turned: f64 = self.edges().map(|edge| turn_about(&edge, point)).sum();
        turned.abs() > std::f64::consts::PI
    }

    /// The contour of the part as placed.
    #[must_use]
    pub fn placed(&self, placement: &Placement) -> Self {
        let side = if placement.mirrored { -1.0 } else { 1.0 };
        let vertices = self.vertices.iter().map(|v| Vertex {
            point: placement.point(v.point),
            bulge: side * v.bulge,
        });
        let moved = Self {
            vertices: vertices.collect(),
        };
        if placement.mirrored {
            moved.reversed()
        } else {
            moved
        }
    }

    fn reversed(&self) -> Self {
        // The bulge belongs to the edge, so it moves on to the edge's other end.
        let before = self.vertices.iter().rev().cycle().skip(1);
        let vertices = self
            .vertices
            .iter()
            .rev()
            .zip(before)
            .map(|(v, before)| Vertex {
                point: v.point,
                bulge: -before.bulge,
            });
        Self {
            vertices: vertices.collect(),
        }
    }
}

/// How far the direction to an edge turns as seen from a point, rad: the sum of its pieces, each short enough to turn less than half round.
fn turn_about(edge: &Edge, point: Point) -> f64 {
    let pieces = match edge {
        Edge::Line { .. } => 1,
        Edge::Arc(_) => 64,
    };
    let at = |piece: i32| match edge {
        Edge::Line { from, to } => [*from, *to][usize::from(piece > 0)],
        Edge::Arc(arc) => arc.at(f64::from(piece) / f64::from(pieces)),
    };
    (0..pieces)
        .map(|piece| {
            let (a, b) = (at(piece) - point, at(piece + 1) - point);
            a.perp(&b).atan2(a.dot(&b))
        })
        .sum()
}
