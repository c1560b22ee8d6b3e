//! The program as a user runs it, and what its tests share.

#![allow(
    dead_code,
    clippy::expect_used,
    clippy::unwrap_used,
    clippy::panic,
    reason = "each test uses a part of it; a test stops where it fails"
)]

use std::{
    fs,
    path::Path,
    process::{Command, Output},
};

use serde_json::Value;
use trammel_build::Build;
use trammel_persistence::{read, write};

/// The program on a machine without a display: what would open a window says so.
pub fn trammel(words: &[&str]) -> Output {
    Command::new(env!("CARGO_BIN_EXE_trammel"))
        .args(words)
        .env_remove("DISPLAY")
        .env_remove("WAYLAND_DISPLAY")
        .env_remove("WAYLAND_SOCKET")
        .output()
        .expect("the program runs")
}

pub fn out(output: &Output) -> String {
    String::from_utf8(output.stdout.clone()).expect("text")
}

pub fn err(output: &Output) -> String {
    String::from_utf8(output.stderr.clone()).expect("text")
}

/// What a command writes as JSON, and its exit code.
pub fn json(words: &[&str]) -> (Value, Option<i32>) {
    let output = trammel(words);
    let value = serde_json::from_str(&out(&output));
    (
        value.unwrap_or_else(|e| panic!("{words:?}: {e}: {}", err(&output))),
        output.status.code(),
    )
}

/// The names of all fields of an answer, nested ones too.
pub fn field_names(json: &Value) -> Vec<&String> {
    match json {
        Value::Object(fields) => {
            let nested = fields.values().flat_map(field_names);
            fields.keys().chain(nested).collect()
        }
        Value::Array(items) => items.iter().flat_map(field_names).collect(),
        _ => Vec::new(),
    }
}

pub fn number(value: &Value, path: &str) -> f64 {
    let found = value.pointer(path).and_then(Value::as_f64);
    found.unwrap_or_else(|| panic!("no number at {path} of {value}"))
}

/// Code 2, nothing on standard output, one line on standard error that holds these words.
pub fn refused(words: &[&str], holds: &str) {
    let output = trammel(words);
    assert_eq!(output.status.code(), Some(2), "{words:?}: {}", err(&output));
    assert_eq!(out(&output), "", "{words:?}");
    let line = err(&output);
    assert_eq!(line.matches('\n').count(), 1, "{words:?}: {line}");
    assert!(line.contains(holds), "{words:?}: {line}");
}

pub fn demo(name: &str) -> Build {
    let demo = trammel_persistence::demos()
        .into_iter()
        .find(|d| d.name == name)
        .expect("a demo");
    read(demo.text).expect("it reads")
}

pub fn opened(path: &Path) -> Build {
    read(&fs::read_to_string(path).expect("a file")).unwrap_or_else(|fault| panic!("{fault}"))
}

/// Largest toe change that `sweep` writes, degrees.
pub fn swept(build: &str, side: &str) -> f64 {
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

pub fn written(folder: &Path, build: &Build) -> String {
    let path = folder.join("build.ron");
    fs::write(&path, write(build)).unwrap();
    path.to_str().unwrap().to_owned()
}
