//! `trammel survey`: tape readings in, coordinates out.

use serde_json::{Value, json};
use trammel_analysis::surveyed;
use trammel_build::{AxleName, Build, LengthUnit, Side, format_length};
use trammel_persistence::{SurveyFile, read_survey, read_text};
use trammel_setup::{Blunder, Moved, Placed, Suggestion, Surveyed, What, suggest};

use crate::arguments::set_up::SurveyArguments;
use crate::fault::Fault;
use crate::files;
use crate::terminal;

/// Suggestions worth reading.
const SUGGESTIONS: usize = 3;
/// What a further reading would be good for, mm (common practice, no source).
const FURTHER: f64 = 1.0;

/// Whether no reading contradicts the others.
pub(crate) fn run(arguments: &SurveyArguments) -> Result<bool, Fault> {
    files::check_free(&arguments.out)?;
    let text = read_text(&arguments.file)?;
    let fault = |fault| Fault::Sheet {
        path: arguments.file.clone(),
        fault: Box::new(fault),
    };
    let file = read_survey(&text).map_err(fault)?;
    let found = file.survey.adjust().map_err(|f| Fault::Survey {
        path: arguments.file.clone(),
        fault: Box::new(f),
    })?;
    let drawing = arguments.against.as_deref().map(files::document);
    let drawing = drawing.transpose()?;
    let built = drawing.as_ref().map(|document| AsBuilt {
        unit: document.build().unit,
        moved: surveyed::as_built(document.build(), &file.survey, &found),
    });
    let further: Vec<Suggestion> = suggest(&file.survey, FURTHER)
        .into_iter()
        .take(SUGGESTIONS)
        .collect();
    let told = if arguments.json {
        let value = as_json(&file, &found, &further, built.as_ref(), arguments);
        serde_json::to_string_pretty(&value).map_err(|e| Fault::Output(e.into()))? + "\n"
    } else {
        as_text(&file, &found, &further, built.as_ref())
    };
    if let Some(document) = drawing.as_ref().filter(|_| found.blunder.is_none()) {
        let taken = taken(document.build(), &file, &found)?;
        files::save(&arguments.out, document, &taken)?;
    }
    terminal::print(&told)?;
    Ok(found.blunder.is_none())
}

/// The survey against a build.
struct AsBuilt {
    unit: LengthUnit,
    moved: Vec<(AxleName, Side, Moved)>,
}

/// The build with the survey in it.
fn taken(build: &Build, file: &SurveyFile, found: &Surveyed) -> Result<Build, Fault> {
    let edits = surveyed::edits(build, &file.survey, found);
    let mut taken = build.clone();
    for edit in edits {
        taken = edit.apply(&taken)?;
    }
    Ok(taken)
}

/// A reading's size in the table's unit, or in degrees.
fn shown(what: What, value: f64, unit: LengthUnit) -> f64 {
    if what.is_angle() {
        value.to_degrees()
    } else {
        unit.from_mm(value)
    }
}

fn said(what: What, value: f64, unit: LengthUnit) -> String {
    if what.is_angle() {
        format!("{:.2} degrees", value.to_degrees())
    } else {
        format!(
            "{} {}",
            format_length(unit.from_mm(value), unit),
            unit.sign()
        )
    }
}

fn blunder_words(file: &SurveyFile, blunder: &Blunder) -> Option<String> {
    let what = file.survey.reading(blunder.reading)?.what;
    let sign = if blunder.off_by > 0.0 {
        "too large"
    } else {
        "too small"
    };
    let slip = blunder
        .slip
        .map_or(String::new(), |s| format!(" ({})", s.words()));
    let or: Vec<String> = blunder
        .or
        .iter()
        .filter_map(|r| file.survey.reading(*r))
        .map(|r| file.survey.describe(r.what))
        .collect();
    let or = if or.is_empty() {
        String::new()
    } else {
        format!(" It could as well be {}.", or.join(" or "))
    };
    Some(format!(
        "CHECK: {} contradicts the others: it is about {} {sign}, expected {}{slip}. Read it again.{or}",
        file.survey.describe(what),
        said(what, blunder.off_by.abs(), file.unit),
        said(what, blunder.expected, file.unit),
    ))
}

fn as_text(
    file: &SurveyFile,
    found: &Surveyed,
    further: &[Suggestion],
    built: Option<&AsBuilt>,
) -> String {
    let unit = file.unit;
    let decimals = if unit == LengthUnit::Inch { 3 } else { 1 };
    let mut lines = vec![format!(
        "point, x, y, z ({}), each with its standard deviation",
        unit.sign()
    )];
    for p in &found.points {
        let cells: Vec<String> =
            p.at.iter()
                .zip(p.deviations().iter())
                .map(|(v, s)| {
                    format!(
                        "{:.decimals$} +- {:.decimals$}",
                        unit.from_mm(*v),
                        unit.from_mm(*s)
                    )
                })
                .collect();
        lines.push(format!(
            "{}: {}",
            file.survey.name(p.point),
            cells.join(", ")
        ));
    }
    lines.push(format!("{} readings beyond the fewest.", found.spare));
    if let Some(factor) = found.variance_factor {
        lines.push(format!(
            "Left-overs against the stated accuracies: {factor:.2} (about 1 when they are right)."
        ));
    }
    lines.extend(found.blunder.as_ref().and_then(|b| blunder_words(file, b)));
    for w in &found.weak {
        lines.push(format!(
            "WEAK: {} is poorly fixed {}: +- {:.decimals$} {}, its readings are good to {:.decimals$}.",
            file.survey.name(w.point),
            w.direction_words(),
            unit.from_mm(w.deviation),
            unit.sign(),
            unit.from_mm(w.readings)
        ));
    }
    for s in further {
        lines.push(format!(
            "Would help: {} (about {}): its place would be known to {:.decimals$} instead of {:.decimals$} {}, the worst place of all to {:.decimals$}.",
            file.survey.describe(s.what),
            said(s.what, s.about, unit),
            unit.from_mm(s.own_then),
            unit.from_mm(s.own_now),
            unit.sign(),
            unit.from_mm(s.worst_then),
        ));
    }
    if let Some(built) = built {
        lines.push(if built.moved.is_empty() {
            "As built as drawn: no surveyed hardpoint stands elsewhere.".to_owned()
        } else {
            "As built against as drawn; forward, outboard, up:".to_owned()
        });
        lines.extend(built.moved.iter().map(|(axle, side, moved)| {
            let of = format!("{} {}", axle.word(), side.word());
            surveyed::words(&of, built.unit, moved)
        }));
    }
    lines.join("\n") + "\n"
}

fn as_json(
    file: &SurveyFile,
    found: &Surveyed,
    further: &[Suggestion],
    built: Option<&AsBuilt>,
    arguments: &SurveyArguments,
) -> Value {
    let unit = file.unit;
    let what = |id| file.survey.reading(id).map(|r| r.what);
    let describe = |id| what(id).map(|w| file.survey.describe(w));
    let in_unit = |id, v: f64| what(id).map(|w| shown(w, v, unit));
    json!({
        "unit": unit.word(),
        "spare": found.spare,
        "variance_factor": found.variance_factor,
        "points": found.points.iter().map(|p| point(file, found, p)).collect::<Vec<_>>(),
        "readings": found.readings.iter().map(|r| json!({
            "what": describe(r.reading),
            "left_over": in_unit(r.reading, r.left_over),
            "checked": r.checked,
            "standardised": r.standardised,
        })).collect::<Vec<_>>(),
        "blunder": found.blunder.as_ref().map(|b| json!({
            "what": describe(b.reading),
            "off_by": in_unit(b.reading, b.off_by),
            "expected": in_unit(b.reading, b.expected),
            "or": b.or.iter().map(|r| describe(*r)).collect::<Vec<_>>(),
            "slip": b.slip.map(trammel_setup::Slip::words),
        })),
        "as_built": built.map(|b| b.moved.iter().map(|(axle, side, m)| json!({
            "axle": axle.word(),
            "side": side.word(),
            "point": m.point.name(),
            "by": by(m, unit),
            "toe_change_deg": m.toe_change.map(f64::to_degrees),
        })).collect::<Vec<_>>()),
        "out": arguments.out.out.as_ref().filter(|_| found.blunder.is_none()).map(|p| p.display().to_string()),
        "suggestions": further.iter().map(|s| json!({
            "what": file.survey.describe(s.what),
            "about": shown(s.what, s.about, unit),
            "own_now": unit.from_mm(s.own_now),
            "own_then": unit.from_mm(s.own_then),
            "worst_now": unit.from_mm(s.worst_now),
            "worst_then": unit.from_mm(s.worst_then),
        })).collect::<Vec<_>>(),
    })
}

fn by(moved: &Moved, unit: LengthUnit) -> [f64; 3] {
    [moved.by.x, moved.by.y, moved.by.z].map(|v| unit.from_mm(v))
}

fn point(file: &SurveyFile, found: &Surveyed, p: &Placed) -> Value {
    let unit = file.unit;
    let area = |v: f64| v / (unit.mm() * unit.mm());
    let c = &p.covariance;
    let covariance = [c.m11, c.m22, c.m33, c.m12, c.m13, c.m23].map(area);
    let deviations = p.deviations();
    let deviations = [deviations.x, deviations.y, deviations.z].map(|v| unit.from_mm(v));
    let weak = found.weak.iter().find(|w| w.point == p.point);
    json!({
        "name": file.survey.name(p.point),
        "x": unit.from_mm(p.at.x),
        "y": unit.from_mm(p.at.y),
        "z": unit.from_mm(p.at.z),
        "deviation": deviations,
        "covariance": covariance,
        "weak": weak.map(|w| json!({
            "direction": w.direction_words(),
            "deviation": unit.from_mm(w.deviation),
        })),
    })
}
