//! The Set up stage by its controls: readings, next move, survey, static figures, log, parts, cards.

#![allow(
    clippy::expect_used,
    clippy::panic,
    reason = "a test stops where it fails"
)]

#[path = "setting_up/at_rest.rs"]
mod at_rest;
mod common;
#[path = "setting_up/from_files.rs"]
mod from_files;
#[path = "setting_up/kept.rs"]
mod kept;

use common::{
    Screen, TestHost, bench, bench_on, fill, find_and_click as click, press, type_in, wait,
};
use egui::{Key, Modifiers};
use egui_kittest::kittest::Queryable;
use trammel_build::{Build, PointName, PointRef, Session, Side, ToeMethod};
use trammel_screen::{Start, set_up::settings::SetUpPage, view::Stage};
use trammel_setup::{Raw, Way};

fn set_up(name: &str) -> Screen {
    let (mut screen, _) = bench(Start::NamedDemo(name.into()));
    click(&mut screen, "Set up");
    screen
}

fn turn_to(screen: &mut Screen, page: SetUpPage) {
    screen.state_mut().view_mut().set_up.page = page;
    screen.run_steps(4);
}

fn session(screen: &Screen) -> &Session {
    let build = screen.state().build();
    build.set_up.sessions.last().expect("a session")
}

/// Types at the keyboard alone: wherever the focus is.
fn keys(screen: &mut Screen, text: &str) {
    screen.event(egui::Event::Text(text.to_owned()));
    screen.step();
    screen.key_press(Key::Enter);
    screen.run_steps(3);
}

/// A build whose inner joint was welded too high, with readings of both wheels by the kernel itself.
fn read_build() -> Build {
    let demo = trammel_persistence::demos()[0].text;
    let mut build = trammel_persistence::read(demo).expect("read");
    let mut built = build.clone();
    built.front.tie_rod.inner[2] += 0.125;
    let axle = built.axle(trammel_build::AxleName::Front).expect("posed");
    let linkage = axle.linkage(Side::Left);
    let toe = |travel: f64| {
        let pose = linkage.pose(travel * 25.4, 0.0).expect("reached");
        linkage.measures(&pose).toe.to_degrees()
    };
    let places = [0.0, 1.0, 2.0, 3.0, 0.0, -1.0, -2.0, 0.0];
    let mut rows = Vec::new();
    for side in [Side::Left, Side::Right] {
        rows.extend(places.map(|place| {
            let change = toe(place) - toe(0.0);
            let way = if change < 0.0 { Way::Out } else { Way::In };
            trammel_build::ReadingRow {
                side,
                run: 1,
                rack: 0.0,
                place,
                ride: place == 0.0,
                shown: Raw::Degrees((change.abs() * 100.0).round() / 100.0, way),
            }
        }));
    }
    build.set_up.sessions.push(Session {
        date: "3 May".into(),
        notes: String::new(),
        adjusted: Vec::new(),
        method: ToeMethod::Degrees,
        accuracy: None,
        travel_by: trammel_build::TravelMeasure::Travel,
        travel_accuracy: None,
        rows,
    });
    build
}

fn read_screen() -> Screen {
    let (mut screen, _) = bench(Start::Build(Box::new(read_build())));
    click(&mut screen, "Set up");
    wait(&mut screen, |s| s.state().set_up().is_current());
    screen.run_steps(3);
    screen
}

#[test]
fn the_stage_is_reached_by_its_name_and_by_key() {
    let mut screen = set_up("good");
    assert_eq!(screen.state().view().stage, Stage::SetUp);
    press(&mut screen, Modifiers::NONE, Key::F2);
    assert_eq!(screen.state().view().stage, Stage::LayOut);
    press(&mut screen, Modifiers::NONE, Key::F6);
    assert_eq!(screen.state().view().stage, Stage::SetUp);
    for page in SetUpPage::ALL {
        click(&mut screen, page.label());
        assert_eq!(screen.state().view().set_up.page, page);
    }
}

#[test]
fn a_run_is_typed_with_numbers_and_enter_alone_and_plots_as_it_goes() {
    let mut screen = set_up("good");
    click(&mut screen, "Start a session of readings");
    screen.get_by_label("New toe").click();
    screen.run_steps(2);
    // The places are the stations of the card: ride, up, ride, down, ride.
    for reading in ["0", "0.1 in", "0.2 in", "0.3 in", "0"] {
        keys(&mut screen, reading);
    }
    assert_eq!(screen.state().set_up().measured_points(), 3);
    for reading in ["0.1 out", "0.2o", "0.01 in"] {
        keys(&mut screen, reading);
    }
    let places: Vec<f64> = session(&screen).rows.iter().map(|r| r.place).collect();
    assert_eq!(places, [0.0, 1.0, 2.0, 3.0, 0.0, -1.0, -2.0, 0.0]);
    let last_down = session(&screen).rows[6].shown;
    assert_eq!(last_down, Raw::Degrees(0.2, Way::Out));
    assert_eq!(screen.state().set_up().measured_points(), 5);
    press(&mut screen, Modifiers::NONE, Key::Escape);
    press(&mut screen, Modifiers::COMMAND, Key::Z);
    assert_eq!(session(&screen).rows.len(), 7, "one reading is one step");
}

#[test]
fn a_sign_or_a_missing_word_is_refused_and_stays_in_the_line() {
    let mut screen = set_up("good");
    click(&mut screen, "Start a session of readings");
    for (typed, said) in [("-0.2", "sign"), ("0.2", "in or out"), ("much", "expected")] {
        screen.state_mut().view_mut().set_up.entry.first = typed.into();
        screen.get_by_label("New toe").click();
        screen.run_steps(2);
        screen.key_press(Key::Enter);
        screen.run_steps(3);
        let message = screen.state().said().expect("said");
        assert!(message.contains(said), "{message}");
        assert_eq!(screen.state().view().set_up.entry.first, typed);
        assert!(session(&screen).rows.is_empty());
    }
}

#[test]
fn a_typed_reading_can_be_changed_and_taken_out() {
    let mut screen = read_screen();
    fill(&mut screen, "Toe, line 2", "0.5 out");
    assert_eq!(session(&screen).rows[1].shown, Raw::Degrees(0.5, Way::Out));
    fill(&mut screen, "Toe, line 2", "-0.5");
    assert_eq!(session(&screen).rows[1].shown, Raw::Degrees(0.5, Way::Out));
    assert!(screen.state().said().expect("said").contains("sign"));
    let count = session(&screen).rows.len();
    click(&mut screen, "Take out line 2");
    assert_eq!(session(&screen).rows.len(), count - 1);
}

#[test]
fn another_method_needs_an_empty_session() {
    let mut screen = set_up("good");
    click(&mut screen, "Start a session of readings");
    click(&mut screen, "Toe by: Two dials");
    assert_eq!(session(&screen).method, ToeMethod::TwoDials(10.0, Way::In));
    click(&mut screen, "Grows: OUT");
    assert_eq!(session(&screen).method, ToeMethod::TwoDials(10.0, Way::Out));
    fill(&mut screen, "Spacing", "12");
    assert_eq!(session(&screen).method, ToeMethod::TwoDials(12.0, Way::Out));
    let mut screen = read_screen();
    click(&mut screen, "How it was measured");
    screen.run_steps(30);
    click(&mut screen, "Toe by: Laser");
    assert_eq!(session(&screen).method, ToeMethod::Degrees);
    assert!(
        screen
            .state()
            .said()
            .expect("said")
            .contains("keeps one way")
    );
}

#[test]
fn a_spreadsheet_is_pasted_bare_or_with_its_own_settings() {
    let mut screen = set_up("good");
    click(&mut screen, "Start a session of readings");
    click(&mut screen, "Paste from a spreadsheet");
    screen.run_steps(20);
    screen.state_mut().view_mut().set_up.paste = "0\t0\tin\n1\t0.1\tin\n-1\t0.1\tout\n".into();
    screen.run_steps(2);
    click(&mut screen, "Take the readings");
    assert_eq!(session(&screen).rows.len(), 3);
    assert_eq!(session(&screen).rows[2].shown, Raw::Degrees(0.1, Way::Out));
    assert!(screen.state().view().set_up.paste.is_empty());
    screen.state_mut().view_mut().set_up.paste = "1\t-0.1\tin\n".into();
    screen.run_steps(2);
    click(&mut screen, "Take the readings");
    assert_eq!(session(&screen).rows.len(), 3, "all or nothing");
    assert!(
        !screen.state().view().set_up.paste.is_empty(),
        "nothing typed is lost"
    );
}

#[test]
fn readings_of_a_joint_welded_too_high_give_a_move_that_cures() {
    let mut screen = read_screen();
    assert_eq!(screen.state().set_up().measured_points(), 5);
    turn_to(&mut screen, SetUpPage::NextMove);
    assert!(screen.query_by_label("Left wheel").is_some());
    assert!(screen.query_by_label("Right wheel").is_some());
    assert_eq!(screen.state().set_up().cured(), Some(true));
}

#[test]
fn moves_done_start_the_next_session_with_what_was_moved() {
    let mut screen = read_screen();
    turn_to(&mut screen, SetUpPage::NextMove);
    click(&mut screen, "Moves done");
    let sessions = &screen.state().build().set_up.sessions;
    assert_eq!(sessions.len(), 2);
    assert!(!sessions[1].adjusted.is_empty());
    assert!(sessions[1].rows.is_empty());
    assert_eq!(sessions[1].method, sessions[0].method);
    press(&mut screen, Modifiers::COMMAND, Key::Z);
    assert_eq!(screen.state().build().set_up.sessions.len(), 1);
}

#[test]
fn the_likely_geometry_goes_in_as_one_step() {
    let mut screen = read_screen();
    turn_to(&mut screen, SetUpPage::NextMove);
    let before = screen.state().build().clone();
    click(&mut screen, "Learn the true geometry");
    let after = screen.state().build().clone();
    let z = |b: &Build, side| {
        let at = PointRef {
            side,
            ..common::INNER
        };
        b.point(at).expect("there")[2]
    };
    for side in [Side::Left, Side::Right] {
        assert!(
            z(&after, side) > z(&before, side),
            "the inner joint is higher than drawn"
        );
    }
    press(&mut screen, Modifiers::COMMAND, Key::Z);
    assert_eq!(screen.state().build(), &before);
}

const SURVEY: &str = "unit, in\nmark, A, 6, 0, 0\nmark, B, -10, 0, 0\nmark, C, -4, 20, 0\nmark, D, -4, 0, 20\n\
    point, tie_rod.inner, above\n\
    tape, A, tie_rod.inner, 14.48\ntape, B, tie_rod.inner, 12.70\ntape, C, tie_rod.inner, 16.05\ntape, D, tie_rod.inner, 13.02\n\
    height, tie_rod.inner, 8.75\n";

#[test]
fn a_survey_is_pasted_and_taken_into_the_build_as_one_step() {
    let mut screen = set_up("good");
    turn_to(&mut screen, SetUpPage::TapeSurvey);
    click(&mut screen, "Paste a survey");
    screen.run_steps(20);
    screen.state_mut().view_mut().set_up.survey_paste = SURVEY.into();
    screen.run_steps(2);
    click(&mut screen, "Take the survey");
    assert_eq!(screen.state().build().set_up.survey.len(), 11);
    wait(&mut screen, |s| s.state().set_up().survey_is_current());
    screen.run_steps(3);
    let before = screen.state().build().clone();
    click(&mut screen, "Take it into the build");
    let build = screen.state().build();
    let at = PointRef::left(trammel_build::AxleName::Front, PointName::TieRodInner);
    assert!(build.set_up.surveyed.contains_key(&at));
    let (a, b) = (before.front.tie_rod.inner, build.front.tie_rod.inner);
    assert!(
        a != b && a.iter().zip(b).all(|(a, b)| (a - b).abs() < 0.25),
        "{a:?} {b:?}"
    );
    press(&mut screen, Modifiers::COMMAND, Key::Z);
    assert_eq!(screen.state().build(), &before);
}

#[test]
fn lines_of_a_survey_are_added_and_taken_out() {
    let mut screen = set_up("good");
    turn_to(&mut screen, SetUpPage::TapeSurvey);
    let entry = &mut screen.state_mut().view_mut().set_up.survey_entry;
    entry.from = "A".into();
    entry.value = "0, 0, 0".into();
    screen.run_steps(2);
    click(&mut screen, "Add");
    let lines = &screen.state().build().set_up.survey;
    assert_eq!(lines, &["unit, in", "mark, A, 0, 0, 0"]);
    click(&mut screen, "Take out survey line 2");
    assert_eq!(screen.state().build().set_up.survey, ["unit, in"]);
}

#[test]
fn sessions_are_begun_and_taken_out_in_the_log() {
    let mut screen = read_screen();
    turn_to(&mut screen, SetUpPage::Log);
    click(&mut screen, "New session");
    assert_eq!(screen.state().build().set_up.sessions.len(), 2);
    click(&mut screen, "Take out session 2");
    assert_eq!(screen.state().build().set_up.sessions.len(), 1);
}

#[test]
fn a_part_is_kept_in_the_users_folder_and_put_into_a_build() {
    let folder = tempfile::tempdir().expect("a folder");
    let host = TestHost::default();
    host.0.borrow_mut().folder = Some(folder.path().to_owned());
    let mut screen = bench_on(host.clone(), Start::NamedDemo("good".into()));
    click(&mut screen, "Set up");
    turn_to(&mut screen, SetUpPage::Parts);
    click(&mut screen, "Spring");
    screen.run_steps(20);
    fill(&mut screen, "Open", "16");
    let kept = trammel_persistence::Drawer::load(&folder.path().join("parts.ron")).expect("kept");
    assert_eq!(kept.parts.len(), 1);
    let name = kept.parts[0].name.clone();
    click(&mut screen, &format!("Put {name} into the build"));
    let spring = screen.state().build().front.spring.expect("a spring");
    assert_eq!(spring.open_length, Some(16.0));
    let mut again = bench_on(host, Start::NamedDemo("lifted".into()));
    click(&mut again, "Set up");
    turn_to(&mut again, SetUpPage::Parts);
    click(&mut again, &format!("Take {name} out of the drawer"));
    let kept = trammel_persistence::Drawer::load(&folder.path().join("parts.ron")).expect("kept");
    assert!(kept.parts.is_empty());
}

#[test]
fn a_drawer_that_cant_be_read_is_not_written_over() {
    let folder = tempfile::tempdir().expect("a folder");
    let path = folder.path().join("parts.ron");
    std::fs::write(&path, "not a drawer").expect("written");
    let host = TestHost::default();
    host.0.borrow_mut().folder = Some(folder.path().to_owned());
    let mut screen = bench_on(host, Start::NamedDemo("good".into()));
    click(&mut screen, "Set up");
    turn_to(&mut screen, SetUpPage::Parts);
    assert!(screen.query_by_label("Spring").is_none());
    assert_eq!(
        std::fs::read_to_string(&path).expect("there"),
        "not a drawer"
    );
}

#[test]
fn cards_are_saved_where_the_user_says() {
    let folder = tempfile::tempdir().expect("a folder");
    let mut screen = read_screen();
    click(&mut screen, "Cards to print…");
    let path = folder.path().join("cards");
    type_in(
        &mut screen,
        "File, with its folder:",
        &path.display().to_string(),
    );
    let bytes = std::fs::read(path.with_extension("pdf")).expect("written");
    assert!(bytes.starts_with(b"%PDF"));
}

#[test]
fn the_readings_page_looks_as_it_did() {
    let mut screen = read_screen();
    screen.snapshot("set_up_readings");
}
