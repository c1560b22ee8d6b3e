//! `prove` and `forces` as a user types them.

#![allow(
    clippy::expect_used,
    clippy::unwrap_used,
    clippy::panic,
    reason = "a test stops where it fails"
)]

mod common;

use common::{field_names, out, refused, trammel};

const HEADER: &str = "travel,rack,tie_rod_tension,spring_force,\
upper_ball_joint_x,upper_ball_joint_y,upper_ball_joint_z,lower_ball_joint_x,lower_ball_joint_y,lower_ball_joint_z,\
upper_front_pivot_x,upper_front_pivot_y,upper_front_pivot_z,upper_rear_pivot_x,upper_rear_pivot_y,upper_rear_pivot_z,\
lower_front_pivot_x,lower_front_pivot_y,lower_front_pivot_z,lower_rear_pivot_x,lower_rear_pivot_y,lower_rear_pivot_z,\
rack_force,rack_end_bending,rack_end_torsion,rack_end_axial,rack_end_shear";

fn forces(more: &[&str]) -> Vec<Vec<f64>> {
    let mut words = vec!["forces", "demo:good", "--at", "contact", "--force"];
    words.extend(more);
    let output = trammel(&words);
    assert_eq!(output.status.code(), Some(0));
    let text = out(&output);
    let mut lines = text.lines();
    assert_eq!(lines.next(), Some(HEADER));
    lines
        .map(|line| line.split(',').map(|cell| cell.parse().unwrap()).collect())
        .collect()
}

#[test]
fn forces_have_the_promised_columns_and_add_up() {
    let rows = forces(&["-500,100,1500", "--travel", "-2:2:3", "--rack", "-1:1:3"]);
    assert_eq!(rows.len(), 9);
    for row in &rows {
        // The chassis holds the corner: pivots, spring and rack end carry the whole load between them; here the arms' share along x.
        let arm = |from: usize, axis: usize| row[from + axis] + row[from + 3 + axis];
        assert!((arm(10, 0) - row[4]).abs() < 1e-6, "upper arm along x");
        assert!(row[3] > 0.0, "the spring is pressed");
        assert!(row[23] >= 0.0 && row[26] >= 0.0);
    }
}

#[test]
fn units_change_lengths_and_moments_and_no_force() {
    let [inch, mm] =
        [("inch", "-2:2:2", "10"), ("mm", "-50.8:50.8:2", "254")].map(|(unit, travel, moment)| {
            forces(&[
                "-500,100,1500",
                "--travel",
                travel,
                "--unit",
                unit,
                "--moment-z",
                moment,
            ])
        });
    for (a, b) in inch.iter().zip(&mm) {
        for (column, (a, b)) in a.iter().zip(b).enumerate() {
            let by = if matches!(column, 0 | 1 | 23 | 24) {
                25.4
            } else {
                1.0
            };
            assert!(
                (a * by - b).abs() < 1e-6 * b.abs().max(1.0),
                "{column}: {a} {b}"
            );
        }
    }
}

#[test]
fn a_rear_corner_has_no_rack_cells() {
    let output = trammel(&[
        "forces",
        "demo:good",
        "--axle",
        "rear",
        "--at",
        "hub",
        "--force",
        "0,0,1000",
        "--travel",
        "0:0:1",
    ]);
    assert_eq!(output.status.code(), Some(0));
    let text = out(&output);
    let row = text.lines().nth(1).unwrap();
    assert!(row.ends_with(",,,,,"), "{row}");
}

/// The lifted demo with a thinner thread on its rack ends, in a file.
fn thin(folder: &tempfile::TempDir) -> String {
    let demos = trammel_persistence::demos();
    let lifted = demos
        .into_iter()
        .find(|demo| demo.name == "lifted")
        .unwrap();
    let text = lifted
        .text
        .replacen("thread: \"1/2-20\"", "thread: \"3/8-24\"", 1);
    let path = folder.path().join("thin.ron");
    std::fs::write(&path, text).unwrap();
    path.to_str().unwrap().to_owned()
}

#[test]
fn prove_ends_with_one_on_a_danger_only() {
    let folder = tempfile::tempdir().unwrap();
    let thin = thin(&folder);
    for (name, code) in [("demo:good", 0), ("demo:lifted", 0), (&thin, 1)] {
        let output = trammel(&["prove", name]);
        let text = out(&output);
        assert_eq!(output.status.code(), Some(code), "{name}: {text}");
        assert!(
            text.contains("Limit: ") && text.contains("Not in any row:"),
            "{text}"
        );
        assert!(!text.to_lowercase().contains(" safe"), "{text}");
    }
}

#[test]
fn the_names_of_the_json_stand_in_the_help() {
    let folder = tempfile::tempdir().unwrap();
    let output = trammel(&["prove", &thin(&folder), "--json"]);
    let json: serde_json::Value = serde_json::from_str(&out(&output)).expect("JSON");
    let rows = json["rows"].as_array().unwrap();
    assert!(rows.len() > 50);
    assert_eq!(rows[0]["grade"], "danger");
    assert!(!rows[0]["remedies"].as_array().unwrap().is_empty());
    let help = out(&trammel(&["prove", "--help"]));
    for name in field_names(&json) {
        assert!(help.contains(name), "{name} is not in the help");
    }
}

#[test]
fn one_load_case_alone() {
    let output = trammel(&["prove", "demo:good", "--case", "landing", "--json"]);
    let json: serde_json::Value = serde_json::from_str(&out(&output)).expect("JSON");
    let rows = json["rows"].as_array().unwrap();
    assert!(rows.len() > 10);
    assert!(rows.iter().all(|row| row["load_case"] == "landing"));
    refused(&["prove", "demo:good", "--case", "moon"], "landing");
}

#[test]
fn what_can_not_be_used_is_told_in_one_line() {
    refused(
        &["forces", "demo:good", "--at", "contact", "--force", "1,2"],
        "three numbers",
    );
    refused(
        &[
            "forces",
            "demo:good",
            "--at",
            "contact",
            "--force",
            "1,NaN,2",
        ],
        "three numbers",
    );
    refused(&["forces", "demo:good", "--at", "contact"], "--force");
    refused(
        &[
            "forces",
            "demo:good",
            "--axle",
            "rear",
            "--at",
            "hub",
            "--force",
            "0,0,1",
            "--rack",
            "0:1:2",
        ],
        "no rack",
    );
    refused(
        &["forces", "demo:none", "--at", "hub", "--force", "0,0,1"],
        "demo",
    );
    refused(
        &[
            "forces",
            "demo:good",
            "--at",
            "hub",
            "--force",
            "0,0,1",
            "--travel",
            "90:99:2",
        ],
        "out of reach",
    );
    refused(&["prove", "nowhere.ron"], "nowhere.ron");
}
