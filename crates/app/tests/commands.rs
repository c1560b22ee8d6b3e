//! The binary's commands as a user types them.

#![allow(
    clippy::expect_used,
    clippy::unwrap_used,
    clippy::panic,
    reason = "a test stops where it fails"
)]

mod common;

use common::{demo, err, field_names, out, refused, trammel};

use std::{
    fs,
    path::Path,
    process::{Command, Stdio},
};

use trammel_analysis::{
    Findings, ProofDepth, Span, Study, SweepColumn, SweepRequest, SweepTable, prove,
};
use trammel_build::{AxleName, Build, Side};

/// The cautions of the layout and of the proof.
fn findings(build: &Build) -> Findings {
    let study = Study::of(build).unwrap();
    let proof = prove(build, ProofDepth::Full, &|| false).unwrap();
    Findings::of(build, &study).with_proof(build, &study, &proof)
}

fn numbers(csv: &str) -> Vec<Vec<Option<f64>>> {
    csv.lines()
        .skip(1)
        .map(|line| {
            line.split(',')
                .map(|cell| (!cell.is_empty()).then(|| cell.parse().expect("a number")))
                .collect()
        })
        .collect()
}

#[test]
fn a_sweep_has_the_promised_header_and_the_analysis_own_numbers() {
    let output = trammel(&[
        "sweep",
        "demo:badly-placed-rack",
        "--travel",
        "-2.5:3:12",
        "--rack",
        "-1:1:3",
        "--side",
        "right",
    ]);
    assert_eq!(output.status.code(), Some(0), "{}", err(&output));
    assert_eq!(err(&output), "");
    let text = out(&output);
    let header = "travel,rack,toe_deg,camber_deg,castor_deg,steering_axis_inclination_deg,scrub_radius,mechanical_trail,half_track_change,roll_centre_height,steer_deg,tie_rod_angle_deg,";
    assert!(text.starts_with(header), "{text}");
    let build = demo("badly-placed-rack");
    let request = SweepRequest {
        axle: AxleName::Front,
        side: Side::Right,
        travel: Some(Span::new(-2.5, 3.0, 12).unwrap()),
        rack: Some(Span::new(-1.0, 1.0, 3).unwrap()),
        unit: build.unit,
    };
    let table = SweepTable::of(&build, &request).unwrap();
    let rows = numbers(&text);
    assert_eq!(rows.len(), 36);
    for (written, ours) in rows.iter().zip(&table.rows) {
        assert_eq!(
            written.as_slice(),
            ours.as_slice(),
            "full precision reads back the same"
        );
    }
}

#[test]
fn a_sweep_goes_to_a_file_whole() {
    let folder = tempfile::tempdir().unwrap();
    let file = folder.path().join("table.csv");
    let to = file.to_str().unwrap();
    let output = trammel(&["sweep", "demo:good", "--unit", "mm", "--csv", to]);
    assert_eq!(
        (output.status.code(), out(&output), err(&output)),
        (Some(0), String::new(), String::new())
    );
    let written = fs::read_to_string(&file).unwrap();
    assert_eq!(
        written,
        out(&trammel(&[
            "sweep",
            "demo:good",
            "--unit",
            "mm",
            "--csv",
            "-"
        ]))
    );
    assert_eq!(written.lines().count(), 42);
    // What can't be swept leaves the file as it was.
    refused(
        &[
            "sweep",
            "demo:good",
            "--axle",
            "rear",
            "--rack",
            "-1:1:3",
            "--csv",
            to,
        ],
        "no rack",
    );
    assert_eq!(fs::read_to_string(&file).unwrap(), written);
    let nowhere = folder.path().join("nowhere/table.csv");
    refused(
        &["sweep", "demo:good", "--csv", nowhere.to_str().unwrap()],
        "could not be written",
    );
}

#[test]
fn a_table_is_never_written_over_the_build() {
    let folder = tempfile::tempdir().unwrap();
    assert_eq!(
        trammel(&["demo", "--out", folder.path().to_str().unwrap()])
            .status
            .code(),
        Some(0)
    );
    let build = folder.path().join("demo-good.ron");
    let before = fs::read_to_string(&build).unwrap();
    refused(
        &[
            "sweep",
            build.to_str().unwrap(),
            "--csv",
            build.to_str().unwrap(),
        ],
        "the build itself",
    );
    assert_eq!(fs::read_to_string(&build).unwrap(), before);
}

#[test]
fn poses_out_of_reach_are_left_out_with_one_line() {
    let output = trammel(&["sweep", "demo:good", "--travel", "-30:3:34"]);
    assert_eq!(output.status.code(), Some(0));
    let rows = numbers(&out(&output));
    assert!(!rows.is_empty() && rows.len() < 34);
    let line = err(&output);
    assert_eq!(line.matches('\n').count(), 1, "{line}");
    assert!(line.contains("runs out at a wheel travel of -"), "{line}");
    refused(&["sweep", "demo:good", "--travel", "-90:-80:3"], "runs out");
    refused(
        &["sweep", "demo:good", "--rack", "50:60:3"],
        "runs out at a rack travel of",
    );
}

#[test]
fn what_can_not_be_used_is_told_in_one_line() {
    let folder = tempfile::tempdir().unwrap();
    let file = |name: &str, text: &str| {
        let path = folder.path().join(name);
        fs::write(&path, text).unwrap();
        path.to_str().unwrap().to_owned()
    };
    let (broken, newer) = (
        file("broken.ron", "(\n  format: 1,\n  titel: \"x\",\n)"),
        file("newer.ron", "(format: 7)"),
    );
    for command in ["sweep", "check"] {
        refused(&[command, "no-such-file.ron"], "no-such-file.ron");
        refused(&[command, "demo:bad"], "the demos are demo:good");
        refused(&[command, &broken], "titel");
        refused(&[command, &newer], "newer");
        refused(&[command], "BUILD");
        refused(&[command, folder.path().to_str().unwrap()], "can't be read");
    }
    refused(&["swep"], "swep");
    refused(&["no-such-file.ron"], "no-such-file.ron");
    refused(&["sweep", "demo:good", "--travel", "1:2"], "FROM:TO:STEPS");
    refused(
        &["sweep", "demo:good", "--travel", "-4:4:0"],
        "expected at least 2",
    );
    refused(&["sweep", "demo:good", "--travel=-4:4:1000000"], "at most");
    refused(
        &[
            "sweep",
            "demo:good",
            "--travel",
            "-1:1:999",
            "--rack",
            "-1:1:999",
        ],
        "at most",
    );
    refused(&["sweep", "demo:good", "--frobnicate"], "--frobnicate");
    refused(&["sweep", "demo:good", "--unit", "furlong"], "furlong");
}

#[test]
fn without_a_display_the_window_says_what_works() {
    if cfg!(all(unix, not(target_os = "macos"))) {
        refused(&["demo:good"], "no display");
        refused(&[], "trammel check");
    }
}

#[test]
fn check_ends_with_one_on_a_danger_only() {
    for (name, code) in [("good", 0), ("lifted", 1), ("badly-placed-rack", 0)] {
        let output = trammel(&["check", &format!("demo:{name}")]);
        assert_eq!(output.status.code(), Some(code), "{name}");
        let build = demo(name);
        let findings = findings(&build);
        let text = out(&output);
        for caution in &findings.cautions {
            assert!(
                text.contains(&caution.headline) && text.contains(&caution.source),
                "{text}"
            );
            assert!(
                caution.remedies.iter().all(|r| text.contains(&r.text)),
                "{text}"
            );
        }
        assert!(!text.to_lowercase().contains("safe"), "{text}");
        assert!(text.contains("no approval"), "{text}");
    }
}

#[test]
fn json_has_the_documented_names() {
    let output = trammel(&["check", "demo:lifted", "--json"]);
    assert_eq!(output.status.code(), Some(1));
    let json: serde_json::Value = serde_json::from_str(&out(&output)).expect("JSON");
    let build = demo("lifted");
    let findings = findings(&build);
    assert_eq!(json["unit"], "inch");
    let dangers = findings
        .cautions
        .iter()
        .filter(|c| c.grade == trammel_analysis::Grade::Danger);
    assert_eq!(json["counts"]["danger"], dangers.count());
    let cautions = json["cautions"].as_array().unwrap();
    assert_eq!(cautions.len(), findings.cautions.len());
    let (first, ours) = (&cautions[0], &findings.cautions[0]);
    assert_eq!(first["kind"], ours.kind.word());
    assert_eq!(first["key"], ours.key());
    assert_eq!(first["grade"], "danger");
    assert_eq!(first["side"], serde_json::Value::Null);
    assert_eq!(first["value"].as_f64(), ours.figure.map(|f| f.value));
    let bending = cautions
        .iter()
        .find(|c| c["kind"] == "rack_end_bending")
        .unwrap();
    assert_eq!(bending["travel"], -2.5);
    assert_eq!(
        first["remedies"].as_array().unwrap().len(),
        ours.remedies.len()
    );
    let end = &json["rack_ends"][0];
    assert_eq!(end["factor"].as_f64(), Some(findings.rack_ends[0].factor));
    // Every name in the answer stands in the help, where it is described.
    let help = out(&trammel(&["check", "--help"]));
    for name in field_names(&json) {
        assert!(help.contains(name), "{name} is not in the help");
    }
}

#[test]
fn demos_are_written_and_never_over_anything_unasked() {
    let folder = tempfile::tempdir().unwrap();
    let new = folder.path().join("made/here");
    let to = new.to_str().unwrap();
    let output = trammel(&["demo", "--out", to]);
    assert_eq!(output.status.code(), Some(0), "{}", err(&output));
    for demo in trammel_persistence::demos() {
        assert_eq!(
            fs::read_to_string(new.join(demo.file_name)).unwrap(),
            demo.text
        );
        assert!(out(&output).contains(demo.file_name));
        assert_eq!(
            trammel(&["sweep", new.join(demo.file_name).to_str().unwrap()])
                .status
                .code(),
            Some(0)
        );
    }
    let [first, second, ..] = trammel_persistence::demos().map(|d| new.join(d.file_name));
    fs::remove_file(&first).unwrap();
    fs::write(&second, "mine").unwrap();
    refused(&["demo", "--out", to], "--force");
    assert!(!first.exists(), "all or nothing");
    assert_eq!(fs::read_to_string(&second).unwrap(), "mine");
    assert_eq!(
        trammel(&["demo", "--out", to, "--force"]).status.code(),
        Some(0)
    );
    assert_ne!(fs::read_to_string(&second).unwrap(), "mine");
}

#[test]
fn help_and_version_are_told_on_standard_output() {
    for words in [
        &["--help"][..],
        &["sweep", "--help"],
        &["check", "--help"],
        &["demo", "--help"],
        &["picture", "--help"],
        &["--version"],
    ] {
        let output = trammel(words);
        assert_eq!(output.status.code(), Some(0), "{words:?}");
        assert!(
            !out(&output).is_empty() && err(&output).is_empty(),
            "{words:?}"
        );
    }
    let help = out(&trammel(&["sweep", "--help"]));
    for column in SweepColumn::ALL {
        assert!(help.contains(column.name()), "{}", column.name());
    }
}

/// A reader that goes away after the first line, as `head -1` does.
#[test]
fn a_reader_that_has_heard_enough_is_no_fault() {
    let mut child = Command::new(env!("CARGO_BIN_EXE_trammel"))
        .args(["sweep", "demo:good", "--travel", "-2:2:2001"])
        .stdout(Stdio::piped())
        .stderr(Stdio::piped())
        .spawn()
        .expect("the program runs");
    drop(child.stdout.take());
    let output = child.wait_with_output().expect("it ends");
    assert_eq!(
        (output.status.code(), err(&output)),
        (Some(0), String::new())
    );
}

#[test]
fn a_picture_needs_no_display() {
    let folder = tempfile::tempdir().unwrap();
    let file = folder.path().join("picture.png");
    let output = trammel(&["picture", "demo:lifted", "--out", file.to_str().unwrap()]);
    assert_eq!(output.status.code(), Some(0), "{}", err(&output));
    assert!(fs::read(&file).unwrap().starts_with(b"\x89PNG"));
    refused(
        &[
            "picture",
            "no-such-file.ron",
            "--out",
            file.to_str().unwrap(),
        ],
        "no-such-file.ron",
    );
    assert!(Path::new(&file).exists());
}
