//! The whole way from a build file to a table against figures made without a line of this product: a general constraint solve with NumPy
//! and SciPy, and one published geometry. Source, script and definitions: `reference/README.md`.

#![allow(
    clippy::expect_used,
    clippy::panic,
    reason = "a test stops where it fails"
)]

use std::{fs, path::Path};

use serde::Deserialize;
use trammel_analysis::{Span, SweepColumn, SweepRequest, SweepTable};
use trammel_build::{AxleName, Build, LengthUnit, Side};

/// Greatest difference, in degrees or mm, for figures of size up to one; in proportion above.
const NEAR: f64 = 1e-6;

#[derive(Deserialize)]
struct Reference {
    name: String,
    corner: Corner,
    columns: Vec<String>,
    travel_rows: Vec<Vec<Option<f64>>>,
    #[serde(default)]
    rack_rows: Vec<Vec<Option<f64>>>,
    #[serde(default)]
    combined_rows: Vec<Vec<Option<f64>>>,
}

#[derive(Deserialize)]
struct Corner {
    upper_arm: Arm,
    lower_arm: Arm,
    tie_rod: TieRod,
    wheel: Wheel,
    rack: Option<Rack>,
    spring: Option<Spring>,
    travel: Travel,
}

#[derive(Deserialize)]
struct Arm {
    front_pivot: [f64; 3],
    rear_pivot: [f64; 3],
    ball_joint: [f64; 3],
}

#[derive(Deserialize)]
struct TieRod {
    inner: [f64; 3],
    outer: [f64; 3],
}

#[derive(Deserialize)]
struct Wheel {
    centre: [f64; 3],
    loaded_radius: f64,
    toe_deg: f64,
    camber_deg: f64,
}

#[derive(Deserialize)]
struct Rack {
    axis: [f64; 3],
    travel: f64,
}

#[derive(Deserialize)]
struct Spring {
    arm: String,
    chassis_mount: [f64; 3],
    arm_mount: [f64; 3],
}

#[derive(Deserialize)]
struct Travel {
    bump: f64,
    droop: f64,
}

fn references() -> Vec<Reference> {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("reference");
    let mut paths: Vec<_> = fs::read_dir(folder)
        .expect("the reference folder")
        .map(|entry| entry.expect("an entry").path())
        .filter(|path| {
            let name = path
                .file_name()
                .and_then(|n| n.to_str())
                .unwrap_or_default();
            name.starts_with("corner_") && name.ends_with(".json")
        })
        .collect();
    paths.sort();
    paths
        .iter()
        .map(|path| {
            let text = fs::read_to_string(path).expect("a readable table");
            serde_json::from_str(&text).unwrap_or_else(|e| panic!("{}: {e}", path.display()))
        })
        .collect()
}

fn triple([x, y, z]: [f64; 3]) -> String {
    format!("({x:?}, {y:?}, {z:?})")
}

fn arm(arm: &Arm) -> String {
    format!(
        "(front_pivot: {}, rear_pivot: {}, ball_joint: {})",
        triple(arm.front_pivot),
        triple(arm.rear_pivot),
        triple(arm.ball_joint)
    )
}

/// An axle as a builder would type it.
fn axle(c: &Corner) -> String {
    let rack = c.rack.as_ref().map_or(String::new(), |r| {
        format!("rack: (axis: {}, travel: {:?}),", triple(r.axis), r.travel)
    });
    let spring = c.spring.as_ref().map_or(String::new(), |s| {
        format!(
            "spring: (arm: {}, chassis_mount: {}, arm_mount: {}),",
            s.arm,
            triple(s.chassis_mount),
            triple(s.arm_mount)
        )
    });
    format!(
        "(
        upper_arm: {},
        lower_arm: {},
        tie_rod: (inner: {}, outer: {}),
        wheel: (centre: {}, loaded_radius: {:?}, toe_deg: {:?}, camber_deg: {:?}),
        travel: (bump: {:?}, droop: {:?}),
        {rack}
        {spring}
    )",
        arm(&c.upper_arm),
        arm(&c.lower_arm),
        triple(c.tie_rod.inner),
        triple(c.tie_rod.outer),
        triple(c.wheel.centre),
        c.wheel.loaded_radius,
        c.wheel.toe_deg,
        c.wheel.camber_deg,
        c.travel.bump,
        c.travel.droop,
    )
}

/// The build that holds the corner: in front, or behind where its link ends on the chassis (with a front to go with it).
fn build(reference: &Reference, other: &Reference) -> (Build, AxleName) {
    let (front, rear, name) = if reference.corner.rack.is_some() {
        (axle(&reference.corner), String::new(), AxleName::Front)
    } else {
        let rear = format!("rear: {},", axle(&reference.corner));
        (axle(&other.corner), rear, AxleName::Rear)
    };
    let title = &reference.name;
    let text = format!("(format: 1, title: \"{title}\", unit: mm, front: {front}, {rear})");
    let build = trammel_persistence::read(&text).unwrap_or_else(|e| panic!("{title}: {e}\n{text}"));
    (build, name)
}

/// Columns that both tables have.
const SHARED: [SweepColumn; 16] = [
    SweepColumn::Toe,
    SweepColumn::Camber,
    SweepColumn::Castor,
    SweepColumn::SteeringAxisInclination,
    SweepColumn::ScrubRadius,
    SweepColumn::MechanicalTrail,
    SweepColumn::HalfTrackChange,
    SweepColumn::RollCentreHeight,
    SweepColumn::Steer,
    SweepColumn::TieRodAngle,
    SweepColumn::SwingArmLength,
    SweepColumn::InstantCentreY,
    SweepColumn::InstantCentreZ,
    SweepColumn::SpringLength,
    SweepColumn::MotionRatio,
    SweepColumn::Rack,
];

/// A far instant centre is only as good as its inverse distance, mm: beyond this it is compared as endless.
const FAR: f64 = 1e5;

fn compare(reference: &Reference, build: &Build, axle: AxleName, row: &[Option<f64>]) -> usize {
    let theirs = |name: &str| {
        let at = reference.columns.iter().position(|c| c == name);
        row.get(at.unwrap_or_else(|| panic!("no column {name}")))
            .copied()
            .flatten()
    };
    let (travel, rack) = (
        theirs("travel").expect("a travel"),
        theirs("rack").expect("a rack"),
    );
    let at = |v| Some(Span::new(v, v, 1).expect("one position"));
    let request = SweepRequest {
        axle,
        side: Side::Left,
        travel: at(travel),
        rack: if axle == AxleName::Front {
            at(rack)
        } else {
            None
        },
        unit: LengthUnit::Millimetre,
    };
    let table = SweepTable::of(build, &request).expect("a table");
    let ours = table
        .rows
        .first()
        .unwrap_or_else(|| panic!("{}: {travel} {rack} out of reach", reference.name));
    let mut compared = 0;
    for column in SHARED {
        let place = SweepColumn::ALL
            .iter()
            .position(|c| *c == column)
            .expect("a column");
        let far = |v: Option<f64>| v.is_none_or(|v| v.abs() > FAR);
        match (ours[place], theirs(column.name())) {
            (Some(a), Some(b)) if (a - b).abs() <= NEAR * b.abs().max(1.0) => compared += 1,
            (a, b) if is_far_centre(column) && far(a) && far(b) => {}
            (None, None) => {}
            (a, b) => panic!(
                "{} travel {travel} rack {rack}: {} is {a:?}, reference {b:?}",
                reference.name,
                column.name()
            ),
        }
    }
    compared
}

fn is_far_centre(column: SweepColumn) -> bool {
    matches!(
        column,
        SweepColumn::SwingArmLength | SweepColumn::InstantCentreY | SweepColumn::InstantCentreZ
    )
}

#[test]
fn every_figure_of_every_corner_agrees() {
    let references = references();
    assert!(references.len() >= 6, "{} corners", references.len());
    let with_rack = references
        .iter()
        .find(|r| r.corner.rack.is_some())
        .expect("a front corner");
    let mut compared = 0;
    for reference in &references {
        let (build, axle) = build(reference, with_rack);
        let rows = [
            &reference.travel_rows,
            &reference.rack_rows,
            &reference.combined_rows,
        ];
        for row in rows.into_iter().flatten() {
            compared += compare(reference, &build, axle, row);
        }
    }
    assert!(compared > 5000, "only {compared} figures were compared");
}

/// The same corner read in inches, its lengths converted on purpose, gives the same angles and, in mm, the same lengths as near as the
/// conversion's rounding allows.
#[test]
fn a_converted_build_agrees_too() {
    let references = references();
    let reference = references.first().expect("a corner");
    let (build, axle) = build(reference, reference);
    let inches = trammel_build::Edit::ConvertUnit(LengthUnit::Inch)
        .apply(&build)
        .expect("converts");
    let request = SweepRequest {
        axle,
        side: Side::Left,
        travel: Some(Span::new(-50.0, 50.0, 11).expect("a span")),
        rack: None,
        unit: LengthUnit::Millimetre,
    };
    let (a, b) = (
        SweepTable::of(&build, &request).expect("a table"),
        SweepTable::of(&inches, &request).expect("a table"),
    );
    assert_eq!(a.rows.len(), 11);
    for (a, b) in a.rows.iter().zip(&b.rows) {
        for (a, b) in a.iter().zip(b) {
            match (a, b) {
                (Some(a), Some(b)) => assert!((a - b).abs() < 1e-4 * a.abs().max(1.0), "{a} {b}"),
                (a, b) => assert_eq!(a, b),
            }
        }
    }
}
