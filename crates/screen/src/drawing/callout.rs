//! Small names beside points, put where they hide least.

use egui::{Align2, Color32, Pos2, Rect, Stroke, Vec2, vec2};

use super::pen::{Pen, clip_segment};
use crate::tokens::{Tokens, weight};

/// Size of a lock or caution sign, points.
const SIGN: Vec2 = vec2(13.0, 13.0);
/// How far names stand off their points, points.
const NAME_OFFSETS: [f32; 3] = [13.0, 26.0, 44.0];

/// How far a name's plate reaches past its letters, points.
const PLATE: Vec2 = vec2(4.0, 1.5);

/// A name that wants a place near a point.
pub(crate) struct Near {
    pub at: Pos2,
    pub text: String,
    pub colour: Color32,
    /// Where it must stay.
    pub within: Rect,
}

/// The names of a frame, inked last.
#[derive(Default)]
pub(crate) struct Callouts {
    taken: Vec<Rect>,
    lines: Vec<[Pos2; 2]>,
    near: Vec<Near>,
}

impl Callouts {
    /// A place that names should keep off.
    pub(crate) fn keep_off(&mut self, rect: Rect) {
        self.taken.push(rect);
    }

    /// A line that names should rather not hide.
    pub(crate) fn keep_off_line(&mut self, ends: [Pos2; 2]) {
        self.lines.push(ends);
    }

    /// A free place for a sign close to a point; it is taken then.
    pub(crate) fn place_sign(&mut self, at: Pos2, within: Rect) -> Pos2 {
        let rect = self.best_place(&[7.0, 10.0, 15.0], at, SIGN, within);
        self.taken.push(rect);
        rect.center()
    }

    /// A name near a point.
    pub(crate) fn add(&mut self, near: Near) {
        self.near.push(near);
    }

    /// Places and inks them: the earlier ones have the choice.
    pub(crate) fn ink(mut self, pen: &mut Pen, tokens: &Tokens) {
        for near in std::mem::take(&mut self.near) {
            let size = pen.text_size(&near.text);
            let rect = self.best_place(&NAME_OFFSETS, near.at, size, near.within);
            leader(pen, rect, &near, tokens);
            label(pen, rect, &near.text, near.colour, tokens);
            self.taken.push(rect);
        }
    }

    fn best_place(&self, offsets: &[f32], at: Pos2, size: Vec2, within: Rect) -> Rect {
        let mut best = (f32::INFINITY, Rect::NOTHING);
        for (n, rect) in candidates(offsets, at, size).enumerate() {
            // Earlier candidates look better, so a little overlap is needed to leave them.
            let cost = self.overlap(rect, within) + 2.0 * n as f32;
            if cost < best.0 {
                best = (cost, rect);
            }
        }
        best.1
    }

    /// Area that a label at `rect` would hide or lose, square points.
    fn overlap(&self, rect: Rect, within: Rect) -> f32 {
        let area = |r: Rect| r.width().max(0.0) * r.height().max(0.0);
        let lost = area(rect) - area(rect.intersect(within.shrink(3.0)));
        let hidden: f32 = self
            .taken
            .iter()
            .map(|t| t.intersect(rect))
            .filter(|r| !r.is_negative())
            .map(area)
            .sum();
        let crossed: f32 = self
            .lines
            .iter()
            .filter_map(|[a, b]| clip_segment(rect, *a, *b))
            .map(|(a, b, _)| (b - a).length())
            .sum();
        20.0 * lost + 4.0 * hidden + 2.0 * crossed
    }
}

/// Places round a point, the best-looking first.
fn candidates(offsets: &[f32], at: Pos2, size: Vec2) -> impl Iterator<Item = Rect> {
    const ROUND: [(f32, f32, Align2); 8] = [
        (1.0, -0.8, Align2::LEFT_BOTTOM),
        (-1.0, -0.8, Align2::RIGHT_BOTTOM),
        (1.0, 0.8, Align2::LEFT_TOP),
        (-1.0, 0.8, Align2::RIGHT_TOP),
        (0.0, -1.3, Align2::CENTER_BOTTOM),
        (0.0, 1.3, Align2::CENTER_TOP),
        (1.3, 0.0, Align2::LEFT_CENTER),
        (-1.3, 0.0, Align2::RIGHT_CENTER),
    ];
    offsets.iter().flat_map(move |off| {
        ROUND
            .into_iter()
            .map(move |(x, y, align)| align.anchor_size(at + vec2(x, y) * *off, size))
    })
}

/// A line from a name to its point, where it could be taken for another's.
fn leader(pen: &mut Pen, rect: Rect, near: &Near, tokens: &Tokens) {
    let plate = rect.expand2(PLATE);
    let from = plate.clamp(near.at);
    let way = near.at - from;
    if way.length() > 14.0 {
        let to = near.at - way.normalized() * 5.0;
        pen.line(
            from,
            to,
            Stroke::new(weight::HAIR, tokens.ghost(near.colour)),
        );
    }
}

/// Text on a plate of the table's colour.
fn label(pen: &mut Pen, rect: Rect, text: &str, colour: Color32, tokens: &Tokens) {
    let back = tokens.wash(tokens.table, 0.86);
    pen.plate(
        rect.expand2(PLATE),
        back,
        Stroke::new(weight::HAIR, tokens.wash(colour, 0.35)),
    );
    pen.text(rect.min, Align2::LEFT_TOP, text, colour);
}

#[cfg(test)]
mod tests {
    use super::*;
    use egui::pos2;

    const SIZE: Vec2 = vec2(60.0, 13.0);

    #[test]
    fn a_name_keeps_off_its_point_other_points_and_the_edge() {
        let table = Rect::from_min_max(pos2(0.0, 0.0), pos2(200.0, 100.0));
        let mut callouts = Callouts::default();
        for at in [pos2(100.0, 50.0), pos2(195.0, 5.0), pos2(4.0, 96.0)] {
            callouts.taken = vec![Rect::from_center_size(at, Vec2::splat(18.0))];
            let place = callouts.best_place(&NAME_OFFSETS, at, SIZE, table);
            assert!(table.contains_rect(place), "{at:?} {place:?}");
            assert!(!place.intersects(callouts.taken[0]), "{at:?} {place:?}");
        }
    }

    #[test]
    fn two_names_at_one_point_do_not_cover_each_other() {
        let table = Rect::from_min_max(pos2(0.0, 0.0), pos2(400.0, 300.0));
        let mut callouts = Callouts::default();
        let place = |c: &Callouts| c.best_place(&NAME_OFFSETS, pos2(200.0, 150.0), SIZE, table);
        let first = place(&callouts);
        callouts.taken.push(first);
        assert!(!place(&callouts).intersects(first));
    }
}
