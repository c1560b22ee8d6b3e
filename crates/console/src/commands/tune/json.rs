//! What `tune` found, as a machine reads it. The names are described in `trammel tune --help` and stay as they are.

use serde::Serialize;
use trammel_build::{LengthUnit, Side};
use trammel_tuning::{Figures, Score, TieRodJoint};

use super::{Found, limits, outcome::Outcome};
use crate::arguments::tune::TuneArguments;
use crate::commands::chosen::Chosen;
use crate::commands::chosen::tidy;
use crate::fault::Fault;

#[derive(Serialize)]
struct Tune<'a> {
    title: &'a str,
    unit: &'static str,
    axle: &'static str,
    side: &'static str,
    method: &'static str,
    seed: u64,
    moves: Vec<MoveOut>,
    tie_rod_length: Change,
    before: Option<ScoreOut>,
    after: ScoreOut,
    exact: Option<ScoreOut>,
    least: Option<ScoreOut>,
    figures: Vec<FigureOut>,
    limits: Vec<LimitOut>,
    others: Vec<OtherOut<'a>>,
    keep_out: Option<&'a str>,
    rule: Option<RuleOut>,
    out: Option<String>,
}

#[derive(Serialize)]
struct MoveOut {
    coordinate: String,
    from: f64,
    to: f64,
    by: f64,
    with_rack: bool,
}

#[derive(Serialize)]
struct Change {
    from: f64,
    to: f64,
}

#[derive(Serialize)]
struct ScoreOut {
    largest_deg: f64,
    rms_deg: f64,
    slope_deg: f64,
}

#[derive(Serialize)]
struct FigureOut {
    name: &'static str,
    before: Option<f64>,
    exact: Option<f64>,
    after: Option<f64>,
}

#[derive(Serialize)]
struct LimitOut {
    name: &'static str,
    from: Option<f64>,
    to: Option<f64>,
    value: Option<f64>,
    met: bool,
}

#[derive(Serialize)]
struct OtherOut<'a> {
    worth: f64,
    largest_deg: f64,
    in_steps: Option<StepsOut>,
    values: Vec<Value<'a>>,
}

#[derive(Serialize)]
struct StepsOut {
    worth: f64,
    largest_deg: f64,
}

#[derive(Serialize)]
struct Value<'a> {
    coordinate: &'a str,
    by: f64,
}

#[derive(Serialize)]
struct RuleOut {
    joint: &'static str,
    y: f64,
    z: f64,
    off_by: f64,
}

/// One JSON object, ended by a new line.
pub(super) fn text(
    chosen: &Chosen,
    arguments: &TuneArguments,
    found: &Found,
    outcome: &Outcome,
) -> Result<String, Fault> {
    let unit = chosen.unit();
    let outboard = if chosen.side == Side::Right {
        -1.0
    } else {
        1.0
    };
    let tune = Tune {
        title: &chosen.build().title,
        unit: unit.word(),
        axle: chosen.axle().word(),
        side: chosen.side.word(),
        method: found.method.word(),
        seed: arguments.seed,
        moves: moves(outcome),
        tie_rod_length: Change {
            from: unit.from_mm(outcome.rod[0]),
            to: unit.from_mm(outcome.rod[1]),
        },
        before: outcome.before.as_ref().map(|s| score(s, unit)),
        after: score(&outcome.after, unit),
        exact: outcome.exact.as_ref().map(|s| score(s, unit)),
        least: found.least.as_ref().map(|s| score(s, unit)),
        figures: figures(found, unit),
        limits: found.limits.iter().map(limit).collect(),
        others: others(found, unit, outboard),
        keep_out: outcome.keep_out.as_deref(),
        rule: outcome.rule.map(|(at, off)| RuleOut {
            joint: match arguments.point.joint() {
                TieRodJoint::Inner => "tie_rod.inner",
                TieRodJoint::Outer => "tie_rod.outer",
            },
            y: unit.from_mm(outboard * at.y),
            z: unit.from_mm(at.z),
            off_by: unit.from_mm(off),
        }),
        out: arguments.out.out.as_ref().map(|p| p.display().to_string()),
    };
    let json = serde_json::to_string_pretty(&tune).map_err(|e| Fault::Output(e.into()))?;
    Ok(json + "\n")
}

fn moves(outcome: &Outcome) -> Vec<MoveOut> {
    let out = |m: &super::outcome::Moved| MoveOut {
        coordinate: m.coordinate.to_string(),
        from: m.from,
        to: m.to,
        by: tidy(m.to - m.from),
        with_rack: m.with_rack,
    };
    outcome.moves.iter().map(out).collect()
}

fn score(s: &Score, unit: LengthUnit) -> ScoreOut {
    ScoreOut {
        largest_deg: s.largest.to_degrees(),
        rms_deg: s.rms.to_degrees(),
        slope_deg: s.slope.to_degrees() * unit.mm(),
    }
}

fn figures(found: &Found, unit: LengthUnit) -> Vec<FigureOut> {
    let Some(judged) = &found.figures else {
        return Vec::new();
    };
    let of = |figures: &Option<Figures>| figures.as_ref().map(|f| limits::all(f, unit));
    let (before, exact) = (of(&judged.before), of(&judged.exact));
    let at = |all: &Option<Vec<limits::Told>>, i: usize| all.as_ref()?.get(i)?.1;
    limits::all(&judged.after, unit)
        .into_iter()
        .enumerate()
        .map(|(i, (name, after, _))| FigureOut {
            name,
            before: at(&before, i),
            exact: at(&exact, i),
            after,
        })
        .collect()
}

fn limit(held: &limits::Held) -> LimitOut {
    LimitOut {
        name: held.name,
        from: held.from,
        to: held.to,
        value: held.value,
        met: held.met(),
    }
}

fn others(found: &Found, unit: LengthUnit, outboard: f64) -> Vec<OtherOut<'_>> {
    found
        .others
        .iter()
        .map(|s| OtherOut {
            worth: s.exact.worth,
            largest_deg: s.exact.figures.toe.largest.to_degrees(),
            in_steps: s.in_steps.as_ref().map(|t| StepsOut {
                worth: t.worth,
                largest_deg: t.figures.toe.largest.to_degrees(),
            }),
            values: found
                .names
                .iter()
                .zip(&s.exact.values)
                .map(|(moved, &by)| Value {
                    coordinate: &moved.name,
                    by: unit.from_mm(if moved.mirrored { outboard * by } else { by }),
                })
                .collect(),
        })
        .collect()
}
