//! Load cases: on and off, edited, added, removed, back to the usual.

use egui::Role;
use egui_kittest::kittest::Queryable;
use trammel_analysis::effective_load_cases;
use trammel_build::{Hold, LoadAction, LoadCaseSpec, LoadPlace, LoadUnit, RimHalf};
use trammel_screen::prove::settings::ProvePage;

use crate::{
    common::{Screen, click},
    hand::{fill, prove, settle, undo, use_it},
};

fn case(screen: &Screen, name: &str) -> LoadCaseSpec {
    let cases = effective_load_cases(screen.state().build());
    let mut found = cases.into_iter();
    found.find(|(c, _)| c.name == name).expect("such a case").0
}

fn force(screen: &Screen, name: &str) -> ([f64; 3], LoadUnit, LoadPlace) {
    match case(screen, name).actions.first() {
        Some(LoadAction::Force(size, unit, place, _)) => (*size, *unit, *place),
        other => panic!("{other:?}"),
    }
}

#[test]
fn a_case_that_is_switched_off_has_no_rows_any_more() {
    let mut screen = prove("lifted", ProvePage::LoadCases);
    let has = |s: &Screen| {
        let proof = s.state().prove().proof().expect("proved");
        proof
            .rows
            .iter()
            .any(|r| r.load_case.as_deref() == Some("pothole"))
    };
    assert!(has(&screen));
    use_it(&mut screen, Role::CheckBox, "Put on: pothole");
    assert!(screen.state().build().load_cases.off.contains("pothole"));
    settle(&mut screen);
    assert!(!has(&screen));
    undo(&mut screen);
    settle(&mut screen);
    assert!(has(&screen));
}

#[test]
fn every_figure_of_a_usual_case_is_edited_and_comes_back() {
    let mut screen = prove("lifted", ProvePage::LoadCases);
    let usual = case(&screen, "landing");
    use_it(&mut screen, Role::Button, "Edit load case: landing");
    fill(&mut screen, "Force 1, forward", "-0.5");
    fill(&mut screen, "Force 1, outboard", "0.25");
    fill(&mut screen, "Force 1, up", "4");
    use_it(&mut screen, Role::RadioButton, "times: vehicle weight");
    use_it(&mut screen, Role::RadioButton, "at: front of rim");
    fill(&mut screen, "Force 1, height on rim", "0.3");
    fill(&mut screen, "Force 1, across rim", "1");
    use_it(&mut screen, Role::RadioButton, "axes: wheel");
    fill(&mut screen, "Braking", "0.4");
    fill(&mut screen, "Cornering", "0.2");
    fill(&mut screen, "Travel from", "-0.25");
    fill(&mut screen, "Travel to", "0.75");
    fill(&mut screen, "Lock from", "0.1");
    fill(&mut screen, "Lock to", "0.6");
    use_it(&mut screen, Role::RadioButton, "Wheel: braked");
    fill(&mut screen, "What happens", "Off the ramp");
    let (size, unit, place) = force(&screen, "landing");
    assert_eq!((size, unit), ([-0.5, 0.25, 4.0], LoadUnit::VehicleWeight));
    assert_eq!(place, LoadPlace::Rim(RimHalf::Front, 0.3, 1.0));
    let own = case(&screen, "landing");
    assert_eq!(
        (own.braking, own.cornering, own.hold),
        (0.4, 0.2, Hold::Braked)
    );
    assert_eq!((own.travel, own.lock), ([-0.25, 0.75], [0.1, 0.6]));
    assert_eq!(own.what, "Off the ramp");
    use_it(&mut screen, Role::Button, "Back to the usual");
    assert_eq!(case(&screen, "landing"), usual);
}

#[test]
fn a_case_is_added_named_filled_and_removed() {
    let mut screen = prove("lifted", ProvePage::LoadCases);
    let before = screen.state().build().clone();
    use_it(&mut screen, Role::Button, "Add a load case");
    fill(&mut screen, "Name of the case", "stump");
    use_it(&mut screen, Role::Button, "Add a force");
    use_it(&mut screen, Role::Button, "Add turning on the spot");
    fill(&mut screen, "Friction", "0.6");
    fill(&mut screen, "Tyre pressure", "50");
    use_it(&mut screen, Role::Button, "Add a pull against the stop");
    fill(&mut screen, "Pull at the rim", "250");
    use_it(&mut screen, Role::Button, "Remove Force 2");
    let own = case(&screen, "stump");
    assert_eq!(own.actions.len(), 3);
    assert!(
        matches!(own.actions[1], LoadAction::TurnedOnTheSpot(f, _) if f == 0.6),
        "{own:?}"
    );
    assert!(matches!(own.actions[2], LoadAction::AgainstStop(f) if f.n() == 250.0));
    use_it(&mut screen, Role::Button, "Remove it");
    assert_eq!(screen.state().build(), &before);
}

#[test]
fn a_name_that_is_taken_is_refused_and_the_old_one_stands() {
    let mut screen = prove("lifted", ProvePage::LoadCases);
    use_it(&mut screen, Role::Button, "Add a load case");
    fill(&mut screen, "Name of the case", "landing");
    assert!(
        screen
            .state()
            .said()
            .is_some_and(|s| s.contains("own case 1"))
    );
    assert_eq!(case(&screen, "own case 1").name, "own case 1");
}

#[test]
fn the_forces_of_a_case_are_a_click_away() {
    let mut screen = prove("lifted", ProvePage::LoadCases);
    use_it(&mut screen, Role::Button, "Edit load case: cornering");
    click(&mut screen, "Show its forces");
    assert_eq!(screen.state().view().prove.page, ProvePage::Forces);
    assert_eq!(
        screen.state().prove().picture().expect("arrows").title,
        "cornering"
    );
}

#[test]
fn with_every_case_off_there_are_no_forces_and_it_is_said() {
    let mut screen = prove("good", ProvePage::LoadCases);
    for (case, _) in effective_load_cases(screen.state().build()) {
        use_it(
            &mut screen,
            Role::CheckBox,
            &format!("Put on: {}", case.name),
        );
    }
    click(&mut screen, "Page: Forces");
    assert!(screen.state().prove().picture().is_none());
    let said = "No load case is put on: switch one on among the load cases.";
    assert!(screen.query_by_label(said).is_some());
}
