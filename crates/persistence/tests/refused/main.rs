//! Broken build files are refused, each with place, finding and expectation. Every file of `broken/` is named in `said.rs`.
#![allow(
    clippy::expect_used,
    clippy::panic,
    reason = "helpers of tests fail as tests do"
)]

mod said;

use std::{collections::BTreeSet, fs, path::Path};

use trammel_persistence::{LARGEST_FILE, read, read_bytes};

use said::SAID;

fn folder() -> std::path::PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/broken")
}

#[test]
fn each_is_refused_with_place_finding_and_expectation() {
    for (name, said) in SAID {
        let path = folder().join(name).with_extension("ron");
        let bytes = fs::read(&path).unwrap_or_else(|fault| panic!("{}: {fault}", path.display()));
        let fault = read_bytes(&bytes).expect_err(name);
        assert_eq!(fault.to_string(), said, "{name}");
    }
}

#[test]
fn none_is_forgotten() {
    let files: BTreeSet<String> = fs::read_dir(folder())
        .expect("the folder")
        .map(|entry| entry.expect("an entry").path())
        .filter(|path| path.extension().is_some_and(|end| end == "ron"))
        .filter_map(|path| Some(path.file_stem()?.to_str()?.to_owned()))
        .collect();
    let named: BTreeSet<String> = SAID.iter().map(|(name, _)| (*name).to_owned()).collect();
    assert_eq!(files, named);
}

#[test]
fn a_text_too_large_is_not_read() {
    let size = usize::try_from(LARGEST_FILE).expect("a size") + 1;
    let fault = read(&" ".repeat(size)).expect_err("too large");
    assert_eq!(
        fault.to_string(),
        "the file has 4194305 bytes; expected a build file of at most 4194304, so it was not read"
    );
}

#[test]
fn a_good_file_cut_off_anywhere_or_with_any_sign_gone_never_panics() {
    let good = trammel_persistence::demos()[0].text;
    for (at, sign) in good.char_indices() {
        let _ = read(&good[..at]);
        let without = format!("{}{}", &good[..at], &good[at + sign.len_utf8()..]);
        let _ = read(&without);
    }
}

/// As large as no vehicle is, on the right side alone: the message points at the right-hand point.
#[test]
fn a_right_hand_joint_too_far_away_is_placed() {
    let sound = fs::read_to_string(folder().join("right-tie-rod-of-no-length.ron")).expect("read");
    let far = sound.replace("inner: (-3.5, -21.5, 8.0)", "inner: (-3.5, -50000.0, 8.0)");
    let said = read(&far).expect_err("too far away").to_string();
    assert!(
        said.starts_with("line 11, column 20: front right corner: tie_rod.inner"),
        "{said}"
    );
}

/// The left side is sound; the right ball joint of its own stands on its arm's pivots, and that is where the message points.
#[test]
fn a_right_hand_joint_on_its_arms_axis_is_placed() {
    let sound = fs::read_to_string(folder().join("right-tie-rod-of-no-length.ron")).expect("read");
    let from = sound.find("        right:").expect("a right side");
    let text = format!(
        "{}        right: (upper_arm: (\n            ball_joint: (0.0, -7.25, 13.75),\n        )),\n    ),\n)\n",
        &sound[..from]
    );
    let text = text.replace(
        "rear_pivot: (-5.0, 7.25, 13.5)",
        "rear_pivot: (-2.5, 7.25, 13.5)",
    );
    let said = read(&text).expect_err("on its axis").to_string();
    assert!(
        said.starts_with("line 11, column 25: front right corner: upper_arm.ball_joint"),
        "{said}"
    );
}
