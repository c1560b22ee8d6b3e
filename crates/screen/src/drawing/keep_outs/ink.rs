//! How keep-outs look: hatched as a section is, with their twins on the other side dashed.

use egui::{Pos2, Rect, Stroke, pos2, vec2};
use trammel_build::{Axis, KeepOut, PointName, PointRef};

use super::{
    super::{
        DrawingInput, Projection,
        callout::{Callouts, Near},
        pen::{DASHED, Pen},
        sheet::Sheet,
    },
    outline::outline,
};
use crate::tokens::weight;

/// Between the lines of the hatching, points.
const PITCH: f32 = 9.0;
/// Side of a grip's mark, points.
const MARK: f32 = 5.0;

/// Room for a name across and down, points.
const NAME: f32 = 130.0;
const LINE: f32 = 22.0;
/// As much of a name as is written, letters.
const WRITTEN: usize = 32;

/// Inks the keep-outs of a view.
pub(crate) fn ink(
    pen: &mut Pen,
    callouts: &mut Callouts,
    input: &DrawingInput<'_>,
    sheet: &Sheet,
    (projection, cell): (Projection, Rect),
    names: bool,
) {
    let clip = pen.set_clip(cell.intersect(pen.clip()));
    let mut named: Vec<Pos2> = Vec::new();
    let all = input.build.keep_outs.iter().enumerate();
    for (index, keep_out) in all.filter(|(_, k)| k.corners.counts_for(input.axle)) {
        let chosen = input.keep_outs.chosen == Some(index);
        let at = |corners| outline(corners, input.build.unit, sheet, cell, projection);
        let (rect, twin) = (at(&keep_out.corners), at(&keep_out.corners.mirrored()));
        let t = input.tokens;
        if twin != rect && projection != Projection::Side {
            let faint = Stroke::new(weight::HAIR, t.ink_faint);
            pen.pattern(&round(twin), faint, DASHED);
        }
        if is_hatched(input, keep_out, projection) {
            hatch(
                pen,
                rect.intersect(cell),
                Stroke::new(weight::HAIR, t.ink_faint),
            );
        }
        let colour = if chosen { t.accent } else { t.ink_soft };
        let stroke = Stroke::new(
            if chosen {
                weight::SYMBOL
            } else {
                weight::NARROW
            },
            colour,
        );
        for pair in round(rect).windows(2) {
            if let &[a, b] = pair {
                pen.line(a, b, stroke);
            }
        }
        let seen = rect.intersect(cell);
        if chosen && input.keep_outs.may_move && seen.is_positive() {
            marks(pen, seen, input);
        }
        if names && seen.is_positive() {
            let mut at = pos2(seen.left(), seen.bottom()) + vec2(6.0, -6.0);
            // Those that go through the whole view end at the same edge of it.
            let near = |p: &Pos2, at: Pos2| (p.x - at.x).abs() < NAME && (p.y - at.y).abs() < LINE;
            while named.iter().any(|p| near(p, at)) {
                at.y -= LINE;
            }
            named.push(at);
            callouts.add(Near {
                at,
                text: shortened(&keep_out.name),
                colour,
                within: cell,
            });
        }
    }
    pen.set_clip(clip);
}

/// A name as much of which is written as leaves room for the drawing; all of it stands in the list of keep-outs.
fn shortened(name: &str) -> String {
    match name.char_indices().nth(WRITTEN) {
        Some((end, _)) => format!("{}…", name.get(..end).unwrap_or(name).trim_end()),
        None => name.to_owned(),
    }
}

/// Whether it is hatched: where it is in the way of a tie-rod joint as this view is looked through. Others have an outline only.
fn is_hatched(input: &DrawingInput<'_>, keep_out: &KeepOut, projection: Projection) -> bool {
    let axis = projection.towards();
    // Where it goes right through the view its two edges say enough.
    let shown = [projection.right().0, projection.down().0];
    if shown.iter().any(|a| keep_out.corners.along(*a).is_none()) {
        return false;
    }
    let joints = [PointName::TieRodInner, PointName::TieRodOuter];
    let depths = joints.map(|point| {
        let at = PointRef::left(input.axle, point);
        input.build.point(at).map(|p| p[axis.index()])
    });
    // From above and from the side every keep-out is worth its hatching.
    axis != Axis::X
        || keep_out.corners.along(axis).is_none_or(|[a, b]| {
            let within = |v: f64| (a.min(b)..=a.max(b)).contains(&v);
            depths.into_iter().flatten().any(within)
        })
}

/// Its outline, closed.
fn round(rect: Rect) -> [Pos2; 5] {
    let corners = [
        rect.left_top(),
        rect.right_top(),
        rect.right_bottom(),
        rect.left_bottom(),
    ];
    [corners[0], corners[1], corners[2], corners[3], corners[0]]
}

/// Slanting lines over a rectangle, at the same places of the screen for every keep-out, so that neighbours look like one.
fn hatch(pen: &mut Pen, rect: Rect, stroke: Stroke) {
    if !rect.is_positive() {
        return;
    }
    let clip = pen.set_clip(rect);
    // A line goes through every place where x + y is the same.
    let mut sum = ((rect.left() + rect.top()) / PITCH).ceil() * PITCH;
    while sum < rect.right() + rect.bottom() {
        let (top, bottom) = (rect.top(), rect.bottom());
        pen.line(pos2(sum - top, top), pos2(sum - bottom, bottom), stroke);
        sum += PITCH;
    }
    pen.set_clip(clip);
}

/// Marks where a hand takes it: corners and middles of the edges.
fn marks(pen: &mut Pen, rect: Rect, input: &DrawingInput<'_>) {
    let t = input.tokens;
    let (centre, stroke) = (rect.center(), Stroke::new(weight::NARROW, t.accent));
    for x in [rect.left(), centre.x, rect.right()] {
        for y in [rect.top(), centre.y, rect.bottom()] {
            let at = pos2(x, y);
            if at != centre {
                pen.plate(
                    Rect::from_center_size(at, vec2(MARK, MARK)),
                    t.table,
                    stroke,
                );
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_long_name_is_cut_where_a_letter_ends() {
        assert_eq!(shortened("lower frame rail"), "lower frame rail");
        let exact = "é".repeat(WRITTEN);
        assert_eq!(shortened(&exact), exact);
        assert_eq!(shortened(&format!("{exact}é")), format!("{exact}…"));
        let spaced = format!("{} and more", "x".repeat(WRITTEN - 1));
        assert_eq!(shortened(&spaced), format!("{}…", "x".repeat(WRITTEN - 1)));
    }
}
