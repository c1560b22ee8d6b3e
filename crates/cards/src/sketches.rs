//! Sketches of the parts to measure, not to scale: where each figure of the sheet is taken. The names are those of the tables and of the form.

use trammel_build::measuring_guide::{JOINT, Measure, RACK, SPINDLE, SPRING};
use trammel_drawings::model::{Anchor, Axis, Dimension, Drawing, Layer, Line, Shape, Text};
use trammel_fabrication::plane::{Point, Vector};

/// Radius of a ball or an eye on the sketches, mm.
const BALL: f64 = 2.5;

/// All sketches, one below the other.
#[must_use]
pub fn drawing() -> Drawing {
    let mut sketch = Sketch {
        drawing: Drawing::new("Where each figure is taken"),
        origin: Vector::zeros(),
    };
    sketch.at(34.0, 0.0).spindle_from_the_front();
    sketch.at(130.0, 0.0).spindle_from_outside();
    sketch.at(75.0, -44.0).rack();
    sketch.at(36.0, -88.0).spring();
    sketch.at(120.0, -88.0).joint();
    sketch.drawing
}

struct Sketch {
    drawing: Drawing,
    origin: Vector,
}

impl Sketch {
    fn at(&mut self, x: f64, y: f64) -> &mut Self {
        self.origin = Vector::new(x, y);
        self
    }

    fn point(&self, x: f64, y: f64) -> Point {
        Point::new(x, y) + self.origin
    }

    fn title(&mut self, x: f64, y: f64, title: &str) {
        let at = self.point(x, y);
        let text = Text::new(at.x, at.y, 2.5, title).anchored(Anchor::Middle);
        self.drawing.letter(text.bold());
    }

    fn line(&mut self, line: Line, from: [f64; 2], to: [f64; 2]) {
        let [from, to] = [from, to].map(|[x, y]| self.point(x, y));
        self.drawing.stroke(line, from, to);
    }

    fn path(&mut self, points: &[[f64; 2]]) {
        let points = points.iter().map(|[x, y]| self.point(*x, *y)).collect();
        self.drawing
            .add(Layer::Sheet, Line::WIDE, Shape::Polyline(points));
    }

    fn ball(&mut self, x: f64, y: f64, radius: f64) {
        let centre = self.point(x, y);
        let shape = Shape::Circle { centre, radius };
        self.drawing.add(Layer::Sheet, Line::WIDE, shape);
    }

    fn measure(&mut self, axis: Axis, from: [f64; 2], to: [f64; 2], line_at: f64, of: &Measure) {
        let [from, to] = [from, to].map(|[x, y]| self.point(x, y));
        let line_at = match axis {
            Axis::X => line_at + self.origin.y,
            Axis::Y => line_at + self.origin.x,
        };
        let text = of.what.to_owned();
        let dimension = Dimension::Linear {
            from,
            to,
            axis,
            line_at,
            text,
        };
        self.drawing
            .add(Layer::Sheet, Line::NARROW, Shape::Dimension(dimension));
    }

    fn note(&mut self, tip: [f64; 2], knee: [f64; 2], text: &str) {
        let [tip, knee] = [tip, knee].map(|[x, y]| self.point(x, y));
        let text = text.to_owned();
        let dimension = Dimension::Leader { tip, knee, text };
        self.drawing
            .add(Layer::Sheet, Line::NARROW, Shape::Dimension(dimension));
    }

    /// The steering axis upright, the wheel's plane leaning: the figures run along the axis.
    fn spindle_from_the_front(&mut self) {
        let [spacing, inclination, height, out, ..] = &SPINDLE;
        self.title(8.0, 64.0, "Spindle, from the front");
        self.line(Line::CENTRE, [0.0, -6.0], [0.0, 58.0]);
        self.ball(0.0, 0.0, BALL);
        self.ball(0.0, 50.0, BALL);
        let (sin, cos) = 10_f64.to_radians().sin_cos();
        let crossing = [0.0, 22.0];
        let wheel = [34.0 * cos, 22.0 - 34.0 * sin];
        self.path(&[[0.0, BALL], crossing, [0.0, 50.0 - BALL]]);
        self.path(&[crossing, wheel]);
        let along = |d: f64| [wheel[0] + d * sin, wheel[1] + d * cos];
        self.line(Line::CENTRE, along(-22.0), along(30.0));
        self.measure(Axis::Y, [0.0, 0.0], [0.0, 50.0], -26.0, spacing);
        self.measure(Axis::Y, [0.0, 0.0], crossing, -14.0, height);
        self.note([30.0 * cos, 22.0 - 30.0 * sin], [28.0, 8.0], out.what);
        self.note(along(20.0), [wheel[0] + 10.0, 48.0], inclination.what);
    }

    /// Looking inboard, the steering arm behind the axis; outboard is towards the eye.
    fn spindle_from_outside(&mut self) {
        let [.., length, height, outboard] = &SPINDLE;
        self.title(-8.0, 64.0, "Spindle, from outside");
        self.line(Line::CENTRE, [0.0, -6.0], [0.0, 58.0]);
        self.ball(0.0, 0.0, BALL);
        self.ball(0.0, 50.0, BALL);
        let hole = [-26.0, 14.0];
        self.path(&[[0.0, BALL], [0.0, 50.0 - BALL]]);
        self.path(&[[0.0, 8.0], [hole[0] + BALL, hole[1]]]);
        self.ball(hole[0], hole[1], BALL);
        self.measure(Axis::X, hole, [0.0, 8.0], -12.0, length);
        self.measure(Axis::Y, [0.0, 0.0], hole, 12.0, height);
        self.note(hole, [-30.0, 28.0], outboard.what);
    }

    fn rack(&mut self) {
        let [joints, travel, _, teeth] = &RACK;
        self.title(0.0, 14.0, "Rack, at its centre");
        let joint = 62.0;
        for side in [-1.0, 1.0] {
            self.ball(side * joint, 0.0, BALL);
            self.path(&[[side * (joint - BALL), 0.0], [side * 34.0, 0.0]]);
        }
        self.path(&[
            [-34.0, -4.0],
            [34.0, -4.0],
            [34.0, 4.0],
            [-34.0, 4.0],
            [-34.0, -4.0],
        ]);
        self.line(Line::CENTRE, [0.0, -8.0], [0.0, 8.0]);
        self.line(Line::DASHED, [-24.0, 0.0], [24.0, 0.0]);
        self.measure(Axis::X, [-joint, 0.0], [joint, 0.0], -20.0, joints);
        self.measure(Axis::X, [0.0, 0.0], [24.0, 0.0], -12.0, teeth);
        self.note([joint, BALL], [joint - 22.0, 9.0], travel.what);
    }

    fn spring(&mut self) {
        let [open, closed, _] = &SPRING;
        self.title(0.0, 17.0, "Spring unit");
        self.ball(-28.0, 0.0, BALL);
        self.ball(28.0, 0.0, BALL);
        let coils: Vec<[f64; 2]> = (0..=16)
            .map(|n| {
                let height = if n % 2 == 0 { -5.0 } else { 5.0 };
                [-20.0 + 2.5 * f64::from(n), height]
            })
            .collect();
        self.path(&coils);
        self.path(&[[-28.0 + BALL, 0.0], [-20.0, 0.0]]);
        self.path(&[[20.0, 0.0], [28.0 - BALL, 0.0]]);
        let both = Measure { what: "", ..*open };
        self.measure(Axis::X, [-28.0, 0.0], [28.0, 0.0], -14.0, &both);
        let at = self.point(0.0, -18.5);
        let text = format!(
            "{}, and {} on the stop",
            open.what,
            closed.what.to_lowercase()
        );
        self.drawing
            .letter(Text::new(at.x, at.y, 2.5, text).anchored(Anchor::Middle));
    }

    /// The ball between its faces, its body leaning.
    fn joint(&mut self) {
        let [width, swivel, _] = &JOINT;
        self.title(0.0, 17.0, "Joint, across its bolt");
        self.ball(0.0, 0.0, 6.0);
        self.path(&[
            [-8.0, -3.0],
            [8.0, -3.0],
            [8.0, 3.0],
            [-8.0, 3.0],
            [-8.0, -3.0],
        ]);
        self.line(Line::CENTRE, [-16.0, 0.0], [16.0, 0.0]);
        self.line(Line::NEIGHBOUR, [0.0, 0.0], [5.0, 22.0 - 12.0]);
        self.measure(Axis::X, [-8.0, -3.0], [8.0, -3.0], -14.0, width);
        self.note([4.0, 8.0], [18.0, 7.0], swivel.what);
    }
}
