//! `scatter`, as a user types it.

#![allow(clippy::unwrap_used, reason = "a test stops where it fails")]

mod common;

use common::{demo, json, number, out, refused, trammel, written};
use serde_json::Value;

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
fn what_can_not_be_done_is_refused_in_one_line() {
    refused(&["scatter", "demo:good", "--builds", "3"], "expected 10 to");
    refused(&["scatter", "demo:good", "--limit", "NaN"], "limit");
}
