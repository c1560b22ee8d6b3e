//! Which way the bolts of the tie-rod joints stand: a bolt through the joint, or its end where it points at the viewer.

use egui::{Pos2, Stroke, Vec2};
use trammel_build::{BoltAxis, Side};

use super::{DrawingInput, Projection, pen::Pen, scene::Joints, sheet::Sheet};
use crate::tokens::weight;

/// Half a bolt's length and half its head's width, points at the usual scale.
const HALF: f32 = 17.0;
const HEAD: f32 = 4.5;
/// A bolt that shows less than this part of its length points at the viewer.
const END_ON: f64 = 0.25;

/// Inks the bolts of a corner's tie-rod joints, as far as the build says how they stand.
pub(crate) fn ink(
    pen: &mut Pen,
    input: &DrawingInput<'_>,
    sheet: &Sheet,
    projection: Projection,
    joints: &Joints,
) {
    let Some(spec) = input.build.axle_spec(input.axle) else {
        return;
    };
    let bolts = spec.joint_bolts;
    let size = sheet.symbol_size();
    let stroke = Stroke::new(weight::SYMBOL, input.tokens.ink);
    for (bolt, at) in [(bolts.inner, joints.inner), (bolts.outer, joints.outer)] {
        let Some(bolt) = bolt else { continue };
        let centre = sheet.screen(projection, at);
        match on_screen(bolt, joints.side, projection) {
            Some(way) => side_on(pen, centre, way, size, stroke),
            None => end_on(pen, centre, size, stroke),
        }
    }
}

/// The part of a unit length along the bolt that a view shows; `None` where it points at the viewer.
fn on_screen(bolt: BoltAxis, side: Side, projection: Projection) -> Option<Vec2> {
    let along = side.way_in_vehicle(bolt.direction());
    let (right, down) = projection.frame();
    let (x, y) = (along.dot(&right), along.dot(&down));
    (x.hypot(y) > END_ON).then(|| Vec2::new(x as f32, y as f32))
}

/// Shank with head and nut, clear of the joint's own symbol.
fn side_on(pen: &mut Pen, at: Pos2, way: Vec2, size: f32, stroke: Stroke) {
    let across = way.normalized().rot90() * (HEAD * size);
    for sign in [-1.0, 1.0] {
        let end = at + way * (sign * HALF * size);
        pen.line(at + way.normalized() * (sign * 7.0 * size), end, stroke);
        pen.line(end + across, end - across, stroke);
    }
}

/// A head seen from its end: six sides.
fn end_on(pen: &mut Pen, at: Pos2, size: f32, stroke: Stroke) {
    let corner = |n: u8| {
        let turn = f32::from(n) * std::f32::consts::TAU / 6.0;
        at + Vec2::angled(turn) * (8.5 * size)
    };
    pen.outline((0..6).map(corner).collect(), stroke);
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_bolt_shows_its_length_in_two_views_and_its_end_in_the_third() {
        let seen = |bolt| Projection::ALL.map(|p| on_screen(bolt, Side::Left, p).is_some());
        // Front, plan, side.
        assert_eq!(seen(BoltAxis::ForeAft), [false, true, true]);
        assert_eq!(seen(BoltAxis::Vertical), [true, false, true]);
        assert_eq!(seen(BoltAxis::Lateral), [true, true, false]);
    }

    #[test]
    fn a_slanting_bolt_leans_the_other_way_on_the_other_side() {
        let bolt = BoltAxis::Direction([0.0, 1.0, 1.0]);
        let left = on_screen(bolt, Side::Left, Projection::Front).unwrap();
        let right = on_screen(bolt, Side::Right, Projection::Front).unwrap();
        assert!(left.x * left.y < 0.0, "up and outboard: {left}");
        assert!(right.x * right.y > 0.0, "{right}");
    }
}
