//! `tune` by a global search, as a user types it.

#![allow(clippy::unwrap_used, reason = "a test stops where it fails")]

mod common;

use common::{json, number, out, refused, trammel};
use serde_json::Value;

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
fn dimensions_move_together_within_their_own_ends_and_steps() {
    let words = [
        "tune",
        "demo:badly-placed-rack",
        "--move",
        "rack_height=-2..1/4@1/8,rack_width=-1/4..2@1/16,lower_pivots_height=-1/2..0@1/4",
        "--json",
    ];
    let (found, code) = json(&words);
    assert_eq!(code, Some(0), "{found}");
    let by = |name: &str| {
        let all = found["moves"].as_array().unwrap().iter();
        let of = all.filter(|m| m["coordinate"] == format!("front.{name}").as_str());
        of.map(|m| number(m, "/by")).next().unwrap_or(0.0)
    };
    let (height, width) = (by("tie_rod.inner.z"), by("tie_rod.inner.y"));
    assert!(
        (-2.0..=0.25).contains(&height) && (-0.25..=2.0).contains(&width),
        "{found}"
    );
    let to = |i: usize| number(&found, &format!("/moves/{i}/to"));
    let moves = found["moves"].as_array().unwrap();
    for (i, m) in moves.iter().enumerate() {
        let steps = match m["coordinate"].as_str().unwrap() {
            "front.tie_rod.inner.z" => to(i) * 8.0,
            "front.tie_rod.inner.y" => to(i) * 16.0,
            _ => continue,
        };
        assert!((steps - steps.round()).abs() < 1e-6, "{m}");
    }
    let pivots = [by("lower_arm.front_pivot.z"), by("lower_arm.rear_pivot.z")];
    assert!((pivots[0] - pivots[1]).abs() < 1e-9, "{pivots:?}");
    assert!((-0.5..=0.0).contains(&pivots[0]));
    // What rounding costs is told for every figure.
    for f in found["figures"].as_array().unwrap() {
        assert_eq!(f["exact"].is_null(), f["after"].is_null(), "{f}");
    }
    assert!(number(&found, "/exact/largest_deg") <= number(&found, "/after/largest_deg") + 0.01);
}

#[test]
fn every_figure_can_be_held() {
    let (free, _) = json(&[
        "tune",
        "demo:badly-placed-rack",
        "--move",
        "rack_height",
        "--json",
    ]);
    let figures = free["figures"].as_array().unwrap().clone();
    assert_eq!(figures.len(), 11);
    for f in figures.iter().filter(|f| f["after"].is_number()) {
        let (name, value) = (f["name"].as_str().unwrap(), number(f, "/after"));
        let limit = format!(
            "{name}={}..{}",
            value - value.abs() - 1.0,
            value + value.abs() + 1.0
        );
        let words = [
            "tune",
            "demo:badly-placed-rack",
            "--move",
            "rack_height",
            "--json",
            "--limit",
            &limit,
        ];
        let (found, code) = json(&words);
        assert_eq!(
            (code, &found["limits"][0]["met"]),
            (Some(0), &Value::Bool(true)),
            "{limit}"
        );
    }
}

#[test]
fn the_middle_of_the_travel_can_be_made_to_count_most() {
    let slope = |weigh: &str| {
        let words = [
            "tune",
            "demo:badly-placed-rack",
            "--move",
            "rack_height",
            "--weigh",
            weigh,
            "--json",
        ];
        let (found, code) = json(&words);
        assert_eq!(code, Some(0));
        assert_eq!(found["method"], "search");
        (
            number(&found, "/after/slope_deg").abs(),
            number(&found, "/after/largest_deg"),
        )
    };
    let (whole, middle) = (slope("whole"), slope("middle"));
    assert!(middle.0 <= whole.0 + 1e-6, "{middle:?} {whole:?}");
    assert_ne!(middle, whole);
}

#[test]
fn moves_without_sense_are_refused() {
    let with = |moves: &str, holds: &str| refused(&["tune", "demo:good", "--move", moves], holds);
    with("rack_depth", "rack_height");
    with("rack_height,tie_rod.inner.z", "the same coordinate");
    with("rack_height=1..-1", "smaller to a larger");
    with("rack_height@0", "step");
    with("rack_height@much", "--move");
    refused(
        &["tune", "demo:good", "--point", "tie_rod.middle"],
        "tie_rod.inner",
    );
    refused(&["tune", "demo:good", "--ways", "round"], "front");
}
