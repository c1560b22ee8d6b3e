//! Dimensions drawn out: lines, arrow heads, lettering.

use std::f64::consts::FRAC_PI_2;

use trammel_fabrication::plane::{Point, Vector};
use trammel_geometry::least_first;

use super::{Ink, circle, polyline};
use crate::metrics::Metrics;
use crate::model::{Anchor, Axis, Dimension, Line, Stop, Text};

/// Height of a dimension's capitals, mm: the smallest that reads at arm's length.
pub(crate) const TEXT: f64 = 2.5;
/// Length of an arrow head, mm; a quarter as wide.
const ARROW: f64 = 2.5;
/// Free paper between outline and extension line, mm.
const GAP: f64 = 0.8;
/// How far an extension line goes beyond the dimension line, mm.
const BEYOND: f64 = 1.5;
/// From line to lettering, mm.
const CLEAR: f64 = 0.8;
/// Least distance of two lettered lines that lie side by side, mm.
const PITCH: f64 = TEXT * 1.6;
/// Radius of the datum's circle, mm.
const DATUM: f64 = 1.0;

/// Draws a dimension.
pub(super) fn draw(dimension: &Dimension, metrics: &Metrics, put: &mut dyn FnMut(Ink)) {
    match dimension {
        Dimension::Linear {
            from,
            to,
            axis,
            line_at,
            text,
        } => linear([*from, *to], Frame(*axis), *line_at, text, metrics, put),
        Dimension::Running {
            datum,
            axis,
            line_at,
            stops,
        } => running(*datum, Frame(*axis), *line_at, stops, put),
        Dimension::Leader { tip, knee, text } => leader(*tip, *knee, text, metrics, put),
    }
}

/// Measures along an axis, and across it.
#[derive(Clone, Copy)]
struct Frame(Axis);

impl Frame {
    fn along(self, point: Point) -> f64 {
        match self.0 {
            Axis::X => point.x,
            Axis::Y => point.y,
        }
    }

    fn across(self, point: Point) -> f64 {
        match self.0 {
            Axis::X => point.y,
            Axis::Y => point.x,
        }
    }

    fn point(self, along: f64, across: f64) -> Point {
        match self.0 {
            Axis::X => Point::new(along, across),
            Axis::Y => Point::new(across, along),
        }
    }

    /// Direction in which the text of a dimension line is read.
    fn reading(self) -> f64 {
        match self.0 {
            Axis::X => 0.0,
            Axis::Y => FRAC_PI_2,
        }
    }
}

fn stroke(points: &[Point], put: &mut dyn FnMut(Ink)) {
    put(polyline(points, Line::NARROW));
}

/// A filled head whose tip is here, pointing along a unit vector.
fn arrow(tip: Point, pointing: Vector, put: &mut dyn FnMut(Ink)) {
    let side = Vector::new(-pointing.y, pointing.x) * (ARROW / 8.0);
    let back = tip - pointing * ARROW;
    put(Ink::Fill(vec![tip, back + side, back - side]));
}

/// From a point of the part past the dimension line, to `end`, with a kink where the end was moved aside.
fn extension(
    frame: Frame,
    point: Point,
    line_at: f64,
    end: f64,
    moved: f64,
    put: &mut dyn FnMut(Ink),
) {
    let away = (line_at - frame.across(point)).signum();
    let along = frame.along(point);
    let start = frame.point(along, frame.across(point) + away * GAP);
    let out = line_at + away * BEYOND;
    let mut points = vec![start, frame.point(along, out)];
    if (moved - along).abs() > 1e-9 {
        points.push(frame.point(moved, out + away * PITCH * 0.6));
    }
    points.push(frame.point(moved, end));
    stroke(&points, put);
}

fn linear(
    ends: [Point; 2],
    frame: Frame,
    line_at: f64,
    text: &str,
    metrics: &Metrics,
    put: &mut dyn FnMut(Ink),
) {
    let mut alongs = ends.map(|end| frame.along(end));
    for end in ends {
        let away = (line_at - frame.across(end)).signum();
        extension(
            frame,
            end,
            line_at,
            line_at + away * BEYOND,
            frame.along(end),
            put,
        );
    }
    alongs.sort_by(f64::total_cmp);
    let [low, high] = alongs;
    let room = high - low - 2.0 * ARROW;
    let width = metrics.width(text, TEXT, false);
    let forward = frame.point(1.0, 0.0).coords;
    let (reach, inside) = match room > 2.0 {
        true => (0.0, 1.0),
        false => (2.0 * ARROW, -1.0),
    };
    stroke(
        &[
            frame.point(low - reach, line_at),
            frame.point(high + reach, line_at),
        ],
        put,
    );
    arrow(frame.point(low, line_at), forward * -inside, put);
    arrow(frame.point(high, line_at), forward * inside, put);
    let middle = if width <= room {
        (low + high) / 2.0
    } else {
        high + reach + CLEAR + width / 2.0
    };
    // Above the line as it is read: to the left of a line that goes up.
    let above = match frame.0 {
        Axis::X => CLEAR,
        Axis::Y => -CLEAR,
    };
    if width > room {
        stroke(
            &[
                frame.point(high, line_at),
                frame.point(middle + width / 2.0, line_at),
            ],
            put,
        );
    }
    let at = frame.point(middle, line_at + above);
    put(Ink::Text(lettering(
        at,
        text,
        frame.reading(),
        Anchor::Middle,
    )));
}

fn lettering(at: Point, text: &str, turn: f64, anchor: Anchor) -> Text {
    Text::new(at.x, at.y, TEXT, text)
        .turned(turn)
        .anchored(anchor)
}

fn running(datum: Point, frame: Frame, line_at: f64, stops: &[Stop], put: &mut dyn FnMut(Ink)) {
    let origin = frame.along(datum);
    let mut sorted: Vec<&Stop> = stops.iter().collect();
    least_first(&mut sorted, |stop| frame.along(stop.at));
    let away = (line_at - frame.across(datum)).signum();
    put(circle(frame.point(origin, line_at), DATUM, Line::NARROW));
    let nought = Stop {
        at: datum,
        text: "0".to_owned(),
    };
    let mut all = vec![&nought];
    all.extend(sorted.iter().copied());
    least_first(&mut all, |stop| frame.along(stop.at));
    let places = spread(
        &all.iter()
            .map(|stop| frame.along(stop.at))
            .collect::<Vec<_>>(),
    );
    let end = line_at + away * (BEYOND + PITCH);
    for (stop, place) in all.iter().zip(&places) {
        extension(frame, stop.at, line_at, end, *place, put);
        put(Ink::Text(stop_text(
            frame,
            *place,
            end + away * CLEAR,
            away,
            &stop.text,
        )));
    }
    let farthest = |sign: f64| {
        sorted
            .iter()
            .map(|stop| sign * (frame.along(stop.at) - origin))
            .fold(0.0, f64::max)
    };
    let forward = frame.point(1.0, 0.0).coords;
    stroke(
        &[
            frame.point(origin - farthest(-1.0), line_at),
            frame.point(origin + farthest(1.0), line_at),
        ],
        put,
    );
    for stop in &sorted {
        let side = (frame.along(stop.at) - origin).signum();
        arrow(
            frame.point(frame.along(stop.at), line_at),
            forward * side,
            put,
        );
    }
}

/// The text at the end of an extension line, read along it.
fn stop_text(frame: Frame, place: f64, end: f64, away: f64, text: &str) -> Text {
    // The base line lies half a capital aside, so that the line points at the middle of the letters.
    match frame.0 {
        Axis::X => {
            let anchor = if away < 0.0 {
                Anchor::End
            } else {
                Anchor::Start
            };
            lettering(Point::new(place + TEXT / 2.0, end), text, FRAC_PI_2, anchor)
        }
        Axis::Y => {
            let anchor = if away < 0.0 {
                Anchor::End
            } else {
                Anchor::Start
            };
            lettering(Point::new(end, place - TEXT / 2.0), text, 0.0, anchor)
        }
    }
}

/// Places at least a pitch apart, in the same order, as near as may be to where they should be: neighbours that crowd are spread about their middle.
fn spread(wanted: &[f64]) -> Vec<f64> {
    // Groups of places in a row, each with the sum of where its members would like the first to be.
    let mut groups: Vec<(f64, usize)> = Vec::new();
    for &place in wanted {
        groups.push((place, 1));
        while let [.., (first, count), (next, more)] = groups.as_mut_slice() {
            let room = *next - *first;
            if room >= *count as f64 * PITCH {
                break;
            }
            let joined = *count + *more;
            // Mean of what each group wants for the joined group's first place.
            *first = (*first * *count as f64 + (*next - *count as f64 * PITCH) * *more as f64)
                / joined as f64;
            *count = joined;
            groups.pop();
        }
    }
    groups
        .iter()
        .flat_map(|&(first, count)| (0..count).map(move |i| first + i as f64 * PITCH))
        .collect()
}

fn leader(tip: Point, knee: Point, text: &str, metrics: &Metrics, put: &mut dyn FnMut(Ink)) {
    let width = metrics.width(text, TEXT, false);
    let side = if knee.x < tip.x { -1.0 } else { 1.0 };
    let end = Point::new(knee.x + side * (width + 2.0 * CLEAR), knee.y);
    stroke(&[tip, knee, end], put);
    let pointing = tip - knee;
    if pointing.norm() > 1e-9 {
        arrow(tip, pointing / pointing.norm(), put);
    }
    let start = knee.x.min(end.x) + CLEAR;
    put(Ink::Text(lettering(
        Point::new(start, knee.y + CLEAR),
        text,
        0.0,
        Anchor::Start,
    )));
}
