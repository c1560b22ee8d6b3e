//! Check bars: 100 mm and 4 in, across and up, since a printer may scale one way and not the other.

use trammel_fabrication::plane::{Point, Vector};

use crate::model::{Anchor, Drawing, Line, Text};

/// The bars' lengths, mm, and what is written on them.
const BARS: [(f64, &str); 2] = [(100.0, "100 mm"), (4.0 * 25.4, "4 in")];
/// Length of the longest, mm.
pub(super) const LONGEST: f64 = 4.0 * 25.4;
/// From bar to bar, mm.
const PITCH: f64 = 7.0;
/// Length of the ticks at a bar's ends, mm.
const TICK: f64 = 4.0;
/// Height of the lettering, mm.
const TEXT: f64 = 2.0;
/// Room that a pair takes across its length, mm.
pub(super) const PAIR: f64 = 2.0 * PITCH;

/// Both bars across, the lower left end of the lower one here.
pub(super) fn across(corner: Point, drawing: &mut Drawing) {
    pair(corner, Vector::x(), Vector::y(), drawing);
}

/// Both bars up, the lower end of the left one here.
pub(super) fn up(corner: Point, drawing: &mut Drawing) {
    pair(corner, Vector::y(), -Vector::x(), drawing);
}

/// Bars along one direction; the second lies beside the first, on the left as one looks along.
fn pair(corner: Point, along: Vector, left: Vector, drawing: &mut Drawing) {
    let mut start = corner;
    for (length, name) in BARS {
        let end = start + along * length;
        drawing.stroke(Line::NARROW, start, end);
        for tick in [start, end] {
            drawing.stroke(
                Line::NARROW,
                tick - left * (TICK / 2.0),
                tick + left * (TICK / 2.0),
            );
        }
        let at = start + along * (length / 2.0) + left * 0.8;
        let turn = along.y.atan2(along.x);
        drawing.letter(
            Text::new(at.x, at.y, TEXT, name)
                .turned(turn)
                .anchored(Anchor::Middle),
        );
        start += left * PITCH;
    }
}
