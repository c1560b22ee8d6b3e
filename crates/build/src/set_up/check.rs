//! Figures of setting up that a build may not hold.

use trammel_setup::Raw;

use super::{SetUp, ToeMethod};
use crate::BuildFault;

/// Lengths beyond this are no vehicle's.
const LARGEST: f64 = 1e6;
const POSITIVE: &str = "a number above nought and at most a million";
const NOUGHT_OR_MORE: &str = "nought or more, and at most a million";
const ANGLE: &str = "less than 90 degrees either way";
const NUMBER: &str = "a number within a million either way";

/// The first figure that can't stand.
pub(crate) fn check(set_up: &SetUp) -> Option<BuildFault> {
    let fault = |path: String, found: f64, expected| BuildFault::Figure {
        path: format!("set_up.{path}"),
        found: found.to_string(),
        expected,
    };
    let bad = |f: &Figure| !f.is_usable();
    let adjusters = adjuster_figures(set_up);
    let sessions = set_up
        .sessions
        .iter()
        .zip(1..)
        .flat_map(|(s, n)| session_figures(s, n));
    let surveyed = set_up.surveyed.values().zip(1..).flat_map(|(p, n)| {
        let path = format!("surveyed.{n}");
        let variance = p
            .variances
            .map(|v| Figure::new(path.clone(), v, NOUGHT_OR_MORE));
        let both = p.covariances.map(|v| Figure::new(path.clone(), v, NUMBER));
        variance.into_iter().chain(both)
    });
    let statics = static_figures(set_up.statics);
    let odd = adjusters
        .into_iter()
        .chain(statics)
        .chain(sessions)
        .chain(surveyed)
        .find(bad)?;
    Some(fault(odd.path, odd.value, odd.expected))
}

struct Figure {
    path: String,
    value: f64,
    expected: &'static str,
}

impl Figure {
    fn new(path: impl Into<String>, value: f64, expected: &'static str) -> Self {
        Self {
            path: path.into(),
            value,
            expected,
        }
    }

    fn is_usable(&self) -> bool {
        let least = match self.expected {
            POSITIVE => self.value > 0.0,
            NOUGHT_OR_MORE => self.value >= 0.0,
            ANGLE => self.value.abs() < 90.0,
            _ => true,
        };
        least && self.value.abs() <= LARGEST
    }
}

fn adjuster_figures(set_up: &SetUp) -> Vec<Figure> {
    let a = &set_up.adjusters;
    let mut all = Vec::new();
    let mut add = |path: &str, value, expected| {
        all.push(Figure::new(format!("adjusters.{path}"), value, expected));
    };
    if let Some(r) = a.rack_end {
        add("rack_end.turns_out", r.turns_out, NOUGHT_OR_MORE);
        add("rack_end.turns_in", r.turns_in, NOUGHT_OR_MORE);
    }
    for (name, stack) in [
        ("washers.thickness", a.washers),
        ("shims.thickness", a.shims),
    ] {
        if let Some(s) = stack {
            add(name, s.thickness, POSITIVE);
        }
    }
    if let Some(r) = a.rod {
        add("rod.per_turn", r.per_turn, POSITIVE);
        add("rod.shorter", r.shorter, NOUGHT_OR_MORE);
        add("rod.longer", r.longer, NOUGHT_OR_MORE);
    }
    all
}

fn static_figures(statics: super::Statics) -> Vec<Figure> {
    let weights = statics.weights.map(super::Weights::figures);
    let mut all: Vec<Figure> = statics
        .angles()
        .map(|v| Figure::new("statics", v, ANGLE))
        .collect();
    all.extend(
        weights
            .into_iter()
            .flatten()
            .map(|v| Figure::new("statics.weights", v, NOUGHT_OR_MORE)),
    );
    let shock = statics.shock.into_iter().flatten();
    all.extend(shock.map(|v| Figure::new("statics.shock", v, POSITIVE)));
    let tape = statics.tape_difference.into_iter();
    all.extend(tape.map(|v| Figure::new("statics.tape_difference", v, NUMBER)));
    all
}

fn session_figures(session: &super::Session, number: usize) -> Vec<Figure> {
    let path = |name: &str| format!("sessions.{number}.{name}");
    let mut all: Vec<Figure> = Vec::new();
    match session.method {
        ToeMethod::TwoDials(v, _)
        | ToeMethod::OneDial(v, _)
        | ToeMethod::Tape(v)
        | ToeMethod::Laser(v, _)
        | ToeMethod::Mirror(v) => all.push(Figure::new(path("method"), v, POSITIVE)),
        ToeMethod::Degrees => {}
    }
    all.extend(
        session
            .accuracy
            .map(|v| Figure::new(path("accuracy"), v, POSITIVE)),
    );
    all.extend(
        session
            .travel_accuracy
            .map(|v| Figure::new(path("travel_accuracy"), v, NOUGHT_OR_MORE)),
    );
    all.extend(
        session
            .adjusted
            .iter()
            .map(|a| Figure::new(path("adjusted"), a.by, NUMBER)),
    );
    for row in &session.rows {
        let (shown, expected) = match row.shown {
            Raw::Pair { front, rear } => ([front, rear], NUMBER),
            Raw::Dial(v) => ([v, v], NUMBER),
            Raw::Spot(v, _) | Raw::Degrees(v, _) => ([v, v], NOUGHT_OR_MORE),
        };
        all.extend(shown.map(|v| Figure::new(path("rows"), v, expected)));
        all.extend([row.rack, row.place].map(|v| Figure::new(path("rows"), v, NUMBER)));
    }
    all
}
