//! A flat part drawn for the cutter, and at full size for the bench.

use trammel_fabrication::flat_part::{BendLine, FlatPart, Hole};
use trammel_fabrication::plane::{Point, Vector};
use trammel_fabrication::shown::LengthStyle;

use crate::model::{Axis, Dimension, Drawing, Layer, Line, Shape, Stop};

/// What the cutter gets: contours and holes to cut, bend lines to mark, no lettering. Kerf is not taken off; the cutter does that.
#[must_use]
pub fn for_the_cutter(part: &FlatPart) -> Drawing {
    let mut drawing = Drawing::new(part.name.clone());
    cuts(part, &mut drawing);
    drawing
}

/// Several parts as they lie on one plate.
#[must_use]
pub fn nested<'a>(title: &str, parts: impl IntoIterator<Item = &'a FlatPart>) -> Drawing {
    let mut drawing = Drawing::new(title);
    for part in parts {
        cuts(part, &mut drawing);
    }
    drawing
}

fn cuts(part: &FlatPart, drawing: &mut Drawing) {
    for contour in part.openings.iter().chain([&part.outline]) {
        drawing.add(Layer::Cut, Line::WIDE, Shape::Contour(contour.clone()));
    }
    for hole in &part.holes {
        drawing.add(Layer::Cut, Line::WIDE, circle(hole));
    }
    for line in &part.bends {
        drawing.add(
            Layer::Bend,
            Line::NARROW,
            Shape::Polyline(vec![line.from, line.to]),
        );
    }
}

fn circle(hole: &Hole) -> Shape {
    Shape::Circle {
        centre: hole.centre,
        radius: hole.diameter / 2.0,
    }
}

/// From the outline to the first dimension line, mm.
const FIRST: f64 = 10.0;
/// How far a centre-punch cross reaches past its hole, mm.
const PAST: f64 = 2.5;
/// The gap in the middle of a cross, so that the punch finds its own point, mm.
const PUNCH: f64 = 0.5;

/// The full-size template: outline and holes, a centre-punch cross in each, bend lines, and all measures from the left and the lower edge.
#[must_use]
pub fn template(part: &FlatPart, style: LengthStyle) -> Drawing {
    let mut drawing = for_the_cutter(part);
    for hole in &part.holes {
        cross(&mut drawing, hole.centre, hole.diameter / 2.0 + PAST);
    }
    let bounds = part.bounds();
    if bounds.is_empty() {
        return drawing;
    }
    let text = |length: f64| style.text(length);
    let mut across: Vec<Stop> = Vec::new();
    let mut up: Vec<Stop> = Vec::new();
    for hole in &part.holes {
        across.push(stop(hole.centre, text(hole.centre.x - bounds.min.x)));
        up.push(stop(hole.centre, text(hole.centre.y - bounds.min.y)));
    }
    bend_stops(part, style, &mut across, &mut up);
    across.push(stop(
        Point::new(bounds.max.x, bounds.min.y),
        text(bounds.width()),
    ));
    up.push(stop(
        Point::new(bounds.min.x, bounds.max.y),
        text(bounds.height()),
    ));
    for (axis, stops, line_at) in [
        (Axis::X, across, bounds.min.y - FIRST),
        (Axis::Y, up, bounds.min.x - FIRST),
    ] {
        let running = Dimension::Running {
            datum: bounds.min,
            axis,
            line_at,
            stops: without_doubles(stops),
        };
        drawing.add(Layer::Sheet, Line::NARROW, Shape::Dimension(running));
    }
    leaders(part, style, &mut drawing);
    drawing
}

fn stop(at: Point, text: String) -> Stop {
    Stop { at, text }
}

/// Bend lines that run up are measured across, others up.
fn bend_stops(part: &FlatPart, style: LengthStyle, across: &mut Vec<Stop>, up: &mut Vec<Stop>) {
    let bounds = part.bounds();
    for line in &part.bends {
        let run = line.to - line.from;
        if run.x.abs() < 1e-6 {
            let low = if line.from.y < line.to.y {
                line.from
            } else {
                line.to
            };
            across.push(stop(low, style.text(low.x - bounds.min.x)));
        } else if run.y.abs() < 1e-6 {
            let left = if line.from.x < line.to.x {
                line.from
            } else {
                line.to
            };
            up.push(stop(left, style.text(left.y - bounds.min.y)));
        }
    }
}

/// One measure for holes that lie in a row.
fn without_doubles(stops: Vec<Stop>) -> Vec<Stop> {
    let mut kept: Vec<Stop> = Vec::new();
    for stop in stops {
        if kept.iter().all(|other| other.text != stop.text) {
            kept.push(stop);
        }
    }
    kept
}

/// A cross with its middle left open, on the hole's centre.
pub(crate) fn cross(drawing: &mut Drawing, centre: Point, reach: f64) {
    for way in [Vector::x(), -Vector::x(), Vector::y(), -Vector::y()] {
        drawing.stroke(Line::NARROW, centre + way * PUNCH, centre + way * reach);
    }
    drawing.add(
        Layer::Sheet,
        Line::NARROW,
        Shape::Circle {
            centre,
            radius: PUNCH / 2.0,
        },
    );
}

/// Room for a line of lettering at a leader, mm.
const LEADER_PITCH: f64 = 6.0;
/// From the outline to the leaders' knees, mm.
const KNEE: f64 = 10.0;

/// Holes and bends named on the right, in the order of their heights, so that no leader crosses another.
fn leaders(part: &FlatPart, style: LengthStyle, drawing: &mut Drawing) {
    let bounds = part.bounds();
    let mut notes: Vec<(Point, String)> = hole_notes(part, style);
    notes.extend(part.bends.iter().map(|line| {
        (
            line.from + (line.to - line.from) * 0.8,
            bend_note(line, style),
        )
    }));
    notes.sort_by(|a, b| a.0.y.total_cmp(&b.0.y).then(b.0.x.total_cmp(&a.0.x)));
    let mut least = bounds.min.y;
    for (tip, text) in notes {
        let height = tip.y.max(least);
        least = height + LEADER_PITCH;
        let knee = Point::new(bounds.max.x + KNEE, height);
        drawing.add(
            Layer::Sheet,
            Line::NARROW,
            Shape::Dimension(Dimension::Leader { tip, knee, text }),
        );
    }
}

/// Equal holes share a note, at the one farthest to the right.
fn hole_notes(part: &FlatPart, style: LengthStyle) -> Vec<(Point, String)> {
    let same =
        |a: &Hole, b: &Hole| (a.diameter - b.diameter).abs() < 1e-6 && a.purpose == b.purpose;
    let mut notes = Vec::new();
    for (index, hole) in part.holes.iter().enumerate() {
        let alike = || part.holes.iter().filter(|other| same(hole, other));
        if part
            .holes
            .iter()
            .take(index)
            .any(|before| same(before, hole))
        {
            continue;
        }
        let right = alike()
            .max_by(|a, b| a.centre.x.total_cmp(&b.centre.x))
            .unwrap_or(hole);
        let count = match alike().count() {
            1 => String::new(),
            several => format!("{several} x "),
        };
        let purpose = if hole.purpose.is_empty() {
            String::new()
        } else {
            format!(", {}", hole.purpose)
        };
        let out = Vector::new(1.0, 0.0) * (hole.diameter / 2.0);
        notes.push((
            right.centre + out,
            format!("{count}\u{2300} {}{purpose}", style.text(hole.diameter)),
        ));
    }
    notes
}

fn bend_note(line: &BendLine, style: LengthStyle) -> String {
    let bend = &line.bend;
    let degrees = (bend.angle().to_degrees() * 10.0).round() / 10.0;
    let (way, radius) = (line.way.word(), style.text(bend.inside_radius()));
    format!("bend {way} {degrees}\u{b0}, R {radius}")
}
