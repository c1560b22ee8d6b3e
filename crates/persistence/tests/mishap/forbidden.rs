//! Files and folders that may not be read or written. Root may do anything, so there the writer becomes nobody first.

use std::{
    fs,
    os::unix::{fs::PermissionsExt, process::CommandExt},
    path::Path,
};

use trammel_persistence::{Expected, backup_path, read_text, save, save_bytes};

use super::{Mounted, file_from_parent, number_of, version, writer};

/// User and group `nobody`.
const NOBODY: u32 = 65534;

fn mode(path: &Path, mode: u32) {
    fs::set_permissions(path, fs::Permissions::from_mode(mode)).expect("set");
}

/// What the writer below says of a file as somebody who is not root; none when it can't be started as such.
fn told(name: &str, path: &Path) -> Option<String> {
    let mut command = writer(name, path);
    let root =
        fs::metadata("/proc/self").is_ok_and(|m| std::os::unix::fs::MetadataExt::uid(&m) == 0);
    if root {
        command.uid(NOBODY).gid(NOBODY);
    }
    match command.output() {
        Ok(output) => {
            let said = String::from_utf8_lossy(&output.stdout).into_owned();
            assert!(output.status.success(), "{said}");
            Some(said)
        }
        Err(fault) => {
            println!("SKIPPED: the writer can't be started as nobody: {fault}");
            None
        }
    }
}

#[test]
#[ignore = "the writer that another test starts without permission"]
fn try_all() {
    let Some(path) = file_from_parent() else {
        return;
    };
    let said = |name: &str, fault: &dyn std::fmt::Display| println!("{name}: {fault}");
    match read_text(&path) {
        Ok(text) => println!("read: {} bytes", text.len()),
        Err(fault) => said("read", &fault),
    }
    said(
        "text",
        &save(&path, &version(2), Expected::Anything).expect_err("refused"),
    );
    said("sheet", &save_bytes(&path, b"%PDF").expect_err("refused"));
    let new = path.with_file_name("new.ron");
    said(
        "new",
        &save(&new, &version(2), Expected::Nothing).expect_err("refused"),
    );
}

#[test]
fn a_folder_that_may_only_be_read_keeps_its_file_and_the_reason_is_plain() {
    let folder = tempfile::tempdir().expect("a folder");
    let path = folder.path().join("kart.ron");
    fs::write(&path, version(1)).expect("written");
    mode(&path, 0o644);
    mode(folder.path(), 0o555);
    let said = told("forbidden::try_all", &path);
    mode(folder.path(), 0o755);
    let Some(said) = said else { return };
    assert!(
        said.contains(&format!("read: {} bytes", version(1).len())),
        "{said}"
    );
    let plain = "you have no permission for it; the file on disk is as it was";
    assert_eq!(said.matches(plain).count(), 3, "{said}");
    assert_eq!(number_of(&path), 1);
    assert_eq!(fs::read_dir(folder.path()).expect("a folder").count(), 1);
}

#[test]
fn a_file_without_permission_is_told_so_and_not_replaced() {
    let folder = tempfile::tempdir().expect("a folder");
    let path = folder.path().join("kart.ron");
    fs::write(&path, version(1)).expect("written");
    mode(&path, 0o000);
    mode(folder.path(), 0o555);
    let said = told("forbidden::try_all", &path);
    mode(folder.path(), 0o755);
    mode(&path, 0o644);
    let Some(said) = said else { return };
    assert!(
        said.contains("kart.ron can't be read: you have no permission for it"),
        "{said}"
    );
    assert!(
        said.contains("could not be compared: you have no permission for it"),
        "{said}"
    );
    assert_eq!(number_of(&path), 1);
    assert!(!backup_path(&path).exists());
}

/// A disk that can only be read, for root too: a folder mounted over itself.
#[test]
fn a_disk_that_can_only_be_read_keeps_its_file_and_the_reason_is_plain() {
    let Some(disk) = Mounted::over_itself() else {
        println!("SKIPPED: only root can mount; the folder without permission stands in");
        return;
    };
    let path = disk.path().join("kart.ron");
    fs::write(&path, version(1)).expect("written");
    assert!(disk.make_read_only(), "a mount that can only be read");
    let text = save(&path, &version(2), Expected::Anything).map(|_| ());
    for fault in [text, save_bytes(&path, b"%PDF")] {
        let said = fault.expect_err("refused").to_string();
        assert!(said.contains("this disk can only be read"), "{said}");
    }
    assert_eq!(number_of(&path), 1);
    assert!(!backup_path(&path).exists());
}
