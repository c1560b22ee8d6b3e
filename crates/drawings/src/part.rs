//! A flat part drawn for the cutter, and at full size for the bench.

use trammel_fabrication::flat_part::{BendLine, FlatPart, Hole};
use trammel_fabrication::plane::{Placement, Point, Vector};
use trammel_fabrication::shown::LengthStyle;
use trammel_geometry::in_order;

use crate::metrics::Metrics;
use crate::model::{Axis, Dimension, Drawing, Layer, Line, Shape, Stop};
use crate::sheet::{self, Content, Page, Paper, TitleBlock};

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

/// Holes and openings come before the outline: cut in this order, the part still hangs in its plate while they are made.
fn cuts(part: &FlatPart, drawing: &mut Drawing) {
    let mut cut = |shape| drawing.add(Layer::Cut, Line::WIDE, shape);
    part.holes.iter().map(circle).for_each(&mut cut);
    let contours = part.openings.iter().chain([&part.outline]);
    contours.cloned().map(Shape::Contour).for_each(cut);
    for line in &part.bends {
        let ends = vec![line.from, line.to];
        drawing.add(Layer::Bend, Line::NARROW, Shape::Polyline(ends));
    }
}

fn circle(hole: &Hole) -> Shape {
    Shape::Circle {
        centre: hole.centre,
        radius: hole.diameter / 2.0,
    }
}

/// From the outline to the first dimension line, mm.
const FIRST: f64 = 8.0;
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
const LEADER_PITCH: f64 = 5.0;
/// From the outline to the lowest leader's lettering, mm.
const KNEE: f64 = 6.0;

/// Holes and bends named above the part. The leftmost stands highest and all lettering runs to the right, so that no leader crosses another or a word.
fn leaders(part: &FlatPart, style: LengthStyle, drawing: &mut Drawing) {
    let bounds = part.bounds();
    let mut notes = hole_notes(part, style);
    notes.extend(bend_notes(part, style));
    in_order(&mut notes, |(tip, _)| [tip.x, -tip.y]);
    let mut height = bounds.max.y + KNEE + LEADER_PITCH * notes.len() as f64;
    let mut least = f64::NEG_INFINITY;
    for (tip, text) in notes {
        height -= LEADER_PITCH;
        let knee = Point::new(tip.x.max(least), height);
        least = knee.x + APART;
        let leader = Dimension::Leader { tip, knee, text };
        drawing.add(Layer::Sheet, Line::NARROW, Shape::Dimension(leader));
    }
}

/// Least distance of two leaders' knees, mm.
const APART: f64 = 3.0;

/// Notes that say the same are one, at the leftmost (of a column the highest) of what they name, with how many there are.
fn gathered(notes: impl Iterator<Item = (Point, String)>) -> Vec<(Point, String)> {
    let mut kinds: Vec<(Point, String, usize)> = Vec::new();
    for (tip, text) in notes {
        match kinds.iter_mut().find(|kind| kind.1 == text) {
            Some((leftmost, _, count)) => {
                *count += 1;
                if (tip.x, leftmost.y) < (leftmost.x, tip.y) {
                    *leftmost = tip;
                }
            }
            None => kinds.push((tip, text, 1)),
        }
    }
    let counted = |(tip, text, count): (Point, String, usize)| match count {
        1 => (tip, text),
        several => (tip, format!("{several} x {text}")),
    };
    kinds.into_iter().map(counted).collect()
}

fn hole_notes(part: &FlatPart, style: LengthStyle) -> Vec<(Point, String)> {
    gathered(part.holes.iter().map(|hole| {
        let top = hole.centre + Vector::new(1.0, 1.0) * (hole.diameter / 8.0_f64.sqrt());
        let purpose = match hole.purpose.as_str() {
            "" => String::new(),
            purpose => format!(", {purpose}"),
        };
        (
            top,
            format!("\u{2300} {}{purpose}", style.drill(hole.diameter)),
        )
    }))
}

fn bend_notes(part: &FlatPart, style: LengthStyle) -> Vec<(Point, String)> {
    let end = |line: &BendLine| {
        let share = if line.to.y > line.from.y { 0.9 } else { 0.1 };
        line.from + (line.to - line.from) * share
    };
    gathered(
        part.bends
            .iter()
            .map(|line| (end(line), bend_note(line, style))),
    )
}

fn bend_note(line: &BendLine, style: LengthStyle) -> String {
    let bend = &line.bend;
    let degrees = (bend.angle().to_degrees() * 10.0).round() / 10.0;
    let (way, radius) = (line.way.word(), style.text(bend.inside_radius()));
    format!("bend {way} {degrees}\u{b0}, R {radius}")
}

/// The pages of a part's template, the part turned upright or lying, whichever takes fewer pages; lying where it makes no difference. `around` is all of the sheet but the
/// drawing; the part's own notes come first.
#[must_use]
pub fn lay_out(
    paper: Paper,
    block: &TitleBlock,
    part: &FlatPart,
    style: LengthStyle,
    around: &Content,
    metrics: &Metrics,
) -> Vec<Page> {
    let quarter = Placement {
        turn: std::f64::consts::FRAC_PI_2,
        ..Placement::AS_DRAWN
    };
    let pages = |part: &FlatPart| {
        let content = Content {
            drawing: template(part, style),
            notes: part.notes.iter().chain(&around.notes).cloned().collect(),
            ..around.clone()
        };
        sheet::lay_out(paper, block, &content, metrics)
    };
    let lying = pages(part);
    if lying.len() == 1 {
        return lying;
    }
    let upright = pages(&part.placed(&quarter));
    if upright.len() < lying.len() {
        upright
    } else {
        lying
    }
}
