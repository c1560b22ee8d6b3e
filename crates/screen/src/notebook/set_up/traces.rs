//! What the Set up stage adds to the large plot: what was read, and the curves as they most likely are and will be.

use trammel_tuning::ToeCurves;

use super::super::NotebookInput;
use crate::plot::{Manner, Trace};

pub(in super::super) fn traces(input: &NotebookInput<'_>) -> Vec<Trace> {
    let mut all = predicted(input);
    all.extend(measured(input));
    all
}

/// As learned from all readings, and after the move.
fn predicted(input: &NotebookInput<'_>) -> Vec<Trace> {
    let (Some(Ok(next)), Some(side)) = (input.set_up.next(), input.set_up.side()) else {
        return Vec::new();
    };
    let tokens = input.tokens;
    let Some(side) = next.sides.iter().find(|s| s.readings.side == side) else {
        return Vec::new();
    };
    let trace = |name: &str, curves: &ToeCurves, colour, manner| {
        let curve = curves.curves.first();
        let changes = curve.map_or(&[][..], |c| &c.changes);
        let travels = next.stations.travels().iter();
        Trace {
            name: name.to_owned(),
            points: travels
                .zip(changes)
                .map(|(t, c)| [input.build.unit.from_mm(*t), c.to_degrees()])
                .collect(),
            colour,
            manner,
        }
    };
    let mut all = vec![trace(
        "as it most likely is",
        &side.advice.now.after,
        tokens.lower_arm,
        Manner::Thin,
    )];
    if !side.advice.best.moves.is_empty() || next.shims != 0 {
        let after = &side.advice.best.after;
        all.push(trace(
            "after the move",
            after,
            tokens.upper_arm,
            Manner::Dashed,
        ));
    }
    all
}

/// Points with bars of one standard deviation.
fn measured(input: &NotebookInput<'_>) -> Vec<Trace> {
    let Some(measured) = input.set_up.measured().filter(|m| !m.points.is_empty()) else {
        return Vec::new();
    };
    let unit = input.build.unit;
    let colour = input.tokens.ink;
    let bar = |x: f64, y: f64, by: f64| Trace {
        name: "one standard deviation".to_owned(),
        points: vec![[x, y - by], [x, y + by]],
        colour,
        manner: Manner::Bar,
    };
    let at = |p: &crate::set_up::measured::MeasuredPoint| [unit.from_mm(p.travel), p.change];
    let mut all: Vec<Trace> = measured
        .points
        .iter()
        .map(|p| bar(at(p)[0], p.change, p.deviation))
        .collect();
    all.push(Trace {
        name: "read".to_owned(),
        points: measured.points.iter().map(at).collect(),
        colour,
        manner: Manner::Marks,
    });
    all
}
