//! Over the drawing: from the map to its loupe, another layout.

use egui::{Rect, Shape, Stroke};

use super::table::OnTable;
use crate::tokens::{Tokens, weight};

/// From the map on the drawing to the loupe.
pub(super) fn leader(painter: &egui::Painter, map: Rect, loupe: Rect, tokens: &Tokens) {
    let stroke = Stroke::new(weight::HAIR, tokens.accent);
    painter.rect_stroke(map, 0.0, stroke, egui::StrokeKind::Outside);
    if !map.intersects(loupe) {
        let from = map.clamp(loupe.center());
        painter.line_segment([from, loupe.clamp(map.center())], stroke);
    }
}

/// Another layout over the drawing.
pub(super) fn preview(
    painter: &egui::Painter,
    on: &OnTable<'_>,
    corner: &trammel_geometry::Corner,
) {
    let stroke = Stroke::new(weight::SYMBOL, on.tokens.spring);
    let (upper, lower, rod) = (&corner.upper_arm, &corner.lower_arm, &corner.tie_rod);
    let members = [
        [upper.front_pivot, upper.ball_joint],
        [upper.rear_pivot, upper.ball_joint],
        [lower.front_pivot, lower.ball_joint],
        [lower.rear_pivot, lower.ball_joint],
        [rod.inner, rod.outer],
        [upper.ball_joint, lower.ball_joint],
    ];
    for ends in members {
        painter.extend(Shape::dashed_line(
            &ends.map(|p| on.seen.screen(p)),
            stroke,
            7.0,
            3.0,
        ));
    }
    for joint in [rod.inner, rod.outer] {
        painter.circle_stroke(on.seen.screen(joint), 6.0, stroke);
    }
}
