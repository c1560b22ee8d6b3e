//! Signs beside points: cautions and locks. The shape tells the grade, the colour says it again.

use egui::{Pos2, Stroke, Vec2, pos2, vec2};
use trammel_analysis::Grade;
use trammel_build::{Axis, PointRef};

use super::{DrawingInput, Projection, drag::locked, pen::Pen};
use crate::tokens::{Tokens, weight};

/// A triangle for danger, a diamond for caution, a circle for a note.
pub(crate) fn caution(pen: &mut Pen, at: Pos2, grade: Grade, tokens: &Tokens) {
    let colour = tokens.grade(grade);
    let rim = Stroke::new(weight::SYMBOL, tokens.table);
    let r = 5.6;
    match grade {
        Grade::Danger => {
            let corners = [(0.0, -1.15), (1.1, 0.8), (-1.1, 0.8)];
            pen.filled(round(at, r, &corners), colour, rim);
        }
        Grade::Caution => {
            let corners = [(0.0, -1.1), (1.1, 0.0), (0.0, 1.1), (-1.1, 0.0)];
            pen.filled(round(at, r, &corners), colour, rim);
        }
        Grade::Note => {
            pen.disc(at, r * 0.85 + 1.0, tokens.table);
            pen.disc(at, r * 0.85, colour);
        }
    }
}

fn round(at: Pos2, r: f32, corners: &[(f32, f32)]) -> Vec<Pos2> {
    corners.iter().map(|(x, y)| at + vec2(*x, *y) * r).collect()
}

/// A padlock: solid where neither coordinate of the view can be moved, hollow where one can.
pub(crate) fn padlock(pen: &mut Pen, at: Pos2, solid: bool, tokens: &Tokens) {
    let colour = tokens.ink;
    let line = Stroke::new(weight::NARROW, colour);
    let (half, top) = (vec2(3.6, 2.9), at + vec2(0.0, -1.2));
    pen.arc(top, 2.3, vec2(0.0, -1.0), std::f32::consts::FRAC_PI_2, line);
    let body = |grow: f32| {
        let (h, c) = (half + Vec2::splat(grow), at + vec2(0.0, 1.8));
        vec![
            pos2(c.x - h.x, c.y - h.y),
            pos2(c.x + h.x, c.y - h.y),
            pos2(c.x + h.x, c.y + h.y),
            pos2(c.x - h.x, c.y + h.y),
        ]
    };
    let fill = if solid { colour } else { tokens.table };
    pen.filled(body(0.0), fill, line);
}

/// Whether a point has a lock in a view: solid where neither coordinate of the view can be moved.
pub(crate) fn lock(
    input: &DrawingInput<'_>,
    projection: Projection,
    point: PointRef,
) -> Option<bool> {
    let is_locked = |axis| locked(input.build, point, axis);
    let solid = is_locked(projection.right().0) && is_locked(projection.down().0);
    Axis::ALL.into_iter().any(is_locked).then_some(solid)
}
