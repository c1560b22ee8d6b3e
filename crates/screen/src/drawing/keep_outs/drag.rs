//! A keep-out moved, resized or drawn by a pointer: its edges go to whole steps.

use egui::Pos2;
use trammel_build::{Axis, AxleName, KeepOutCorners, LengthUnit};

use super::{
    super::{Projection, drag::snapped, sheet::Sheet},
    outline::{Corner, Grip, Part},
};

/// A drag under way.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct KeepOutDrag {
    pub index: usize,
    projection: Projection,
    what: What,
    press: Pos2,
    /// Where it was last told to be.
    pub last: Option<KeepOutCorners>,
}

#[derive(Clone, Copy, Debug, PartialEq)]
enum What {
    /// A part of one that stood so.
    Take(Part, KeepOutCorners),
    /// A new one, with its extent along the axis that the view doesn't show; none where it is to count at every place along it.
    Draw(Option<[f64; 2]>),
}

impl KeepOutDrag {
    /// A hand takes a part of a keep-out.
    pub(crate) fn take(grip: Grip, press: Pos2, start: KeepOutCorners) -> Self {
        Self {
            index: grip.index,
            projection: grip.projection,
            what: What::Take(grip.part, start),
            press,
            last: Some(start),
        }
    }

    /// A hand draws a new one in a view, for joints of an axle: in the front axle's front view a rectangle that counts at every x.
    pub(crate) fn draw(
        index: usize,
        projection: Projection,
        press: Pos2,
        axle: AxleName,
        depth: [f64; 2],
    ) -> Self {
        let flat = projection == Projection::Front && axle == AxleName::Front;
        Self {
            index,
            projection,
            what: What::Draw((!flat).then_some(depth)),
            press,
            last: None,
        }
    }

    /// Where it should be with the pointer there, the build's unit; `None` while there is nothing of it yet.
    pub(crate) fn target(
        &self,
        pointer: Pos2,
        sheet: &Sheet,
        unit: LengthUnit,
        snap: f64,
    ) -> Option<KeepOutCorners> {
        let axes = [self.projection.right().0, self.projection.down().0];
        let ends = [self.press, pointer].map(|at| {
            sheet
                .vehicle_from_screen(self.projection, at)
                .map(|mm| unit.from_mm(mm))
        });
        match self.what {
            What::Take(part, start) => {
                let by = [ends[1][0] - ends[0][0], ends[1][1] - ends[0][1]];
                Some(taken(part, start, axes.into_iter().zip(by), snap))
            }
            What::Draw(depth) => self.drawn(axes, ends, depth, snap),
        }
    }

    fn drawn(
        &self,
        axes: [Axis; 2],
        ends: [[f64; 2]; 2],
        depth: Option<[f64; 2]>,
        snap: f64,
    ) -> Option<KeepOutCorners> {
        let [from, to] = ends.map(|end| end.map(|v| on_step(v, snap)));
        if from.iter().zip(to).any(|(a, b)| *a == b) {
            return None;
        }
        let flat = KeepOutCorners::Front([0.0; 2], [0.0; 2]);
        let mut corners = match depth {
            Some(depth) => flat
                .between(depth)
                .with_along(self.projection.towards(), depth),
            None => flat,
        };
        for ((axis, a), b) in axes.into_iter().zip(from).zip(to) {
            corners = corners.with_along(axis, [a, b]);
        }
        Some(corners)
    }
}

fn taken(
    part: Part,
    start: KeepOutCorners,
    moves: impl Iterator<Item = (Axis, f64)>,
    snap: f64,
) -> KeepOutCorners {
    let mut to = start;
    for (n, (axis, by)) in moves.enumerate() {
        let Some([a, b]) = start.along(axis) else {
            continue;
        };
        let extent = match part {
            Part::Whole => shifted([a, b], by, snap),
            Part::Edges { across, down } => match if n == 0 { across } else { down } {
                None => [a, b],
                Some(Corner::First) => [pulled(a, b, by, snap), b],
                Some(Corner::Second) => [a, pulled(b, a, by, snap)],
            },
        };
        to = to.with_along(axis, extent);
    }
    to
}

/// Both ends moved as far as the first one goes to a whole step.
pub(super) fn shifted([a, b]: [f64; 2], by: f64, snap: f64) -> [f64; 2] {
    let to = snapped(a, a + by, snap);
    [to, if to == a { b } else { tidy(b + (to - a)) }]
}

/// One end moved, short of the other.
pub(super) fn pulled(end: f64, other: f64, by: f64, snap: f64) -> f64 {
    let to = snapped(end, end + by, snap);
    let least = if snap > 0.0 { snap } else { 1e-3 };
    if end < other {
        to.min(tidy(other - least)).min(other.max(end))
    } else {
        to.max(tidy(other + least)).max(other.min(end))
    }
}

/// `v` on the nearest whole step.
fn on_step(v: f64, snap: f64) -> f64 {
    // What was hardly moved would stay off the steps; a place that was nowhere before goes to one.
    snapped(f64::INFINITY, v, snap)
}

/// Without what adding leaves behind in the last binary places, far below any step.
fn tidy(v: f64) -> f64 {
    const PART: f64 = 1e9;
    (v * PART).round() / PART
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::drawing::test_scene;
    use egui::vec2;
    use trammel_geometry::Point;

    const START: KeepOutCorners = KeepOutCorners::Box([-4.0, 6.03, 3.0], [-2.0, 4.5, 5.0]);
    const SNAP: f64 = 0.0625;

    fn dragged(part: Part, projection: Projection, inches: [f32; 2]) -> KeepOutCorners {
        let sheet = test_scene::sheet();
        let grip = Grip {
            index: 0,
            projection,
            part,
        };
        let press = sheet.screen(projection, Point::new(-80.0, 130.0, 100.0));
        let inch = sheet.length(25.4);
        let drag = KeepOutDrag::take(grip, press, START);
        let to = press + vec2(inch * inches[0], inch * inches[1]);
        drag.target(to, &sheet, LengthUnit::Inch, SNAP).unwrap()
    }

    #[test]
    fn the_whole_keeps_its_size_and_what_a_view_does_not_show() {
        let to = dragged(Part::Whole, Projection::Front, [1.0, -2.0]);
        // 6.03 + 1 goes to the next sixteenth, 7.0; the other end goes as far.
        assert_eq!(to.along(Axis::Y), Some([7.0, 5.47]));
        assert_eq!(to.along(Axis::Z), Some([5.0, 7.0]));
        assert_eq!(to.along(Axis::X), START.along(Axis::X));
        let to = dragged(Part::Whole, Projection::Side, [1.0, 0.0]);
        assert_eq!(
            to.along(Axis::X),
            Some([-5.0, -3.0]),
            "forward is to the left"
        );
        assert_eq!(to.along(Axis::Z), START.along(Axis::Z));
    }

    #[test]
    fn an_edge_goes_alone_and_stops_a_step_before_the_other() {
        let lower = Part::Edges {
            across: None,
            down: Some(Corner::First),
        };
        let to = dragged(lower, Projection::Front, [9.0, -1.0]);
        assert_eq!(to.along(Axis::Z), Some([4.0, 5.0]));
        assert_eq!(to.along(Axis::Y), START.along(Axis::Y));
        let to = dragged(lower, Projection::Front, [0.0, -30.0]);
        assert_eq!(to.along(Axis::Z), Some([4.9375, 5.0]));
        let outer = Part::Edges {
            across: Some(Corner::First),
            down: None,
        };
        let to = dragged(outer, Projection::Front, [-30.0, 0.0]);
        assert_eq!(to.along(Axis::Y), Some([4.5625, 4.5]));
    }

    #[test]
    fn a_new_one_counts_at_every_x_in_the_front_view_of_the_front_axle_only() {
        let sheet = test_scene::sheet();
        let draw = |projection, axle, by| {
            let press = sheet.screen(projection, Point::new(0.0, 127.0, 127.0));
            let drag = KeepOutDrag::draw(0, projection, press, axle, [-4.0, -2.0]);
            drag.target(press + by, &sheet, LengthUnit::Inch, SNAP)
        };
        let inch = sheet.length(25.4);
        let by = vec2(2.0 * inch, -inch);
        assert_eq!(
            draw(Projection::Front, AxleName::Front, by),
            Some(KeepOutCorners::Front([5.0, 5.0], [7.0, 6.0]))
        );
        assert_eq!(
            draw(Projection::Front, AxleName::Rear, by),
            Some(KeepOutCorners::Box([-4.0, 5.0, 5.0], [-2.0, 7.0, 6.0]))
        );
        assert_eq!(
            draw(Projection::Plan, AxleName::Front, by),
            Some(KeepOutCorners::Box([0.0, 5.0, -4.0], [-1.0, 7.0, -2.0]))
        );
        let flat = vec2(2.0 * inch, 0.0);
        assert_eq!(draw(Projection::Front, AxleName::Front, flat), None);
    }
}
