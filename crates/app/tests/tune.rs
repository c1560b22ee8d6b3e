//! `tune` to the best spot, as a user types it.

#![allow(clippy::unwrap_used, reason = "a test stops where it fails")]

mod common;

use std::fs;

use common::{demo, err, json, number, opened, out, refused, swept, trammel, written};
use serde_json::Value;
use trammel_build::{Axis, AxleName, Build, Coordinate, KeepOut, KeepOutCorners, PointName};

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
    for more in [["--point", "both"], ["--ways", "free"], ["--ways", "side"]] {
        let (found, _) = json(&[&["tune", &file, "--json"][..], &more].concat());
        assert_eq!(found["keep_out"], Value::Null, "{more:?}");
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
    refused(&["tune", &file, "--out", &file], "--force");
    assert_eq!(fs::read_to_string(&file).unwrap(), before);
    let output = trammel(&["tune", &file, "--out", &file, "--force"]);
    assert_eq!(output.status.code(), Some(0), "{}", err(&output));
    assert!(swept(&file, "left") < 0.05);
    assert_eq!(fs::read_to_string(format!("{file}.bak")).unwrap(), before);
}

/// Every kind of best spot is at least as good as standing still, and gets no worse with more freedom but for the
/// thousandth of a degree that the least movement may cost.
#[test]
fn one_joint_the_other_or_both_go_the_ways_they_may() {
    let largest = |more: &[&str]| {
        let words = [&["tune", "demo:badly-placed-rack", "--json"][..], more].concat();
        let (found, code) = json(&words);
        assert_eq!(code, Some(0), "{words:?}");
        found
    };
    let after = |v: &Value| number(v, "/after/largest_deg");
    let before = number(&largest(&[]), "/before/largest_deg");
    for point in ["tie_rod.inner", "tie_rod.outer", "both"] {
        let of = |ways: &str| largest(&["--point", point, "--ways", ways]);
        let (height, front, free) = (of("height"), of("front"), of("free"));
        assert!(after(&height) < before, "{point}");
        assert!(after(&front) <= after(&height) + 0.00101, "{point}");
        assert!(after(&free) <= after(&front) + 0.00101, "{point}");
        for m in height["moves"].as_array().unwrap() {
            assert!(m["coordinate"].as_str().unwrap().ends_with(".z"), "{m}");
        }
        let joints = ["tie_rod.inner", "tie_rod.outer"];
        for m in front["moves"].as_array().unwrap() {
            let name = m["coordinate"].as_str().unwrap();
            let other = joints.iter().find(|j| name.contains(*j));
            assert!(point == "both" || other.is_none_or(|j| *j == point), "{m}");
            assert!(!name.contains("tie_rod") || !name.ends_with(".x"), "{m}");
        }
    }
    let width = largest(&["--ways", "width"]);
    assert_eq!(width["moves"][0]["coordinate"], "front.tie_rod.inner.y");
    let both = largest(&["--point", "both"]);
    assert!(number(&both, "/least/largest_deg") <= after(&both));
    assert_eq!(
        largest(&["--point", "tie_rod.outer"])["rule"]["joint"],
        "tie_rod.outer"
    );
    let told = out(&trammel(&[
        "tune",
        "demo:badly-placed-rack",
        "--point",
        "both",
    ]));
    assert!(
        told.contains("both tie-rod joints") && told.contains("least movement"),
        "{told}"
    );
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
    refused(&["tune", "demo:good", "--limit", "castor=6*-1"], "weight");
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
}

#[test]
fn a_limit_weighs_what_is_said() {
    let largest = |weight: &str| {
        let limit = format!("toe_change_at_lock=0*{weight}");
        let (found, code) = json(&[
            "tune",
            "demo:badly-placed-rack",
            "--limit",
            &limit,
            "--json",
        ]);
        assert_eq!(code, Some(0), "{found}");
        number(&found, "/after/largest_deg")
    };
    let (little, much) = (largest("0.01"), largest("50"));
    assert!(much > little + 0.005, "at centre {little} and {much}");
}
