//! The two-line rule on the drawing: its lines, its joint, and the lines to the instant centre.

use egui::{Align2, Color32, Painter, Pos2, Shape, Stroke, vec2};
use trammel_geometry::Point;
use trammel_tuning::{FrontPoint, TwoLineRule};

use super::{loupe, table::OnTable};
use crate::tokens::{type_size, weight};

/// A line is drawn no longer than this, points: the centre may be far away.
const LONGEST: f32 = 2500.0;

/// Draws them; only the front view shows them as they are.
pub(super) fn lines(painter: &Painter, on: &OnTable<'_>, rule: &TwoLineRule) {
    let tokens = on.tokens;
    let colour = tokens.ghost(tokens.accent);
    let at = |p: FrontPoint| on.seen.screen(Point::new(0.0, p.y, p.z));
    for [a, b] in [rule.pivots, rule.ball_joints].map(|l| l.map(at)) {
        let more = (b - a) * 0.35;
        dashed(painter, [a - more, b + more], colour);
    }
    let joint = on.view.tune.joint;
    let held = on.seen.screen(
        joint
            .other()
            .place(on.axle.model.linkage(on.view.side).corner()),
    );
    let place = on.seen.screen(rule.place(joint));
    match rule.instant_centre.map(at) {
        Some(centre) => {
            for ball in rule.ball_joints.map(at) {
                dotted(painter, [ball, centre], colour);
            }
            // The rod's own line is the one to aim along.
            let outer = if (held - centre).length() > (place - centre).length() {
                held
            } else {
                place
            };
            dashed(painter, [outer, centre], colour);
            if painter.clip_rect().contains(centre) {
                painter.circle_stroke(centre, 4.0, Stroke::new(weight::NARROW, colour));
                let by = vec2(7.0, -5.0);
                let name = "arms' instant centre";
                painter.text(
                    centre + by,
                    Align2::LEFT_BOTTOM,
                    name,
                    type_size::small(),
                    colour,
                );
            }
        }
        None => dashed(painter, [held, place + (place - held) * 0.15], colour),
    }
    loupe::rule_mark(painter, place, tokens);
    painter.text(
        place + vec2(-9.0, 9.0),
        Align2::RIGHT_TOP,
        "two-line rule",
        type_size::small(),
        colour,
    );
}

fn dashed(painter: &Painter, ends: [Pos2; 2], colour: Color32) {
    let stroke = Stroke::new(weight::HAIR, colour);
    painter.extend(Shape::dashed_line(&shortened(ends), stroke, 6.0, 4.0));
}

fn dotted(painter: &Painter, ends: [Pos2; 2], colour: Color32) {
    let stroke = Stroke::new(weight::HAIR, colour);
    painter.extend(Shape::dashed_line(&shortened(ends), stroke, 2.0, 5.0));
}

fn shortened([from, to]: [Pos2; 2]) -> [Pos2; 2] {
    let way = to - from;
    [from, from + way * (LONGEST / way.length().max(LONGEST))]
}
