//! The steering changed: wheel, pinion, stops, steering arm.

use trammel_build::{Edit, PartsEdit, PointName, RackSpec, SteeringSpec, defaults};
use trammel_strength::check::Check;

use super::{Offer, Series, Shop};
use crate::words::work_length;

/// Smallest part of the rack's travel a turn that is offered, and of the lock that a stop may leave.
const LEAST_PART: f64 = 0.5;

impl Shop<'_> {
    pub(super) fn steering(&self, check: Check) -> Vec<Series> {
        let mut series = Vec::new();
        match check {
            Check::HandForce => series.extend([self.larger_wheel(), self.slower_pinion()]),
            Check::KickBack => {
                series.extend([self.larger_wheel(), self.slower_pinion()]);
                let inward = [0.0, -self.outboard(), 0.0];
                let wheel = &[PointName::WheelCentre];
                series.push(self.moves(
                    wheel,
                    "Wheel",
                    inward,
                    "further in on its hub, with less scrub radius",
                ));
            }
            Check::OverCentre => {
                series.push(self.earlier_stop());
                let outer = &[PointName::TieRodOuter];
                for (x, word) in [(1.0, "further forward"), (-1.0, "further back")] {
                    let way = [x, 0.0, 0.0];
                    series.push(self.moves(outer, "Outer tie-rod joint", way, word));
                }
            }
            Check::StopMargin => series.push(self.earlier_stop()),
            _ => {}
        }
        series
    }

    fn set_steering(steering: SteeringSpec) -> Edit {
        Edit::Parts(PartsEdit::Steering(steering))
    }

    fn larger_wheel(&self) -> Series {
        let (spec, unit) = (&self.build.steering, self.unit());
        let now = spec
            .wheel_diameter
            .unwrap_or_else(|| unit.from_mm(defaults::STEERING_WHEEL_DIAMETER_MM));
        let words = |v: f64| work_length(v * unit.mm(), unit);
        let steps = self.every(16, 64);
        let offer = |(by, _): (f64, String)| Offer {
            what: format!(
                "A steering wheel {} across instead of {}",
                words(now + by),
                words(now)
            ),
            edit: Self::set_steering(SteeringSpec {
                wheel_diameter: Some(now + by),
                ..*spec
            }),
        };
        steps.map(offer).collect()
    }

    fn slower_pinion(&self) -> Series {
        let (rack, unit) = (&self.build.front.rack, self.unit());
        let now = rack
            .travel_per_turn
            .unwrap_or_else(|| unit.from_mm(defaults::RACK_TRAVEL_PER_TURN_MM));
        let words = |v: f64| work_length(v * unit.mm(), unit);
        let offer = |(by, _): (f64, String)| Offer {
            what: format!(
                "A pinion with {} of rack travel a turn instead of {}",
                words(now - by),
                words(now)
            ),
            edit: Edit::SetRack(RackSpec {
                travel_per_turn: Some(now - by),
                ..*rack
            }),
        };
        let steps = self.every(4, 64);
        steps
            .filter(|step| leaves_enough(now, step))
            .map(offer)
            .collect()
    }

    /// Positive stops that hold the steering before the rack's own ends.
    fn earlier_stop(&self) -> Series {
        let Ok(model) = self.build.axle(self.axle) else {
            return Vec::new();
        };
        let (spec, unit) = (&self.build.steering, self.unit());
        let own = unit.from_mm(model.lock());
        let now = spec.stop.map_or(own, |stop| stop.min(own));
        let words = |v: f64| work_length(v * unit.mm(), unit);
        let offer = |(by, _): (f64, String)| Offer {
            what: format!(
                "Positive stops at {} of rack travel instead of {}, with less lock",
                words(now - by),
                words(now)
            ),
            edit: Self::set_steering(SteeringSpec {
                stop: Some(now - by),
                ..*spec
            }),
        };
        let steps = self.steps(64);
        steps
            .filter(|step| leaves_enough(now, step))
            .map(offer)
            .collect()
    }
}

/// Whether a step leaves enough of what it takes from.
fn leaves_enough(now: f64, (by, _): &(f64, String)) -> bool {
    now - by >= LEAST_PART * now
}
