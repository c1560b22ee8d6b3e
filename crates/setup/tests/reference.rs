//! A survey of three points against an independent adjustment: `tests/reference/survey_reference.py`.

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    reason = "a test stops where it fails"
)]

use serde_json::Value;
use trammel_geometry::Point;
use trammel_setup::{Hint, Place, Reading, Survey, What};
use trammel_tuning::Axis;

fn reference() -> Value {
    let path = concat!(
        env!("CARGO_MANIFEST_DIR"),
        "/../../tests/reference/survey.json"
    );
    serde_json::from_str(&std::fs::read_to_string(path).unwrap()).unwrap()
}

fn numbers(value: &Value) -> Vec<f64> {
    value
        .as_array()
        .unwrap()
        .iter()
        .map(|v| v.as_f64().unwrap())
        .collect()
}

fn survey(reference: &Value) -> Survey {
    let mut survey = Survey::new();
    let point = |v: &Value| Point::from_slice(&numbers(v));
    for (name, at) in reference["marks"].as_object().unwrap() {
        survey.add_point(name, Place::Given(point(at))).unwrap();
    }
    for (name, at) in reference["near"].as_object().unwrap() {
        survey
            .add_point(name, Place::Sought(Some(Hint::Near(point(at)))))
            .unwrap();
    }
    for r in reference["readings"].as_array().unwrap() {
        let end = |key: &str| survey.point(r[key].as_str().unwrap()).unwrap();
        let axis = || [Axis::X, Axis::Y, Axis::Z][r["axis"].as_u64().unwrap() as usize];
        let what = match r["kind"].as_str().unwrap() {
            "distance" => What::Distance(end("from"), end("to")),
            "offset" => What::Offset(end("from"), axis()),
            "difference" => What::Difference(end("from"), end("to"), axis()),
            "slope" => What::Slope(end("from"), end("to")),
            other => panic!("{other}"),
        };
        let [value, deviation] = ["value", "deviation"].map(|k| r[k].as_f64().unwrap());
        survey
            .add_reading(Reading {
                what,
                value,
                deviation,
            })
            .unwrap();
    }
    survey
}

#[test]
fn places_covariance_and_checks_agree_with_an_independent_adjustment() {
    let reference = reference();
    let survey = survey(&reference);
    let found = survey.adjust().unwrap();
    let near = |a: f64, b: f64, within: f64, what: &str| {
        assert!(
            (a - b).abs() < within * b.abs().max(1.0),
            "{what}: {a} against {b}"
        );
    };
    let order: Vec<&str> = reference["points"]
        .as_object()
        .unwrap()
        .keys()
        .map(String::as_str)
        .collect();
    let theirs = ["inner", "outer", "pivot"];
    for name in &order {
        let placed = found.placed(survey.point(name).unwrap()).unwrap();
        for (a, b) in placed.at.iter().zip(numbers(&reference["points"][*name])) {
            near(*a, b, 1e-9, name);
        }
    }
    // Our columns stand in the survey's order, theirs in the script's.
    let column = |name: &str| {
        3 * found
            .points
            .iter()
            .position(|p| survey.name(p.point) == name)
            .unwrap()
    };
    for (i, a) in theirs.iter().enumerate() {
        for (j, b) in theirs.iter().enumerate() {
            for (k, l) in (0..3).flat_map(|k| (0..3).map(move |l| (k, l))) {
                let there = numbers(&reference["covariance"][3 * i + k])[3 * j + l];
                near(
                    found.covariance[(column(a) + k, column(b) + l)],
                    there,
                    1e-7,
                    "covariance",
                );
            }
        }
    }
    let left_over = numbers(&reference["left_over"]);
    let checked = numbers(&reference["checked"]);
    for (r, (l, c)) in found.readings.iter().zip(left_over.iter().zip(&checked)) {
        near(r.left_over, *l, 1e-7, "left over");
        near(r.checked, *c, 1e-7, "checked");
    }
    near(
        found.variance_factor.unwrap(),
        reference["variance_factor"].as_f64().unwrap(),
        1e-7,
        "variance factor",
    );
}
