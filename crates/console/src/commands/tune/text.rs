//! What `tune` found, as a person reads it.

use trammel_build::{Axis, LengthUnit, Side};
use trammel_tuning::{Cause, Figures, Score, TieRodJoint};

use super::{
    Found, Method, limits,
    limits::Held,
    outcome::{Moved, Outcome},
};
use crate::arguments::tune::PointWord;
use crate::arguments::tune::TuneArguments;
use crate::arguments::tune::WaysWord;
use crate::commands::chosen::Chosen;
use crate::commands::chosen::on_tape;

/// Errors smaller than this are not spoken of, mm.
const WORTH_SAYING: f64 = 0.2;

pub(super) fn text(
    chosen: &Chosen,
    arguments: &TuneArguments,
    found: &Found,
    outcome: &Outcome,
) -> String {
    let mut lines = vec![
        chosen.build().title.clone(),
        format!(
            "{} axle, {} side: {}.",
            chosen.axle().word(),
            chosen.side.word(),
            method(arguments, found)
        ),
        String::new(),
    ];
    lines.extend(outcome.moves.iter().map(|m| moved(chosen, m)));
    if outcome.moves.is_empty() {
        lines.push("Nothing moves: it is at its best already.".into());
    }
    lines.extend(rod(chosen.unit(), outcome.rod));
    lines.push(String::new());
    lines.extend(scores(chosen.unit(), outcome));
    lines.extend(found.least.as_ref().map(least));
    lines.extend(cause(chosen, arguments.point.joint()));
    lines.extend(rule(chosen, arguments.point.joint(), outcome));
    lines.extend(found.limits.iter().map(limit));
    lines.extend(figures(chosen, found));
    lines.extend(others(found));
    if let Some(name) = &outcome.keep_out {
        lines.push(format!(
            "The place lies in the keep-out {name}; no clear one was found."
        ));
    }
    if let Some(path) = &arguments.out.out {
        lines.push(format!("Written to {}.", path.display()));
    }
    lines.push(
        "Geometry only, joints without play: `trammel check` says what else is near a limit."
            .into(),
    );
    lines.join("\n") + "\n"
}

fn method(arguments: &TuneArguments, found: &Found) -> String {
    let joint = match arguments.point {
        PointWord::Inner => "the inner tie-rod joint",
        PointWord::Outer => "the outer tie-rod joint",
        PointWord::Both => "both tie-rod joints",
    };
    let ways = match arguments.ways {
        WaysWord::Front => "in the front view",
        WaysWord::Side => "in the side view",
        WaysWord::Plan => "in the plan",
        WaysWord::Height => "in height only",
        WaysWord::Width => "in width only",
        WaysWord::Free => "every way",
    };
    match found.method {
        Method::BestSpot => format!("the best spot of {joint} {ways}"),
        Method::ClearSpot => format!("the best spot of {joint} clear of the keep-outs, {ways}"),
        Method::Search => "the best of a global search".to_owned(),
    }
}

fn moved(chosen: &Chosen, m: &Moved) -> String {
    let unit = chosen.unit();
    let by = m.to - m.from;
    let out = by * if chosen.side == Side::Left { 1.0 } else { -1.0 };
    let way = match m.coordinate.axis {
        Axis::X => {
            if by > 0.0 {
                "forward"
            } else {
                "back"
            }
        }
        Axis::Y => {
            if out > 0.0 {
                "outboard"
            } else {
                "inboard"
            }
        }
        Axis::Z => {
            if by > 0.0 {
                "up"
            } else {
                "down"
            }
        }
    };
    format!(
        "{:<28} {:>10.4} becomes {:>10.4} {}: {way} {}{}",
        m.coordinate.to_string(),
        m.from,
        m.to,
        unit.sign(),
        on_tape(by.abs() * unit.mm(), unit),
        if m.with_rack { ", with the rack" } else { "" }
    )
}

fn rod(unit: LengthUnit, [from, to]: [f64; 2]) -> Option<String> {
    let told = format!(
        "Tie rod between its joints   {:>10.4} becomes {:>10.4} {}, which keeps static toe. Winding the rod alone cures no toe change.",
        unit.from_mm(from),
        unit.from_mm(to),
        unit.sign()
    );
    ((from - to).abs() > 1e-6).then_some(told)
}

fn scores(unit: LengthUnit, outcome: &Outcome) -> Vec<String> {
    let row = |name: &str, of: &dyn Fn(&Score) -> f64, sign: &str| {
        let before = outcome
            .before
            .as_ref()
            .map_or("out of reach".into(), |b| format!("{:.4}{sign}", of(b)));
        format!(
            "{name:<28} {before:>10} becomes {:>10}",
            format!("{:.4}{sign}", of(&outcome.after))
        )
    };
    let per = format!("°/{}", unit.sign());
    let mut lines = vec![
        row("Largest toe change", &|s| s.largest.to_degrees(), "°"),
        row("RMS toe change", &|s| s.rms.to_degrees(), "°"),
        row(
            "Slope at ride height",
            &|s| s.slope.to_degrees() * unit.mm(),
            &per,
        ),
    ];
    lines.extend(outcome.exact.as_ref().map(|e| {
        format!(
            "In whole steps; the exact place would have {:.4}°.",
            e.largest.to_degrees()
        )
    }));
    lines
}

fn least(least: &Score) -> String {
    format!(
        "The least anywhere within reach is {:.4}°, further away: what is within 0.001° of it counts as equal, and the least movement was chosen.",
        least.largest.to_degrees()
    )
}

/// The two errors of a joint as it is.
fn cause(chosen: &Chosen, joint: TieRodJoint) -> Vec<String> {
    let Some(cause) = chosen
        .stations(0.0)
        .ok()
        .and_then(|s| Cause::of(chosen.corner(), joint, &s))
    else {
        return Vec::new();
    };
    let size = |mm: f64| on_tape(mm.abs(), chosen.unit());
    let height = cause.height(WORTH_SAYING).map(|h| {
        let by = size(cause.height_error);
        format!(
            "Why it sloped ({by}, {}): {h}; {}.",
            cause.side,
            h.cure(joint)
        )
    });
    let length = cause.length(WORTH_SAYING).map(|l| {
        let by = size(cause.length_error);
        format!("Why it bowed ({by}): {l}; {}.", l.cure(joint))
    });
    height.into_iter().chain(length).collect()
}

fn rule(chosen: &Chosen, joint: TieRodJoint, outcome: &Outcome) -> Option<String> {
    let (at, off) = outcome.rule?;
    let unit = chosen.unit();
    let y = if chosen.side == Side::Right {
        -at.y
    } else {
        at.y
    };
    Some(format!(
        "The two-line rule of thumb would put the {} joint at y {:.4}, z {:.4}: {} from here.",
        if joint == TieRodJoint::Inner {
            "inner"
        } else {
            "outer"
        },
        unit.from_mm(y),
        unit.from_mm(at.z),
        on_tape(off, unit)
    ))
}

fn limit(held: &Held) -> String {
    let sign = &held.sign;
    let wanted = match (held.from, held.to) {
        (Some(f), Some(t)) if f == t => format!("{f}{sign} wanted"),
        (Some(f), Some(t)) => format!("{f} to {t}{sign} wanted"),
        (Some(f), None) => format!("at least {f}{sign} wanted"),
        (None, Some(t)) => format!("at most {t}{sign} wanted"),
        (None, None) => String::new(),
    };
    let value = held
        .value
        .map_or("none".into(), |v| format!("{v:.3}{sign}"));
    let met = if held.met() { "" } else { ": NOT MET" };
    format!("Limit {}: {value}, {wanted}{met}.", held.name)
}

/// Every figure before and after, and before rounding to whole steps where there was any.
fn figures(chosen: &Chosen, found: &Found) -> Vec<String> {
    let Some(judged) = &found.figures else {
        return Vec::new();
    };
    let of = |figures: &Option<Figures>| figures.as_ref().map(|f| limits::all(f, chosen.unit()));
    let (before, exact) = (of(&judged.before), of(&judged.exact));
    let told = |value: Option<f64>, sign: &str| {
        value.map_or("none".into(), |v: f64| format!("{v:.3}{sign}"))
    };
    let at = |all: &Option<Vec<limits::Told>>, i: usize| all.as_ref()?.get(i)?.1;
    let rows = limits::all(&judged.after, chosen.unit()).into_iter();
    let lines = rows.enumerate().filter_map(|(i, (name, value, sign))| {
        let old = told(at(&before, i), &sign);
        let new = told(Some(value?), &sign);
        let unrounded = match &exact {
            Some(_) => format!(" (exactly {})", told(at(&exact, i), &sign)),
            None => String::new(),
        };
        Some(format!(
            "  {name:<26} {old:>12} becomes {new:>12}{unrounded}"
        ))
    });
    std::iter::once("Figures:".to_owned())
        .chain(lines)
        .collect()
}

fn others(found: &Found) -> Option<String> {
    let count = found.others.len();
    (count > 0).then(|| {
        let s = if count == 1 { "" } else { "s" };
        format!("{count} other good solution{s}; --json lists them.")
    })
}
