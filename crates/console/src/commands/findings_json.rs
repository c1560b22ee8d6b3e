//! Cautions as a machine reads them. The names are described in `trammel check --help` and stay as they are.

use serde::Serialize;
use trammel_analysis::{Caution, FigureUnit, Findings, Grade, RackEndStudy};
use trammel_build::{Build, LengthUnit};

use super::remedy_json::RemedyOut;
use crate::fault::Fault;

#[derive(Serialize)]
struct Check<'a> {
    title: &'a str,
    unit: &'static str,
    counts: Counts,
    cautions: Vec<CautionOut<'a>>,
    rack_ends: Vec<RackEndOut<'a>>,
}

#[derive(Serialize)]
struct Counts {
    danger: usize,
    caution: usize,
    note: usize,
}

#[derive(Serialize)]
struct CautionOut<'a> {
    kind: &'static str,
    key: String,
    accepted: Option<&'a str>,
    worse_since_accepted: bool,
    grade: &'static str,
    axle: &'static str,
    side: Option<&'static str>,
    point: Option<&'static str>,
    headline: &'a str,
    detail: &'a str,
    reason: &'a str,
    source: &'a str,
    value: Option<f64>,
    limit: Option<f64>,
    bound: Option<&'static str>,
    figure_unit: Option<&'static str>,
    travel: Option<f64>,
    rack: Option<f64>,
    remedies: Vec<RemedyOut<'a>>,
}

#[derive(Serialize)]
struct RackEndOut<'a> {
    side: &'static str,
    thread: &'static str,
    grade: &'a str,
    free_length: f64,
    factor: f64,
    wanted_factor: f64,
    travel: f64,
    rack: f64,
    hit_n: f64,
    tie_rod_tension_n: f64,
    bending_n_mm: f64,
    torsion_n_mm: f64,
    axial_n: f64,
    shear_n: f64,
    bending_mpa: f64,
    torsion_mpa: f64,
    axial_mpa: f64,
    shear_mpa: f64,
    von_mises_mpa: f64,
    yield_mpa: f64,
    bore_mouth_bending_n_mm: Option<f64>,
    bore_mouth_torsion_n_mm: Option<f64>,
    bore_mouth_axial_n: Option<f64>,
    bore_mouth_shear_n: Option<f64>,
}

/// One JSON object, ended by a new line.
pub(crate) fn text(build: &Build, findings: &Findings) -> Result<String, Fault> {
    let count = |grade| {
        findings
            .cautions
            .iter()
            .filter(|c| c.grade == grade)
            .count()
    };
    let check = Check {
        title: &build.title,
        unit: build.unit.word(),
        counts: Counts {
            danger: count(Grade::Danger),
            caution: count(Grade::Caution),
            note: count(Grade::Note),
        },
        cautions: findings
            .cautions
            .iter()
            .map(|c| caution(c, build))
            .collect(),
        rack_ends: findings
            .rack_ends
            .iter()
            .map(|r| rack_end(r, build.unit))
            .collect(),
    };
    let json = serde_json::to_string_pretty(&check).map_err(|e| Fault::Output(e.into()))?;
    Ok(json + "\n")
}

fn caution<'a>(c: &'a Caution, build: &'a Build) -> CautionOut<'a> {
    let unit = build.unit;
    let accepted = c.accepted(build);
    CautionOut {
        kind: c.kind.word(),
        key: c.key(),
        accepted: accepted.map(|a| a.reason.as_str()),
        worse_since_accepted: accepted.is_some_and(|a| c.worse_than_accepted(a)),
        grade: c.grade.word(),
        axle: c.axle.word(),
        side: c.side.map(trammel_build::Side::word),
        point: c.point.map(|p| p.point.path()),
        headline: &c.headline,
        detail: &c.detail,
        reason: &c.reason,
        source: &c.source,
        value: c.figure.map(|f| f.value),
        limit: c.figure.map(|f| f.limit),
        bound: c.figure.map(|f| f.bound.word()),
        figure_unit: c.figure.map(|f| match f.unit {
            FigureUnit::Factor => "factor",
            FigureUnit::Degrees => "degrees",
            FigureUnit::BuildLength => unit.word(),
        }),
        travel: c.worst.map(|w| unit.from_mm(w.travel)),
        rack: c.worst.map(|w| unit.from_mm(w.rack)),
        remedies: c.remedies.iter().map(RemedyOut::from).collect(),
    }
}

fn rack_end(r: &RackEndStudy, unit: LengthUnit) -> RackEndOut<'_> {
    let (loads, stress) = (&r.rack_face.loads, &r.rack_face.stress);
    RackEndOut {
        side: r.side.word(),
        thread: r.thread.designation(),
        grade: r.grade.name(),
        free_length: unit.from_mm(r.free_length),
        factor: r.factor,
        wanted_factor: r.wanted,
        travel: unit.from_mm(r.worst.travel),
        rack: unit.from_mm(r.worst.rack),
        hit_n: r.hit.norm(),
        tie_rod_tension_n: r.tie_rod_tension,
        bending_n_mm: loads.bending,
        torsion_n_mm: loads.torsion,
        axial_n: loads.axial,
        shear_n: loads.shear,
        bending_mpa: stress.bending,
        torsion_mpa: stress.torsion,
        axial_mpa: stress.axial,
        shear_mpa: stress.shear,
        von_mises_mpa: r.rack_face.von_mises(),
        yield_mpa: r.rack_face.strength.yield_strength.mpa(),
        bore_mouth_bending_n_mm: r.bore_mouth.map(|m| m.bending),
        bore_mouth_torsion_n_mm: r.bore_mouth.map(|m| m.torsion),
        bore_mouth_axial_n: r.bore_mouth.map(|m| m.axial),
        bore_mouth_shear_n: r.bore_mouth.map(|m| m.shear),
    }
}
