//! Parts moved apart or made slimmer.
//!
//! A joint that moves changes more than the gap: its words say so, and the toe curve shows it before anything is cut.

use trammel_build::{Edit, PartsEdit, PointName, Side, Triple, WheelParts, defaults};
use trammel_strength::clearance::Pair;

use super::{Offer, Series, Shop, moved};
use crate::words::work_length;

/// Shop steps in a series of moves: 1/16 in or 1.5 mm each, every fourth is tried.
const MOVES: u32 = 16;
const EVERY: usize = 4;
/// Directions of moves of a joint or mount in the vehicle.
const UP_AND_ALONG: [(Triple, &str); 4] = [
    ([0.0, 0.0, 1.0], "higher"),
    ([0.0, 0.0, -1.0], "lower"),
    ([1.0, 0.0, 0.0], "further forward"),
    ([-1.0, 0.0, 0.0], "further back"),
];

impl Shop<'_> {
    pub(super) fn gap(&self, pair: Pair) -> Vec<Series> {
        let mut series = Vec::new();
        match pair {
            Pair::TieRodAndArm(_) => series.extend(self.rod_moved()),
            Pair::TieRodAndTyre | Pair::TieRodAndRim => {
                series.extend(self.wheel_out());
                series.extend(self.narrower_tyre(pair));
                series.push(self.inboard(&[PointName::TieRodOuter], "Outer tie-rod joint"));
                series.extend(self.rod_moved());
            }
            Pair::ArmAndTyre(_) | Pair::ArmAndRim(_) => {
                series.extend(self.wheel_out());
                series.extend(self.narrower_tyre(pair));
            }
            Pair::SpringAndOtherArm | Pair::SpringAndTieRod | Pair::SpringAndTyre => {
                series.extend(self.slimmer_spring());
                let both = [PointName::SpringChassisMount, PointName::SpringArmMount];
                for (way, word) in [UP_AND_ALONG[2], UP_AND_ALONG[3]] {
                    series.push(self.moves(&both, "Spring unit", way, word));
                }
                series.push(self.inboard(&both, "Spring unit"));
                series.push(self.inboard(&both[1..], "Spring's lower end"));
            }
        }
        series
    }

    /// Either joint of the tie rod up, down, forward, back; the rack goes with the inner one.
    fn rod_moved(&self) -> Vec<Series> {
        let outer = UP_AND_ALONG.map(|(way, word)| {
            self.moves(&[PointName::TieRodOuter], "Outer tie-rod joint", way, word)
        });
        let at = self.at(PointName::TieRodInner);
        let inner = UP_AND_ALONG.map(|(way, word)| {
            let Some(now) = self.build.point(at) else {
                return Vec::new();
            };
            let with = |(by, words): (f64, String)| Offer {
                what: format!("Rack and inner joint {words} {word}, which changes toe"),
                edit: Edit::MoveRack {
                    point: at,
                    to: moved(now, way, by),
                },
            };
            self.some_steps().map(with).collect()
        });
        outer.into_iter().chain(inner).collect()
    }

    fn some_steps(&self) -> impl Iterator<Item = (f64, String)> + use<> {
        self.every(EVERY, MOVES)
    }

    /// Points moved together in one direction.
    pub(super) fn moves(
        &self,
        points: &[PointName],
        what: &str,
        way: Triple,
        word: &str,
    ) -> Series {
        let places = points.iter().map(|point| {
            let at = self.at(*point);
            self.build.point(at).map(|now| (at, now))
        });
        let Some(places) = places.collect::<Option<Vec<_>>>() else {
            return Vec::new();
        };
        let toe = if points.contains(&PointName::TieRodOuter) {
            ", which changes toe"
        } else {
            ""
        };
        let offer = |(by, words): (f64, String)| {
            let to = |(at, now): &(_, Triple)| (*at, moved(*now, way, by));
            Offer {
                what: format!("{what} {words} {word}{toe}"),
                edit: Edit::MovePoints(places.iter().map(to).collect()),
            }
        };
        self.some_steps().map(offer).collect()
    }

    fn inboard(&self, points: &[PointName], what: &str) -> Series {
        self.moves(
            points,
            what,
            [0.0, -self.outboard(), 0.0],
            "further inboard",
        )
    }

    pub(super) fn outboard(&self) -> f64 {
        match self.side {
            Side::Left => 1.0,
            Side::Right => -1.0,
        }
    }

    /// A wheel with less inset, or spacers behind it.
    fn wheel_out(&self) -> Option<Series> {
        let out = [0.0, self.outboard(), 0.0];
        let wheel = &[PointName::WheelCentre];
        Some(self.moves(
            wheel,
            "Wheel",
            out,
            "further out on its hub, with more scrub radius",
        ))
    }

    fn narrower_tyre(&self, pair: Pair) -> Option<Series> {
        if !matches!(pair, Pair::TieRodAndTyre | Pair::ArmAndTyre(_)) {
            return None;
        }
        let parts = &self.build.axle_spec(self.axle)?.parts;
        let (unit, mm) = (self.unit(), self.unit().mm());
        let now = parts
            .wheel
            .tyre_width
            .unwrap_or_else(|| unit.from_mm(defaults::TYRE_WIDTH_MM));
        let words = |v: f64| work_length(v * mm, unit);
        let steps = self.some_steps().filter(|(by, _)| 2.0 * by < now);
        let offer = |(by, _): (f64, String)| Offer {
            what: format!("A tyre {} wide instead of {}", words(now - by), words(now)),
            edit: Edit::Parts(PartsEdit::Wheel(
                self.axle,
                WheelParts {
                    tyre_width: Some(now - by),
                    ..parts.wheel
                },
            )),
        };
        Some(steps.map(offer).collect())
    }

    fn slimmer_spring(&self) -> Option<Series> {
        let parts = &self.build.axle_spec(self.axle)?.parts;
        let (unit, mm) = (self.unit(), self.unit().mm());
        let now = parts
            .spring_diameter
            .unwrap_or_else(|| unit.from_mm(defaults::SPRING_DIAMETER_MM));
        let words = |v: f64| work_length(v * mm, unit);
        let steps = self.some_steps().filter(|(by, _)| 2.0 * by < now);
        let offer = |(by, _): (f64, String)| Offer {
            what: format!(
                "A spring unit {} across instead of {}",
                words(now - by),
                words(now)
            ),
            edit: Edit::Parts(PartsEdit::SpringDiameter(self.axle, Some(now - by))),
        };
        Some(steps.map(offer).collect())
    }
}
