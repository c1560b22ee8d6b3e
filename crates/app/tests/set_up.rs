//! The set-up commands, as a user types them.

#![allow(
    clippy::expect_used,
    clippy::unwrap_used,
    clippy::panic,
    reason = "a test stops where it fails"
)]

mod common;

use common::{err, out, trammel};

use std::{
    fmt::Write as _,
    fs,
    path::{Path, PathBuf},
    process::Output,
};

use serde_json::Value;
use trammel_build::{AxleName, Build, Edit, PointName, PointRef, Side};
use trammel_persistence::{demos, read};

fn good() -> Build {
    read(demos().iter().find(|d| d.name == "good").unwrap().text).unwrap()
}

/// The good demo with its inner joints this much higher, in its own unit.
fn raised(by: f64) -> Build {
    let point = PointRef::left(AxleName::Front, PointName::TieRodInner);
    let mut to = good().point(point).unwrap();
    to[2] += by;
    Edit::MovePoint { point, to }.apply(&good()).unwrap()
}

/// What degrees of toe would be read on a build, to a thousandth.
fn sheet(build: &Build, sides: &[Side], swap: bool) -> String {
    let axle = build.axle(AxleName::Front).unwrap();
    let mut text = format!(
        "unit,{}\nmethod,degrees\naccuracy,0.005\nside,travel,toe,way\n",
        build.unit.sign()
    );
    for side in sides {
        let linkage = axle.linkage(*side);
        let toe = |z: f64| linkage.measures(&linkage.pose(z, 0.0).unwrap()).toe;
        for z in [0.0, 20.0, 40.0, 60.0, -20.0, -40.0, -60.0, 0.0] {
            let change = (toe(z) - toe(0.0)).to_degrees();
            let way = if (change > 0.0) == swap { "OUT" } else { "IN" };
            let travel = build.unit.from_mm(z);
            writeln!(
                text,
                "{},{travel:.4},{:.3},{way}",
                side.word(),
                change.abs()
            )
            .unwrap();
        }
    }
    text
}

fn file(folder: &Path, name: &str, text: &str) -> PathBuf {
    let path = folder.join(name);
    fs::write(&path, text).unwrap();
    path
}

fn advise(text: &str, more: &[&str]) -> Output {
    let folder = tempfile::tempdir().unwrap();
    let path = file(folder.path(), "readings.csv", text);
    let words = ["advise", "demo:good", "--readings", path.to_str().unwrap()];
    trammel(&[&words, more].concat())
}

fn json(output: &Output) -> Value {
    serde_json::from_str(&out(output)).unwrap_or_else(|e| panic!("{e}: {}", err(output)))
}

#[test]
fn a_high_rack_is_told_and_one_kind_of_move_named() {
    let by = 5.0 / good().unit.mm();
    let text = sheet(&raised(by), &[Side::Left, Side::Right], false);
    let output = advise(&text, &["--json"]);
    let found = json(&output);
    assert_eq!(found["sides"].as_array().unwrap().len(), 2);
    let side = &found["sides"][0];
    let words = side["cause"]["words"].to_string();
    assert!(words.contains("inner joint too high"), "{words}");
    let now = side["now"]["largest_deg"].as_f64().unwrap();
    let then = side["best"]["largest_deg"].as_f64().unwrap();
    assert!(then < 0.5 * now, "{now} {then}");
    assert_eq!(
        found["cured"].as_bool(),
        Some(output.status.code() == Some(0))
    );
    assert_eq!(side["came_back"][0], Value::Bool(true));
    let plain = advise(&text, &[]);
    assert!(
        out(&plain).contains("LEFT wheel") && out(&plain).contains("DO: "),
        "{}",
        out(&plain)
    );
}

#[test]
fn a_swapped_sheet_is_asked_about() {
    let by = 25.0 / good().unit.mm();
    let output = advise(&sheet(&raised(by), &[Side::Left], false), &["--json"]);
    let found = json(&output);
    assert!(found["sides"][0]["reweld"].is_object() || found["cured"] == Value::Bool(true));
    let wrong = sheet(&good(), &[Side::Left], false).replacen(",0.000,IN", ",0.400,IN", 2);
    let output = advise(&wrong, &["--json"]);
    assert!(output.status.code() != Some(2), "{}", err(&output));
}

#[test]
fn the_session_is_kept_in_the_build() {
    let folder = tempfile::tempdir().unwrap();
    let path = file(
        folder.path(),
        "readings.csv",
        &sheet(&good(), &[Side::Left], false),
    );
    let kept = folder.path().join("kept.ron");
    let words = [
        "advise",
        "demo:good",
        "--readings",
        path.to_str().unwrap(),
        "--out",
        kept.to_str().unwrap(),
    ];
    let output = trammel(&words);
    assert_eq!(output.status.code(), Some(0), "{}", err(&output));
    let build = read(&fs::read_to_string(&kept).unwrap()).unwrap();
    assert_eq!(build.set_up.sessions.len(), 1);
    assert_eq!(build.set_up.sessions[0].rows.len(), 8);
    let again = trammel(&words);
    assert_eq!(again.status.code(), Some(2), "it is not written over");
}

#[test]
fn half_entered_sheets_end_with_one_line_and_2() {
    for (text, holds) in [
        (
            "unit,mm\nmethod,degrees\nside,left\ntravel,toe,way\n0,0,\n25,-0.2,IN\n",
            "line 6, toe: `-0.2` has a sign",
        ),
        (
            "unit,mm\nmethod,degrees\nside,left\ntravel,toe,way\n0,0,\n25,0.2,\n",
            "line 6, way: the cell is empty",
        ),
        (
            "unit,mm\nmethod,degrees\nside,left\ntravel,toe,way\n25,0.2,IN\n",
            "no line at ride height",
        ),
        (
            "unit,mm\nmethod,degrees\nside,left\ntravel,toe,way\n0,0,\n",
            "no readings away from ride height",
        ),
    ] {
        let output = advise(text, &[]);
        assert_eq!(output.status.code(), Some(2), "{text}");
        assert_eq!(out(&output), "");
        assert_eq!(err(&output).matches('\n').count(), 1);
        assert!(err(&output).contains(holds), "{}", err(&output));
    }
}

const SURVEY: &str = "\
unit,mm
mark,A,0,0,0
mark,B,600,0,0
mark,C,0,600,0
mark,D,100,100,500
point,joint,200,250,300
tape,A,joint,438.7
tape,B,joint,559.0
tape,C,joint,502.5
tape,D,joint,269.3
height,joint,300
";

fn survey(text: &str, more: &[&str]) -> Output {
    let folder = tempfile::tempdir().unwrap();
    let path = file(folder.path(), "survey.csv", text);
    trammel(&[&["survey", path.to_str().unwrap()], more].concat())
}

#[test]
fn a_survey_gives_coordinates_and_names_the_wrong_reading() {
    let output = survey(SURVEY, &["--json"]);
    assert_eq!(output.status.code(), Some(0), "{}", err(&output));
    let found = json(&output);
    for (axis, want) in [("x", 200.0), ("y", 250.0), ("z", 300.0)] {
        assert!(
            (found["points"][0][axis].as_f64().unwrap() - want).abs() < 0.2,
            "{found}"
        );
    }
    assert!(found["blunder"].is_null());
    let wrong = survey(&SURVEY.replace("559.0", "584.4"), &["--json"]);
    assert_eq!(wrong.status.code(), Some(1));
    let found = json(&wrong);
    assert_eq!(found["blunder"]["what"], "the tape from B to joint");
    assert!(
        (found["blunder"]["off_by"].as_f64().unwrap() - 25.4).abs() < 1.5,
        "{found}"
    );
    let plain = out(&survey(&SURVEY.replace("559.0", "584.4"), &[]));
    assert!(
        plain.contains("CHECK: the tape from B to joint contradicts"),
        "{plain}"
    );
}

/// The rear toe link's inner joint of the good demo, 1/8 in higher, 1/4 in farther out and 0.1 in farther back than drawn.
const REAR_JOINT: &str = "unit,inch\nmark,A,0,0,0\npoint,rear.tie_rod.inner\nheight,rear.tie_rod.inner,9.4375\n\
    offset,rear.tie_rod.inner,7.8125\nstation,rear.tie_rod.inner,-62.85\n";

#[test]
fn a_survey_is_held_against_the_drawing_and_taken_into_a_build() {
    let folder = tempfile::tempdir().unwrap();
    let built = folder.path().join("built.ron");
    let against = ["--against", "demo:good", "--out", built.to_str().unwrap()];
    let output = survey(REAR_JOINT, &against);
    assert_eq!(output.status.code(), Some(0), "{}", err(&output));
    let line = "rear left: Tie rod, inner joint: −0.100, +0.250, +0.125 in; ";
    assert!(out(&output).contains(line), "{}", out(&output));
    let found = json(&survey(
        REAR_JOINT,
        &["--against", built.to_str().unwrap(), "--json"],
    ));
    assert_eq!(found["as_built"].as_array().map(Vec::len), Some(0));
    let wanted = "inner: (-62.85, 7.8125, 9.4375)";
    let text = std::fs::read_to_string(&built).unwrap();
    assert!(text.contains(wanted), "{text}");
    let alone = survey(REAR_JOINT, &["--out", built.to_str().unwrap()]);
    assert_eq!(alone.status.code(), Some(2));
    assert!(err(&alone).contains("--against"), "{}", err(&alone));
}

#[test]
fn a_survey_that_contradicts_itself_is_not_taken() {
    let folder = tempfile::tempdir().unwrap();
    let built = folder.path().join("built.ron");
    let text = SURVEY
        .replace("joint", "tie_rod.inner")
        .replace("559.0", "584.4");
    let against = ["--against", "demo:good", "--out", built.to_str().unwrap()];
    let output = survey(&text, &against);
    assert_eq!(output.status.code(), Some(1), "{}", err(&output));
    assert!(!built.exists());
}

#[test]
fn a_survey_with_two_places_asks_which() {
    let text = "mark,A,0,0,0\nmark,B,600,0,0\nmark,C,0,600,0\npoint,joint\ntape,A,joint,438.7\ntape,B,joint,559.0\ntape,C,joint,502.5\n";
    let output = survey(text, &[]);
    assert_eq!(output.status.code(), Some(2));
    assert!(
        err(&output).contains("say whether it is"),
        "{}",
        err(&output)
    );
}
