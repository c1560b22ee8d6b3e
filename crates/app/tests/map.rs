//! `map`, as a user types it.

#![allow(clippy::unwrap_used, reason = "a test stops where it fails")]

mod common;

use std::fs;

use common::{demo, err, json, number, out, refused, swept, trammel, written};

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
fn the_build_is_not_written_over() {
    let folder = tempfile::tempdir().unwrap();
    let file = written(folder.path(), &demo("badly-placed-rack"));
    refused(&["map", &file, "--csv", &file], "the build itself");
    refused(&["map", &file, "--picture", &file], "the build itself");
}

#[test]
fn what_can_not_be_done_is_refused_in_one_line() {
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
        "could not be written",
    );
}
