//! Edits that remedies make: the rack moved, the stops set.

use trammel_build::{Axis, AxleName, Edit, PointName, PointRef, RackSpec, TravelSpec, Triple};
use trammel_geometry::Vector;

use super::Case;

impl Case<'_> {
    /// The inner joint moved by `by` mm in this side's left-hand frame, the rack with it. `None` where a coordinate that would move is
    /// locked.
    pub(super) fn move_inner_joint(&self, by: Vector) -> Option<Edit> {
        let (point, to) = self.moved(PointName::TieRodInner, by)?;
        Some(match self.name() {
            AxleName::Front => Edit::MoveRack { point, to },
            AxleName::Rear => Edit::MovePoint { point, to },
        })
    }

    /// Where a point of this side would be, moved by `by` mm in the left-hand frame; `None` where a lock forbids it.
    pub(super) fn moved(&self, point: PointName, by: Vector) -> Option<(PointRef, Triple)> {
        let at = self.point(point);
        let mut to = self.build.point(at)?;
        let outboard = self.view.outboard(1.0);
        let by = [by.x, by.y * outboard, by.z];
        for axis in Axis::ALL {
            let i = axis.index();
            let (Some(to), Some(by)) = (to.get_mut(i), by.get(i)) else {
                continue;
            };
            if *by != 0.0 {
                if self.is_locked(point, axis) {
                    return None;
                }
                *to = tidy(*to + self.unit().from_mm(*by));
            }
        }
        Some((at, to))
    }

    /// Stops at these travels, mm, neither wider than now.
    pub(super) fn stops_at(&self, droop: f64, bump: f64) -> Option<Edit> {
        let range = self.view.travel;
        let (droop, bump) = (droop.max(range.droop), bump.min(range.bump));
        let travel = TravelSpec {
            bump: tidy(self.unit().from_mm(bump)),
            droop: tidy(self.unit().from_mm(-droop)),
        };
        let usable = travel.bump > 0.0 && travel.droop > 0.0;
        usable.then_some(Edit::SetTravel(self.name(), Some(travel)))
    }

    /// Rack travel each way, mm.
    pub(super) fn rack_travel_of(&self, travel: f64) -> Option<Edit> {
        let rack = RackSpec {
            travel: Some(tidy(self.unit().from_mm(travel))),
            ..self.build.front.rack
        };
        (travel > 0.0).then_some(Edit::SetRack(rack))
    }
}

/// Without float dust, far below anything a shop can measure.
pub(super) fn tidy(value: f64) -> f64 {
    (value * 1e7).round() / 1e7
}
