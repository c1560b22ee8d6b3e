//! The true shape of a foot on a round tube that runs askew through the tab's plane.
//!
//! In the tab's own frame, x along the foot and y up, the tube's middle line crosses the plane at (c, d) with the direction (a, b, n), n across the plate. A point of the
//! plane lies on the tube where its distance from the line is the radius R; with u = x - c and v = y - d that is
//!
//! `v(u) = (a b u + sqrt(R^2 (1 - b^2) - n^2 u^2)) / (1 - b^2)`
//!
//! for the side that the tab stands on: an ellipse of half axes R and R / n, the cut of a cylinder by a plane. d is chosen so that the foot's middle is at nought.

use crate::plane::{Point, Vertex};

/// A round tube that runs askew through the tab's plane, mm.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Saddle {
    /// Outside diameter of the tube.
    pub tube_diameter: f64,
    /// Part of the tube's direction (of length 1) along the foot.
    pub along: f64,
    /// Part of it up the tab.
    pub up: f64,
    /// Where its middle line crosses the tab's plane, to the right of the foot's middle.
    pub offset: f64,
}

/// Chords of the true curve are replaced by arcs that leave it by no more than this, mm.
pub const ACCURACY: f64 = 0.01;
/// Most arcs that a foot is made of.
const MOST: u32 = 128;

impl Saddle {
    /// Part of the direction across the plate, squared.
    fn across_squared(&self) -> f64 {
        (1.0 - self.along * self.along - self.up * self.up).max(0.0)
    }

    /// Whether the tube lies under the whole of a foot of this width.
    #[must_use]
    pub fn carries(&self, width: f64) -> bool {
        let reach = width / 2.0 + self.offset.abs();
        let rest = 1.0 - self.up * self.up;
        let radius = self.tube_diameter / 2.0;
        rest > 1e-6
            && self.across_squared() > 1e-6
            && self.across_squared() * reach * reach < radius * radius * rest * (1.0 - 1e-9)
    }

    /// The surface over the crossing of the middle line, this far to its right.
    fn over(&self, u: f64) -> f64 {
        let rest = 1.0 - self.up * self.up;
        let radius = self.tube_diameter / 2.0;
        let root = (radius * radius * rest - self.across_squared() * u * u)
            .max(0.0)
            .sqrt();
        (self.along * self.up * u + root) / rest
    }

    /// Height of the tube's surface at this x, the foot's middle being nought.
    #[must_use]
    pub fn at(&self, x: f64) -> f64 {
        self.over(x - self.offset) - self.over(-self.offset)
    }

    /// How far the surface at the foot's middle lies above the crossing of the tube's middle line.
    #[must_use]
    pub fn rise(&self) -> f64 {
        self.over(-self.offset)
    }

    /// The foot's edge from the left corner to the right one, without that one, in arcs.
    pub(super) fn edge(&self, half: f64) -> Vec<Vertex> {
        let mut count = 4;
        while count < MOST && self.error(half, count) > ACCURACY {
            count *= 2;
        }
        self.arcs(half, count)
            .map(|[from, middle, to]| Vertex::arc(from.x, from.y, sweep(from, middle, to)))
            .collect()
    }

    fn arcs(&self, half: f64, count: u32) -> impl Iterator<Item = [Point; 3]> + '_ {
        let x = move |share: f64| half * (2.0 * share / f64::from(count) - 1.0);
        let on = move |x: f64| Point::new(x, self.at(x));
        (0..count).map(move |i| {
            let i = f64::from(i);
            [x(i), x(i + 0.5), x(i + 1.0)].map(on)
        })
    }

    /// The most that arcs leave the curve by, looked at between the points that they go through.
    fn error(&self, half: f64, count: u32) -> f64 {
        let between = |[from, middle, to]: [Point; 3]| {
            let vertex = Vertex::arc(from.x, from.y, sweep(from, middle, to));
            let edge = crate::plane::Edge::between(from, to, vertex.bulge);
            [from, to].into_iter().map(move |end| {
                let x = (end.x + middle.x) / 2.0;
                edge.distance_to(Point::new(x, self.at(x)))
            })
        };
        self.arcs(half, count).flat_map(between).fold(0.0, f64::max)
    }
}

/// The angle that the arc through three points goes through, anticlockwise positive: twice what the angle at the middle one lacks of half a turn.
fn sweep(from: Point, middle: Point, to: Point) -> f64 {
    let (a, b) = (middle - from, to - middle);
    2.0 * (a.x * b.y - a.y * b.x).atan2(a.dot(&b))
}
