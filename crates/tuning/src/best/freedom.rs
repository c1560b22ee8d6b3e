//! Which joints may move, and which ways.

use trammel_geometry::{Corner, Point, TieRod, Vector};

use crate::{Axis, Coordinate, Hardpoint};

/// The joints of the tie rod that may move.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Movable {
    /// The inner one, the outer held.
    Inner,
    /// The outer one, the inner held.
    Outer,
    /// Both.
    Both,
}

/// The ways a joint may move.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Ways {
    /// Up and down.
    Height,
    /// In and out.
    Width,
    /// Up, down, in and out.
    FrontPlane,
    /// Up, down, fore and aft.
    SidePlane,
    /// In, out, fore and aft.
    PlanPlane,
    /// Any way.
    Free,
    /// Along a line of this direction; its length does not matter.
    Line(Vector),
}

/// One coordinate of a search: a joint's move along a unit vector.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Direction {
    pub outer: bool,
    pub along: Vector,
}

/// The directions of a search without those that a held coordinate takes part in; none for a line without direction.
pub(crate) fn directions(movable: Movable, ways: Ways, held: &[Coordinate]) -> Vec<Direction> {
    let along = match ways {
        Ways::Height => vec![Vector::z()],
        Ways::Width => vec![Vector::y()],
        Ways::FrontPlane => vec![Vector::y(), Vector::z()],
        Ways::SidePlane => vec![Vector::x(), Vector::z()],
        Ways::PlanPlane => vec![Vector::x(), Vector::y()],
        Ways::Free => vec![Vector::x(), Vector::y(), Vector::z()],
        Ways::Line(v) => v.try_normalize(1e-9).into_iter().collect(),
    };
    let joints: &[bool] = match movable {
        Movable::Inner => &[false],
        Movable::Outer => &[true],
        Movable::Both => &[false, true],
    };
    joints
        .iter()
        .flat_map(|&outer| along.iter().map(move |&along| Direction { outer, along }))
        .filter(|d| !held.iter().any(|c| d.needs(*c)))
        .collect()
}

impl Direction {
    /// Whether a coordinate has to move for it.
    fn needs(&self, c: Coordinate) -> bool {
        let point = if self.outer {
            Hardpoint::TieRodOuter
        } else {
            Hardpoint::TieRodInner
        };
        let part = match c.axis {
            Axis::X => self.along.x,
            Axis::Y => self.along.y,
            Axis::Z => self.along.z,
        };
        c.point == point && part != 0.0
    }
}

/// The corner with its joints moved by `p` mm along the directions.
pub(crate) fn moved(corner: &Corner, directions: &[Direction], p: &[f64]) -> Corner {
    let mut tie_rod = corner.tie_rod;
    for (d, &by) in directions.iter().zip(p) {
        let joint: &mut Point = if d.outer {
            &mut tie_rod.outer
        } else {
            &mut tie_rod.inner
        };
        *joint += d.along * by;
    }
    Corner { tie_rod, ..*corner }
}

/// How far along the directions a tie rod is from the corner's own.
pub(crate) fn coordinates(corner: &Corner, directions: &[Direction], to: &TieRod) -> Vec<f64> {
    let inner = to.inner - corner.tie_rod.inner;
    let outer = to.outer - corner.tie_rod.outer;
    directions
        .iter()
        .map(|d| d.along.dot(if d.outer { &outer } else { &inner }))
        .collect()
}
