//! Whether the valley crosses the clear area, and the best place inside it in whole steps of the shop.

use trammel_build::LengthUnit;
use trammel_geometry::Point;

use super::{clear::Clear, map::MapWork, plane, settings::shop_step};
use crate::words::on_step;

/// The best place inside the clear area.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Inside {
    /// Whether the valley floor goes through the clear area.
    pub crossed: bool,
    /// In whole steps, mm.
    pub place: Point,
    /// The score there as the map shows it.
    pub score: f32,
}

impl Inside {
    /// Looked for on the whole steps that lie in the map; `None` where none of them is clear.
    pub(crate) fn of(map: &MapWork, clear: &Clear, unit: LengthUnit) -> Option<Self> {
        let step = shop_step(unit);
        let [low, high] = map.corners();
        let axes = plane::axes(map.plane()).map(trammel_build::Axis::index);
        let first = axes.map(|a| on_step(low[a] + 0.499 * step, step));
        let count = |n: usize| ((high[axes[n]] - first[n]) / step).floor().max(0.0) as usize + 1;
        let mut best: Option<(Point, f32)> = None;
        for row in 0..count(1) {
            for column in 0..count(0) {
                let mut place = low;
                place[axes[0]] = first[0] + column as f64 * step;
                place[axes[1]] = first[1] + row as f64 * step;
                let part = map.part_of(place);
                let score = map.score_at(part);
                let lower = best.is_none_or(|(_, least)| score < least);
                if !score.is_nan() && lower && clear.keeps(part) {
                    best = Some((place, score));
                }
            }
        }
        let (place, score) = best?;
        Some(Self {
            crossed: map.valley().any(|part| clear.keeps(part)),
            place,
            score,
        })
    }
}
