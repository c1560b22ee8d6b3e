//! One edge of a contour.

use std::f64::consts::{FRAC_PI_2, TAU};

use super::{Bounds, Point, Vector, left_of};

/// A bulge below this is a straight edge: on a metre of chord it rises by 0.5 nm.
const STRAIGHT: f64 = 1e-9;

/// A circular arc.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Arc {
    /// Centre of the circle.
    pub centre: Point,
    /// Radius, mm.
    pub radius: f64,
    /// Angle of the first point about the centre, from x towards y, rad.
    pub start: f64,
    /// Angle gone through, anticlockwise positive, rad.
    pub sweep: f64,
}

impl Arc {
    /// The point at this share of the arc, 0 first, 1 last.
    #[must_use]
    pub fn at(&self, share: f64) -> Point {
        let angle = self.start + share * self.sweep;
        self.centre + self.radius * Vector::new(angle.cos(), angle.sin())
    }

    /// Whether the arc goes through this angle about its centre.
    #[must_use]
    pub fn covers(&self, angle: f64) -> bool {
        let along = match self.sweep >= 0.0 {
            true => angle - self.start,
            false => self.start - angle,
        };
        along.rem_euclid(TAU) <= self.sweep.abs()
    }
}

/// A straight line or an arc, from one vertex to the next.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Edge {
    /// Straight.
    Line {
        /// First point.
        from: Point,
        /// Last point.
        to: Point,
    },
    /// Along a circle.
    Arc(Arc),
}

impl Edge {
    /// The edge between two points with a bulge: the tangent of a quarter of the angle gone through, anticlockwise positive, 0 straight.
    #[must_use]
    pub fn between(from: Point, to: Point, bulge: f64) -> Self {
        if bulge.abs() < STRAIGHT {
            return Self::Line { from, to };
        }
        let chord = to - from;
        let centre = from + chord / 2.0 + left_of(chord) * ((1.0 - bulge * bulge) / (4.0 * bulge));
        let out = from - centre;
        Self::Arc(Arc {
            centre,
            radius: out.norm(),
            start: out.y.atan2(out.x),
            sweep: 4.0 * bulge.atan(),
        })
    }

    /// First point.
    #[must_use]
    pub fn from(&self) -> Point {
        match self {
            Self::Line { from, .. } => *from,
            Self::Arc(arc) => arc.at(0.0),
        }
    }

    /// Last point.
    #[must_use]
    pub fn to(&self) -> Point {
        match self {
            Self::Line { to, .. } => *to,
            Self::Arc(arc) => arc.at(1.0),
        }
    }

    /// Length along it, mm.
    #[must_use]
    pub fn length(&self) -> f64 {
        match self {
            Self::Line { from, to } => (to - from).norm(),
            Self::Arc(arc) => arc.radius * arc.sweep.abs(),
        }
    }

    /// Least distance of a point from it, mm.
    #[must_use]
    pub fn distance_to(&self, point: Point) -> f64 {
        match self {
            Self::Line { from, to } => {
                let along = to - from;
                let share = (point - from).dot(&along) / along.norm_squared();
                (point - (from + along * share.clamp(0.0, 1.0))).norm()
            }
            Self::Arc(arc) => {
                let out = point - arc.centre;
                if arc.covers(out.y.atan2(out.x)) {
                    (out.norm() - arc.radius).abs()
                } else {
                    let ends = [arc.at(0.0), arc.at(1.0)].map(|end| (point - end).norm());
                    ends[0].min(ends[1])
                }
            }
        }
    }

    /// What it adds to the area of the contour (Green's theorem): half of the cross product, and the arc's segment over its chord.
    pub(super) fn area_share(&self) -> f64 {
        let (from, to) = (self.from(), self.to());
        let chord = (from.x * to.y - to.x * from.y) / 2.0;
        match self {
            Self::Line { .. } => chord,
            Self::Arc(arc) => chord + arc.radius * arc.radius * (arc.sweep - arc.sweep.sin()) / 2.0,
        }
    }

    /// The room it takes.
    #[must_use]
    pub fn bounds(&self) -> Bounds {
        let mut bounds = Bounds::EMPTY;
        bounds.include(self.from());
        bounds.include(self.to());
        if let Self::Arc(arc) = self {
            for quarter in 0..4 {
                let angle = f64::from(quarter) * FRAC_PI_2;
                if arc.covers(angle) {
                    let out = Vector::new(angle.cos(), angle.sin());
                    bounds.include(arc.centre + arc.radius * out);
                }
            }
        }
        bounds
    }
}
