//! `lift`, as a user types it.

#![allow(clippy::unwrap_used, reason = "a test stops where it fails")]

mod common;

use std::fs;

use common::{demo, json, number, opened, refused, swept, written};
use trammel_build::{Edit, LengthUnit};

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
fn nothing_is_written_over_unless_that_is_wanted() {
    let folder = tempfile::tempdir().unwrap();
    let file = written(folder.path(), &demo("badly-placed-rack"));
    let before = fs::read_to_string(&file).unwrap();
    refused(&["lift", &file, "--by", "1", "--out", &file], "--force");
    assert_eq!(fs::read_to_string(&file).unwrap(), before);
}

#[test]
fn what_can_not_be_done_is_refused_in_one_line() {
    refused(&["lift", "demo:good"], "--by");
    refused(&["lift", "demo:good", "--by", "much"], "--by");
    refused(&["lift", "demo:good", "--by", "3"], "stops");
    refused(
        &["lift", "demo:good", "--by", "40", "--stops", "move-along"],
        "runs out",
    );
}
