//! Where no tie-rod joint may go: a frame tube, an engine.

use trammel_geometry::Point;

use crate::{AxleName, LengthUnit, Triple};

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

impl KeepOut {
    /// Whether a joint of an axle at `place` (mm) is inside or on its edge, or its twin on the other side is.
    #[must_use]
    pub fn holds(&self, axle: AxleName, place: Point, unit: LengthUnit) -> bool {
        let [x, y, z] = [place.x, place.y, place.z].map(|v| unit.from_mm(v));
        let within = |v: f64, a: f64, b: f64| (a.min(b)..=a.max(b)).contains(&v);
        let here = |y: f64| match self.corners {
            KeepOutCorners::Front(a, b) => {
                axle == AxleName::Front && within(y, a[0], b[0]) && within(z, a[1], b[1])
            }
            KeepOutCorners::Box(a, b) => {
                within(x, a[0], b[0]) && within(y, a[1], b[1]) && within(z, a[2], b[2])
            }
        };
        here(y) || here(-y)
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
