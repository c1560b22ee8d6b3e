//! What is kept in the user's state folder: unsaved work and the list of files opened lately.
#![allow(
    clippy::expect_used,
    clippy::panic,
    reason = "helpers of tests fail as tests do"
)]

use std::{
    fs,
    path::{Path, PathBuf},
    process::Command,
    sync::{Mutex, MutexGuard, PoisonError},
    time::{Duration, SystemTime},
};

use trammel_persistence::{Autosave, RecentFiles, ScreenState, demos, leftovers};

const FOLDER: &str = "TRAMMEL_TEST_FOLDER";

/// A folder of a test's own, one test at a time: a process that one test starts holds a copy of the locks of every other for a moment.
struct Folder {
    folder: tempfile::TempDir,
    _alone: MutexGuard<'static, ()>,
}

impl Folder {
    fn path(&self) -> &Path {
        self.folder.path()
    }
}

fn folder() -> Folder {
    static ALONE: Mutex<()> = Mutex::new(());
    Folder {
        folder: tempfile::tempdir().unwrap_or_else(|fault| panic!("{fault}")),
        _alone: ALONE.lock().unwrap_or_else(PoisonError::into_inner),
    }
}

fn count(folder: &Path) -> usize {
    fs::read_dir(folder).map_or(0, Iterator::count)
}

#[test]
#[ignore = "the session that another test starts and that ends badly"]
fn a_session_that_crashes() {
    if let Some(folder) = std::env::var_os(FOLDER) {
        let mut autosave = Autosave::start(Path::new(&folder)).expect("started");
        let kept = autosave.keep(Some(Path::new("/karts/one.ron")), demos()[0].text);
        kept.expect("kept");
        let mut other = Autosave::start(Path::new(&folder)).expect("started");
        other.keep(None, "never saved").expect("kept");
        std::process::abort();
    }
}

#[test]
fn work_of_a_crashed_session_is_found_recovered_and_discarded() {
    let folder = folder();
    let me = std::env::current_exe().expect("a path");
    let status = Command::new(me)
        .args(["--exact", "a_session_that_crashes", "--ignored"])
        .env(FOLDER, folder.path())
        .output()
        .expect("ran")
        .status;
    assert!(!status.success());
    let mut found = leftovers(folder.path());
    assert_eq!(found.len(), 2);
    // While they are offered here, no other session offers them too.
    assert_eq!(leftovers(folder.path()).len(), 0);
    found.sort_by_key(|l| l.path.is_none());
    assert_eq!(found[0].path.as_deref(), Some(Path::new("/karts/one.ron")));
    assert_eq!(found[0].text, demos()[0].text);
    assert_eq!(
        (&found[1].path, found[1].text.as_str()),
        (&None, "never saved")
    );
    let age = SystemTime::now().duration_since(found[0].saved_at);
    assert!(age.is_ok_and(|age| age.as_secs() < 120));
    drop(found);
    for leftover in leftovers(folder.path()) {
        leftover.discard().expect("discarded");
    }
    assert_eq!(count(folder.path()), 0);
}

#[test]
fn work_of_a_living_session_is_not_offered() {
    let folder = folder();
    let mut autosave = Autosave::start(folder.path()).expect("started");
    autosave.keep(None, "work").expect("kept");
    assert_eq!(leftovers(folder.path()).len(), 0);
    drop(autosave);
    let found = leftovers(folder.path());
    assert_eq!(found.len(), 1);
    assert_eq!(found[0].text, "work");
}

#[test]
fn each_text_replaces_the_one_before_and_saved_work_leaves_nothing_behind() {
    let folder = folder();
    let mut autosave = Autosave::start(folder.path()).expect("started");
    for text in ["one", "two", "two", "three \"quoted\" \\ \u{e4}\n"] {
        autosave
            .keep(Some(Path::new("kart.ron")), text)
            .expect("kept");
    }
    assert_eq!(count(folder.path()), 2, "the work and its lock");
    autosave.clear().expect("cleared");
    autosave.clear().expect("cleared twice");
    drop(autosave);
    assert_eq!(count(folder.path()), 0);
    let mut autosave = Autosave::start(folder.path()).expect("started");
    autosave
        .keep(None, "three \"quoted\" \\ \u{e4}\n")
        .expect("kept");
    // The same text is kept anew when it has got a name.
    let name = Path::new("named.ron");
    autosave
        .keep(Some(name), "three \"quoted\" \\ \u{e4}\n")
        .expect("kept");
    drop(autosave);
    assert_eq!(leftovers(folder.path())[0].path.as_deref(), Some(name));
    assert_eq!(
        leftovers(folder.path())[0].text,
        "three \"quoted\" \\ \u{e4}\n"
    );
}

/// The file of unsaved work in a folder that holds one.
fn work_in(folder: &Path) -> PathBuf {
    fs::read_dir(folder)
        .expect("a folder")
        .map(|entry| entry.expect("an entry").path())
        .find(|path| path.extension().is_some_and(|end| end == "ron"))
        .expect("unsaved work")
}

#[test]
fn only_what_changed_is_kept_again() {
    let folder = folder();
    let mut autosave = Autosave::start(folder.path()).expect("started");
    let name = Some(Path::new("kart.ron"));
    for text in ["one", "two"] {
        autosave.keep(name, text).expect("kept");
        let file = fs::read_to_string(work_in(folder.path())).expect("read");
        assert!(file.contains(&format!("\"{text}\"")), "{file}");
    }
    fs::remove_file(work_in(folder.path())).expect("removed");
    autosave.keep(name, "two").expect("nothing changed");
    assert_eq!(count(folder.path()), 1, "the lock alone");
}

#[test]
fn work_that_can_not_be_given_up_is_said() {
    let folder = folder();
    let mut autosave = Autosave::start(folder.path()).expect("started");
    autosave.keep(None, "one").expect("kept");
    let work = work_in(folder.path());
    fs::remove_file(&work).expect("removed");
    fs::create_dir(&work).expect("made");
    let fault = autosave.clear().expect_err("a folder stands there");
    assert!(fault.to_string().contains("could not be kept"), "{fault}");
}

/// A lock without work is swept away once its session must have started and has gone; one that is young, held or has work beside it is left.
#[test]
fn locks_that_ended_sessions_left_are_swept_away() {
    let folder = folder();
    let lock = |name: &str, age_s: u64| {
        let path = folder.path().join(name).with_extension("lock");
        let file = fs::File::create(&path).expect("made");
        let then = SystemTime::now() - Duration::from_secs(age_s);
        file.set_modified(then).expect("a time");
        (path, file)
    };
    let (old, _) = lock("unsaved-1", 120);
    let (young, _) = lock("unsaved-2", 5);
    let (held, session) = lock("unsaved-3", 120);
    session.try_lock().expect("held");
    let (with_work, _) = lock("unsaved-4", 120);
    fs::write(with_work.with_extension("ron"), "not to be read").expect("written");
    assert_eq!(leftovers(folder.path()).len(), 0);
    let there = [&old, &young, &held, &with_work].map(|path| path.exists());
    assert_eq!(there, [false, true, true, true]);
}

/// A quote takes two signs in the file of unsaved work: a build of quotes alone is found again though that file is larger than a build may be.
#[test]
fn a_long_build_is_kept_whatever_its_signs() {
    let folder = folder();
    let size = usize::try_from(trammel_persistence::LARGEST_FILE).expect("a size");
    let text = "\"".repeat(size / 2 + 1);
    let mut autosave = Autosave::start(folder.path()).expect("started");
    autosave.keep(None, &text).expect("kept");
    drop(autosave);
    let found = leftovers(folder.path());
    assert_eq!(found.len(), 1);
    assert!(found[0].text == text);
}

#[test]
fn a_state_folder_in_disorder_does_no_harm() {
    assert_eq!(leftovers(Path::new("/no/such/folder")).len(), 0);
    let folder = folder();
    fs::write(folder.path().join("unsaved-1.ron"), b"\xff\xfe").expect("written");
    fs::write(folder.path().join("unsaved-2.ron"), "(path: 5").expect("written");
    fs::write(
        folder.path().join("unsaved-3.ron"),
        "(path: None, saved_at_s: 18446744073709551615, text: \"\")",
    )
    .expect("written");
    fs::create_dir(folder.path().join("unsaved-4.ron")).expect("made");
    assert_eq!(leftovers(folder.path()).len(), 0);
    assert_eq!(count(folder.path()), 4, "nothing of it is removed");
}

#[test]
fn the_list_of_files_keeps_the_latest_first_and_each_once() {
    let folder = folder();
    let file = folder.path().join("state").join("recent.ron");
    let mut list = RecentFiles::load(&file);
    assert_eq!(list, RecentFiles::default());
    for n in 0..20 {
        list.add(Path::new(&format!("/karts/{n}.ron")));
    }
    list.add(Path::new("/karts/15.ron"));
    list.remove(Path::new("/karts/18.ron"));
    list.save(&file).expect("saved");
    let read = RecentFiles::load(&file);
    assert_eq!(read, list);
    let names: Vec<_> = read
        .files()
        .iter()
        .take(4)
        .map(|f| f.display().to_string())
        .collect();
    assert_eq!(
        names,
        [
            "/karts/15.ron",
            "/karts/19.ron",
            "/karts/17.ron",
            "/karts/16.ron"
        ]
    );
    assert!(read.files().len() <= 12);
}

/// Twelve paths as long as systems allow, 4096 bytes each, still make a list that is read again.
#[test]
fn the_longest_paths_are_remembered() {
    let folder = folder();
    let file = folder.path().join("recent.ron");
    let mut list = RecentFiles::default();
    for n in 0..12 {
        list.add(Path::new(&format!("/{n:02}{}", "k".repeat(4093))));
    }
    list.save(&file).expect("saved");
    let read = RecentFiles::load(&file);
    assert_eq!(read.files().len(), 12);
    assert!(read == list);
}

#[test]
fn a_damaged_list_of_files_is_an_empty_one() {
    let folder = folder();
    let file = folder.path().join("recent.ron");
    for text in ["", "(files: [", "(files: 5)", "\u{0}", "[]"] {
        fs::write(&file, text).expect("written");
        assert_eq!(RecentFiles::load(&file), RecentFiles::default(), "{text}");
    }
    assert_eq!(RecentFiles::load(folder.path()), RecentFiles::default());
}

#[test]
fn what_the_screen_remembers_comes_back_and_damage_is_a_first_start() {
    let folder = folder();
    let state = folder.path().join("state");
    let file = state.join("screen.ron");
    let first = ScreenState::load(&state);
    assert!(!first.tour_shown && !first.light && !first.maximised);
    assert_eq!((first.scale, first.window), (100, [1280, 800]));
    let left = ScreenState {
        tour_shown: true,
        light: true,
        scale: 130,
        window: [1700, 950],
        maximised: true,
    };
    left.save(&state).expect("saved");
    assert_eq!(ScreenState::load(&state), left);
    for text in [
        "(tour_shown: perhaps)",
        "(scale: -1)",
        "(window: (1, 2, 3))",
    ] {
        fs::write(&file, text).expect("written");
        assert_eq!(ScreenState::load(&state), ScreenState::default(), "{text}");
    }
    let seen = ScreenState {
        tour_shown: true,
        ..ScreenState::default()
    };
    // 64 KiB to the byte are looked into, a byte more was not written here.
    for (size, remembered) in [(64 * 1024, seen), (64 * 1024 + 1, ScreenState::default())] {
        let text = "(tour_shown: true)";
        let filled = format!("{text}{}", " ".repeat(size - text.len()));
        fs::write(&file, filled).expect("written");
        assert_eq!(ScreenState::load(&state), remembered, "{size}");
    }
    let below = seen.save(&file);
    assert!(below.is_err(), "a file is no folder");
}
