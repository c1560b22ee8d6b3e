//! `trammel sheets` as a user types it.

#![allow(
    clippy::expect_used,
    clippy::unwrap_used,
    clippy::panic,
    reason = "a test stops where it fails"
)]

use std::{
    collections::BTreeMap,
    fs,
    path::Path,
    process::{Command, Output},
};

fn trammel(words: &[&str]) -> Output {
    Command::new(env!("CARGO_BIN_EXE_trammel"))
        .args(words)
        .output()
        .expect("the program runs")
}

fn sheets(build: &str, out: &Path, more: &[&str]) -> Output {
    let folder = out.display().to_string();
    trammel(&[&["sheets", build, "--out", &folder], more].concat())
}

/// Code 2, nothing on standard output, one line on standard error that holds these words.
fn refused(build: &str, out: &Path, more: &[&str], holds: &str) {
    let output = sheets(build, out, more);
    let line = String::from_utf8(output.stderr).unwrap();
    assert_eq!(output.status.code(), Some(2), "{more:?}: {line}");
    assert!(output.stdout.is_empty(), "{more:?}");
    assert_eq!(line.matches('\n').count(), 1, "{line}");
    assert!(line.contains(holds), "{line}");
}

fn contents(folder: &Path) -> BTreeMap<String, Vec<u8>> {
    let entries = fs::read_dir(folder).unwrap().map(Result::unwrap);
    entries
        .map(|e| {
            (
                e.file_name().into_string().unwrap(),
                fs::read(e.path()).unwrap(),
            )
        })
        .collect()
}

#[test]
fn the_same_build_gives_the_same_files_and_each_is_told() {
    let folder = tempfile::tempdir().unwrap();
    let [first, second] = ["first", "second"].map(|n| folder.path().join("new").join(n));
    let output = sheets("demo:lifted", &first, &[]);
    assert!(matches!(output.status.code(), Some(0 | 1)), "{output:?}");
    sheets("demo:lifted", &second, &[]);
    let files = contents(&first);
    assert_eq!(files, contents(&second));
    let told = String::from_utf8(output.stdout).unwrap();
    for name in files.keys() {
        assert!(told.contains(name.as_str()), "{name}");
    }
    assert!(files["sheets.pdf"].starts_with(b"%PDF"));
    assert!(files["cut-list.csv"].len() > 200);
    assert!(files.contains_key("front-lower-arm-rear-pivot-tab.dxf"));
}

#[test]
fn one_part_in_one_format_on_chosen_paper() {
    let folder = tempfile::tempdir().unwrap();
    let words = [
        "--part",
        "front-tie-rod",
        "--format",
        "csv,pdf",
        "--paper",
        "a3",
    ];
    sheets("demo:good", folder.path(), &words);
    let names: Vec<String> = contents(folder.path()).into_keys().collect();
    assert_eq!(names, ["front-tie-rod.csv", "front-tie-rod.pdf"]);
}

#[test]
fn what_can_not_be_made_is_told_and_ends_with_1() {
    let folder = tempfile::tempdir().unwrap();
    let build = folder.path().join("kart.ron");
    let demo = trammel_persistence::demos()[0].text;
    fs::write(
        &build,
        demo.replace("thread: \"3/8-24\"", "thread: \"odd\""),
    )
    .unwrap();
    let output = sheets(
        &build.display().to_string(),
        &folder.path().join("out"),
        &["--format", "csv"],
    );
    assert_eq!(output.status.code(), Some(1));
    let told = String::from_utf8(output.stdout).unwrap();
    assert!(told.contains("not made") && told.contains("odd"), "{told}");
}

/// The part is made, since its owner may want to see it; that it does not go is told apart from the list of files.
#[test]
fn what_does_not_go_is_told_on_standard_error() {
    let folder = tempfile::tempdir().unwrap();
    let output = sheets(
        "demo:lifted",
        &folder.path().join("out"),
        &["--format", "csv"],
    );
    assert_eq!(output.status.code(), Some(0));
    let told = String::from_utf8(output.stderr).unwrap();
    assert!(
        told.contains("Rack-end bracket") && told.contains("DOES NOT GO"),
        "{told}"
    );
    let output = sheets(
        "demo:good",
        &folder.path().join("out"),
        &["--format", "csv"],
    );
    assert_eq!(String::from_utf8(output.stderr).unwrap(), "");
}

#[test]
fn bad_words_are_refused_with_what_was_expected() {
    let folder = tempfile::tempdir().unwrap();
    let out = folder.path().join("out");
    refused(
        "demo:good",
        &out,
        &["--paper", "a5"],
        "a4, a3, letter or tabloid",
    );
    refused(
        "demo:good",
        &out,
        &["--format", "png"],
        "pdf, dxf, svg or csv",
    );
    refused(
        "demo:good",
        &out,
        &["--part", "hat"],
        "no sheet called \"hat\"",
    );
    refused("demo:none", &out, &[], "no demo called none");
    refused("nowhere.ron", &out, &[], "nowhere.ron");
    assert!(!out.exists(), "nothing was made");
    fs::write(&out, "a file").unwrap();
    refused("demo:good", &out, &[], "could not be made");
    assert_eq!(fs::read_to_string(&out).unwrap(), "a file");
}
