//! What stands under a name where a file is expected: pipes, devices, folders, links, far too much, odd names. Nothing waits, nothing is half done.

use std::{
    fs,
    os::unix::fs::symlink,
    path::Path,
    process::Command,
    sync::mpsc::channel,
    thread,
    time::{Duration, Instant},
};

use trammel_build::Edit;
use trammel_persistence::{
    BuildFile, Document, Drawer, Expected, IfChanged, LARGEST_FILE, RecentFiles, ScreenState,
    backup_path, changed_on_disk, demos, leftovers, read, read_text, save, save_bytes,
};

/// Longer than anything takes here, also on a busy machine.
const FOR_EVER: Duration = Duration::from_secs(120);

/// Runs something that must not wait for anybody.
fn at_once<T: Send + 'static>(what: &str, run: impl FnOnce() -> T + Send + 'static) -> T {
    let (send, receive) = channel();
    thread::spawn(move || send.send(run()));
    let answer = receive.recv_timeout(FOR_EVER);
    answer.unwrap_or_else(|_| panic!("{what} waits for ever"))
}

fn pipe(path: &Path) {
    let status = Command::new("mkfifo").arg(path).status().expect("mkfifo");
    assert!(status.success());
}

fn opened(path: &Path) -> String {
    let path = path.to_owned();
    at_once("opening", move || {
        BuildFile::open(&path).expect_err("refused").to_string()
    })
}

fn saved(path: &Path) -> String {
    let path = path.to_owned();
    at_once("saving", move || {
        let bytes = save_bytes(&path, b"x").expect_err("refused").to_string();
        let text = save(&path, "x", Expected::Anything)
            .expect_err("refused")
            .to_string();
        assert_eq!(bytes, text);
        text
    })
}

#[test]
fn a_pipe_is_refused_without_waiting_for_somebody_to_write_to_it() {
    let folder = tempfile::tempdir().expect("a folder");
    let path = folder.path().join("kart.ron");
    pipe(&path);
    assert!(opened(&path).ends_with("kart.ron can't be read: it is a pipe, expected a file"));
    assert!(saved(&path).ends_with("kart.ron is a pipe; expected a file to save to"));
    assert!(at_once("comparing", move || changed_on_disk(&path, "x")));
}

#[test]
fn pipes_in_the_folder_of_unsaved_work_and_kept_lists_are_passed_over() {
    let folder = tempfile::tempdir().expect("a folder");
    for name in [
        "unsaved-1.ron",
        "unsaved-1.lock",
        "unsaved-2.lock",
        "list",
        "screen.ron",
        "drawer",
    ] {
        pipe(&folder.path().join(name));
    }
    let at = folder.path().to_owned();
    at_once("looking for unsaved work", move || {
        assert!(leftovers(&at).is_empty());
        assert!(RecentFiles::load(&at.join("list")).files().is_empty());
        assert_eq!(ScreenState::load(&at), ScreenState::default());
        let fault = Drawer::load(&at.join("drawer")).expect_err("refused");
        assert!(fault.to_string().contains("a pipe"), "{fault}");
    });
}

#[test]
fn devices_and_folders_are_refused_in_plain_words() {
    for device in ["/dev/zero", "/dev/null", "/dev/full"].map(Path::new) {
        assert!(opened(device).ends_with("can't be read: it is a device, expected a file"));
        assert!(saved(device).ends_with("is a device; expected a file to save to"));
    }
    let folder = tempfile::tempdir().expect("a folder");
    assert!(opened(folder.path()).ends_with("can't be read: it is a folder, expected a file"));
    assert!(saved(folder.path()).ends_with("is a folder; expected a file to save to"));
    let inside = folder.path().join("a file");
    fs::write(&inside, "x").expect("written");
    let beyond = inside.join("kart.ron");
    assert!(opened(&beyond).ends_with("can't be read: a part of the path is not a folder"));
    assert!(saved_fault(&beyond).contains("a part of the path is not a folder"));
}

fn saved_fault(path: &Path) -> String {
    save(path, "x", Expected::Anything)
        .expect_err("refused")
        .to_string()
}

#[test]
fn a_file_of_a_hundred_megabytes_is_refused_at_once_by_its_size() {
    let folder = tempfile::tempdir().expect("a folder");
    let path = folder.path().join("kart.ron");
    let size = 100 * 1024 * 1024;
    fs::File::create(&path)
        .and_then(|f| f.set_len(size))
        .expect("made");
    let began = Instant::now();
    let said = opened(&path);
    assert!(
        said.contains("the file has 104857600 bytes; expected a build file of at most"),
        "{said}"
    );
    assert!(changed_on_disk(&path, "x"));
    let fault = save(&path, "x", Expected::Text("y")).expect_err("refused");
    assert!(fault.to_string().contains("changed on disk"), "{fault}");
    assert!(
        began.elapsed() < Duration::from_secs(10),
        "{:?}",
        began.elapsed()
    );
    // Who says that it may go gets the whole of it as the backup.
    save(&path, "x", Expected::Anything).expect("saved");
    assert_eq!(fs::read_to_string(&path).expect("there"), "x");
    assert_eq!(fs::metadata(backup_path(&path)).expect("there").len(), size);
}

#[test]
fn the_longest_and_deepest_texts_that_are_read_are_refused_soon() {
    let most = usize::try_from(LARGEST_FILE).expect("a size");
    let full = |head: &str, unit: &str, tail: &str| {
        let times = (most - head.len() - tail.len()) / unit.len();
        format!("{head}{}{tail}", unit.repeat(times))
    };
    let texts = [
        ("brackets", full("", "(", "")),
        ("lists", full("(format: 1, locked: ", "[", "")),
        ("fields", full("", "(a:", "")),
        ("comments", full("(", "/**/", "")),
        ("comments in comments", full("(", "/*", "")),
        ("a word", full("(", "a", "")),
        ("a string", full("(format: 1, title: \"", "\\\"", "")),
        ("numbers", full("(format: 1, locked: [", "1,", "])")),
        ("unknown fields", full("(format: 1, ", "aa: 1,", ")")),
        ("lines", full("(", "\n", "")),
        ("nothing", full("", "\0", "")),
    ];
    for (what, text) in texts {
        let began = Instant::now();
        let fault = at_once(what, move || read(&text).expect_err("refused").to_string());
        assert!(fault.len() < 2000, "{what}: {} signs are said", fault.len());
        assert!(!fault.contains("the file has"), "{what}: {fault}");
        println!("{what}: {:?}: {fault}", began.elapsed());
    }
    let most = most_memory();
    assert!(most.is_none_or(|kib| kib < 1024 * 1024), "{most:?} KiB");
}

/// The most memory that this process ever had, KiB, where the system tells.
fn most_memory() -> Option<u64> {
    let status = fs::read_to_string("/proc/self/status").ok()?;
    let line = status.lines().find_map(|l| l.strip_prefix("VmHWM:"))?;
    line.split_whitespace().next()?.parse().ok()
}

#[test]
fn what_could_not_be_opened_again_is_not_saved() {
    let folder = tempfile::tempdir().expect("a folder");
    let path = folder.path().join("kart.ron");
    fs::write(&path, demos()[0].text).expect("written");
    let mut file = BuildFile::open(&path).expect("a build");
    let size = usize::try_from(LARGEST_FILE).expect("a size");
    let mut build = file.build().clone();
    build.notes = "n".repeat(size);
    let fault = file.save(&build, IfChanged::Replace).expect_err("refused");
    assert!(
        fault.to_string().contains("could not be opened again"),
        "{fault}"
    );
    assert_eq!(fs::read_to_string(&path).expect("there"), demos()[0].text);
    assert!(!backup_path(&path).exists());
}

#[test]
fn a_build_is_opened_and_saved_through_a_link_and_one_that_leads_nowhere_is_told() {
    let folder = tempfile::tempdir().expect("a folder");
    let (real, link) = (
        folder.path().join("real.ron"),
        folder.path().join("kart.ron"),
    );
    symlink("real.ron", &link).expect("linked");
    assert!(opened(&link).ends_with("can't be read: there is no such file or folder"));
    fs::write(&real, demos()[0].text).expect("written");
    let mut file = BuildFile::open(&link).expect("a build");
    let edited = Edit::SetTitle("Mine".into())
        .apply(file.build())
        .expect("edited");
    file.save(&edited, IfChanged::Refuse).expect("saved");
    assert!(fs::symlink_metadata(&link).expect("there").is_symlink());
    assert_eq!(
        read_text(&real).ok().and_then(|t| read(&t).ok()),
        Some(edited)
    );
    save_bytes(&link, b"sheet").expect("written");
    assert!(fs::symlink_metadata(&link).expect("there").is_symlink());
    assert_eq!(fs::read(&real).expect("there"), b"sheet");
}

#[test]
fn a_file_that_another_program_put_in_place_of_the_opened_one_is_not_written_over() {
    let folder = tempfile::tempdir().expect("a folder");
    let path = folder.path().join("kart.ron");
    fs::write(&path, demos()[0].text).expect("written");
    let mut file = BuildFile::open(&path).expect("a build");
    let edited = Edit::SetTitle("Mine".into())
        .apply(file.build())
        .expect("edited");
    let other = folder.path().join("other");
    fs::write(&other, demos()[1].text).expect("written");
    fs::rename(&other, &path).expect("moved");
    assert!(file.has_changed_on_disk());
    let fault = file.save(&edited, IfChanged::Refuse).expect_err("refused");
    assert!(fault.to_string().contains("changed on disk"), "{fault}");
    assert_eq!(fs::read_to_string(&path).expect("there"), demos()[1].text);
    fs::remove_file(&path).expect("removed");
    fs::create_dir(&path).expect("made");
    let fault = file.save(&edited, IfChanged::Replace).expect_err("refused");
    assert!(fault.to_string().contains("is a folder"), "{fault}");
}

#[test]
fn names_with_spaces_other_letters_and_line_ends_are_names() {
    let folder = tempfile::tempdir().expect("a folder");
    let document = Document::read(demos()[0].text).expect("a build");
    for name in [
        "my kart.ron",
        "Fahrgestell ä.ron",
        "車 № 1.ron",
        "عربة.ron",
        "-out.ron",
        "two\nlines.ron",
    ] {
        let path = folder.path().join("Ordner mit Ä").join(name);
        fs::create_dir_all(path.parent().expect("a folder")).expect("made");
        let (file, _) = BuildFile::save_as(&path, &document, document.build(), IfChanged::Refuse)
            .unwrap_or_else(|fault| panic!("{name}: {fault}"));
        assert_eq!(file.path(), path);
        let mut list = RecentFiles::default();
        list.add(&path);
        let kept = folder.path().join("list");
        list.save(&kept).expect("kept");
        assert_eq!(
            RecentFiles::load(&kept).files(),
            std::slice::from_ref(&path)
        );
        assert_eq!(
            BuildFile::open(&path).expect(name).build(),
            document.build()
        );
    }
    let long = folder.path().join("k".repeat(300));
    assert!(
        opened(&long).contains("the name is too long"),
        "{}",
        opened(&long)
    );
    assert!(
        saved_fault(&long).contains("the name is too long"),
        "{}",
        saved_fault(&long)
    );
}
