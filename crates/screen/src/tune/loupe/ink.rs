//! The frame of the loupe, its caption, and the map in it.

use egui::{
    Align2, Color32, Painter, Rect, Stroke, StrokeKind, Vec2, pos2,
    text::{LayoutJob, TextWrapping},
    vec2,
};

use super::{
    CAPTION, lines,
    place::Place,
    touch::{BUTTONS, button_rect},
};
use crate::{
    drawing::MapPicture,
    tokens::{Tokens, type_size, weight},
    tune::{clear::Clear, map::MapWork},
};

/// What the loupe shows.
pub(crate) struct Inked<'a> {
    pub map: &'a MapWork,
    /// What forbids places, where it is known and wanted.
    pub clear: Option<&'a Clear>,
    pub caption: &'a str,
    /// What forbids the place that is read.
    pub reasons: &'a [String],
    /// Places of marks, for what is written to keep off.
    pub marks: &'a [egui::Pos2],
    /// Whether the keyboard is on it.
    pub focused: bool,
    pub focused_button: Option<u8>,
    pub large: bool,
    pub tokens: &'a Tokens,
}

/// Paints it.
pub(crate) fn ink(painter: &Painter, place: &Place, shown: &Inked<'_>) {
    let tokens = shown.tokens;
    let width = if shown.focused {
        weight::WIDE
    } else {
        weight::NARROW
    };
    let frame = Stroke::new(width, tokens.accent);
    painter.rect(place.outer, 6.0, tokens.panel, frame, StrokeKind::Inside);
    match shown.map.texture() {
        Some(texture) => {
            let uv = MapPicture::uv(place.turned);
            painter.image(texture, place.map, uv, Color32::WHITE);
            let inside = painter.with_clip_rect(place.map.intersect(painter.clip_rect()));
            let reasons = reasons_rect(painter, place, shown);
            let marks = shown.marks.iter();
            let mut taken: Vec<Rect> = marks
                .map(|at| Rect::from_center_size(*at, Vec2::splat(18.0)))
                .collect();
            taken.extend(reasons);
            lines::lines(&inside, place, shown.map, shown.clear, taken, tokens);
        }
        None => {
            let why = shown.map.fault().unwrap_or("the map is being worked out");
            painter.text(
                place.map.center(),
                Align2::CENTER_CENTER,
                why,
                type_size::small(),
                tokens.ink,
            );
        }
    }
    caption(painter, place, shown);
    buttons(painter, place, shown);
}

fn caption(painter: &Painter, place: &Place, shown: &Inked<'_>) {
    let at = pos2(
        place.map.left() + 2.0,
        place.map.bottom() + 0.5 * CAPTION + 3.0,
    );
    let cut = Rect::from_min_max(
        pos2(place.map.left(), place.map.bottom()),
        pos2(button_rect(place, 0).left() - 2.0, place.outer.bottom()),
    );
    let words = painter.with_clip_rect(cut.intersect(painter.clip_rect()));
    let colour = shown.tokens.ink_soft;
    let mut job = LayoutJob::simple_singleline(shown.caption.into(), type_size::small(), colour);
    job.wrap = TextWrapping::truncate_at_width(cut.right() - at.x);
    let galley = words.layout_job(job);
    let top = at.y - 0.5 * galley.size().y;
    words.galley(pos2(at.x, top), galley, colour);
}

fn buttons(painter: &Painter, place: &Place, shown: &Inked<'_>) {
    let tokens = shown.tokens;
    // A frame that grows, or shrinks back.
    let size = if shown.large { "»" } else { "«" };
    for (index, sign) in (0..BUTTONS).zip([size, "+", "−"]) {
        let rect = button_rect(place, index);
        let ring = if shown.focused_button == Some(index) {
            Stroke::new(weight::SYMBOL, tokens.accent)
        } else {
            Stroke::NONE
        };
        painter.rect(rect, 3.0, tokens.panel_raised, ring, StrokeKind::Inside);
        painter.text(
            rect.center(),
            Align2::CENTER_CENTER,
            sign,
            type_size::text(),
            tokens.ink,
        );
    }
}

/// Along the map's upper edge, what forbids the place that is read.
fn reasons_rect(painter: &Painter, place: &Place, shown: &Inked<'_>) -> Option<Rect> {
    if shown.reasons.is_empty() {
        return None;
    }
    let size = vec2(place.map.width(), 17.0 * shown.reasons.len() as f32 + 3.0);
    Some(Rect::from_min_size(place.map.min, size).intersect(painter.clip_rect()))
}

/// Paints what forbids the place that is read, over everything else on the map.
pub(crate) fn reasons(painter: &Painter, place: &Place, shown: &Inked<'_>) {
    let Some(rect) = reasons_rect(painter, place, shown) else {
        return;
    };
    let tokens = shown.tokens;
    painter.rect_filled(rect, 0.0, tokens.wash(tokens.panel, 0.92));
    let words = painter.with_clip_rect(rect);
    for (n, reason) in shown.reasons.iter().enumerate() {
        let at = pos2(rect.left() + 6.0, rect.top() + 2.0 + 17.0 * n as f32);
        let text = format!("in the way: {reason}");
        words.text(at, Align2::LEFT_TOP, text, type_size::small(), tokens.ink);
    }
}
