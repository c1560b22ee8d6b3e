//! Over the drawing: from the map to its loupe, another layout, the two-line rule.

use egui::{Pos2, Rect, Shape, Stroke};
use trammel_geometry::Point;
use trammel_tuning::FrontPoint;

use super::{loupe, table::OnTable};
use crate::tokens::{Tokens, type_size, weight};

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
            &ends.map(|p| on.front.screen(p)),
            stroke,
            7.0,
            3.0,
        ));
    }
    for joint in [rod.inner, rod.outer] {
        painter.circle_stroke(on.front.screen(joint), 6.0, stroke);
    }
}

/// The lines of the two-line rule in the front view.
pub(super) fn rule_lines(
    painter: &egui::Painter,
    on: &OnTable<'_>,
    rule: &trammel_tuning::TwoLineRule,
) {
    let tokens = on.tokens;
    let stroke = Stroke::new(weight::HAIR, tokens.ghost(tokens.accent));
    let at = |p: FrontPoint| on.front.screen(Point::new(0.0, p.y, p.z));
    let dashed = |a: Pos2, b: Pos2| {
        painter.extend(Shape::dashed_line(&[a, b], stroke, 6.0, 4.0));
    };
    for [a, b] in [rule.pivots, rule.ball_joints].map(|l| l.map(at)) {
        let more = (b - a) * 0.35;
        dashed(a - more, b + more);
    }
    let inner = on.front.screen(rule.inner);
    let outer = on
        .front
        .screen(on.axle.model.linkage(on.view.side).corner().tie_rod.outer);
    dashed(outer, inner + (inner - outer) * 0.15);
    loupe::rule_mark(painter, inner, tokens);
    let name = "two-line rule";
    painter.text(
        inner + egui::vec2(-9.0, 9.0),
        egui::Align2::RIGHT_TOP,
        name,
        type_size::small(),
        stroke.color,
    );
}
