//! The pen: collects lines clipped to the table, so that nothing far away or not a number reaches the painter.

use egui::{Align2, Color32, Mesh, Painter, Pos2, Rect, Shape, Stroke, Vec2, pos2, vec2};

use super::strokes;
use crate::tokens::type_size;

/// Lengths of ink and gap in turn, points (ISO 128-2 names them; the lengths are for a screen).
pub(crate) type Pattern = &'static [f32];

/// Moved linkage, constructions.
pub(crate) const DASHED: Pattern = &[5.0, 3.5];
/// Projection lines.
pub(crate) const DOTTED: Pattern = &[1.6, 3.0];
/// Centre lines: long dash, short dash.
pub(crate) const CHAIN: Pattern = &[15.0, 3.5, 3.0, 3.5];

/// How far outside the table a line is still inked, so that its end never shows at the edge.
const BLEED: f32 = 8.0;

/// Strokes go to the painter in lumps of this size: larger ones would be fresh memory from the system in every frame.
const MOST_VERTICES: usize = 3000;

/// Collects what is to be painted.
pub(crate) struct Pen {
    painter: Painter,
    clip: Rect,
    shapes: Vec<Shape>,
    /// Straight strokes since the last shape.
    strokes: Mesh,
    pixel: f32,
}

impl Pen {
    /// A pen for a part of the screen.
    pub(crate) fn new(painter: Painter) -> Self {
        let clip = painter.clip_rect().expand(BLEED);
        let pixel = 1.0 / painter.pixels_per_point();
        Self {
            painter,
            clip,
            shapes: Vec::with_capacity(256),
            strokes: Mesh::default(),
            pixel,
        }
    }

    /// Inks everything that was collected.
    pub(crate) fn finish(mut self) {
        self.close_strokes();
        self.painter.extend(self.shapes);
    }

    /// What is clipped to, with a little more.
    pub(crate) fn clip(&self) -> Rect {
        self.clip
    }

    /// Clips what follows to `clip` as well, until given back. Only lines and dashes are clipped.
    pub(crate) fn set_clip(&mut self, clip: Rect) -> Rect {
        std::mem::replace(&mut self.clip, clip)
    }

    /// A straight line.
    pub(crate) fn line(&mut self, a: Pos2, b: Pos2, stroke: Stroke) {
        if let Some((a, b, _)) = clip_segment(self.clip, a, b) {
            self.stroke(a, b, stroke);
        }
    }

    fn stroke(&mut self, a: Pos2, b: Pos2, stroke: Stroke) {
        strokes::add(&mut self.strokes, a, b, stroke, self.pixel);
        if self.strokes.vertices.len() > MOST_VERTICES {
            self.close_strokes();
        }
    }

    /// Adds a shape over the strokes so far.
    fn push(&mut self, shape: Shape) {
        self.close_strokes();
        self.shapes.push(shape);
    }

    fn close_strokes(&mut self) {
        if !self.strokes.is_empty() {
            self.shapes
                .push(Shape::mesh(std::mem::take(&mut self.strokes)));
        }
    }

    /// A level or upright line on whole pixels.
    pub(crate) fn crisp(&mut self, a: Pos2, b: Pos2, stroke: Stroke) {
        let (a, b) = self.on_pixels(a, b);
        self.line(a, b, stroke);
    }

    /// A level or upright line of a pattern on whole pixels.
    pub(crate) fn crisp_pattern(&mut self, a: Pos2, b: Pos2, stroke: Stroke, pattern: Pattern) {
        let (a, b) = self.on_pixels(a, b);
        self.pattern(&[a, b], stroke, pattern);
    }

    fn on_pixels(&self, a: Pos2, b: Pos2) -> (Pos2, Pos2) {
        let round = |v| self.painter.round_to_pixel_center(v);
        let upright = (a.x - b.x).abs() < (a.y - b.y).abs();
        if upright {
            (pos2(round(a.x), a.y), pos2(round(b.x), b.y))
        } else {
            (pos2(a.x, round(a.y)), pos2(b.x, round(b.y)))
        }
    }

    /// A run of lines in a pattern that goes on round the corners.
    pub(crate) fn pattern(&mut self, points: &[Pos2], stroke: Stroke, pattern: Pattern) {
        let period: f32 = pattern.iter().sum();
        let mut run = 0.0_f32;
        for pair in points.windows(2) {
            let &[a, b] = pair else { continue };
            let length = (b - a).length();
            if !length.is_finite() || length < 1e-3 {
                continue;
            }
            if let Some((from, to, skipped)) = clip_segment(self.clip, a, b) {
                let phase = (run + skipped * length).rem_euclid(period);
                self.dashes(from, to, phase, stroke, pattern);
            }
            run = (run + length).rem_euclid(period);
        }
    }

    fn dashes(&mut self, from: Pos2, to: Pos2, phase: f32, stroke: Stroke, pattern: Pattern) {
        let length = (to - from).length();
        if length < 1e-3 {
            return;
        }
        let way = (to - from) / length;
        let mut at = -phase;
        for (n, step) in pattern.iter().cycle().enumerate() {
            if at >= length {
                break;
            }
            let (start, end) = (at.max(0.0), (at + step).min(length));
            if n % 2 == 0 && end > start {
                self.stroke(from + way * start, from + way * end, stroke);
            }
            at += step;
        }
    }

    /// A run of lines with mitred corners.
    pub(crate) fn path(&mut self, points: Vec<Pos2>, stroke: Stroke) {
        if let Some(points) = drawable(points) {
            self.push(Shape::line(points, stroke));
        }
    }

    /// A closed outline.
    pub(crate) fn outline(&mut self, points: Vec<Pos2>, stroke: Stroke) {
        if let Some(points) = drawable(points) {
            self.push(Shape::closed_line(points, stroke));
        }
    }

    /// A convex shape, filled.
    pub(crate) fn filled(&mut self, points: Vec<Pos2>, fill: Color32, stroke: Stroke) {
        if let Some(points) = drawable(points) {
            self.push(Shape::convex_polygon(points, fill, stroke));
        }
    }

    /// A circle, filled.
    pub(crate) fn disc(&mut self, centre: Pos2, radius: f32, fill: Color32) {
        if self.shows(centre, radius) {
            self.push(Shape::circle_filled(centre, radius, fill));
        }
    }

    /// A circle.
    pub(crate) fn ring(&mut self, centre: Pos2, radius: f32, stroke: Stroke) {
        if self.shows(centre, radius) {
            self.push(Shape::circle_stroke(centre, radius, stroke));
        }
    }

    /// Part of a circle: `half` the opening angle each side of `towards`, rad.
    pub(crate) fn arc(
        &mut self,
        centre: Pos2,
        radius: f32,
        towards: Vec2,
        half: f32,
        stroke: Stroke,
    ) {
        const PARTS: u8 = 16;
        if !self.shows(centre, radius) {
            return;
        }
        let middle = towards.angle();
        let points = (0..=PARTS)
            .map(|n| {
                let angle = middle + half * (2.0 * f32::from(n) / f32::from(PARTS) - 1.0);
                centre + Vec2::angled(angle) * radius
            })
            .collect();
        self.path(points, stroke);
    }

    /// Small text; its rectangle.
    pub(crate) fn text(&mut self, at: Pos2, align: Align2, text: &str, colour: Color32) -> Rect {
        let galley = self
            .painter
            .layout_no_wrap(text.to_owned(), type_size::small(), colour);
        let rect = align.anchor_size(at, galley.size());
        if rect.is_finite() && rect.intersects(self.clip) {
            // On whole pixels letters are sharp.
            let corner = vec2(rect.min.x.round(), rect.min.y.round()).to_pos2();
            self.push(Shape::galley(corner, galley, colour));
        }
        rect
    }

    /// How large small text would be.
    pub(crate) fn text_size(&self, text: &str) -> Vec2 {
        self.painter
            .layout_no_wrap(text.to_owned(), type_size::small(), Color32::PLACEHOLDER)
            .size()
    }

    /// A box with rounded corners.
    pub(crate) fn plate(&mut self, rect: Rect, fill: Color32, stroke: Stroke) {
        if rect.is_finite() && rect.intersects(self.clip) {
            self.push(Shape::rect_filled(rect, 3.0, fill));
            let outline = Shape::rect_stroke(rect, 3.0, stroke, egui::StrokeKind::Inside);
            self.push(outline);
        }
    }

    /// A picture over a rectangle, `uv` of it.
    pub(crate) fn picture(&mut self, rect: Rect, texture: egui::TextureId, uv: Rect) {
        if rect.is_finite()
            && rect.intersects(self.clip)
            && rect.width().max(rect.height()) < FARTHEST
        {
            self.push(Shape::image(texture, rect, uv, Color32::WHITE));
        }
    }

    fn shows(&self, centre: Pos2, radius: f32) -> bool {
        // A comparison with NaN is false, so such a centre is not shown.
        radius.is_finite() && radius > 0.0 && self.clip.expand(radius).contains(centre)
    }
}

/// Farthest that a corner of an outline may be, points: single precision stays good to a tenth of a point.
const FARTHEST: f32 = 1e5;

/// The points that make a line: none where one is too far away or not a number. Points that fall together are taken once, since a corner between
/// lines of no length has no direction and would come out as not a number.
fn drawable(mut points: Vec<Pos2>) -> Option<Vec<Pos2>> {
    let near = |p: &Pos2| p.x.abs() < FARTHEST && p.y.abs() < FARTHEST;
    if !points.iter().all(near) {
        return None;
    }
    points.dedup_by(|a, b| (*a - *b).length_sq() < 1e-6);
    (points.len() >= 2).then_some(points)
}

/// The part of a line inside a rectangle, and how much of it, 0 to 1, was cut off before (the way of Liang and Barsky, from memory). `None`
/// where nothing is left or an end is not a number.
pub(crate) fn clip_segment(rect: Rect, a: Pos2, b: Pos2) -> Option<(Pos2, Pos2, f32)> {
    if !(a.is_finite() && b.is_finite()) {
        return None;
    }
    let (ax, ay) = (f64::from(a.x), f64::from(a.y));
    let (dx, dy) = (f64::from(b.x) - ax, f64::from(b.y) - ay);
    let (mut enter, mut leave) = (0.0_f64, 1.0_f64);
    let edges = [
        (-dx, ax - f64::from(rect.left())),
        (dx, f64::from(rect.right()) - ax),
        (-dy, ay - f64::from(rect.top())),
        (dy, f64::from(rect.bottom()) - ay),
    ];
    for (towards, inside) in edges {
        if towards == 0.0 {
            if inside < 0.0 {
                return None;
            }
        } else if towards < 0.0 {
            enter = enter.max(inside / towards);
        } else {
            leave = leave.min(inside / towards);
        }
    }
    if enter > leave {
        return None;
    }
    let at = |t: f64| pos2((ax + t * dx) as f32, (ay + t * dy) as f32);
    Some((at(enter), at(leave), enter as f32))
}

#[cfg(test)]
mod tests {
    use super::*;

    const TABLE: Rect = Rect {
        min: pos2(0.0, 0.0),
        max: pos2(100.0, 50.0),
    };

    #[test]
    fn a_line_is_cut_at_the_edges() {
        let cut = clip_segment(TABLE, pos2(-100.0, 25.0), pos2(300.0, 25.0));
        assert_eq!(cut, Some((pos2(0.0, 25.0), pos2(100.0, 25.0), 0.25)));
        let inside = (pos2(1.0, 2.0), pos2(3.0, 4.0));
        assert_eq!(
            clip_segment(TABLE, inside.0, inside.1),
            Some((inside.0, inside.1, 0.0))
        );
    }

    #[test]
    fn what_passes_by_or_is_no_number_leaves_nothing() {
        assert_eq!(
            clip_segment(TABLE, pos2(-10.0, 0.0), pos2(0.0, -10.0)),
            None
        );
        assert_eq!(clip_segment(TABLE, pos2(5.0, 60.0), pos2(50.0, 60.0)), None);
        assert_eq!(
            clip_segment(TABLE, pos2(f32::NAN, 0.0), pos2(5.0, 5.0)),
            None
        );
        assert_eq!(
            clip_segment(TABLE, pos2(f32::INFINITY, 0.0), pos2(5.0, 5.0)),
            None
        );
    }

    #[test]
    fn points_that_fall_together_are_taken_once_and_far_ones_not_at_all() {
        let (a, b) = (pos2(1.0, 1.0), pos2(5.0, 1.0));
        assert_eq!(drawable(vec![a, a, a, b, b]), Some(vec![a, b]));
        assert_eq!(drawable(vec![a, a, a]), None);
        assert_eq!(drawable(vec![a, pos2(1e6, 0.0)]), None);
        assert_eq!(drawable(vec![a, pos2(f32::NAN, 0.0)]), None);
    }

    #[test]
    fn very_far_ends_still_cut_where_they_should() {
        let (a, b, _) = clip_segment(TABLE, pos2(-1e8, 25.0), pos2(1e8, 25.0)).unwrap();
        assert_eq!((a, b), (pos2(0.0, 25.0), pos2(100.0, 25.0)));
    }
}
