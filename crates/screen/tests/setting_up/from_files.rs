//! Sheets of readings and surveys from files: asked for as other files are, all of it or nothing, one step.

use egui::{Key, Modifiers};
use trammel_screen::{
    Start,
    host::{Pick, Picked},
    set_up::settings::SetUpPage,
};

use super::{
    SURVEY, click,
    common::{bench, press, type_in},
    session, set_up, turn_to,
};

const FILE: &str = "File, with its folder:";
const SHEET: &str = "unit, in\nmethod, degrees\nside, left\ntravel, toe, way\n0, 0,\nup 1, 0.1, in\n\
    down 1, 0.1, out\n0, 0,\n";

#[test]
fn readings_come_from_a_file_as_one_step() {
    let folder = tempfile::tempdir().expect("a folder");
    let path = folder.path().join("sheet.csv");
    std::fs::write(&path, SHEET).expect("written");
    let (mut screen, host) = bench(Start::NamedDemo("good".into()));
    click(&mut screen, "Set up");
    let before = screen.state().build().clone();
    click(&mut screen, "Open a sheet…");
    click(&mut screen, "Browse…");
    assert_eq!(host.0.borrow().asked, [Pick::OpenTable]);
    host.0.borrow_mut().answer = Some(Picked::Path(path));
    screen.run_steps(3);
    assert_eq!(session(&screen).rows.len(), 4);
    let said = screen.state().said().expect("said");
    assert!(said.contains("Undo takes it back"), "{said}");
    press(&mut screen, Modifiers::COMMAND, Key::Z);
    assert_eq!(screen.state().build(), &before);
}

#[test]
fn a_wrong_sheet_is_said_with_line_and_column_and_nothing_is_taken() {
    let folder = tempfile::tempdir().expect("a folder");
    let path = folder.path().join("sheet.csv");
    let mut screen = set_up("good");
    for (text, said) in [
        (
            SHEET.replace("up 1, 0.1", "up 1, -0.1"),
            "line 6, toe: `-0.1` has a sign",
        ),
        (
            SHEET.replace("0.1, out", "0.1,"),
            "line 7, way: the cell is empty",
        ),
        (
            SHEET.replace("degrees", "guessing"),
            "line 2, method: found `guessing`",
        ),
    ] {
        std::fs::write(&path, text).expect("written");
        click(&mut screen, "Open a sheet…");
        type_in(&mut screen, FILE, &path.display().to_string());
        let message = screen.state().said().expect("said");
        assert!(message.contains(said), "{message}");
        assert!(message.contains("No line was taken"), "{message}");
        assert!(screen.state().build().set_up.sessions.is_empty());
    }
    click(&mut screen, "Open a sheet…");
    type_in(&mut screen, FILE, "/no/such/sheet.csv");
    assert!(screen.state().build().set_up.sessions.is_empty());
}

#[test]
fn bare_lines_count_as_they_stand_in_the_file() {
    let folder = tempfile::tempdir().expect("a folder");
    let path = folder.path().join("bare.csv");
    std::fs::write(&path, "0,0,in\n1,0.1,in\n2,x,in\n").expect("written");
    let mut screen = set_up("good");
    click(&mut screen, "Start a session of readings");
    click(&mut screen, "Open a sheet…");
    type_in(&mut screen, FILE, &path.display().to_string());
    let message = screen.state().said().expect("said");
    assert!(message.contains("line 3, toe"), "{message}");
    assert!(session(&screen).rows.is_empty());
}

#[test]
fn a_survey_comes_from_a_file_with_any_separator() {
    let folder = tempfile::tempdir().expect("a folder");
    let path = folder.path().join("survey.csv");
    let mut screen = set_up("good");
    turn_to(&mut screen, SetUpPage::TapeSurvey);
    for mark in [",", ";", "\t"] {
        std::fs::write(&path, SURVEY.replace(", ", mark)).expect("written");
        click(&mut screen, "Open a survey…");
        type_in(&mut screen, FILE, &path.display().to_string());
        let lines = &screen.state().build().set_up.survey;
        assert_eq!(lines.len(), 11, "{:?}", screen.state().said());
        assert_eq!(lines[0].replace(' ', ""), "unit,in");
        press(&mut screen, Modifiers::COMMAND, Key::Z);
        assert!(screen.state().build().set_up.survey.is_empty());
    }
    std::fs::write(&path, "unit, in\ntape, A, joint, 12\n").expect("written");
    click(&mut screen, "Open a survey…");
    type_in(&mut screen, FILE, &path.display().to_string());
    let message = screen.state().said().expect("said");
    assert!(
        message.contains("line 2, name: there is no mark or point `A`"),
        "{message}"
    );
    assert!(screen.state().build().set_up.survey.is_empty());
}
