//! What is written on the map, each where it keeps off the others.

use egui::{Color32, Painter, Pos2, Rect, Stroke, StrokeKind, Vec2, vec2};

use super::place::Place;
use crate::{
    tokens::{Tokens, type_size, weight},
    tune::{map::MapWork, picture, ramp},
};

/// What is written keeps at least this far apart, points.
const APART: f32 = 7.0;

/// A name on a plate near a place; it moves up or down off what is written already.
pub(super) fn plate(
    painter: &Painter,
    place: &Place,
    at: Pos2,
    text: &str,
    colour: Color32,
    taken: &mut Vec<Rect>,
    tokens: &Tokens,
) {
    let ink = tokens.ink;
    let galley = painter.layout_no_wrap(text.to_owned(), type_size::small(), ink);
    let room = place.map.shrink2(0.5 * galley.size() + vec2(6.0, 4.0));
    if !room.is_positive() {
        return;
    }
    let rect = off(room, room.clamp(at), galley.size(), taken);
    let back = rect.expand2(vec2(4.0, 1.0));
    taken.push(back);
    let stroke = Stroke::new(weight::NARROW, colour);
    let fill = tokens.wash(tokens.panel, 0.85);
    painter.rect(back, 2.0, fill, stroke, StrokeKind::Inside);
    painter.galley(rect.min.round(), galley, ink);
}

/// A rectangle of a size about `at` or as little above or below as keeps it off what is taken; `room` is where its middle may be.
fn off(room: Rect, at: Pos2, size: Vec2, taken: &[Rect]) -> Rect {
    const STEP: f32 = 19.0;
    let around = |n: f32| Rect::from_center_size(at + vec2(0.0, n * STEP), size);
    let free = |r: &Rect| {
        let inside = room.contains(r.center());
        inside && !taken.iter().any(|t| t.expand(4.0).intersects(*r))
    };
    [0.0, 1.0, -1.0, 2.0, -2.0, 3.0, -3.0]
        .map(around)
        .into_iter()
        .find(free)
        .unwrap_or_else(|| around(0.0))
}

/// A label on each level line, where it keeps off the others; none where there is no such place.
pub(super) fn levels(
    painter: &Painter,
    place: &Place,
    map: &MapWork,
    taken: &mut Vec<Rect>,
    tokens: &Tokens,
) {
    let inside = place.map.shrink2(vec2(3.0, 2.0));
    let count = map.lines().len().max(1) as f32;
    for (n, (level, stretches)) in map.lines().iter().enumerate() {
        let under = ramp::colour(tokens.dark, (n as f32 + 0.5) / count);
        let ink = ramp::ink_on(under);
        let text = picture::level_label(*level);
        let galley = painter.layout_no_wrap(text, type_size::small(), ink);
        let middles = stretches
            .iter()
            .map(|[a, b]| place.screen([0.5 * (a[0] + b[0]), 0.5 * (a[1] + b[1])]));
        let Some(rect) = spot(middles, galley.size(), inside, taken) else {
            continue;
        };
        painter.rect_filled(rect.expand2(vec2(2.0, -1.0)), 2.0, under);
        painter.galley(rect.min.round(), galley, ink);
        taken.push(rect);
    }
}

/// The best of the places along a line for a label of a size, off everything that is taken.
fn spot(
    places: impl Iterator<Item = Pos2>,
    size: Vec2,
    inside: Rect,
    taken: &[Rect],
) -> Option<Rect> {
    let room = |r: &Rect| {
        let distance = |t: &Rect| t.distance_to_pos(r.center());
        taken.iter().map(distance).fold(f32::INFINITY, f32::min)
    };
    // Level stretches read best away from the middle, where joint and spot are.
    let worth = |r: &Rect| room(r).min(90.0) + 0.25 * (r.center().x - inside.center().x).abs();
    let free = |r: &Rect| {
        let apart = r.expand(APART);
        inside.contains_rect(*r) && !taken.iter().any(|t| t.intersects(apart))
    };
    places
        .map(|at| Rect::from_center_size(at, size))
        .filter(free)
        .max_by(|a, b| worth(a).total_cmp(&worth(b)))
}

#[cfg(test)]
mod tests {
    use super::*;
    use egui::pos2;

    const MAP: Rect = Rect {
        min: pos2(0.0, 0.0),
        max: pos2(300.0, 170.0),
    };
    const SIZE: Vec2 = vec2(26.0, 13.0);

    #[test]
    fn labels_of_lines_that_lie_close_together_do_not_touch() {
        let mut taken = vec![Rect::from_center_size(MAP.center(), Vec2::splat(20.0))];
        let mark = taken.len();
        for n in 0..9_u8 {
            // Lines four points apart, right across the map.
            let y = 60.0 + 4.0 * f32::from(n);
            let places = (0..60).map(|i| pos2(5.0 * i as f32, y));
            taken.extend(spot(places, SIZE, MAP, &taken));
        }
        assert!(
            taken.len() - mark >= 6,
            "most of them find a place: {taken:?}"
        );
        for (i, a) in taken.iter().enumerate() {
            assert!(MAP.contains_rect(*a));
            for b in &taken[..i] {
                assert!(!a.expand(0.9 * APART).intersects(*b), "{a:?} {b:?}");
            }
        }
    }

    #[test]
    fn a_line_without_a_free_place_has_no_label() {
        let taken = [MAP];
        let places = (0..60).map(|i| pos2(5.0 * i as f32, 80.0));
        assert_eq!(spot(places, SIZE, MAP, &taken), None);
    }

    #[test]
    fn a_plate_moves_off_what_is_written_already() {
        let first = off(MAP, MAP.center(), vec2(120.0, 13.0), &[]);
        assert_eq!(first.center(), MAP.center());
        let second = off(MAP, MAP.center(), vec2(120.0, 13.0), &[first]);
        assert!(!second.intersects(first));
        let low = pos2(MAP.center().x, MAP.bottom());
        let beside = off(
            MAP,
            low,
            vec2(120.0, 13.0),
            &[Rect::from_center_size(low, vec2(120.0, 13.0))],
        );
        assert!(beside.center().y < low.y, "it stays in the map");
    }
}
