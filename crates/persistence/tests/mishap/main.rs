//! Saving when the writer is killed at any instant, and when the disk is full. This test program starts itself again as the writer.
#![cfg(unix)]
#![allow(
    clippy::expect_used,
    clippy::panic,
    clippy::print_stdout,
    reason = "helpers of tests fail as tests do"
)]

mod forbidden;
mod kept;
mod odd_files;

use std::{
    fs,
    io::{BufRead, BufReader},
    path::{Path, PathBuf},
    process::{Child, Command, Stdio},
    sync::OnceLock,
    thread::sleep,
    time::Duration,
};

use trammel_persistence::{Document, Expected, backup_path, demos, read, save, write};

const FILE: &str = "TRAMMEL_TEST_FILE";

/// A build's text that tells from itself whether it is whole: its notes repeat its title to the length of a large file, about 100 KiB.
fn version(number: u32) -> String {
    static TEXT: OnceLock<String> = OnceLock::new();
    let text = TEXT.get_or_init(|| {
        let document = Document::read(demos()[0].text).unwrap_or_else(|fault| panic!("{fault}"));
        let mut build = document.build().clone();
        build.title = "version #".to_owned();
        build.notes = format!("{} ", build.title).repeat(10_000);
        write(&build)
    });
    text.replace("version #", &format!("version {number}"))
}

/// The number of a version, its text found whole.
fn number_of(path: &Path) -> u32 {
    let text = fs::read_to_string(path).unwrap_or_else(|fault| panic!("{fault}"));
    let build = read(&text).unwrap_or_else(|fault| panic!("half a file: {fault}"));
    let number = build
        .title
        .strip_prefix("version ")
        .and_then(|n| n.parse().ok());
    let number = number.unwrap_or_else(|| panic!("{}", build.title));
    assert_eq!(text, version(number), "a file of two halves");
    number
}

/// This program again, running one of the writers below.
fn writer(name: &str, file: &Path) -> Command {
    let me = std::env::current_exe().unwrap_or_else(|fault| panic!("{fault}"));
    let mut command = Command::new(me);
    command
        .args([
            "--exact",
            name,
            "--ignored",
            "--nocapture",
            "--test-threads=1",
        ])
        .env(FILE, file)
        .stdout(Stdio::piped());
    command
}

fn file_from_parent() -> Option<PathBuf> {
    std::env::var_os(FILE).map(PathBuf::from)
}

#[test]
#[ignore = "the writer that another test starts and kills"]
fn write_for_ever() {
    let Some(path) = file_from_parent() else {
        return;
    };
    let mut number = number_of(&path);
    println!("started");
    loop {
        let (old, new) = (version(number), version(number + 1));
        save(&path, &new, Expected::Text(&old)).unwrap_or_else(|fault| panic!("{fault}"));
        number += 1;
    }
}

fn wait_for_start(child: &mut Child) {
    let output = child.stdout.take().expect("piped");
    let started = BufReader::new(output)
        .lines()
        .map_while(Result::ok)
        .any(|line| line.contains("started"));
    assert!(started, "the writer did not start");
}

#[test]
fn a_writer_killed_at_any_instant_leaves_the_old_or_the_new_file_whole() {
    let folder = tempfile::tempdir().expect("a folder");
    let path = folder.path().join("kart.ron");
    fs::write(&path, version(0)).expect("written");
    let (mut last, mut in_the_middle) = (0, 0);
    for round in 0..600_u64 {
        // At least sixty kills; more where the disk is so slow or so fast that few of them hit.
        if round >= 60 && last >= 20 && in_the_middle >= 10 {
            break;
        }
        let before = fs::read_dir(folder.path()).expect("a folder").count();
        let mut child = writer("write_for_ever", &path).spawn().expect("started");
        wait_for_start(&mut child);
        // Spread over several saves; primes keep the instants from falling into step.
        // Where nothing came of the first sixty, a busy machine is given longer.
        let longest = 60_013 * (1 + round / 60);
        sleep(Duration::from_micros(500 + round * 10_007 % longest));
        child.kill().expect("killed");
        child.wait().expect("ended");
        let number = number_of(&path);
        assert!(number >= last, "version {number} after {last}");
        if number > 0 {
            let backup = number_of(&backup_path(&path));
            assert!(
                backup == number || backup + 1 == number,
                "{backup} behind {number}"
            );
        }
        last = number;
        let after = fs::read_dir(folder.path()).expect("a folder").count();
        in_the_middle += u32::from(after > before.max(2));
    }
    println!("{last} saves, killed in the middle of one {in_the_middle} times");
    assert!(last >= 20, "only {last} saves took place");
    assert!(
        in_the_middle >= 3,
        "the kills never came in the middle of a save"
    );
}

#[test]
#[ignore = "the writer that another test starts without room"]
fn write_once() {
    let Some(path) = file_from_parent() else {
        return;
    };
    let fault = save(&path, &version(2), Expected::Text(&version(1))).expect_err("no room");
    println!("refused: {fault}");
}

fn refused_without_room(mut command: Command, path: &Path, why: &str) {
    let output = command.output().expect("ran");
    let said = String::from_utf8_lossy(&output.stdout).into_owned();
    assert!(output.status.success(), "{said}");
    assert!(
        said.contains("refused: ")
            && said.contains(&format!("{why}; the file on disk is as it was")),
        "{said}"
    );
    assert_eq!(number_of(path), 1, "the old file must be whole");
}

#[test]
fn a_write_that_the_system_cuts_short_leaves_the_old_file_whole() {
    let folder = tempfile::tempdir().expect("a folder");
    let path = folder.path().join("kart.ron");
    fs::write(&path, version(1)).expect("written");
    // Files of at most 16 blocks, and no signal but an error for more; a build's text here is far longer.
    let inner = writer("write_once", &path);
    let mut shell = Command::new("sh");
    shell
        .args(["-c", "trap '' XFSZ; ulimit -f 16; exec \"$0\" \"$@\""])
        .arg(inner.get_program())
        .args(inner.get_args())
        .env(FILE, &path);
    refused_without_room(shell, &path, "the file is larger than is allowed here");
    assert!(!backup_path(&path).exists());
    let left: Vec<_> = fs::read_dir(folder.path())
        .expect("a folder")
        .flatten()
        .collect();
    assert_eq!(left.len(), 1, "{left:?}");
}

/// A folder with something mounted on it, which is taken off again in the end, also where a test stops.
struct Mounted(tempfile::TempDir);

impl Mounted {
    /// A small file system of its own; `None` without the right to mount.
    fn small_disk(size: &str) -> Option<Self> {
        let folder = tempfile::tempdir().ok()?;
        let size = format!("size={size}");
        mount(&["-t", "tmpfs", "-o", &size, "tmpfs"], folder.path()).then_some(Self(folder))
    }

    /// A folder mounted over itself; `None` without the right to mount.
    fn over_itself() -> Option<Self> {
        let folder = tempfile::tempdir().ok()?;
        let path = folder.path().to_owned();
        mount(&["-o", "bind", &path.to_string_lossy()], &path).then_some(Self(folder))
    }

    fn path(&self) -> &Path {
        self.0.path()
    }

    /// From now on it can only be read; whether that went.
    fn make_read_only(&self) -> bool {
        let path = self.path();
        mount(&["-o", "remount,bind,ro", &path.to_string_lossy()], path)
    }
}

fn mount(words: &[&str], on: &Path) -> bool {
    let mut command = Command::new("mount");
    let status = command.args(words).arg(on).stderr(Stdio::null()).status();
    status.is_ok_and(|s| s.success())
}

impl Drop for Mounted {
    fn drop(&mut self) {
        let _ = Command::new("umount").arg(self.0.path()).status();
    }
}

#[test]
fn a_full_disk_leaves_the_old_file_whole() {
    // The disk holds a text and its backup, but not the new version beside them.
    let Some(disk) = Mounted::small_disk("288k") else {
        println!(
            "skipped: a small disk can be mounted by root only; the test with a file limit stands in"
        );
        return;
    };
    let path = disk.path().join("kart.ron");
    fs::write(&path, version(1)).expect("written");
    refused_without_room(writer("write_once", &path), &path, "the disk is full");
    assert_eq!(number_of(&backup_path(&path)), 1);
}
