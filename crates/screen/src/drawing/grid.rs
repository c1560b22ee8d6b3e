//! What the linkage stands on: the scribed grid, centre lines, axle line and ground.

use egui::{Rect, Stroke, pos2, vec2};
use trammel_build::{Axis, LengthUnit};
use trammel_geometry::Point;

use super::{
    Projection, layout,
    pen::{CHAIN, Pen},
    scene::{Joints, Scene},
    sheet::Sheet,
    wheel,
};
use crate::tokens::{Tokens, weight};

/// Closest that two lines of the grid may come, points.
const CLOSEST: f64 = 11.0;

/// How far the hatched ground and centre lines reach past a tyre, in its radii.
const HATCHED: f64 = 0.16;

/// Fine and bold steps of the grid, in the unit.
fn steps(unit: LengthUnit) -> &'static [(f64, f64)] {
    match unit {
        LengthUnit::Inch => &[
            (0.0625, 0.25),
            (0.125, 0.5),
            (0.25, 1.0),
            (0.5, 2.0),
            (1.0, 6.0),
            (2.0, 12.0),
            (6.0, 24.0),
            (12.0, 48.0),
        ],
        LengthUnit::Millimetre => &[
            (1.0, 5.0),
            (2.0, 10.0),
            (5.0, 25.0),
            (10.0, 50.0),
            (25.0, 100.0),
            (50.0, 250.0),
            (100.0, 500.0),
            (250.0, 1000.0),
        ],
    }
}

/// Lines at round vehicle coordinates in every view.
pub(crate) fn grid(
    pen: &mut Pen,
    sheet: &Sheet,
    rect: Rect,
    fill: Option<Projection>,
    unit: LengthUnit,
    tokens: &Tokens,
) {
    let fits = |&&(fine, _): &&(f64, f64)| sheet.scale * fine * unit.mm() >= CLOSEST;
    let Some(&(fine, bold)) = steps(unit).iter().find(fits) else {
        return;
    };
    let fine_line = Stroke::new(weight::HAIR, tokens.grid);
    let bold_line = Stroke::new(weight::HAIR, tokens.grid_bold);
    let per_bold = (bold / fine).round();
    for projection in layout::shown(fill) {
        let cell = layout::cell(sheet, rect, fill, projection);
        if cell.is_negative() {
            continue;
        }
        let reach = Reach::of(projection, cell, rect, fill);
        let near = sheet.vehicle_from_screen(projection, cell.min);
        let far = sheet.vehicle_from_screen(projection, cell.max);
        for (i, (axis, _)) in [projection.right(), projection.down()]
            .into_iter()
            .enumerate()
        {
            let (low, high) = (near[i].min(far[i]), near[i].max(far[i]));
            let step = fine * unit.mm();
            let mut n = (low / step).ceil();
            while n * step <= high {
                let stroke = if n % per_bold == 0.0 {
                    bold_line
                } else {
                    fine_line
                };
                grid_line(pen, sheet, projection, &reach, axis, n * step, stroke);
                n += 1.0;
            }
        }
    }
}

/// How far the lines of a view run. The quarter above the side view and beside the plan belongs to neither: lines of both carry on through it.
struct Reach {
    upright: [f32; 2],
    level: [f32; 2],
}

impl Reach {
    fn of(projection: Projection, cell: Rect, rect: Rect, fill: Option<Projection>) -> Self {
        let (mut upright, mut level) = ([cell.top(), cell.bottom()], [cell.left(), cell.right()]);
        if fill.is_none() {
            match projection {
                Projection::Side => upright[0] = rect.top(),
                Projection::Plan => level[1] = rect.right(),
                Projection::Front => {}
            }
        }
        Self { upright, level }
    }
}

fn grid_line(
    pen: &mut Pen,
    sheet: &Sheet,
    projection: Projection,
    reach: &Reach,
    axis: Axis,
    at: f64,
    stroke: Stroke,
) {
    let mut p = Point::origin();
    p[axis.index()] = at;
    let place = sheet.screen(projection, p);
    let ends = if axis == projection.right().0 {
        reach.upright.map(|y| pos2(place.x, y))
    } else {
        reach.level.map(|x| pos2(x, place.y))
    };
    pen.crisp(ends[0], ends[1], stroke);
}

/// Centre plane, axle and ground.
pub(crate) fn datums(
    pen: &mut Pen,
    sheet: &Sheet,
    fill: Option<Projection>,
    scene: &Scene,
    tokens: &Tokens,
) {
    let wheels: Vec<&Joints> = scene.rest.iter().flatten().collect();
    for projection in layout::shown(fill) {
        let mut datums = Datums {
            pen,
            sheet,
            projection,
            tokens,
        };
        match (projection, wheels.first()) {
            (_, None) => {}
            (Projection::Front, Some(first)) => datums.front(&wheels, first),
            (Projection::Plan, Some(first)) => datums.plan(&wheels, first),
            (Projection::Side, Some(first)) => datums.side(first),
        }
    }
}

struct Datums<'a> {
    pen: &'a mut Pen,
    sheet: &'a Sheet,
    projection: Projection,
    tokens: &'a Tokens,
}

/// How far from the centre plane lines across the axle reach, mm.
fn half_span(wheels: &[&Joints], radius: f64) -> f64 {
    let half_track = wheels.iter().map(|w| w.centre.y.abs()).fold(0.0, f64::max);
    half_track + 0.5 * wheel::width(radius) + HATCHED * radius
}

impl Datums<'_> {
    fn front(&mut self, wheels: &[&Joints], first: &Joints) {
        let (r, x) = (first.radius, first.centre.x);
        let tops = wheels.iter().map(|w| w.centre.z + w.radius);
        let (high, over) = (tops.fold(0.0, f64::max), HATCHED * r);
        self.chain(Point::new(x, 0.0, high + over), Point::new(x, 0.0, -over));
        for w in wheels {
            let reach = w.spin * (0.5 * wheel::width(r) + over);
            self.chain(w.centre - reach, w.centre + reach);
            self.hatching(w);
        }
        let across = half_span(wheels, r);
        self.ground([-across, across].map(|y| Point::new(x, y, 0.0)));
    }

    fn plan(&mut self, wheels: &[&Joints], first: &Joints) {
        let (x, along) = (first.centre.x, (1.0 + HATCHED) * first.radius);
        let across = half_span(wheels, first.radius);
        self.chain(
            Point::new(x - along, 0.0, 0.0),
            Point::new(x + along, 0.0, 0.0),
        );
        self.chain(Point::new(x, -across, 0.0), Point::new(x, across, 0.0));
    }

    fn side(&mut self, wheel: &Joints) {
        let (c, over) = (wheel.centre, (1.0 + HATCHED) * wheel.radius);
        self.chain(
            Point::new(c.x - over, c.y, c.z),
            Point::new(c.x + over, c.y, c.z),
        );
        self.chain(
            Point::new(c.x, c.y, c.z - over),
            Point::new(c.x, c.y, c.z + over),
        );
        self.hatching(wheel);
        self.ground([-over, over].map(|d| Point::new(c.x + d, c.y, 0.0)));
    }

    fn chain(&mut self, a: Point, b: Point) {
        let [a, b] = [a, b].map(|p| self.sheet.screen(self.projection, p));
        let stroke = Stroke::new(weight::HAIR, self.tokens.ink_faint);
        self.pen.crisp_pattern(a, b, stroke, CHAIN);
    }

    fn ground(&mut self, ends: [Point; 2]) {
        let [a, b] = ends.map(|p| self.sheet.screen(self.projection, p));
        let stroke = Stroke::new(weight::NARROW, self.tokens.ink_soft);
        self.pen.crisp(a, b, stroke);
    }

    /// Hatching of the ground under one wheel.
    fn hatching(&mut self, wheel: &Joints) {
        const APART: f32 = 7.0;
        let under = Point::new(wheel.centre.x, wheel.centre.y, 0.0);
        let at = self.sheet.screen(self.projection, under);
        let reach = HATCHED * wheel.radius + 0.5 * wheel::width(wheel.radius);
        let depth = self.sheet.length(0.05 * wheel.radius).clamp(4.0, 8.0);
        let stroke = Stroke::new(weight::HAIR, self.tokens.ink_faint);
        let strokes = (self.sheet.length(reach) / APART).floor().clamp(0.0, 200.0) as i16;
        for n in -strokes..=strokes {
            let from = at + vec2(f32::from(n) * APART + depth * 0.5, 0.0);
            self.pen.line(from, from + vec2(-depth, depth), stroke);
        }
    }
}
