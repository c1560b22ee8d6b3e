//! The commands that tune, as a user types them.

#![allow(
    clippy::expect_used,
    clippy::unwrap_used,
    clippy::panic,
    reason = "a test stops where it fails"
)]

use std::{
    fs,
    path::Path,
    process::{Command, Output},
};

use serde_json::Value;
use trammel_build::{
    Axis, AxleName, Build, Coordinate, Edit, KeepOut, KeepOutCorners, LengthUnit, PointName,
};
use trammel_persistence::{read, write};

fn trammel(words: &[&str]) -> Output {
    Command::new(env!("CARGO_BIN_EXE_trammel"))
        .args(words)
        .output()
        .expect("the program runs")
}

fn out(output: &Output) -> String {
    String::from_utf8(output.stdout.clone()).expect("text")
}

fn err(output: &Output) -> String {
    String::from_utf8(output.stderr.clone()).expect("text")
}

/// What a command writes as JSON, and its exit code.
fn json(words: &[&str]) -> (Value, Option<i32>) {
    let output = trammel(words);
    let value = serde_json::from_str(&out(&output));
    (
        value.unwrap_or_else(|e| panic!("{words:?}: {e}: {}", err(&output))),
        output.status.code(),
    )
}

fn number(value: &Value, path: &str) -> f64 {
    let found = value.pointer(path).and_then(Value::as_f64);
    found.unwrap_or_else(|| panic!("no number at {path} of {value}"))
}

/// Code 2, nothing on standard output, one line on standard error that holds these words.
fn refused(words: &[&str], holds: &str) {
    let output = trammel(words);
    assert_eq!(output.status.code(), Some(2), "{words:?}: {}", err(&output));
    assert_eq!(out(&output), "", "{words:?}");
    let line = err(&output);
    assert_eq!(line.matches('\n').count(), 1, "{words:?}: {line}");
    assert!(line.contains(holds), "{words:?}: {line}");
}

fn demo(name: &str) -> Build {
    let demo = trammel_persistence::demos()
        .into_iter()
        .find(|d| d.name == name)
        .expect("a demo");
    read(demo.text).expect("it reads")
}

fn opened(path: &Path) -> Build {
    read(&fs::read_to_string(path).expect("a file")).unwrap_or_else(|fault| panic!("{fault}"))
}

/// Largest toe change that `sweep` writes, degrees.
fn swept(build: &str, side: &str) -> f64 {
    let output = trammel(&["sweep", build, "--side", side]);
    let text = out(&output);
    let mut lines = text.lines();
    let header = lines.next().expect("a header");
    let column = header
        .split(',')
        .position(|c| c == "toe_change_deg")
        .expect("the column");
    lines
        .map(|l| {
            l.split(',')
                .nth(column)
                .expect("a cell")
                .parse::<f64>()
                .expect("a number")
                .abs()
        })
        .fold(0.0, f64::max)
}

#[test]
fn the_badly_placed_rack_is_tuned_and_its_file_keeps_the_promise() {
    let folder = tempfile::tempdir().unwrap();
    let file = folder.path().join("tuned.ron");
    let to = file.to_str().unwrap();
    let (found, code) = json(&["tune", "demo:badly-placed-rack", "--out", to, "--json"]);
    assert_eq!(code, Some(0));
    let promised = number(&found, "/after/largest_deg");
    assert!(promised < 0.05, "{promised}");
    assert!(number(&found, "/before/largest_deg") > 2.0);
    for side in ["left", "right"] {
        let ours = swept(to, side);
        assert!((ours - promised).abs() < 1e-9, "{side}: {ours} {promised}");
    }
    // The rack went along, its bracket as it was, and every comment of the file is still there.
    let (old, new) = (demo("badly-placed-rack"), opened(&file));
    let drop = |b: &Build| b.front.tie_rod.inner[2] - b.front.rack.face.unwrap()[2];
    assert!((drop(&old) - drop(&new)).abs() < 1e-6);
    assert_eq!(new.rear, old.rear);
    let text = fs::read_to_string(&file).unwrap();
    assert!(text.contains("// The bar's own line; the joints"), "{text}");
    // Tuned again, nothing is left to gain.
    let (again, _) = json(&["tune", to, "--json"]);
    assert!((number(&again, "/after/largest_deg") - promised).abs() < 1e-4);
}

#[test]
fn whole_steps_are_whole_and_say_what_they_cost() {
    let words = ["tune", "demo:badly-placed-rack", "--step", "1/16", "--json"];
    for more in [
        &[][..],
        &["--move", "tie_rod.inner.y,front.tie_rod.inner.z"],
    ] {
        let (found, _) = json(&[&words, more].concat());
        for m in found["moves"].as_array().unwrap() {
            let steps = number(m, "/to") * 16.0;
            assert!((steps - steps.round()).abs() < 1e-6, "{m}");
        }
        let (steps, exact) = (
            number(&found, "/after/largest_deg"),
            number(&found, "/exact/largest_deg"),
        );
        assert!(exact <= steps && steps < 0.05, "{exact} {steps}");
    }
}

#[test]
fn a_search_meets_its_limits_and_is_the_same_for_the_same_seed() {
    let words = [
        "tune",
        "demo:badly-placed-rack",
        "--move",
        "tie_rod.inner.y,tie_rod.inner.z,tie_rod.outer.z=-1/2..1/2",
        "--limit",
        "tie_rod_angle=..11",
        "--json",
        "--seed",
    ];
    let run = |seed: &str| trammel(&[&words[..], &[seed]].concat());
    let first = run("7");
    assert_eq!(out(&first), out(&run("7")));
    let found: Value = serde_json::from_str(&out(&first)).unwrap();
    assert_eq!(first.status.code(), Some(0), "{found}");
    assert!(number(&found, "/limits/0/value") <= 11.0);
    assert_eq!(found["limits"][0]["met"], true);
    let outer = found["moves"].as_array().unwrap().iter();
    let outer = outer.filter(|m| m["coordinate"] == "front.tie_rod.outer.z");
    assert!(
        outer
            .map(|m| number(m, "/by").abs())
            .all(|by| by <= 0.5 + 1e-6)
    );
    // What can't be had is said, and the exit code tells.
    let (found, code) = json(&["tune", "demo:good", "--limit", "castor=20..", "--json"]);
    assert_eq!(
        (code, &found["limits"][0]["met"]),
        (Some(1), &Value::Bool(false))
    );
}

#[test]
fn a_rack_end_limit_is_what_check_finds_there() {
    let folder = tempfile::tempdir().unwrap();
    let file = folder.path().join("stronger.ron");
    let to = file.to_str().unwrap();
    let words = [
        "tune",
        "demo:lifted",
        "--limit",
        "rack_end_factor=1.5..",
        "--out",
        to,
        "--json",
    ];
    let (found, code) = json(&words);
    assert_eq!(code, Some(0), "{found}");
    let promised = number(&found, "/limits/0/value");
    assert!(promised >= 1.5);
    // The search looks on a coarser grid than the check.
    let (check, _) = json(&["check", to, "--json"]);
    let checked = number(&check, "/rack_ends/0/factor");
    assert!(
        (checked - promised).abs() < 0.05 * promised,
        "{checked} {promised}"
    );
}

#[test]
fn both_sides_of_a_symmetrical_build_tune_alike() {
    let of = |side: &str| json(&["tune", "demo:badly-placed-rack", "--side", side, "--json"]).0;
    let (left, right) = (of("left"), of("right"));
    let inner = |v: &Value, axis: &str| {
        let name = format!("front.tie_rod.inner.{axis}");
        let moves = v["moves"].as_array().unwrap().iter();
        let m = moves
            .filter(|m| m["coordinate"] == name.as_str())
            .collect::<Vec<_>>();
        number(m[0], "/to")
    };
    assert!((inner(&left, "y") + inner(&right, "y")).abs() < 1e-5);
    assert!((inner(&left, "z") - inner(&right, "z")).abs() < 1e-5);
}

fn written(folder: &Path, build: &Build) -> String {
    let path = folder.join("build.ron");
    fs::write(&path, write(build)).unwrap();
    path.to_str().unwrap().to_owned()
}

#[test]
fn locked_coordinates_stay() {
    let folder = tempfile::tempdir().unwrap();
    let mut build = demo("badly-placed-rack");
    let lock = |build: &mut Build, point, axis| {
        build.locked.insert(Coordinate {
            axle: AxleName::Front,
            point,
            axis,
        });
    };
    lock(&mut build, PointName::TieRodInner, Axis::Y);
    lock(&mut build, PointName::RackFace, Axis::Z);
    let file = written(folder.path(), &build);
    for more in [&[][..], &["--limit", "tie_rod_angle=..40"]] {
        let (found, _) = json(&[&["tune", &file, "--json"], more].concat());
        let moved: Vec<&str> = found["moves"]
            .as_array()
            .unwrap()
            .iter()
            .map(|m| m["coordinate"].as_str().unwrap())
            .collect();
        // The rack itself is held, so the joint alone moves.
        assert_eq!(moved, ["front.tie_rod.inner.z"]);
        assert!(number(&found, "/after/largest_deg") < number(&found, "/before/largest_deg"));
    }
    refused(&["tune", &file, "--move", "tie_rod.inner.y"], "locked");
    lock(&mut build, PointName::TieRodInner, Axis::Z);
    let file = written(folder.path(), &build);
    refused(&["tune", &file], "locked");
}

#[test]
fn keep_outs_are_kept_clear_of() {
    let folder = tempfile::tempdir().unwrap();
    let mut build = demo("badly-placed-rack");
    build.keep_outs.clear();
    build.keep_outs.push(KeepOut {
        name: "frame tube".into(),
        corners: KeepOutCorners::Front([6.0, 8.5], [6.8, 9.0]),
    });
    let file = written(folder.path(), &build);
    for more in [&[][..], &["--step", "1/16"]] {
        let (found, code) = json(&[&["tune", &file, "--json"], more].concat());
        assert_eq!(
            (code, found["method"].as_str()),
            (Some(0), Some("clear_spot"))
        );
        assert_eq!(found["keep_out"], Value::Null);
        // The valley runs outboard at about this height: the best clear place is beside the tube, on its edge.
        let y = number(&found, "/moves/0/to");
        assert!(y > 6.8 && y < 6.9, "{found}");
        assert!(number(&found, "/after/largest_deg") < 0.2);
    }
    // All around the joint as far as it may go.
    build.keep_outs[0].corners = KeepOutCorners::Front([0.0, 0.0], [20.0, 20.0]);
    let file = written(folder.path(), &build);
    let (found, code) = json(&["tune", &file, "--json"]);
    assert_eq!(
        (code, found["keep_out"].as_str()),
        (Some(1), Some("frame tube"))
    );
}

#[test]
fn nothing_is_written_over_unless_that_is_wanted() {
    let folder = tempfile::tempdir().unwrap();
    let build = demo("badly-placed-rack");
    let file = written(folder.path(), &build);
    let before = fs::read_to_string(&file).unwrap();
    for words in [
        vec!["tune", &file, "--out", &file],
        vec!["lift", &file, "--by", "1", "--out", &file],
    ] {
        refused(&words, "--force");
        assert_eq!(fs::read_to_string(&file).unwrap(), before);
    }
    refused(&["map", &file, "--csv", &file], "the build itself");
    refused(&["map", &file, "--picture", &file], "the build itself");
    let output = trammel(&["tune", &file, "--out", &file, "--force"]);
    assert_eq!(output.status.code(), Some(0), "{}", err(&output));
    assert!(swept(&file, "left") < 0.05);
    assert_eq!(fs::read_to_string(format!("{file}.bak")).unwrap(), before);
}

#[test]
fn a_map_has_the_best_spot_at_its_bottom_and_says_why_a_place_has_no_score() {
    let output = trammel(&[
        "map",
        "demo:badly-placed-rack",
        "--csv",
        "-",
        "--cells",
        "61",
    ]);
    assert_eq!(output.status.code(), Some(0), "{}", err(&output));
    let text = out(&output);
    let rows: Vec<Vec<&str>> = text
        .lines()
        .skip(1)
        .map(|l| l.split(',').collect())
        .collect();
    assert!(text.starts_with("x,y,z,largest_deg,rms_deg,slope_deg,state,keep_out\n"));
    assert_eq!(rows.len(), 61 * 61);
    let cell = |row: &Vec<&str>, i: usize| row[i].parse::<f64>().unwrap();
    let scored = rows.iter().filter(|r| r[6] == "scored");
    let best = scored
        .min_by(|a, b| cell(a, 3).total_cmp(&cell(b, 3)))
        .unwrap();
    let (found, _) = json(&["tune", "demo:badly-placed-rack", "--json"]);
    for (i, path) in [(1, "/moves/0/to"), (2, "/moves/1/to")] {
        assert!(
            (cell(best, i) - number(&found, path)).abs() < 0.07,
            "{best:?}"
        );
    }
    assert!(cell(best, 3) >= number(&found, "/after/largest_deg"));
    // The joint itself is in the middle, and its score is the sweep's.
    let middle = &rows[30 * 61 + 30];
    assert!((cell(middle, 3) - swept("demo:badly-placed-rack", "left")).abs() < 1e-9);
    let wide = trammel(&[
        "map",
        "demo:good",
        "--csv",
        "-",
        "--width",
        "40",
        "--height",
        "40",
    ]);
    assert!(out(&wide).contains(",,,out_of_reach,"));
}

#[test]
fn a_map_is_painted_the_same_every_time() {
    let folder = tempfile::tempdir().unwrap();
    let paint = |name: &str, more: &[&str]| {
        let file = folder.path().join(name);
        let words = [
            "map",
            "demo:badly-placed-rack",
            "--size",
            "500x400",
            "--picture",
        ];
        let output = trammel(&[&words[..], &[file.to_str().unwrap()], more].concat());
        assert_eq!(output.status.code(), Some(0), "{}", err(&output));
        fs::read(file).unwrap()
    };
    let first = paint("a.png", &[]);
    assert!(first.starts_with(b"\x89PNG"));
    assert_eq!(first, paint("b.png", &[]));
    assert_ne!(first, paint("c.png", &["--point", "tie_rod.outer"]));
    assert_ne!(
        first,
        paint("d.png", &["--plane", "plan", "--score", "slope"])
    );
}

#[test]
fn a_scatter_is_the_same_for_the_same_seed_and_follows_the_shop() {
    let folder = tempfile::tempdir().unwrap();
    let words = [
        "scatter",
        "demo:good",
        "--builds",
        "400",
        "--json",
        "--seed",
    ];
    let run = |seed: &str| out(&trammel(&[&words[..], &[seed]].concat()));
    assert_eq!(run("3"), run("3"));
    assert_ne!(run("3"), run("4"));
    let found: Value = serde_json::from_str(&run("3")).unwrap();
    let shares = found["ranking"].as_array().unwrap().iter();
    let sum: f64 = shares.map(|s| number(s, "/share")).sum();
    assert!((sum - 1.0).abs() < 1e-9, "{sum}");
    assert_eq!(number(&found, "/swept") + number(&found, "/failed"), 400.0);
    // Ten times as exact, a tenth of the spread; a point of its own is as it says.
    let mut build = demo("good");
    build.tolerances.tape = Some(0.8 / 25.4 / 10.0);
    let file = written(folder.path(), &build);
    let (exact, _) = json(&["scatter", &file, "--builds", "400", "--json", "--seed", "3"]);
    let deviation = |v: &Value| number(v, "/band/0/deviation_deg");
    let ratio = deviation(&found) / deviation(&exact);
    assert!((ratio - 10.0).abs() < 0.2, "{ratio}");
    assert_eq!(number(&exact, "/within_limit"), 1.0);
    // Nothing is within a limit of nought.
    let (none, _) = json(&["scatter", &file, "--builds", "50", "--limit", "0", "--json"]);
    assert_eq!(number(&none, "/within_limit"), 0.0);
}

#[test]
fn the_good_demo_raised_has_the_lifted_ones_tie_rods() {
    let folder = tempfile::tempdir().unwrap();
    let file = folder.path().join("raised.ron");
    let to = file.to_str().unwrap();
    let words = [
        "lift",
        "demo:good",
        "--by",
        "2 3/4",
        "--stops",
        "move-along",
        "--out",
        to,
        "--json",
    ];
    let (found, code) = json(&words);
    assert_eq!(code, Some(0), "{found}");
    let (before, after) = (
        number(&found, "/rows/0/tie_rod_angle_deg"),
        number(&found, "/rows/8/tie_rod_angle_deg"),
    );
    let (lifted, _) = json(&["lift", "demo:lifted", "--by", "0", "--json"]);
    let theirs = number(&lifted, "/rows/0/tie_rod_angle_deg");
    assert!(
        before < 13.0 && (after - theirs).abs() < 1.5,
        "{before} {after} {theirs}"
    );
    assert!(
        number(&found, "/rows/8/rack_end_factor") < 0.7 * number(&found, "/rows/0/rack_end_factor")
    );
    // The file is the build of the last row.
    assert!((swept(to, "left") - number(&found, "/rows/8/toe_change_deg")).abs() < 1e-6);
    let (good, there) = (demo("good"), opened(&file));
    let rise = there.front.lower_arm.front_pivot[2] - good.front.lower_arm.front_pivot[2];
    assert!((rise - 2.75).abs() < 1e-6);
    // Lengths may be typed in the other unit, and a metric build is raised alike.
    let metric = Edit::ConvertUnit(LengthUnit::Millimetre)
        .apply(&good)
        .unwrap();
    let metric = written(folder.path(), &metric);
    let (also, _) = json(&[
        "lift",
        &metric,
        "--by",
        "2 3/4 in",
        "--stops",
        "move-along",
        "--json",
    ]);
    let angle = number(&also, "/rows/8/tie_rod_angle_deg");
    assert!((angle - after).abs() < 1e-3, "{angle} {after}");
}

#[test]
fn what_can_not_be_done_is_refused_in_one_line() {
    refused(&["tune", "demo:none"], "demo");
    refused(
        &["tune", "demo:good", "--move", "tie_rod.middle.z"],
        "expected a coordinate",
    );
    refused(
        &["tune", "demo:good", "--move", "rear.tie_rod.inner.z"],
        "--axle",
    );
    refused(
        &["tune", "demo:good", "--move", "rack.face.z"],
        "nothing to toe",
    );
    refused(
        &["tune", "demo:good", "--move", "tie_rod.inner.z=1..-1"],
        "smaller to a larger",
    );
    refused(
        &["tune", "demo:good", "--move", "tie_rod.inner.z=up"],
        "range",
    );
    refused(
        &["tune", "demo:good", "--limit", "beauty=3"],
        "the figures are",
    );
    refused(&["tune", "demo:good", "--limit", "castor"], "FIGURE=RANGE");
    refused(
        &["tune", "demo:good", "--limit", "castor=7..5"],
        "more than",
    );
    refused(&["tune", "demo:good", "--step", "0"], "the step");
    refused(&["tune", "demo:good", "--reach", "far"], "--reach");
    refused(
        &[
            "tune",
            "demo:good",
            "--axle",
            "rear",
            "--limit",
            "rack_end_factor=2..",
        ],
        "rack end",
    );
    refused(&["map", "demo:good"], "--csv");
    refused(&["map", "demo:good", "--csv", "-", "--cells", "1"], "cells");
    refused(
        &["map", "demo:good", "--csv", "-", "--width", "0"],
        "rectangle",
    );
    refused(
        &["map", "demo:good", "--csv", "-", "--rack", "90"],
        "no place",
    );
    refused(
        &["map", "demo:good", "--csv", "/nowhere/at/all.csv"],
        "can't be written",
    );
    refused(&["scatter", "demo:good", "--builds", "3"], "expected 10 to");
    refused(&["scatter", "demo:good", "--limit", "NaN"], "limit");
    refused(&["lift", "demo:good"], "--by");
    refused(&["lift", "demo:good", "--by", "much"], "--by");
    refused(&["lift", "demo:good", "--by", "3"], "stops");
    refused(
        &["lift", "demo:good", "--by", "40", "--stops", "move-along"],
        "runs out",
    );
}
