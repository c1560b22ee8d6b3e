//! The rack: a bar in its guide, with the threaded ends that carry the tie rods.
//!
//! A build gives where the bar leaves the housing, its end faces and the joints; thicknesses here are a sketch.

use egui::{Pos2, Stroke, Vec2};
use trammel_geometry::Point;

use super::{
    Projection,
    pen::{DASHED, Pen},
    scene::{Joints, RackPlace, Scene},
    sheet::Sheet,
};
use crate::tokens::{Tokens, weight};

/// Half the height of the housing and of the bar, mm.
const HOUSING_MM: f64 = 19.0;
const BAR_MM: f64 = 10.0;

struct Thickness {
    housing: f32,
    bar: f32,
}

impl Thickness {
    fn of(sheet: &Sheet) -> Self {
        let size = sheet.symbol_size();
        Self {
            housing: sheet.length(HOUSING_MM).max(5.4 * size),
            bar: sheet.length(BAR_MM).max(2.4 * size),
        }
    }
}

/// The rack at rest.
pub(crate) fn rack(
    pen: &mut Pen,
    sheet: &Sheet,
    projection: Projection,
    scene: &Scene,
    tokens: &Tokens,
) {
    let Some(mouths) = scene.mouths() else { return };
    let [left, right] = mouths.map(|m| sheet.screen(projection, m.mouth));
    let thick = Thickness::of(sheet);
    let span = (left - right).length();
    if projection == Projection::Side || span < 4.0 {
        return end_on(pen, left, &thick, tokens);
    }
    for joints in scene.rest.iter().flatten() {
        if let Some(place) = &joints.rack {
            bar_and_end(pen, sheet, projection, joints, place, &thick, tokens);
        }
    }
    housing(pen, left, right, &thick, tokens);
}

/// Seen along the bar: its section in its housing.
fn end_on(pen: &mut Pen, at: Pos2, thick: &Thickness, tokens: &Tokens) {
    let h = thick.housing;
    let corners = [(-h, -h), (h, -h), (h, h), (-h, h)].map(|(x, y)| at + Vec2::new(x, y));
    let stroke = Stroke::new(weight::NARROW, tokens.ink_soft);
    pen.filled(corners.to_vec(), tokens.table, stroke);
    pen.ring(
        at,
        thick.bar.max(3.0),
        Stroke::new(weight::HAIR, tokens.ink_soft),
    );
}

fn housing(pen: &mut Pen, left: Pos2, right: Pos2, thick: &Thickness, tokens: &Tokens) {
    let along = (left - right).normalized();
    let up = along.rot90();
    let h = thick.housing;
    let stroke = Stroke::new(weight::NARROW, tokens.steel);
    let body = vec![left + up * h, left - up * h, right - up * h, right + up * h];
    pen.filled(body, tokens.table, stroke);
    // The bar inside is hidden.
    let hidden = Stroke::new(weight::HAIR, tokens.ink_faint);
    for side in [-1.0, 1.0] {
        let off = up * (side * thick.bar);
        pen.pattern(&[left + off, right + off], hidden, DASHED);
    }
    // Glands at the bore mouths.
    let (deep, tall) = (h * 0.55, h * 0.72);
    for (mouth, inward) in [(left, -along), (right, along)] {
        let foot = mouth + inward * deep;
        let gland = vec![
            mouth + up * tall,
            mouth - up * tall,
            foot - up * tall,
            foot + up * tall,
        ];
        pen.filled(gland, tokens.table, stroke);
    }
}

/// The bar from its bore mouth to its face, and the end from there to the joint.
fn bar_and_end(
    pen: &mut Pen,
    sheet: &Sheet,
    projection: Projection,
    joints: &Joints,
    place: &RackPlace,
    thick: &Thickness,
    tokens: &Tokens,
) {
    let at = |p: Point| sheet.screen(projection, p);
    let (mouth, face) = (at(place.mouth), at(place.face));
    let out = (place.face - place.mouth).dot(&place.outward);
    let along = at(place.mouth + place.outward * 100.0) - mouth;
    if along.length() < 1e-3 {
        return;
    }
    let up = along.normalized().rot90() * thick.bar;
    if out > 0.0 {
        let stroke = Stroke::new(weight::NARROW, tokens.steel);
        let bar = vec![mouth + up, face + up, face - up, mouth - up];
        pen.filled(bar, tokens.table, stroke);
    }
    let rod = Stroke::new(weight::WIDE, tokens.steel);
    for [a, b] in end(joints, place) {
        pen.line(at(a), at(b), rod);
    }
}

/// The rack end: straight out of the face, then across to a joint that stands off the rack's line.
fn end(joints: &Joints, place: &RackPlace) -> [[Point; 2]; 2] {
    let free = (joints.inner - place.face).dot(&place.outward);
    let knee = place.face + place.outward * free;
    [[place.face, knee], [knee, joints.inner]]
}

/// The rack end in another position.
pub(crate) fn moved(
    pen: &mut Pen,
    sheet: &Sheet,
    projection: Projection,
    joints: &Joints,
    tokens: &Tokens,
) {
    let Some(place) = &joints.rack else { return };
    let stroke = Stroke::new(weight::NARROW, tokens.ghost(tokens.steel));
    for [a, b] in end(joints, place) {
        let ends = [a, b].map(|p| sheet.screen(projection, p));
        pen.pattern(&ends, stroke, DASHED);
    }
}
