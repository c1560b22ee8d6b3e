//! Kinds of readings, with what they should show and how that changes with the points.

use trammel_geometry::{Point, Vector};
use trammel_tuning::Axis;

use super::PointId;

/// What was measured.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum What {
    /// Distance between two points, mm.
    Distance(PointId, PointId),
    /// A coordinate: a height above the datum, a plumb-bob offset from the centre line or from the station line, mm.
    Offset(PointId, Axis),
    /// How much further along an axis the second point is than the first, mm.
    Difference(PointId, PointId, Axis),
    /// Slope of the line from the first point to the second by an angle gauge, rad, rising positive.
    Slope(PointId, PointId),
}

/// A reading with its accuracy.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Reading {
    /// What was measured.
    pub what: What,
    /// What it came to, centre to centre, mm or rad.
    pub value: f64,
    /// Its standard deviation, mm or rad.
    pub deviation: f64,
}

/// What a reading should be, and how it changes with its one or two points.
pub(super) struct Model {
    pub value: f64,
    pub from: (PointId, Vector),
    pub to: Option<(PointId, Vector)>,
}

impl What {
    /// The points it is about.
    pub fn points(self) -> impl Iterator<Item = PointId> {
        let (a, b) = match self {
            Self::Distance(a, b) | Self::Difference(a, b, _) | Self::Slope(a, b) => (a, Some(b)),
            Self::Offset(a, _) => (a, None),
        };
        std::iter::once(a).chain(b)
    }

    /// Whether it is an angle.
    #[must_use]
    pub fn is_angle(self) -> bool {
        matches!(self, Self::Slope(..))
    }

    /// `None` where the points fall together, so that no direction can be told.
    pub(super) fn model(self, place: impl Fn(PointId) -> Option<Point>) -> Option<Model> {
        let between = |a: PointId, b: PointId| Some(place(b)? - place(a)?);
        let pair = |a, b, value, toward: Vector| Model {
            value,
            from: (a, -toward),
            to: Some((b, toward)),
        };
        Some(match self {
            Self::Distance(a, b) => {
                let v = between(a, b)?;
                let length = v.norm();
                pair(a, b, length, v.try_normalize(1e-9)?)
            }
            Self::Offset(a, axis) => {
                let along = axis.unit();
                Model {
                    value: place(a)?.coords.dot(&along),
                    from: (a, along),
                    to: None,
                }
            }
            Self::Difference(a, b, axis) => {
                let along = axis.unit();
                pair(a, b, between(a, b)?.dot(&along), along)
            }
            Self::Slope(a, b) => {
                let v = between(a, b)?;
                let flat = v.x.hypot(v.y);
                let square = v.norm_squared();
                if !(flat > 1e-6) {
                    return None;
                }
                let toward = Vector::new(-v.x * v.z / flat, -v.y * v.z / flat, flat) / square;
                pair(a, b, v.z.atan2(flat), toward)
            }
        })
    }
}
