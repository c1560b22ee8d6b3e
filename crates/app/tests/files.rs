//! The commands among files in disorder, and with whatever words: an exit code and one plain line, never a panic, never for ever.
#![cfg(unix)]
#![allow(
    clippy::expect_used,
    clippy::panic,
    reason = "a test stops where it fails"
)]

mod random;

use std::{
    fs,
    path::Path,
    process::{Command, Output, Stdio},
    thread::sleep,
    time::{Duration, Instant},
};

/// Longer than any command takes here, also on a busy machine.
const FOR_EVER: Duration = Duration::from_secs(300);

/// The program in a folder, killed when it goes on for ever. Its output goes to files, so that no full pipe can hold it up.
fn trammel(folder: &Path, words: &[&str]) -> Output {
    let logs = tempfile::tempdir().expect("a folder");
    let log = |name: &str| fs::File::create(logs.path().join(name)).expect("a log");
    let mut child = Command::new(env!("CARGO_BIN_EXE_trammel"))
        .args(words)
        .current_dir(folder)
        .env_remove("DISPLAY")
        .env_remove("WAYLAND_DISPLAY")
        .env_remove("WAYLAND_SOCKET")
        .stdin(Stdio::null())
        .stdout(log("out"))
        .stderr(log("err"))
        .spawn()
        .expect("the program runs");
    let began = Instant::now();
    let status = loop {
        if let Some(status) = child.try_wait().expect("waited") {
            break status;
        }
        if began.elapsed() > FOR_EVER {
            child.kill().expect("killed");
            panic!("{words:?} goes on for ever");
        }
        sleep(Duration::from_millis(2));
    };
    let text = |name: &str| fs::read(logs.path().join(name)).expect("a log");
    Output {
        status,
        stdout: text("out"),
        stderr: text("err"),
    }
}

/// Code 2, nothing on standard output, one line that holds these words.
fn refused(folder: &Path, words: &[&str], holds: &str) {
    let output = trammel(folder, words);
    let line = String::from_utf8(output.stderr).expect("text");
    assert_eq!(output.status.code(), Some(2), "{words:?}: {line}");
    assert_eq!(output.stdout, b"", "{words:?}");
    assert_eq!(line.matches('\n').count(), 1, "{words:?}: {line}");
    assert!(line.contains(holds), "{words:?}: {line}");
}

fn pipe(path: &Path) {
    let status = Command::new("mkfifo").arg(path).status().expect("mkfifo");
    assert!(status.success());
}

#[test]
fn what_is_no_file_is_told_at_once() {
    let folder = tempfile::tempdir().expect("a folder");
    let at = folder.path();
    pipe(&at.join("pipe"));
    fs::File::create(at.join("large"))
        .and_then(|f| f.set_len(100 << 20))
        .expect("made");
    let odd = [
        ("pipe", "it is a pipe, expected a file"),
        ("/dev/zero", "it is a device, expected a file"),
        (".", "it is a folder, expected a file"),
        ("large", "has 104857600 bytes"),
        ("none", "there is no such file or folder"),
    ];
    for (path, why) in odd {
        refused(at, &["check", path], why);
        refused(at, &["survey", path], why);
        refused(at, &["advise", "demo:measured", "--readings", path], why);
    }
}

#[test]
fn nothing_is_written_to_what_is_no_file_or_on_a_full_disk() {
    let folder = tempfile::tempdir().expect("a folder");
    let at = folder.path();
    pipe(&at.join("pipe"));
    for (path, why) in [
        ("pipe", "is a pipe; expected a file to save to"),
        ("/dev/full", "is a device; expected a file to save to"),
        (".", "is a folder; expected a file to save to"),
        ("none/out", "there is no such file or folder"),
    ] {
        refused(at, &["sweep", "demo:good", "--csv", path], why);
        refused(at, &["cards", "demo:good", "--force", "--out", path], why);
        refused(
            at,
            &["lift", "demo:good", "--by", "1", "--force", "--out", path],
            why,
        );
    }
    fs::write(at.join("file"), "x").expect("written");
    refused(
        at,
        &["sheets", "demo:good", "--out", "file/sheets"],
        "could not be made",
    );
}

/// The system cuts every file short: the old sheet is whole and the reason is plain.
#[test]
fn an_export_that_is_cut_short_leaves_the_old_file_whole() {
    let folder = tempfile::tempdir().expect("a folder");
    let at = folder.path();
    let exports: [(&str, &[&str]); 3] = [
        (
            "cards.pdf",
            &["cards", "demo:good", "--force", "--out", "cards.pdf"],
        ),
        (
            "poses.csv",
            &[
                "sweep",
                "demo:good",
                "--travel=-2:2:99",
                "--csv",
                "poses.csv",
            ],
        ),
        (
            "lifted.ron",
            &[
                "lift",
                "demo:good",
                "--by",
                "1",
                "--force",
                "--out",
                "lifted.ron",
            ],
        ),
    ];
    for (name, words) in exports {
        fs::write(at.join(name), "the old one").expect("written");
        // Files of at most 4 blocks of 512 bytes, and an error, no signal, for more.
        let output = Command::new("sh")
            .args(["-c", "trap '' XFSZ; ulimit -f 4; exec \"$0\" \"$@\""])
            .arg(env!("CARGO_BIN_EXE_trammel"))
            .args(words)
            .current_dir(at)
            .output()
            .expect("ran");
        let line = String::from_utf8(output.stderr).expect("text");
        assert_eq!(output.status.code(), Some(2), "{name}: {line}");
        assert!(
            line.contains("larger than is allowed here"),
            "{name}: {line}"
        );
        assert_eq!(
            fs::read_to_string(at.join(name)).expect("there"),
            "the old one"
        );
    }
    let left = fs::read_dir(at).expect("a folder").flatten();
    let names: Vec<_> = left.map(|e| e.file_name().into_string()).collect();
    // The build's backup was short enough to be written; nothing half-written stays.
    assert_eq!(names.len(), exports.len() + 1, "{names:?}");
    assert!(names.contains(&Ok("lifted.ron.bak".into())), "{names:?}");
}

#[test]
fn names_with_spaces_and_other_letters_serve_for_all_files() {
    let folder = tempfile::tempdir().expect("a folder");
    let at = folder.path();
    let build = "mein Kart ä 車.ron";
    let demo = trammel_persistence::demos()[0].text;
    fs::write(
        at.join(build),
        format!("\u{feff}{}", demo.replace('\n', "\r\n")),
    )
    .expect("written");
    for words in [
        ["sweep", build, "--csv", "表 1.csv"],
        ["cards", build, "--out", "Karten ö.pdf"],
    ] {
        let output = trammel(at, &words);
        assert_eq!(output.status.code(), Some(0), "{output:?}");
        assert!(fs::metadata(at.join(words[3])).is_ok_and(|m| m.len() > 500));
    }
    let output = trammel(at, &["lift", build, "--by", "0.5", "--out", "höher 2.ron"]);
    assert_eq!(output.status.code(), Some(0), "{output:?}");
    let lifted = fs::read_to_string(at.join("höher 2.ron")).expect("there");
    assert!(trammel_persistence::read(&lifted).is_ok());
}
