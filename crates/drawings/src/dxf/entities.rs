//! One stroke as the entities of release 12.

use std::f64::consts::TAU;

use trammel_fabrication::plane::{Arc, Edge, Point};

use super::Groups;
use crate::ink::{Ink, Stroke};
use crate::metrics::Metrics;

pub(super) fn write(stroke: &Stroke, metrics: &Metrics, out: &mut Groups) {
    let layer = stroke.layer.name();
    match &stroke.ink {
        Ink::Path { edges, closed, .. } => match (edges.as_slice(), closed) {
            ([Edge::Arc(arc)], true) if arc.sweep.abs() >= TAU - 1e-9 => circle(arc, layer, out),
            ([Edge::Line { from, to }], false) => line(*from, *to, layer, out),
            ([Edge::Arc(round)], false) => arc(round, layer, out),
            _ => polyline(edges, *closed, layer, out),
        },
        Ink::Fill(points) => fill(points, layer, out),
        Ink::Text(text) => {
            start("TEXT", layer, out);
            point(10, metrics.start(text), out);
            out.number(40, text.height);
            out.text(1, &plain_text(&text.content));
            out.number(50, text.turn.to_degrees());
        }
    }
}

fn start(entity: &str, layer: &str, out: &mut Groups) {
    out.text(0, entity);
    out.text(8, layer);
}

/// A point in the group codes of the first, second ... point: x, y and z stand ten apart.
fn point(code: u16, at: Point, out: &mut Groups) {
    out.number(code, at.x);
    out.number(code + 10, at.y);
    out.number(code + 20, 0.0);
}

fn line(from: Point, to: Point, layer: &str, out: &mut Groups) {
    start("LINE", layer, out);
    point(10, from, out);
    point(11, to, out);
}

fn circle(arc: &Arc, layer: &str, out: &mut Groups) {
    start("CIRCLE", layer, out);
    point(10, arc.centre, out);
    out.number(40, arc.radius);
}

/// An arc always runs anticlockwise in the file.
fn arc(arc: &Arc, layer: &str, out: &mut Groups) {
    let (first, last) = match arc.sweep >= 0.0 {
        true => (arc.start, arc.start + arc.sweep),
        false => (arc.start + arc.sweep, arc.start),
    };
    start("ARC", layer, out);
    point(10, arc.centre, out);
    out.number(40, arc.radius);
    out.number(50, first.rem_euclid(TAU).to_degrees());
    out.number(51, last.rem_euclid(TAU).to_degrees());
}

fn polyline(edges: &[Edge], closed: bool, layer: &str, out: &mut Groups) {
    start("POLYLINE", layer, out);
    out.count(66, 1);
    point(10, Point::origin(), out);
    out.count(70, u32::from(closed));
    for edge in edges {
        vertex(edge.from(), bulge(edge), layer, out);
    }
    if let (false, Some(last)) = (closed, edges.last()) {
        vertex(last.to(), 0.0, layer, out);
    }
    start("SEQEND", layer, out);
}

fn bulge(edge: &Edge) -> f64 {
    match edge {
        Edge::Line { .. } => 0.0,
        Edge::Arc(arc) => (arc.sweep / 4.0).tan(),
    }
}

fn vertex(at: Point, bulge: f64, layer: &str, out: &mut Groups) {
    start("VERTEX", layer, out);
    point(10, at, out);
    if bulge != 0.0 {
        // Six decimals of a bulge would shift an arc of a metre by a thousandth; twelve don't.
        out.text(42, &format!("{bulge:.12}"));
    }
}

fn fill(points: &[Point], layer: &str, out: &mut Groups) {
    let next = points.iter().cycle().skip(1);
    let edges: Vec<Edge> = points
        .iter()
        .zip(next)
        .map(|(&from, &to)| Edge::Line { from, to })
        .collect();
    polyline(&edges, true, layer, out);
}

/// Release 12 holds one line of plain letters; its own code stands for the diameter sign.
fn plain_text(content: &str) -> String {
    content
        .chars()
        .map(|letter| match letter {
            '\u{2300}' => "%%c".to_owned(),
            '\u{b0}' => "%%d".to_owned(),
            '\u{20}'..='\u{7e}' => letter.to_string(),
            _ => "?".to_owned(),
        })
        .collect()
}
