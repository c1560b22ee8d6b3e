//! Points that their readings fix poorly.

use trammel_geometry::Vector;

use super::{Placed, PointId, Survey, adjust::both_ways, ellipse::widest};

/// A place is weak in a direction in which it is this much less known than its readings are.
const POORLY: f64 = 2.0;

/// A point that its readings fix poorly in one direction.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Weak {
    /// Which point.
    pub point: PointId,
    /// In which direction.
    pub direction: Vector,
    /// Its standard deviation there, mm.
    pub deviation: f64,
    /// The middle of its readings' standard deviations, mm.
    pub readings: f64,
}

impl Weak {
    /// The direction in words: `up and down`.
    #[must_use]
    pub fn direction_words(&self) -> &'static str {
        both_ways(&self.direction)
    }
}

pub(super) fn weak_points(survey: &Survey, points: &[Placed]) -> Vec<Weak> {
    let weak = |p: &Placed| {
        let mut own: Vec<f64> = survey
            .readings()
            .iter()
            .filter(|r| !r.what.is_angle() && r.what.points().any(|q| q == p.point))
            .map(|r| r.deviation)
            .collect();
        own.sort_by(f64::total_cmp);
        let readings = own.get(own.len() / 2).copied()?;
        let (direction, deviation) = widest(&p.covariance);
        (deviation > POORLY * readings).then_some(Weak {
            point: p.point,
            direction,
            deviation,
            readings,
        })
    };
    points.iter().filter_map(weak).collect()
}
