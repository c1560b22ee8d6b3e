//! Where no tie-rod joint may go: a frame tube, an engine.

use trammel_geometry::Point;

use crate::{Axis, AxleName, LengthUnit, Triple};

/// A place to keep clear of, vehicle axes, the build's unit.
#[derive(Clone, Debug, PartialEq)]
pub struct KeepOut {
    /// What is there.
    pub name: String,
    /// Its extent, by two opposite corners, in any order.
    pub corners: KeepOutCorners,
}

/// Two opposite corners.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum KeepOutCorners {
    /// A rectangle in the front view, (y, z) each: it counts at every x, for the front axle's joints.
    Front([f64; 2], [f64; 2]),
    /// A box, (x, y, z) each: it counts for the joints of either axle.
    Box(Triple, Triple),
}

impl KeepOutCorners {
    /// From and to along an axis as typed, in any order; `None` where it counts at every place along that axis.
    #[must_use]
    pub fn along(&self, axis: Axis) -> Option<[f64; 2]> {
        match (self, axis) {
            (Self::Front(..), Axis::X) => None,
            (Self::Front(a, b), Axis::Y) => Some([a[0], b[0]]),
            (Self::Front(a, b), Axis::Z) => Some([a[1], b[1]]),
            (Self::Box(a, b), axis) => Some([a[axis.index()], b[axis.index()]]),
        }
    }

    /// The same from one place to another along an axis; nothing changes along an axis where it counts at every place.
    #[must_use]
    pub fn with_along(mut self, axis: Axis, [from, to]: [f64; 2]) -> Self {
        match (&mut self, axis) {
            (Self::Front(..), Axis::X) => {}
            (Self::Front(a, b), Axis::Y) => (a[0], b[0]) = (from, to),
            (Self::Front(a, b), Axis::Z) => (a[1], b[1]) = (from, to),
            (Self::Box(a, b), axis) => {
                (a[axis.index()], b[axis.index()]) = (from, to);
            }
        }
        self
    }

    /// The rectangle in the front view, counting at every x.
    #[must_use]
    pub fn at_every_x(self) -> Self {
        match self {
            Self::Front(..) => self,
            Self::Box(a, b) => Self::Front([a[1], a[2]], [b[1], b[2]]),
        }
    }

    /// The box between two places along x.
    #[must_use]
    pub fn between(self, [from, to]: [f64; 2]) -> Self {
        match self {
            Self::Front(a, b) => Self::Box([from, a[0], a[1]], [to, b[0], b[1]]),
            Self::Box(..) => self.with_along(Axis::X, [from, to]),
        }
    }

    /// Its twin on the other side of the car.
    #[must_use]
    pub fn mirrored(self) -> Self {
        match self.along(Axis::Y) {
            Some(y) => self.with_along(Axis::Y, y.map(|v| -v)),
            None => self,
        }
    }

    /// Whether it counts for the joints of an axle, wherever they are.
    #[must_use]
    pub fn counts_for(&self, axle: AxleName) -> bool {
        matches!(self, Self::Box(..)) || axle == AxleName::Front
    }
}

impl KeepOut {
    /// Whether a joint of an axle at `place` (mm) is inside or on its edge, or its twin on the other side is.
    #[must_use]
    pub fn holds(&self, axle: AxleName, place: Point, unit: LengthUnit) -> bool {
        let [x, y, z] = [place.x, place.y, place.z].map(|v| unit.from_mm(v));
        let within = |v: f64, a: f64, b: f64| (a.min(b)..=a.max(b)).contains(&v);
        let inside = |axis, v| {
            let extent = self.corners.along(axis);
            extent.is_none_or(|[a, b]| within(v, a, b))
        };
        self.corners.counts_for(axle)
            && inside(Axis::X, x)
            && (inside(Axis::Y, y) || inside(Axis::Y, -y))
            && inside(Axis::Z, z)
    }

    /// Every number of its corners.
    pub(crate) fn numbers_mut(&mut self) -> Vec<&mut f64> {
        match &mut self.corners {
            KeepOutCorners::Front(a, b) => a.iter_mut().chain(b).collect(),
            KeepOutCorners::Box(a, b) => a.iter_mut().chain(b).collect(),
        }
    }

    /// The extents, each above nought where the corners differ in every coordinate.
    pub(crate) fn extents(&self) -> Vec<f64> {
        let differences =
            |a: &[f64], b: &[f64]| a.iter().zip(b).map(|(a, b)| (a - b).abs()).collect();
        match &self.corners {
            KeepOutCorners::Front(a, b) => differences(a, b),
            KeepOutCorners::Box(a, b) => differences(a, b),
        }
    }

    pub(crate) fn numbers(&self) -> Vec<f64> {
        match &self.corners {
            KeepOutCorners::Front(a, b) => a.iter().chain(b).copied().collect(),
            KeepOutCorners::Box(a, b) => a.iter().chain(b).copied().collect(),
        }
    }
}
