//! The shapes and their distances.

use nalgebra::{Point3, Vector3};

/// How near to the least distance the search along a bar comes, mm.
const NEAR_ENOUGH: f64 = 1e-3;
/// Most intervals that the search keeps at once: it halves depth first, so this many halvings of a bar.
const MOST_HALVINGS: usize = 48;

/// A round bar with round ends, mm.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Capsule {
    /// Ends of its middle line.
    pub ends: [Point3<f64>; 2],
    /// Its radius.
    pub radius: f64,
}

/// A round-edged strip turned about an axis, mm.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Ring {
    /// A point of the axis.
    pub centre: Point3<f64>,
    /// The axis, a unit vector.
    pub axis: Vector3<f64>,
    /// Ends of the strip's middle line: distance from the axis, and height along it over the centre.
    pub profile: [[f64; 2]; 2],
    /// Half the strip's thickness.
    pub radius: f64,
}

/// The least distance of two shapes.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Gap {
    /// Between the surfaces, mm; negative when they run into each other.
    pub distance: f64,
    /// The nearest points of the two middle lines.
    pub between: [Point3<f64>; 2],
}

impl Capsule {
    fn at(&self, part: f64) -> Point3<f64> {
        self.ends[0] + (self.ends[1] - self.ends[0]) * part
    }

    /// To another bar.
    #[must_use]
    pub fn to_capsule(&self, other: &Self) -> Gap {
        let [s, t] = nearest_parts(self.ends, other.ends);
        let between = [self.at(s), other.at(t)];
        Gap {
            distance: (between[0] - between[1]).norm() - self.radius - other.radius,
            between,
        }
    }

    /// To a ring, within 0.001 mm above the true least distance. A distance changes no faster than one moves, so a half of the bar that can't come nearer than
    /// what was found is left out; the rest is halved again.
    #[must_use]
    pub fn to_ring(&self, ring: &Ring) -> Gap {
        let half_length = (self.ends[1] - self.ends[0]).norm() / 2.0;
        let distance = |part: f64| ring.distance(self.at(part));
        // Middle and half width of the intervals still to be halved.
        let mut waiting = [(0.0, 0.0); MOST_HALVINGS];
        let (mut best, mut least) = (0.0, distance(0.0));
        let mut look = |part: f64| {
            let here = distance(part);
            if here < least {
                (best, least) = (part, here);
            }
            (here, least)
        };
        let mut count = 1;
        look(0.5);
        look(1.0);
        waiting[0] = (0.5, 0.5);
        while count > 0 {
            count -= 1;
            let (part, width) = waiting[count];
            for side in [-0.5, 0.5] {
                let (there, least) = look(part + side * width);
                let could_come = there - half_length * width;
                let worth = could_come < least - NEAR_ENOUGH;
                if worth && count < MOST_HALVINGS {
                    waiting[count] = (part + side * width, width / 2.0);
                    count += 1;
                }
            }
        }
        let on_bar = self.at(best);
        Gap {
            distance: least - ring.radius - self.radius,
            between: [on_bar, ring.nearest(on_bar)],
        }
    }
}

impl Ring {
    /// Distance of a point from the axis, height along it, and the outward direction.
    fn seen(&self, point: Point3<f64>) -> ([f64; 2], Vector3<f64>) {
        let from = point - self.centre;
        let height = from.dot(&self.axis);
        let across = from - self.axis * height;
        let outward = across.try_normalize(1e-12).unwrap_or_else(|| {
            // On the axis every direction is as good.
            let helper = if self.axis.x.abs() < 0.9 {
                Vector3::x()
            } else {
                Vector3::y()
            };
            self.axis.cross(&helper).normalize()
        });
        ([across.norm(), height], outward)
    }

    fn on_profile(&self, [distance, height]: [f64; 2]) -> [f64; 2] {
        let [[d0, h0], [d1, h1]] = self.profile;
        let (dd, dh) = (d1 - d0, h1 - h0);
        let length = dd * dd + dh * dh;
        let part = if length > 0.0 {
            (((distance - d0) * dd + (height - h0) * dh) / length).clamp(0.0, 1.0)
        } else {
            0.0
        };
        [d0 + dd * part, h0 + dh * part]
    }

    /// From a point to the strip's middle surface, mm.
    fn distance(&self, point: Point3<f64>) -> f64 {
        let (seen, _) = self.seen(point);
        let [d, h] = self.on_profile(seen);
        (d - seen[0]).hypot(h - seen[1])
    }

    fn nearest(&self, point: Point3<f64>) -> Point3<f64> {
        let (seen, outward) = self.seen(point);
        let [d, h] = self.on_profile(seen);
        self.centre + outward * d + self.axis * h
    }
}

/// Where, as parts of their lengths, two segments are nearest to each other.
fn nearest_parts([a0, a1]: [Point3<f64>; 2], [b0, b1]: [Point3<f64>; 2]) -> [f64; 2] {
    let (u, v, w) = (a1 - a0, b1 - b0, a0 - b0);
    let (uu, uv, vv) = (u.norm_squared(), u.dot(&v), v.norm_squared());
    let (uw, vw) = (u.dot(&w), v.dot(&w));
    let share = |up: f64, down: f64| {
        if down > 0.0 {
            (up / down).clamp(0.0, 1.0)
        } else {
            0.0
        }
    };
    let s = share(uv * vw - vv * uw, uu * vv - uv * uv);
    let t = share(uv * s + vw, vv);
    // With the second settled the first may move again.
    let s = share(uv * t - uw, uu);
    [s, t]
}
