//! Rows of a proof as a machine reads them. The names are described in `trammel prove --help` and stay as they are.

use serde::Serialize;
use trammel_analysis::{
    Grade, NoteKind, Proof, ProofRow, SteeringFigures, USUAL_CAUTIONS, not_in_it,
};
use trammel_build::{Build, LengthUnit, Side};
use trammel_strength::check::Keep;

use super::super::remedy_json::RemedyOut;
use crate::fault::Fault;

#[derive(Serialize)]
struct ProofOut<'a> {
    title: &'a str,
    unit: &'static str,
    rows: Vec<RowOut<'a>>,
    steering: Option<SteeringOut>,
    notes: Vec<NoteOut<'a>>,
    not_checked: &'a [&'static str],
    cautions: &'a [&'static str],
}

#[derive(Serialize)]
struct RowOut<'a> {
    axle: &'static str,
    side: Option<&'static str>,
    part: String,
    check: String,
    load_case: Option<&'a str>,
    travel: Option<f64>,
    rack: Option<f64>,
    value: f64,
    limit: f64,
    unit: &'static str,
    bound: &'static str,
    factor: Option<f64>,
    wanted: f64,
    grade: Option<&'static str>,
    source: String,
    method: String,
    reason: &'static str,
    remark: Option<&'a str>,
    remedies: Vec<RemedyOut<'a>>,
    key: String,
    accepted: Option<&'a str>,
    worse_since_accepted: bool,
}

#[derive(Serialize)]
struct SteeringOut {
    turns: f64,
    parked_hand_force_n: Option<f64>,
    parked_pinion_torque_n_mm: Option<f64>,
    kick_back_n: Option<f64>,
    kick_back_pinion_torque_n_mm: Option<f64>,
    over_centre_deg: Option<f64>,
}

#[derive(Serialize)]
struct NoteOut<'a> {
    kind: &'static str,
    about: &'a str,
    text: &'a str,
}

/// One JSON object, ended by a new line.
pub(crate) fn text(build: &Build, proof: &Proof) -> Result<String, Fault> {
    let out = ProofOut {
        title: &build.title,
        unit: build.unit.word(),
        rows: proof.rows.iter().map(|row| of(row, build.unit)).collect(),
        steering: proof.steering.as_ref().map(steering),
        notes: proof
            .notes
            .iter()
            .map(|note| NoteOut {
                kind: match note.kind {
                    NoteKind::LeftOut => "left_out",
                    NoteKind::Taken => "taken",
                },
                about: &note.about,
                text: &note.text,
            })
            .collect(),
        not_checked: not_in_it(),
        cautions: &USUAL_CAUTIONS,
    };
    let json = serde_json::to_string_pretty(&out).map_err(|e| Fault::Output(e.into()))?;
    Ok(json + "\n")
}

fn of(row: &ProofRow, unit: LengthUnit) -> RowOut<'_> {
    let shown = row.shown(unit);
    let length = row.unit == "mm";
    RowOut {
        axle: row.axle.word(),
        side: row.side.map(Side::word),
        part: row.part.label(),
        check: row.check.to_string(),
        load_case: row.load_case.as_deref(),
        travel: row.pose.map(|pose| unit.from_mm(pose.travel)),
        rack: row.pose.map(|pose| unit.from_mm(pose.rack)),
        value: shown.value,
        limit: shown.limit,
        unit: if length { unit.word() } else { shown.unit },
        bound: match row.keep {
            Keep::Below => "at_most",
            Keep::Above => "at_least",
        },
        factor: row.factor,
        wanted: row.wanted,
        grade: row.grade().map(Grade::word),
        source: row.source.to_string(),
        method: row.method.to_string(),
        reason: row.reason,
        remark: row.remark.as_deref(),
        remedies: row.remedies.iter().map(RemedyOut::from).collect(),
        key: row.key(),
        accepted: row.accepted.as_ref().map(|a| a.reason.as_str()),
        worse_since_accepted: row.worse_than_accepted(),
    }
}

fn steering(s: &SteeringFigures) -> SteeringOut {
    SteeringOut {
        turns: s.turns,
        parked_hand_force_n: s.parked_hand_force,
        parked_pinion_torque_n_mm: s.parked_torque,
        kick_back_n: s.kick_back,
        kick_back_pinion_torque_n_mm: s.kick_back_torque,
        over_centre_deg: s.over_centre.map(f64::to_degrees),
    }
}
