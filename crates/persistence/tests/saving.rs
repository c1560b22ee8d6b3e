//! Saving: what is kept, what is refused, and that the old file or the new one is whole whatever happens.
#![allow(
    clippy::expect_used,
    clippy::panic,
    reason = "helpers of tests fail as tests do"
)]

use std::{fs, path::Path};

use trammel_build::Edit;
use trammel_persistence::{
    BuildFile, Document, Expected, IfChanged, LARGEST_FILE, SaveFault, backup_path, demos, read,
    read_bytes, read_text, save,
};

fn text(path: &Path) -> String {
    fs::read_to_string(path).unwrap_or_else(|fault| panic!("{}: {fault}", path.display()))
}

fn folder() -> tempfile::TempDir {
    tempfile::tempdir().unwrap_or_else(|fault| panic!("{fault}"))
}

#[test]
fn a_new_file_has_no_backup_and_an_old_one_has() {
    let folder = folder();
    let path = folder.path().join("kart.ron");
    let saved = save(&path, "one", Expected::Nothing).expect("saved");
    assert_eq!((saved.path.as_path(), saved.backup), (path.as_path(), None));
    let saved = save(&path, "two", Expected::Text("one")).expect("saved");
    assert_eq!(saved.backup, Some(folder.path().join("kart.ron.bak")));
    assert_eq!(
        (text(&path), text(&backup_path(&path))),
        ("two".into(), "one".into())
    );
}

#[test]
fn saving_what_is_there_already_leaves_file_and_backup_alone() {
    let folder = folder();
    let path = folder.path().join("kart.ron");
    save(&path, "one", Expected::Nothing).expect("saved");
    save(&path, "two", Expected::Text("one")).expect("saved");
    let saved = save(&path, "two", Expected::Text("two")).expect("saved");
    assert_eq!(saved.backup, None);
    assert_eq!(text(&backup_path(&path)), "one");
}

#[test]
fn a_file_that_changed_on_disk_is_refused_even_when_its_size_and_time_are_the_same() {
    let folder = folder();
    let path = folder.path().join("kart.ron");
    save(&path, "one", Expected::Nothing).expect("saved");
    let time = fs::metadata(&path)
        .and_then(|m| m.modified())
        .expect("a time");
    fs::write(&path, "eno").expect("written");
    let file = fs::File::options().write(true).open(&path).expect("open");
    file.set_modified(time).expect("a time");
    let fault = save(&path, "two", Expected::Text("one")).expect_err("refused");
    assert!(
        matches!(&fault, SaveFault::ChangedOnDisk { path: at } if *at == path),
        "{fault}"
    );
    assert!(fault.to_string().contains("changed on disk"), "{fault}");
    assert_eq!(text(&path), "eno");
    assert!(!backup_path(&path).exists());
    save(&path, "two", Expected::Anything).expect("told so");
    assert_eq!(
        (text(&path), text(&backup_path(&path))),
        ("two".into(), "eno".into())
    );
}

#[test]
fn a_file_where_none_was_expected_is_refused_and_one_that_has_gone_is_written_again() {
    let folder = folder();
    let path = folder.path().join("kart.ron");
    fs::write(&path, "theirs").expect("written");
    let fault = save(&path, "mine", Expected::Nothing).expect_err("refused");
    assert!(matches!(fault, SaveFault::AlreadyThere { .. }), "{fault}");
    assert_eq!(text(&path), "theirs");
    fs::remove_file(&path).expect("removed");
    save(&path, "mine", Expected::Text("theirs")).expect("saved");
    assert_eq!(text(&path), "mine");
}

#[test]
fn folders_and_missing_folders_are_refused_in_plain_words() {
    let folder = folder();
    let fault = save(folder.path(), "x", Expected::Anything).expect_err("refused");
    assert!(matches!(fault, SaveFault::NotAFile { .. }), "{fault}");
    let lost = folder.path().join("no such folder").join("kart.ron");
    let fault = save(&lost, "x", Expected::Nothing).expect_err("refused");
    assert!(fault.to_string().contains("could not be saved"), "{fault}");
    // What is there can't be told, so nothing is taken for granted.
    let file = folder.path().join("file");
    fs::write(&file, "x").expect("written");
    let below = file.join("kart.ron");
    let fault = save(&below, "x", Expected::Text("old")).expect_err("refused");
    assert!(
        fault
            .to_string()
            .contains("could not be compared: a part of the path is not a folder"),
        "{fault}"
    );
}

#[cfg(unix)]
#[test]
fn a_link_stays_a_link_and_its_target_is_written() {
    let folder = folder();
    fs::create_dir(folder.path().join("real")).expect("made");
    let real = folder.path().join("real").join("kart.ron");
    let link = folder.path().join("kart.ron");
    std::os::unix::fs::symlink("real/kart.ron", &link).expect("linked");
    save(&link, "one", Expected::Nothing).expect("saved through a link to nothing");
    save(&link, "two", Expected::Text("one")).expect("saved");
    assert!(fs::symlink_metadata(&link).expect("there").is_symlink());
    assert_eq!(
        (text(&real), text(&backup_path(&real))),
        ("two".into(), "one".into())
    );
    let round = folder.path().join("round");
    std::os::unix::fs::symlink("round", &round).expect("linked");
    let fault = save(&round, "x", Expected::Nothing).expect_err("a circle");
    assert!(matches!(fault, SaveFault::NotAFile { .. }), "{fault}");
}

#[cfg(unix)]
#[test]
fn a_saved_file_keeps_its_mode() {
    use std::os::unix::fs::PermissionsExt;
    let folder = folder();
    let path = folder.path().join("kart.ron");
    save(&path, "one", Expected::Nothing).expect("saved");
    fs::set_permissions(&path, fs::Permissions::from_mode(0o640)).expect("set");
    save(&path, "two", Expected::Text("one")).expect("saved");
    let mode = fs::metadata(&path).expect("there").permissions().mode();
    assert_eq!(mode & 0o777, 0o640);
}

#[test]
fn a_build_file_is_opened_edited_saved_and_guarded() {
    let folder = folder();
    let path = folder.path().join("kart.ron");
    fs::write(&path, demos()[0].text).expect("written");
    let mut file = BuildFile::open(&path).unwrap_or_else(|fault| panic!("{fault}"));
    file.save(&file.build().clone(), IfChanged::Refuse)
        .expect("saved");
    assert_eq!(text(&path), demos()[0].text);

    let edited = Edit::SetTitle("Mine".into())
        .apply(file.build())
        .expect("edited");
    file.save(&edited, IfChanged::Refuse).expect("saved");
    let expected = demos()[0]
        .text
        .replace("Fernbrake two-seat trail kart", "Mine");
    assert_eq!(text(&path), expected);
    assert!(!file.has_changed_on_disk());

    fs::write(&path, demos()[1].text).expect("written");
    assert!(file.has_changed_on_disk());
    let again = Edit::SetTitle("Mine again".into())
        .apply(&edited)
        .expect("edited");
    let fault = file.save(&again, IfChanged::Refuse).expect_err("refused");
    assert!(matches!(fault, SaveFault::ChangedOnDisk { .. }), "{fault}");
    assert_eq!(
        file.build(),
        &edited,
        "a refused save leaves the file as it was"
    );
    file.save(&again, IfChanged::Replace).expect("told so");
    assert_eq!(text(&path), expected.replace("Mine", "Mine again"));
    assert_eq!(text(&backup_path(&path)), demos()[1].text);
}

#[test]
fn saving_under_a_new_name_asks_before_it_writes_over_a_file() {
    let folder = folder();
    let path = folder.path().join("copy.ron");
    fs::write(&path, "theirs").expect("written");
    let document = Document::read(demos()[0].text).expect("a build");
    let build = document.build();
    let fault =
        BuildFile::save_as(&path, &document, build, IfChanged::Refuse).expect_err("refused");
    assert!(matches!(fault, SaveFault::AlreadyThere { .. }), "{fault}");
    let (file, saved) =
        BuildFile::save_as(&path, &document, build, IfChanged::Replace).expect("told so");
    assert_eq!(text(&path), demos()[0].text);
    assert_eq!(saved.backup.map(|b| text(&b)), Some("theirs".into()));
    assert_eq!(file.path(), path);
}

#[test]
fn what_can_not_be_opened_says_why() {
    let folder = folder();
    let path = folder.path().join("kart.ron");
    let said = |path: &Path| {
        BuildFile::open(path)
            .map(|_| ())
            .expect_err("refused")
            .to_string()
    };
    assert!(
        said(&path).contains("kart.ron can't be read"),
        "{}",
        said(&path)
    );
    fs::write(&path, b"(\n  title: \"\xff\"").expect("written");
    assert!(
        said(&path).contains("line 2, column 11: this is not a text file"),
        "{}",
        said(&path)
    );
    fs::write(&path, vec![b' '; 5 << 20]).expect("written");
    assert!(said(&path).contains("at most 4194304"), "{}", said(&path));
}

/// Just as large as a build file may be it is saved, opened and saved again; a byte more is not.
#[test]
fn the_largest_build_file_is_saved_and_opened() {
    let folder = folder();
    let path = folder.path().join("kart.ron");
    let largest = usize::try_from(LARGEST_FILE).expect("a size");
    let demo = demos()[0].text;
    let full = format!("{demo}{}", "\n".repeat(largest - demo.len()));
    save(&path, &full, Expected::Nothing).expect("saved");
    assert!(read_text(&path).expect("opened") == full);
    assert!(read(&full).is_ok() && read_bytes(full.as_bytes()).is_ok());
    save(&path, demo, Expected::Text(&full)).expect("known to be as it was");
    let longer = format!("{full}\n");
    assert!(matches!(
        save(&path, &longer, Expected::Anything),
        Err(SaveFault::TooLarge { .. })
    ));
    let said = read_bytes(longer.as_bytes()).expect_err("too large");
    assert!(said.to_string().contains("4194305 bytes"), "{said}");
}
