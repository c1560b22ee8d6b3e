//! What is kept in the build and the drawer: adjusters, notes, parts with all their figures, the measured demo.

use egui::{Key, Modifiers};
use egui_kittest::kittest::Queryable;
use trammel_build::{PartKind, PointName, RackEndRange, SpringRate, StackRange};
use trammel_persistence::Drawer;
use trammel_screen::{Start, set_up::settings::SetUpPage};

use super::{
    click,
    common::{TestHost, bench_on, press, type_in},
    fill, read_screen, set_up, turn_to, wait,
};

#[test]
fn adjusters_are_given_their_step_and_range_and_count_for_the_move() {
    let mut screen = read_screen();
    turn_to(&mut screen, SetUpPage::NextMove);
    screen.run_steps(20);
    click(&mut screen, "Washers: adjusts");
    let adjusters = screen.state().build().set_up.adjusters;
    let usual = StackRange {
        thickness: 0.0625,
        more: 3,
        fewer: 0,
        only: None,
    };
    assert_eq!(adjusters.washers, Some(usual));
    fill(&mut screen, "Washers fewer", "2");
    fill(&mut screen, "Washers fewer", "1.5");
    assert!(
        screen
            .state()
            .said()
            .expect("said")
            .contains("whole number")
    );
    let washers = screen.state().build().set_up.adjusters.washers;
    assert_eq!(washers.map(|w| w.fewer), Some(2));
    click(&mut screen, "Rack end: adjusts");
    fill(&mut screen, "Rack end in", "0.5");
    let turns = RackEndRange {
        turns_out: 3.0,
        turns_in: 0.5,
        only: None,
    };
    assert_eq!(
        screen.state().build().set_up.adjusters.rack_end,
        Some(turns)
    );
    wait(&mut screen, |s| s.state().set_up().is_current());
    press(&mut screen, Modifiers::COMMAND, Key::Z);
    assert_ne!(
        screen.state().build().set_up.adjusters.rack_end,
        Some(turns)
    );
}

#[test]
fn date_and_notes_of_a_session_are_written_in_the_log() {
    let mut screen = read_screen();
    turn_to(&mut screen, SetUpPage::Log);
    fill(&mut screen, "Notes of session 1", "plate slipped once");
    fill(&mut screen, "Date of session 1", "4 May");
    let session = &screen.state().build().set_up.sessions[0];
    assert_eq!(
        (session.notes.as_str(), session.date.as_str()),
        ("plate slipped once", "4 May")
    );
}

#[test]
fn every_figure_of_a_part_is_kept_and_put_in() {
    let folder = tempfile::tempdir().expect("a folder");
    let host = TestHost::default();
    host.0.borrow_mut().folder = Some(folder.path().to_owned());
    let mut screen = bench_on(host, Start::NamedDemo("good".into()));
    click(&mut screen, "Set up");
    turn_to(&mut screen, SetUpPage::Parts);
    let kept = || {
        Drawer::load(&folder.path().join("parts.ron"))
            .expect("kept")
            .parts
    };
    let only = |screen: &mut super::common::Screen| {
        let name = kept()[0].name.clone();
        click(screen, &format!("Take {name} out of the drawer"));
        screen.run_steps(20);
    };
    click(&mut screen, "Joint");
    screen.run_steps(20);
    fill(&mut screen, "Rating", "5000");
    let PartKind::Joint(joint) = kept()[0].kind.clone() else {
        panic!("a joint")
    };
    assert!(
        (joint.rating.expect("kept") - 22_241.1).abs() < 0.1,
        "pounds"
    );
    let name = kept()[0].name.clone();
    click(&mut screen, &format!("Put {name} into the build"));
    let joints = &screen.state().build().front.parts.joints;
    for point in [PointName::TieRodInner, PointName::TieRodOuter] {
        let end = joints[&point].end.as_ref().expect("an end");
        assert!((end.rating.expect("rated").n() - 22_241.1).abs() < 0.1);
    }
    only(&mut screen);
    screen
        .get_by_role_and_label(egui::Role::Button, "Rack")
        .click();
    screen.run_steps(20);
    fill(&mut screen, "Hard teeth to", "5 1/4");
    let PartKind::Rack(rack) = kept()[0].kind.clone() else {
        panic!("a rack")
    };
    assert_eq!(rack.hard_to, Some(5.25));
    only(&mut screen);
    click(&mut screen, "Spring");
    screen.run_steps(20);
    fill(&mut screen, "Rate", "150");
    let PartKind::Spring(spring) = kept()[0].kind.clone() else {
        panic!("a spring")
    };
    assert_eq!(spring.rate, Some(SpringRate::PoundsPerInch(150.0)));
}

#[test]
fn the_sheet_to_measure_by_is_saved() {
    let folder = tempfile::tempdir().expect("a folder");
    let mut screen = set_up("good");
    turn_to(&mut screen, SetUpPage::Parts);
    click(&mut screen, "Measuring sheet…");
    let path = folder.path().join("measure");
    type_in(
        &mut screen,
        "File, with its folder:",
        &path.display().to_string(),
    );
    let bytes = std::fs::read(path.with_extension("pdf")).expect("written");
    assert!(bytes.starts_with(b"%PDF"));
}

#[test]
fn the_measured_demo_fills_the_stage() {
    let mut screen = set_up("measured");
    wait(&mut screen, |s| {
        s.state().set_up().is_current() && s.state().set_up().survey_is_current()
    });
    screen.run_steps(3);
    assert!(screen.state().set_up().measured_points() > 4);
    assert_eq!(screen.state().set_up().cured(), Some(true));
    turn_to(&mut screen, SetUpPage::TapeSurvey);
    for text in [
        "As built against as drawn",
        "Left against right",
        "Readings that would help most",
    ] {
        screen.get_by_label(text);
    }
    assert!(
        screen
            .query_by_label_contains("contradicts the others")
            .is_none()
    );
}
