//! Saving, opening, and never losing work.

mod common;

use common::{INNER, TestHost, bench, bench_on, click, click_point, place, press, type_in};
use egui::{Key, Modifiers};
use egui_kittest::kittest::Queryable;
use trammel_screen::{
    Start,
    drawing::Projection,
    host::{Pick, Picked},
};

const FILE_FIELD: &str = "File, with its folder:";

fn nudge(screen: &mut common::Screen) {
    click_point(screen, INNER, Projection::Front);
    press(screen, Modifiers::NONE, Key::ArrowUp);
}

#[test]
fn save_and_reopen_gives_an_equal_build() {
    let folder = tempfile::tempdir().expect("folder");
    let path = folder.path().join("mine.ron");
    let (mut screen, _) = bench(Start::Demo);
    nudge(&mut screen);
    assert!(screen.state().has_unsaved_work());
    press(&mut screen, Modifiers::COMMAND, Key::S);
    type_in(&mut screen, FILE_FIELD, &path.display().to_string());
    assert!(
        !screen.state().has_unsaved_work(),
        "{:?}",
        screen.state().said()
    );
    let build = screen.state().build().clone();
    let (again, _) = bench(Start::File(path));
    assert_eq!(again.state().build(), &build);
}

#[test]
fn the_desktops_dialog_gives_a_path_or_nothing_and_the_typed_path_stays_open() {
    let folder = tempfile::tempdir().expect("folder");
    let path = folder.path().join("chosen.ron");
    let (mut screen, host) = bench(Start::Demo);
    press(&mut screen, Modifiers::COMMAND | Modifiers::SHIFT, Key::S);
    click(&mut screen, "Browse…");
    assert!(matches!(
        host.0.borrow().asked.as_slice(),
        [Pick::SaveBuild(_)]
    ));
    host.0.borrow_mut().answer = Some(Picked::Nothing);
    screen.run_steps(3);
    screen.get_by_label(FILE_FIELD);
    click(&mut screen, "Browse…");
    host.0.borrow_mut().answer = Some(Picked::Path(path.clone()));
    screen.run_steps(3);
    assert!(path.exists());
}

#[test]
fn a_file_changed_by_another_program_is_not_written_over_without_asking() {
    let folder = tempfile::tempdir().expect("folder");
    let path = folder.path().join("shared.ron");
    std::fs::write(&path, trammel_persistence::demos()[0].text).expect("write");
    let (mut screen, _) = bench(Start::File(path.clone()));
    nudge(&mut screen);
    let foreign = format!(
        "{}\n// edited elsewhere\n",
        trammel_persistence::demos()[0].text
    );
    std::fs::write(&path, &foreign).expect("write");
    press(&mut screen, Modifiers::COMMAND, Key::S);
    assert_eq!(std::fs::read_to_string(&path).expect("read"), foreign);
    click(&mut screen, "Save over it");
    assert!(!screen.state().has_unsaved_work());
    let backup = std::fs::read_to_string(trammel_persistence::backup_path(&path)).expect("backup");
    assert_eq!(
        backup, foreign,
        "the other program's version is kept beside it"
    );
}

#[test]
fn opening_another_build_asks_first() {
    let folder = tempfile::tempdir().expect("folder");
    let path = folder.path().join("other.ron");
    std::fs::write(&path, trammel_persistence::demos()[1].text).expect("write");
    let (mut screen, _) = bench(Start::Demo);
    nudge(&mut screen);
    let mine = screen.state().build().clone();
    press(&mut screen, Modifiers::COMMAND, Key::O);
    type_in(&mut screen, FILE_FIELD, &path.display().to_string());
    assert_eq!(
        screen.state().build(),
        &mine,
        "still there while the question stands"
    );
    click(&mut screen, "Don't save");
    assert_ne!(screen.state().build(), &mine);
}

#[test]
fn quitting_with_unsaved_work_asks_and_cancel_stays() {
    let (mut screen, host) = bench(Start::Demo);
    nudge(&mut screen);
    press(&mut screen, Modifiers::COMMAND, Key::Q);
    assert_eq!(host.0.borrow().quits, 0);
    click(&mut screen, "Cancel");
    assert_eq!(host.0.borrow().quits, 0);
    press(&mut screen, Modifiers::COMMAND, Key::Q);
    click(&mut screen, "Don't save");
    assert_eq!(host.0.borrow().quits, 1);
}

#[test]
fn a_bad_file_is_explained_and_the_build_on_the_table_stays() {
    let folder = tempfile::tempdir().expect("folder");
    let path = folder.path().join("broken.ron");
    std::fs::write(&path, "(format: 1, unit: furlong)").expect("write");
    let (mut screen, _) = bench(Start::Demo);
    let mine = screen.state().build().clone();
    press(&mut screen, Modifiers::COMMAND, Key::O);
    type_in(&mut screen, FILE_FIELD, &path.display().to_string());
    assert_eq!(screen.state().build(), &mine);
    let said = screen.state().said().expect("said").to_owned();
    assert!(
        said.contains("furlong") && said.contains("broken.ron"),
        "{said}"
    );
}

#[test]
fn unsaved_work_of_a_crashed_run_is_offered_and_comes_back() {
    let folder = tempfile::tempdir().expect("folder");
    let host = TestHost::default();
    host.0.borrow_mut().folder = Some(folder.path().to_owned());
    let mut screen = bench_on(host.clone(), Start::Demo);
    nudge(&mut screen);
    // Five seconds of frames, and then it is gone without a word.
    screen.run_steps(320);
    let work = screen.state().build().clone();
    drop(screen);
    let mut again = bench_on(host, Start::Demo);
    assert_ne!(again.state().build(), &work);
    click(&mut again, "Bring back A build that was never saved");
    assert_eq!(again.state().build(), &work);
    assert!(
        again.state().has_unsaved_work(),
        "it is back on the table, not in a file"
    );
}

#[test]
fn a_saved_end_leaves_nothing_to_offer() {
    let folder = tempfile::tempdir().expect("folder");
    let host = TestHost::default();
    host.0.borrow_mut().folder = Some(folder.path().join("state"));
    let mut screen = bench_on(host.clone(), Start::Demo);
    nudge(&mut screen);
    screen.run_steps(320);
    press(&mut screen, Modifiers::COMMAND, Key::S);
    type_in(
        &mut screen,
        FILE_FIELD,
        &folder.path().join("done.ron").display().to_string(),
    );
    press(&mut screen, Modifiers::COMMAND, Key::Q);
    drop(screen);
    let again = bench_on(host, Start::Demo);
    assert!(again.query_by_label("Throw it away").is_none());
}

#[test]
fn points_go_out_and_come_back_as_a_table() {
    let folder = tempfile::tempdir().expect("folder");
    let path = folder.path().join("points.csv");
    let (mut screen, _) = bench(Start::Demo);
    press(&mut screen, Modifiers::NONE, Key::T);
    click(&mut screen, "To CSV…");
    type_in(&mut screen, FILE_FIELD, &path.display().to_string());
    let before = place(&screen, INNER);
    nudge(&mut screen);
    assert_ne!(place(&screen, INNER), before);
    click(&mut screen, "From CSV…");
    type_in(&mut screen, FILE_FIELD, &path.display().to_string());
    assert_eq!(place(&screen, INNER), before);
}

/// From an empty bench to a vehicle with both ends: a new build asks about unsaved work, and has ways to a spring unit and a rear axle.
#[test]
fn a_new_build_grows_a_spring_unit_and_a_rear_axle() {
    let (mut screen, _) = bench(Start::Demo);
    nudge(&mut screen);
    press(&mut screen, Modifiers::COMMAND, Key::N);
    click(&mut screen, "Don't save");
    let fresh = screen.state().build().clone();
    assert_eq!(fresh.title, "New build");
    assert!(fresh.rear.is_none() && fresh.front.spring.is_none());
    assert!(!screen.state().has_unsaved_work());
    screen.state_mut().view_mut().page = trammel_screen::view::Page::Figures;
    screen.run_steps(2);
    common::find_and_click(&mut screen, "Add a spring unit");
    common::find_and_click(&mut screen, "Add a rear axle");
    let build = screen.state().build().clone();
    assert!(build.front.spring.is_some());
    let rear = build.rear.as_ref().expect("a rear axle");
    assert_eq!(rear.spring.is_some(), build.front.spring.is_some());
    press(&mut screen, Modifiers::NONE, Key::X);
    common::find_and_click(&mut screen, "Take the spring unit out");
    assert!(
        screen
            .state()
            .build()
            .rear
            .as_ref()
            .expect("still there")
            .spring
            .is_none()
    );
    common::find_and_click(&mut screen, "Take the rear axle out");
    assert!(screen.state().build().rear.is_none());
    for _ in 0..4 {
        press(&mut screen, Modifiers::COMMAND, Key::Z);
    }
    assert_eq!(screen.state().build(), &fresh);
}

#[cfg(unix)]
#[test]
fn pipes_folders_and_files_too_large_are_explained_at_once_and_the_build_stays() {
    let folder = tempfile::tempdir().expect("folder");
    let (pipe, large) = (folder.path().join("pipe"), folder.path().join("large"));
    let made = std::process::Command::new("mkfifo").arg(&pipe).status();
    assert!(made.is_ok_and(|s| s.success()));
    std::fs::File::create(&large)
        .and_then(|f| f.set_len(100 << 20))
        .expect("made");
    let (mut screen, _) = bench(Start::Demo);
    let mine = screen.state().build().clone();
    for (path, why) in [
        (pipe.as_path(), "it is a pipe, expected a file"),
        (folder.path(), "it is a folder, expected a file"),
        (large.as_path(), "has 104857600 bytes"),
    ] {
        press(&mut screen, Modifiers::COMMAND, Key::O);
        type_in(&mut screen, FILE_FIELD, &path.display().to_string());
        let said = screen.state().said().expect("said").to_owned();
        assert!(said.contains(why), "{said}");
        assert_eq!(screen.state().build(), &mine);
    }
}

/// What stands in the way of a save is said, the work stays unsaved, and saving goes on once it is out of the way.
#[test]
fn a_save_that_the_system_refuses_is_told_and_the_work_stays_unsaved() {
    let folder = tempfile::tempdir().expect("folder");
    let path = folder.path().join("mein Kart ä.ron");
    std::fs::write(&path, trammel_persistence::demos()[0].text).expect("write");
    let (mut screen, _) = bench(Start::File(path.clone()));
    nudge(&mut screen);
    // The backup can't be written while a folder has its name.
    let in_the_way = trammel_persistence::backup_path(&path);
    std::fs::create_dir(&in_the_way).expect("made");
    press(&mut screen, Modifiers::COMMAND, Key::S);
    let said = screen.state().said().expect("said").to_owned();
    assert!(said.contains("the file on disk is as it was"), "{said}");
    assert!(screen.state().has_unsaved_work());
    let kept = std::fs::read_to_string(&path).expect("read");
    assert_eq!(kept, trammel_persistence::demos()[0].text);
    std::fs::remove_dir(&in_the_way).expect("removed");
    press(&mut screen, Modifiers::COMMAND, Key::S);
    assert!(!screen.state().has_unsaved_work());
    let saved = trammel_persistence::read(&std::fs::read_to_string(&path).expect("read"));
    assert_eq!(saved.as_ref(), Ok(screen.state().build()));
}
