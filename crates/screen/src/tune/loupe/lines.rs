//! On the map: level lines, the valley floor, the borders of the clear area and the keep-outs.

use egui::{Align2, Color32, Mesh, Painter, Pos2, Rect, Shape, Stroke, StrokeKind, vec2};
use trammel_build::KeepOut;
use trammel_geometry::Point;

use super::{labels, place::Place};
use crate::{
    drawing::strokes,
    tokens::{Tokens, weight},
    tune::{clear::Clear, lattice::Lattice, map::MapWork, plane},
};

/// Paints them; `taken` are places that what is written keeps off.
pub(super) fn lines(
    painter: &Painter,
    place: &Place,
    map: &MapWork,
    clear: Option<&Clear>,
    mut taken: Vec<Rect>,
    tokens: &Tokens,
) {
    let pixel = 1.0 / painter.pixels_per_point();
    let mut mesh = Mesh::default();
    let line = Stroke::new(weight::HAIR, tokens.wash(line_colour(tokens), 0.75));
    for (_, stretches) in map.lines() {
        for [a, b] in stretches {
            strokes::add(&mut mesh, place.screen(*a), place.screen(*b), line, pixel);
        }
    }
    let floor: Vec<Pos2> = map.valley().map(|p| place.screen(p)).collect();
    let dash = Stroke::new(weight::SYMBOL, line_colour(tokens));
    for pair in floor.chunks_exact(2) {
        strokes::add(&mut mesh, pair[0], pair[1], dash, pixel);
    }
    painter.add(Shape::mesh(mesh));
    if let Some(clear) = clear {
        for keep_out in clear.keep_outs() {
            keep_out_lines(painter, place, map, (clear, keep_out), &mut taken, tokens);
        }
        borders(painter, place, clear, &mut taken, tokens);
    }
    labels::levels(painter, place, map, &mut taken, tokens);
}

/// Lines on the map are dark on the bright ramp and the other way round.
fn line_colour(tokens: &Tokens) -> Color32 {
    if tokens.dark {
        tokens.on_accent
    } else {
        tokens.ink
    }
}

/// The borders of the clear area with what lies beyond.
fn borders(
    painter: &Painter,
    place: &Place,
    clear: &Clear,
    taken: &mut Vec<Rect>,
    tokens: &Tokens,
) {
    let pixel = 1.0 / painter.pixels_per_point();
    let limits = [
        (&clear.rack_end, "rack end past its limit", tokens.danger),
        (&clear.swivel, "joint past its limit", tokens.caution),
    ];
    for (lattice, text, colour) in limits {
        let stroke = Stroke::new(weight::SYMBOL, colour);
        let mut mesh = Mesh::default();
        for [a, b] in lattice.level_line(1.0) {
            strokes::add(&mut mesh, place.screen(a), place.screen(b), stroke, pixel);
        }
        painter.add(Shape::mesh(mesh));
        if let Some(at) = beyond(lattice) {
            labels::plate(
                painter,
                place,
                place.screen(at),
                text,
                colour,
                taken,
                tokens,
            );
        }
    }
}

/// Where a figure is farthest past its limit, if it is anywhere.
fn beyond(lattice: &Lattice) -> Option<[f32; 2]> {
    let (at, least) = lattice
        .cells()
        .filter(|(_, v)| !v.is_nan())
        .min_by(|a, b| a.1.total_cmp(&b.1))?;
    (least < 1.0).then_some(at)
}

/// The outline of a keep-out and of its twin, with its name.
fn keep_out_lines(
    painter: &Painter,
    place: &Place,
    map: &MapWork,
    (clear, keep_out): (&Clear, &KeepOut),
    taken: &mut Vec<Rect>,
    tokens: &Tokens,
) {
    let stroke = Stroke::new(weight::SYMBOL, tokens.ink);
    let mut before = None;
    for corners in [keep_out.corners, keep_out.corners.mirrored()] {
        let mm = clear.unit().mm();
        // Along an axis where it counts at every place it goes right through the map.
        let mut ends = map.corners();
        for axis in plane::axes(map.plane()) {
            if let Some(extent) = corners.along(axis) {
                for (end, v) in ends.iter_mut().zip(extent) {
                    end[axis.index()] = mm * v;
                }
            }
        }
        let [a, b] = ends.map(|p: Point| place.screen(map.part_of(p)));
        let rect = Rect::from_two_pos(a, b);
        let seen = rect.intersect(place.map);
        // One that lies across the centre plane is its own twin.
        if !seen.is_positive() || before == Some(rect) {
            continue;
        }
        before = Some(rect);
        painter.rect_stroke(rect, 0.0, stroke, StrokeKind::Middle);
        let at = Align2::LEFT_BOTTOM.pos_in_rect(&seen) + vec2(50.0, -10.0);
        labels::plate(
            painter,
            place,
            at,
            &keep_out.name,
            tokens.ink_soft,
            taken,
            tokens,
        );
    }
}
