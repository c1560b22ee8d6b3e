//! The sheet: where a point in vehicle axes lies on the screen, and back.
//!
//! All views share one sheet in millimetres, `u` to the right and `v` down, nought at the front view's origin. The plan lies straight above the
//! front view and the side view straight beside it, so a point keeps its `u` from front to plan and its `v` from front to side.

use egui::{Pos2, pos2};
use trammel_geometry::Point;

use super::Projection;

/// From vehicle axes to screen points.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Sheet {
    /// Screen points in a millimetre; positive.
    pub scale: f64,
    /// Screen place of the sheet's origin, points.
    pub origin: [f64; 2],
    /// `v` of the plan's x = 0, mm; negative, since the plan is above.
    pub plan_down: f64,
    /// `u` of the side view's x = 0, mm.
    pub side_right: f64,
    /// `u` of the border between front and side view, mm.
    pub column: f64,
    /// `v` of the border between plan and front view, mm.
    pub row: f64,
}

impl Sheet {
    /// A projection's own origin on the sheet, mm.
    fn offset(&self, projection: Projection) -> [f64; 2] {
        match projection {
            Projection::Front => [0.0, 0.0],
            Projection::Plan => [0.0, self.plan_down],
            Projection::Side => [self.side_right, 0.0],
        }
    }

    /// Place on the sheet, mm.
    pub(crate) fn sheet_from_vehicle(&self, projection: Projection, p: Point) -> [f64; 2] {
        let [u, v] = self.offset(projection);
        let (right, r) = projection.right();
        let (down, d) = projection.down();
        [u + r * p[right.index()], v + d * p[down.index()]]
    }

    /// Place on the screen of a place on the sheet.
    pub(crate) fn screen_from_sheet(&self, [u, v]: [f64; 2]) -> Pos2 {
        let [x, y] = self.origin;
        pos2((x + self.scale * u) as f32, (y + self.scale * v) as f32)
    }

    /// Place on the screen.
    pub(crate) fn screen(&self, projection: Projection, p: Point) -> Pos2 {
        self.screen_from_sheet(self.sheet_from_vehicle(projection, p))
    }

    /// The two vehicle coordinates, mm, under a place on the screen: along [`Projection::right`] and [`Projection::down`].
    pub(crate) fn vehicle_from_screen(&self, projection: Projection, at: Pos2) -> [f64; 2] {
        let [u, v] = self.offset(projection);
        let [x, y] = self.origin;
        let (_, r) = projection.right();
        let (_, d) = projection.down();
        [
            r * ((f64::from(at.x) - x) / self.scale - u),
            d * ((f64::from(at.y) - y) / self.scale - v),
        ]
    }

    /// A length in mm on the screen, points.
    pub(crate) fn length(&self, mm: f64) -> f32 {
        (self.scale * mm) as f32
    }

    /// How large symbols are drawn: they grow with the drawing, but far less.
    pub(crate) fn symbol_size(&self) -> f32 {
        const USUAL_SCALE: f64 = 0.4;
        ((self.scale / USUAL_SCALE).powf(0.4) as f32).clamp(0.75, 1.6)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::drawing::Projection::{Front, Plan, Side};

    fn sheet() -> Sheet {
        Sheet {
            scale: 0.37,
            origin: [311.0, 602.5],
            plan_down: -800.0,
            side_right: 1100.0,
            column: 800.0,
            row: -600.0,
        }
    }

    const P: [f64; 3] = [-95.25, 226.0, 222.25];

    fn at(x: f64, y: f64, z: f64) -> Point {
        Point::new(x, y, z)
    }

    #[test]
    fn a_point_lines_up_between_views() {
        let s = sheet();
        let p = at(P[0], P[1], P[2]);
        assert_eq!(s.screen(Front, p).x, s.screen(Plan, p).x);
        assert_eq!(s.screen(Front, p).y, s.screen(Side, p).y);
    }

    #[test]
    fn third_angle_puts_forward_next_to_the_front_view_and_left_on_the_right() {
        let s = sheet();
        let origin = at(0.0, 0.0, 0.0);
        let (forward, left, up) = (at(10.0, 0.0, 0.0), at(0.0, 10.0, 0.0), at(0.0, 0.0, 10.0));
        assert!(s.screen(Front, left).x > s.screen(Front, origin).x);
        assert!(s.screen(Front, up).y < s.screen(Front, origin).y);
        assert!(s.screen(Plan, left).x > s.screen(Plan, origin).x);
        assert!(s.screen(Plan, forward).y > s.screen(Plan, origin).y);
        assert!(s.screen(Side, forward).x < s.screen(Side, origin).x);
        assert!(s.screen(Side, up).y < s.screen(Side, origin).y);
        assert!(s.screen(Plan, origin).y < s.screen(Front, origin).y);
        assert!(s.screen(Side, origin).x > s.screen(Front, origin).x);
    }

    #[test]
    fn every_view_has_the_same_scale() {
        let s = sheet();
        let (a, b) = (at(0.0, 0.0, 0.0), at(100.0, 100.0, 100.0));
        for projection in Projection::ALL {
            let moved = s.screen(projection, b) - s.screen(projection, a);
            assert!(
                (moved.x.abs() - 37.0).abs() < 1e-3,
                "{projection:?} {moved}"
            );
            assert!(
                (moved.y.abs() - 37.0).abs() < 1e-3,
                "{projection:?} {moved}"
            );
        }
    }

    #[test]
    fn the_way_back_finds_both_coordinates() {
        let s = sheet();
        let p = at(P[0], P[1], P[2]);
        for projection in Projection::ALL {
            let [a, b] = s.vehicle_from_screen(projection, s.screen(projection, p));
            let (right, down) = (projection.right().0, projection.down().0);
            // A screen place is a single-precision number of a few hundred points: 3e-5 points, 1e-4 mm.
            assert!((a - P[right.index()]).abs() < 2e-4, "{projection:?} {a}");
            assert!((b - P[down.index()]).abs() < 2e-4, "{projection:?} {b}");
        }
    }

    #[test]
    fn plan_and_side_meet_on_one_mitre_line() {
        let s = sheet();
        let sum = |p: Point| s.sheet_from_vehicle(Side, p)[0] + s.sheet_from_vehicle(Plan, p)[1];
        assert_eq!(sum(at(0.0, 5.0, 9.0)), sum(at(-120.0, 50.0, 0.0)));
    }
}
