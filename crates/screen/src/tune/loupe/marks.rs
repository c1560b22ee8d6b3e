//! Marks on the map: the joint, the best spot, the two-line rule's place, the place that is read.

use egui::{Painter, Pos2, Rect, Shape, Stroke, vec2};
use trammel_geometry::Point;

use crate::{
    tokens::{Tokens, weight},
    tune::map::MapWork,
};

/// The joint as it is.
pub(crate) fn joint_mark(painter: &Painter, at: Pos2, tokens: &Tokens) {
    painter.circle(
        at,
        6.5,
        tokens.table,
        Stroke::new(weight::WIDE, tokens.tie_rod),
    );
    painter.circle_filled(at, 2.2, tokens.tie_rod);
}

/// The best spot: a cross with a gap, dark on light or the other way round.
pub(crate) fn best_mark(painter: &Painter, at: Pos2, tokens: &Tokens) {
    for (width, colour) in [(4.5, tokens.table), (1.8, tokens.ink)] {
        for way in [vec2(1.0, 0.0), vec2(0.0, 1.0)] {
            for sign in [-1.0, 1.0] {
                painter.line_segment(
                    [at + way * 3.0 * sign, at + way * 11.0 * sign],
                    Stroke::new(width, colour),
                );
            }
        }
    }
}

/// The two-line rule's place: a small square on its corner.
pub(crate) fn rule_mark(painter: &Painter, at: Pos2, tokens: &Tokens) {
    let r = 5.5;
    let corners = vec![
        at - vec2(0.0, r),
        at + vec2(r, 0.0),
        at + vec2(0.0, r),
        at - vec2(r, 0.0),
    ];
    painter.add(Shape::closed_line(
        corners.clone(),
        Stroke::new(3.5, tokens.table),
    ));
    painter.add(Shape::closed_line(
        corners,
        Stroke::new(weight::SYMBOL, tokens.accent),
    ));
}

/// The corner of a map on the drawing, from two of its places.
pub(crate) fn rect_of(corners: [Pos2; 2]) -> Rect {
    Rect::from_two_pos(corners[0], corners[1])
}

/// How far out of its plane a place may be and still stand on a map, mm: less than half a step of the shop.
const OFF_PLANE: f64 = 0.4;

/// Whether a place stands on the map.
pub(crate) fn in_sight(map: &MapWork, place: Point) -> bool {
    map.off_plane(place) < OFF_PLANE && map.part_of(place).iter().all(|v| (0.0..=1.0).contains(v))
}

/// The place that the keyboard reads: a ring.
pub(crate) fn reading_mark(painter: &Painter, at: Pos2, tokens: &Tokens) {
    for (width, colour) in [(4.0, tokens.table), (weight::SYMBOL, tokens.accent)] {
        painter.circle_stroke(at, 9.0, Stroke::new(width, colour));
    }
}
