//! `trammel lift`: the frame raised on the same arms.

use serde::Serialize;
use trammel_analysis::{
    LiftVerdict, Raise, RaiseFault, RideHeightRow, Stops, raised, ride_heights,
};
use trammel_build::{Build, LengthUnit, defaults};
use trammel_tuning::Reset;

use super::chosen::{Chosen, length, on_tape};
use crate::arguments::tune::CamberWord;
use crate::arguments::tune::LiftArguments;
use crate::arguments::tune::StopsWord;
use crate::fault::Fault;
use crate::files;
use crate::terminal;

/// Rows of the table, the frame as it is apart.
const STEPS: usize = 8;

#[derive(Serialize)]
struct Lift<'a> {
    title: &'a str,
    unit: &'static str,
    axle: &'static str,
    side: &'static str,
    by: f64,
    camber: String,
    stops: String,
    rows: Vec<Row>,
    verdict: Option<String>,
    out: Option<String>,
}

#[derive(Serialize)]
struct Row {
    by: f64,
    tie_rod_angle_deg: Option<f64>,
    inner_swivel_deg: Option<f64>,
    outer_swivel_deg: Option<f64>,
    toe_change_deg: Option<f64>,
    rack_end_factor: Option<f64>,
    camber_deg: Option<f64>,
    half_track: Option<f64>,
    fault: Option<String>,
}

pub(crate) fn run(arguments: &LiftArguments) -> Result<(), Fault> {
    files::check_free(&arguments.out)?;
    let chosen = Chosen::of(&arguments.corner)?;
    let (build, corner) = (chosen.build(), (chosen.axle(), chosen.side));
    let unit = build.unit;
    let raise = Raise {
        by: length("--by", &arguments.by, unit)?,
        reset: match arguments.camber {
            CamberWord::Reset => Reset::ToeAndCamber,
            CamberWord::AsItComes => Reset::Toe,
        },
        stops: match arguments.stops {
            StopsWord::Kept => Stops::Kept,
            StopsWord::MoveAlong => Stops::MovedAlong,
        },
    };
    let lifted = raised(build, &raise)?.apply(build)?;
    let raises: Vec<f64> = (0..=STEPS)
        .map(|i| raise.by * i as f64 / STEPS as f64)
        .collect();
    let found = ride_heights(build, corner, &raises, &raise);
    let verdict = verdict(build, &found);
    let rows = raises
        .iter()
        .zip(found)
        .map(|(by, row)| self::row(*by, &row.map_err(|f| f.to_string()), unit))
        .collect();
    let out = Lift {
        title: &build.title,
        unit: unit.word(),
        axle: corner.0.word(),
        side: corner.1.word(),
        by: unit.from_mm(raise.by),
        camber: word(&arguments.camber),
        stops: word(&arguments.stops),
        rows,
        verdict,
        out: arguments.out.out.as_ref().map(|p| p.display().to_string()),
    };
    let told = if arguments.json {
        let json = serde_json::to_string_pretty(&out).map_err(|e| Fault::Output(e.into()))?;
        json + "\n"
    } else {
        text(&out, unit)
    };
    files::save(&arguments.out, &chosen.document, &lifted)?;
    terminal::print(&told)
}

/// What the trade says of a lift, held against the first and the last row.
fn verdict(build: &Build, rows: &[Result<RideHeightRow, RaiseFault>]) -> Option<String> {
    let before = rows.first()?.as_ref().ok()?;
    let after = rows.last()?.as_ref().ok()?;
    let limit = build.limits.toe_change_deg;
    let limit = limit.unwrap_or(defaults::TOE_CHANGE_LIMIT_DEG).to_radians();
    (after.by != before.by).then(|| LiftVerdict::of(before, after, limit).in_words(build.unit))
}

/// The word as it is typed, with the underscores of JSON.
fn word(value: &impl clap::ValueEnum) -> String {
    let value = value.to_possible_value();
    value.map_or_else(String::new, |v| v.get_name().replace('-', "_"))
}

fn row(by: f64, row: &Result<RideHeightRow, String>, unit: LengthUnit) -> Row {
    let found = row.as_ref().ok();
    let degrees = |of: fn(&RideHeightRow) -> f64| found.map(|r| of(r).to_degrees());
    Row {
        by: unit.from_mm(by),
        tie_rod_angle_deg: found.and_then(|r| r.tie_rod_angle).map(f64::to_degrees),
        inner_swivel_deg: degrees(|r| r.inner_swivel),
        outer_swivel_deg: degrees(|r| r.outer_swivel),
        toe_change_deg: degrees(|r| r.toe_change),
        rack_end_factor: found.and_then(|r| r.rack_end_factor),
        camber_deg: degrees(|r| r.camber),
        half_track: found.map(|r| unit.from_mm(r.half_track)),
        fault: row.as_ref().err().cloned(),
    }
}

fn text(out: &Lift<'_>, unit: LengthUnit) -> String {
    let by = on_tape(unit.mm() * out.by.abs(), unit);
    let way = if out.by < 0.0 { "lowered" } else { "raised" };
    let mut lines = vec![
        out.title.to_owned(),
        format!(
            "The frame {way} by {by}: camber {}, stops {}.",
            plain(&out.camber),
            plain(&out.stops)
        ),
        String::new(),
        format!("{way} by  tie rod  joint swivel   toe change  rack end  camber  half-track"),
        format!(
            "     {}        °  inner  outer            °    factor       °          {}",
            unit.sign(),
            unit.sign()
        ),
    ];
    lines.extend(out.rows.iter().map(told));
    lines.push(String::new());
    lines.push(format!(
        "The {} {} corner over travel and lock; toe change over the travel, rack at centre; camber as it comes, before an adjuster puts it back.",
        out.side, out.axle
    ));
    lines.extend(out.verdict.clone());
    lines.extend(out.out.as_ref().map(|path| {
        format!("Written to {path}; `trammel check` says what is near a limit there.")
    }));
    lines.join("\n") + "\n"
}

fn plain(word: &str) -> String {
    word.replace('_', " ")
}

fn told(row: &Row) -> String {
    if let Some(fault) = &row.fault {
        return format!("{:>7.3}  {fault}", row.by.abs());
    }
    let cell = |value: Option<f64>, decimals: usize| {
        value.map_or("-".into(), |v| format!("{v:.decimals$}"))
    };
    format!(
        "{:>7.3} {:>8} {:>6} {:>6} {:>12} {:>9} {:>7} {:>11}",
        row.by.abs(),
        cell(row.tie_rod_angle_deg, 1),
        cell(row.inner_swivel_deg, 1),
        cell(row.outer_swivel_deg, 1),
        cell(row.toe_change_deg, 3),
        cell(row.rack_end_factor, 2),
        cell(row.camber_deg, 2),
        cell(row.half_track, 3),
    )
}
