//! Joint symbols, after the simple forms of ISO 3952-1 (from memory): shape says what a point is.

use egui::{Color32, Pos2, Stroke, Vec2, vec2};

use super::pen::Pen;
use crate::tokens::{Tokens, weight};

/// A pen with what every symbol needs.
pub(crate) struct Symbols<'a> {
    pub pen: &'a mut Pen,
    pub tokens: &'a Tokens,
    /// 1 at the usual scale.
    pub size: f32,
}

impl Symbols<'_> {
    /// A pivot's stand on the frame: a triangle that ends in a hatched base, `towards` the frame.
    pub(crate) fn stand(&mut self, at: Pos2, towards: Vec2, colour: Color32) {
        let stroke = Stroke::new(weight::NARROW, colour);
        let (way, side) = (towards, towards.rot90());
        let (height, half) = (10.5 * self.size, 5.2 * self.size);
        let foot = at + way * height;
        let corners = vec![at, foot + side * half, foot - side * half];
        self.pen.filled(corners, self.tokens.table, stroke);
        self.hatch(foot, way, half + 2.0 * self.size, stroke);
    }

    /// A hatched base through `foot`, its free side `way`.
    fn hatch(&mut self, foot: Pos2, way: Vec2, half: f32, stroke: Stroke) {
        let side = way.rot90();
        self.pen
            .line(foot - side * half, foot + side * half, stroke);
        let thin = Stroke::new(weight::HAIR, stroke.color);
        let depth = 3.6 * self.size;
        for n in -2_i8..=2 {
            let from = foot + side * (f32::from(n) * half / 2.4 + depth * 0.45);
            self.pen.line(from, from + (way - side) * depth, thin);
        }
    }

    /// A hinge: a circle that hides the lines behind it.
    pub(crate) fn hinge(&mut self, at: Pos2, colour: Color32) {
        self.pen.disc(at, 3.4 * self.size, self.tokens.table);
        self.pen
            .ring(at, 3.4 * self.size, Stroke::new(weight::SYMBOL, colour));
    }

    /// A ball in its socket; the socket is open against `towards`.
    pub(crate) fn ball(&mut self, at: Pos2, towards: Vec2, colour: Color32) {
        self.pen.disc(at, 3.2 * self.size, colour);
        self.pen.arc(
            at,
            5.8 * self.size,
            towards,
            1.9,
            Stroke::new(weight::SYMBOL, colour),
        );
    }

    /// A wheel centre: a cross in a small circle.
    pub(crate) fn centre(&mut self, at: Pos2, colour: Color32) {
        let stroke = Stroke::new(weight::NARROW, colour);
        let arm = 5.5 * self.size;
        self.pen.disc(at, 2.6 * self.size, self.tokens.table);
        self.pen.ring(at, 2.6 * self.size, stroke);
        for way in [vec2(1.0, 0.0), vec2(0.0, 1.0)] {
            self.pen.line(at - way * arm, at + way * arm, stroke);
        }
    }

    /// A place on a surface that matters less than a joint: a small square.
    pub(crate) fn mark(&mut self, at: Pos2, colour: Color32) {
        let h = 2.1 * self.size;
        let corners = [(-h, -h), (h, -h), (h, h), (-h, h)].map(|(x, y)| at + vec2(x, y));
        let stroke = Stroke::new(weight::NARROW, colour);
        self.pen.filled(corners.to_vec(), self.tokens.table, stroke);
    }

    /// A joint in another position.
    pub(crate) fn ghost(&mut self, at: Pos2, colour: Color32) {
        self.pen
            .ring(at, 2.2 * self.size, Stroke::new(weight::HAIR, colour));
    }
}

/// The direction from `from` to `to` on the screen; up where they fall together.
pub(crate) fn direction(from: Pos2, to: Pos2) -> Vec2 {
    let way = to - from;
    if way.length() > 1.0 {
        way.normalized()
    } else {
        vec2(0.0, -1.0)
    }
}
