//! A point being dragged: two coordinates follow the pointer, snapped; the third and whatever is locked stay.

use egui::{Pos2, Vec2};
use trammel_build::{Axis, Build, Coordinate, PointRef, Triple};

use super::{Projection, sheet::Sheet};

/// A drag under way.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct PointDrag {
    pub point: PointRef,
    projection: Projection,
    /// From the pointer to the point, as it was when the button went down, screen points.
    grab: Vec2,
    /// Where the point was, the build's unit.
    start: Triple,
    /// Where it was last told to be.
    pub last: Triple,
}

impl PointDrag {
    /// A drag of a point that is at `start`, shown at `at`, by a pointer that went down at `press`.
    pub(crate) fn new(
        point: PointRef,
        projection: Projection,
        at: Pos2,
        press: Pos2,
        start: Triple,
    ) -> Self {
        Self {
            point,
            projection,
            grab: at - press,
            start,
            last: start,
        }
    }

    /// Where the point should be with the pointer at `pointer`, the build's unit.
    pub(crate) fn target(&self, pointer: Pos2, sheet: &Sheet, build: &Build, snap: f64) -> Triple {
        let place = sheet.vehicle_from_screen(self.projection, pointer + self.grab);
        let mut to = self.start;
        let axes = [self.projection.right().0, self.projection.down().0];
        for (axis, mm) in axes.into_iter().zip(place) {
            if !locked(build, self.point, axis) {
                let i = axis.index();
                to[i] = snapped(self.start[i], build.unit.from_mm(mm), snap);
            }
        }
        to
    }
}

/// Whether a coordinate of a point must not be moved by hand.
pub(crate) fn locked(build: &Build, point: PointRef, axis: Axis) -> bool {
    build.locked.contains(&Coordinate {
        axle: point.axle,
        point: point.point,
        axis,
    })
}

/// `wanted` on the nearest multiple of `step`. A coordinate that was hardly moved stays exactly where it was, so that a drag along one axis
/// leaves the other alone even where it lies off the grid.
pub(crate) fn snapped(start: f64, wanted: f64, step: f64) -> f64 {
    if !wanted.is_finite() {
        return start;
    }
    if step <= 0.0 || !step.is_finite() {
        return wanted;
    }
    if (wanted - start).abs() < 0.5 * step {
        return start;
    }
    let steps = (wanted / step).round();
    // 0.1 has no exact binary form, but 3 / 10 gives the number that a typed 0.3 gives.
    let per_unit = (1.0 / step).round();
    let on_grid = if (step * per_unit - 1.0).abs() < 1e-12 {
        steps / per_unit
    } else {
        steps * step
    };
    // Minus nought would show in a file.
    if on_grid == 0.0 { 0.0 } else { on_grid }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::drawing::test_scene;
    use egui::{pos2, vec2};
    use trammel_build::{AxleName, PointName};

    #[test]
    fn snapping_goes_to_round_places_and_not_by_round_steps() {
        assert_eq!(snapped(8.9, 9.04, 0.0625), 9.0625);
        assert_eq!(snapped(8.9, 9.02, 0.0625), 9.0);
        assert_eq!(snapped(0.31, 0.33, 0.0625), 0.31);
        assert_eq!(snapped(0.0, 0.29, 0.1), 0.3);
        assert_eq!(snapped(3.0, 222.4, 1.0), 222.0);
        assert!(snapped(1.0, -0.2, 1.0).is_sign_positive());
        assert_eq!(snapped(1.0, 1.23456, 0.0), 1.23456);
        assert_eq!(snapped(1.0, f64::NAN, 0.5), 1.0);
    }

    #[test]
    fn a_drag_moves_by_the_pointer_and_keeps_the_offset_of_the_press() {
        let (build, sheet) = (test_scene::build(), test_scene::sheet());
        let point = PointRef::left(AxleName::Front, PointName::TieRodInner);
        let start = build.point(point).unwrap();
        let at = sheet.screen(Projection::Front, build.point_mm(point).unwrap());
        // Pressed 4 points off the middle, moved 2 in outboard and 1 in down.
        let press = at + vec2(4.0, -3.0);
        let drag = PointDrag::new(point, Projection::Front, at, press, start);
        let inch = sheet.length(25.4);
        let to = drag.target(press + vec2(2.0 * inch, inch), &sheet, &build, 0.0);
        assert_eq!(to[0], start[0]);
        assert!((to[1] - start[1] - 2.0).abs() < 1e-4, "{to:?}");
        assert!((to[2] - start[2] + 1.0).abs() < 1e-4, "{to:?}");
        assert_eq!(drag.target(press, &sheet, &build, 0.0625), start);
    }

    #[test]
    fn each_view_moves_its_own_two_coordinates() {
        let (build, sheet) = (test_scene::build(), test_scene::sheet());
        let point = PointRef::left(AxleName::Front, PointName::LowerBallJoint);
        let start = build.point(point).unwrap();
        for (projection, held) in [
            (Projection::Front, 0),
            (Projection::Plan, 2),
            (Projection::Side, 1),
        ] {
            let at = sheet.screen(projection, build.point_mm(point).unwrap());
            let drag = PointDrag::new(point, projection, at, at, start);
            let to = drag.target(at + vec2(40.0, 40.0), &sheet, &build, 0.0625);
            for i in 0..3 {
                assert_eq!(to[i] == start[i], i == held, "{projection:?} {i}");
            }
        }
    }

    #[test]
    fn a_locked_coordinate_stays() {
        let (mut build, sheet) = (test_scene::build(), test_scene::sheet());
        let point = PointRef::left(AxleName::Front, PointName::TieRodInner);
        build.locked.insert(Coordinate {
            axle: AxleName::Front,
            point: PointName::TieRodInner,
            axis: Axis::Z,
        });
        let start = build.point(point).unwrap();
        let at = pos2(100.0, 100.0);
        let drag = PointDrag::new(point, Projection::Front, at, at, start);
        let to = drag.target(pos2(300.0, 300.0), &sheet, &build, 0.0625);
        assert_ne!(to[1], start[1]);
        assert_eq!(to[2], start[2]);
    }
}
