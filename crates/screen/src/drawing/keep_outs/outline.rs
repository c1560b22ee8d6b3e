//! Where a keep-out stands in a view, and what of it a hand takes.

use egui::{Pos2, Rect};
use trammel_build::{Axis, KeepOutCorners, LengthUnit};
use trammel_geometry::Point;

use super::super::{DrawingInput, Projection, sheet::Sheet};

/// How near an edge a hand takes it, points.
const REACH: f32 = 6.0;

/// One of the two corners that were typed.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Corner {
    First,
    Second,
}

/// What of a keep-out a hand has taken.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Part {
    Whole,
    /// Edges: whose corner's coordinate to the right and down the screen.
    Edges {
        across: Option<Corner>,
        down: Option<Corner>,
    },
}

/// A part of a keep-out in a view.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) struct Grip {
    pub index: usize,
    pub projection: Projection,
    pub part: Part,
}

/// Its two typed corners on the screen. Along an axis where it counts at every place it goes through the whole of `cell`, the view's part of the table.
fn corners(
    keep_out: &KeepOutCorners,
    unit: LengthUnit,
    sheet: &Sheet,
    cell: Rect,
    projection: Projection,
) -> [Pos2; 2] {
    let mut ends = [Point::origin(); 2];
    for axis in Axis::ALL {
        if let Some(extent) = keep_out.along(axis) {
            for (end, v) in ends.iter_mut().zip(extent) {
                end[axis.index()] = unit.mm() * v;
            }
        }
    }
    let [mut a, mut b] = ends.map(|p| sheet.screen(projection, p));
    if keep_out.along(projection.right().0).is_none() {
        (a.x, b.x) = (cell.left(), cell.right());
    }
    if keep_out.along(projection.down().0).is_none() {
        (a.y, b.y) = (cell.top(), cell.bottom());
    }
    [a, b]
}

/// Its rectangle on the screen.
pub(crate) fn outline(
    keep_out: &KeepOutCorners,
    unit: LengthUnit,
    sheet: &Sheet,
    cell: Rect,
    projection: Projection,
) -> Rect {
    let [a, b] = corners(keep_out, unit, sheet, cell, projection);
    Rect::from_two_pos(a, b)
}

/// What a hand at a place takes: the chosen keep-out's part before the others', an edge before the inside.
pub(crate) fn grip(
    input: &DrawingInput<'_>,
    sheet: &Sheet,
    view: (Projection, Rect),
    at: Pos2,
) -> Option<Grip> {
    let all = input.build.keep_outs.iter().enumerate();
    let counting = all.filter(|(_, k)| k.corners.counts_for(input.axle));
    let corners = counting.map(|(index, k)| (index, k.corners));
    topmost(
        corners,
        input.build.unit,
        sheet,
        view,
        input.keep_outs.chosen,
        at,
    )
}

fn topmost(
    all: impl Iterator<Item = (usize, KeepOutCorners)>,
    unit: LengthUnit,
    sheet: &Sheet,
    (projection, cell): (Projection, Rect),
    chosen: Option<usize>,
    at: Pos2,
) -> Option<Grip> {
    if !cell.contains(at) {
        return None;
    }
    let found = all.filter_map(|(index, k)| {
        let ends = corners(&k, unit, sheet, cell, projection);
        part(&k, ends, projection, at).map(|part| Grip {
            index,
            projection,
            part,
        })
    });
    // Of those that lie on one another the later ones are on top.
    found.max_by_key(|g| (Some(g.index) == chosen, g.part != Part::Whole, g.index))
}

fn part(
    keep_out: &KeepOutCorners,
    [a, b]: [Pos2; 2],
    projection: Projection,
    at: Pos2,
) -> Option<Part> {
    let rect = Rect::from_two_pos(a, b);
    if !rect.expand(REACH).contains(at) {
        return None;
    }
    // Of a small one the middle still moves it.
    let reach = |size: f32| REACH.min(0.25 * size);
    let near = |axis, v: f32, first: f32, second: f32| {
        keep_out.along(axis)?;
        let reach = reach((first - second).abs());
        let outside = v < first.min(second) || v > first.max(second);
        let is_near = |end: f32| (v - end).abs() <= if outside { REACH } else { reach };
        match (is_near(first), is_near(second)) {
            (true, _) => Some(Corner::First),
            (_, true) => Some(Corner::Second),
            _ => None,
        }
    };
    let across = near(projection.right().0, at.x, a.x, b.x);
    let down = near(projection.down().0, at.y, a.y, b.y);
    if across.is_none() && down.is_none() {
        return rect.contains(at).then_some(Part::Whole);
    }
    Some(Part::Edges { across, down })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::drawing::test_scene;
    use egui::{pos2, vec2};

    const CELL: Rect = Rect {
        min: pos2(0.0, 0.0),
        max: pos2(1000.0, 800.0),
    };

    fn taken(
        all: &[KeepOutCorners],
        projection: Projection,
        chosen: Option<usize>,
        at: Pos2,
    ) -> Grip {
        let sheet = test_scene::sheet();
        topmost(
            all.iter().copied().enumerate(),
            LengthUnit::Millimetre,
            &sheet,
            (projection, CELL),
            chosen,
            at,
        )
        .unwrap()
    }

    #[test]
    fn edges_and_corners_are_taken_near_them_and_the_whole_inside() {
        let sheet = test_scene::sheet();
        // Typed from the outer upper corner to the inner lower one.
        let all = [KeepOutCorners::Front([300.0, 400.0], [100.0, 200.0])];
        let at = |y: f64, z: f64| sheet.screen(Projection::Front, Point::new(0.0, y, z));
        let part = |at| taken(&all, Projection::Front, None, at).part;
        assert_eq!(part(at(200.0, 300.0)), Part::Whole);
        let inner = Part::Edges {
            across: Some(Corner::Second),
            down: None,
        };
        assert_eq!(part(at(100.0, 300.0) + vec2(3.0, 0.0)), inner);
        let upper_outer = Part::Edges {
            across: Some(Corner::First),
            down: Some(Corner::First),
        };
        assert_eq!(part(at(300.0, 400.0) + vec2(4.0, -4.0)), upper_outer);
    }

    #[test]
    fn one_that_counts_at_every_x_goes_through_the_whole_plan_and_has_no_edge_there() {
        let sheet = test_scene::sheet();
        let corners = KeepOutCorners::Front([300.0, 400.0], [100.0, 200.0]);
        let rect = outline(
            &corners,
            LengthUnit::Millimetre,
            &sheet,
            CELL,
            Projection::Plan,
        );
        assert_eq!((rect.top(), rect.bottom()), (CELL.top(), CELL.bottom()));
        let middle = pos2(rect.center().x, CELL.top() + 1.0);
        let part = taken(&[corners], Projection::Plan, None, middle).part;
        assert_eq!(part, Part::Whole);
    }

    #[test]
    fn the_chosen_one_is_taken_before_one_that_lies_on_it() {
        let corners = KeepOutCorners::Front([300.0, 400.0], [100.0, 200.0]);
        let all = [corners, corners];
        let sheet = test_scene::sheet();
        let at = sheet.screen(Projection::Front, Point::new(0.0, 200.0, 300.0));
        assert_eq!(taken(&all, Projection::Front, None, at).index, 1);
        assert_eq!(taken(&all, Projection::Front, Some(0), at).index, 0);
    }
}
