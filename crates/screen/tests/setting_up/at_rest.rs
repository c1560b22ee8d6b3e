//! Static readings: kept in the build, and what follows from them.

use egui::{Key, Modifiers};
use egui_kittest::kittest::Queryable;
use trammel_build::{Mass, Statics, Weights};
use trammel_screen::set_up::settings::SetUpPage;

use super::{
    click,
    common::{Screen, press},
    fill, set_up, turn_to,
};

fn statics(screen: &Screen) -> Statics {
    screen.state().build().set_up.statics
}

fn shows(screen: &Screen, text: &str) -> bool {
    screen.query_by_label_contains(text).is_some()
}

#[test]
fn wanted_toe_and_weights_go_into_the_build() {
    let mut screen = set_up("good");
    turn_to(&mut screen, SetUpPage::Static);
    fill(&mut screen, "Toe wanted", "0.25");
    click(&mut screen, "Put the wanted toe into the build");
    assert_eq!(screen.state().build().front.wheel.toe_deg, 0.25);
    for (field, weight) in [
        ("Front left", "180"),
        ("Front right", "180"),
        ("Rear left", "220"),
        ("Rear right", "220"),
    ] {
        fill(&mut screen, field, weight);
    }
    let weights = Weights::Pounds([180.0, 180.0, 220.0, 220.0]);
    assert_eq!(statics(&screen).weights, Some(weights));
    click(&mut screen, "Put the weights into the build");
    let vehicle = screen.state().build().vehicle;
    assert_eq!(vehicle.mass, Some(Mass::Pounds(800.0)));
    assert_eq!(vehicle.front_share, Some(0.45));
}

#[test]
fn a_tapes_difference_is_kept_and_said_as_toe_in_all() {
    let mut screen = set_up("good");
    turn_to(&mut screen, SetUpPage::Static);
    fill(&mut screen, "Tape, rear less front", "1/4");
    assert_eq!(statics(&screen).tape_difference, Some(0.25));
    // 1/4 in over a tyre of 20 in.
    let toe = (0.25_f64 / 20.0).asin().to_degrees();
    assert!(shows(&screen, &format!("is {toe:.2}° IN in all")));
    press(&mut screen, Modifiers::COMMAND, Key::Z);
    assert_eq!(statics(&screen).tape_difference, None);
}

#[test]
fn toe_of_each_wheel_says_whether_the_steering_is_centred_and_what_to_turn() {
    let mut screen = set_up("good");
    turn_to(&mut screen, SetUpPage::Static);
    fill(&mut screen, "Toe left", "0.4");
    fill(&mut screen, "Toe right", "0");
    assert_eq!(statics(&screen).toe_deg, [Some(0.4), Some(0.0)]);
    // Left wheel in, right wheel straight: both together point to the right by half of it.
    assert!(shows(&screen, "the pair points 0.20° to the right"));
    assert!(shows(&screen, "In all 0.40° IN"));
    assert!(shows(&screen, "Left: turn the tie rod"));
    assert!(shows(&screen, "Right: as wanted"));
    press(&mut screen, Modifiers::COMMAND, Key::Z);
    assert_eq!(
        statics(&screen).toe_deg,
        [Some(0.4), None],
        "a reading is a step"
    );
    let field = |s: &Screen| {
        s.get_by_role_and_label(egui::Role::TextInput, "Toe left")
            .click();
    };
    field(&screen);
    screen.run_steps(2);
    press(&mut screen, Modifiers::COMMAND, Key::A);
    press(&mut screen, Modifiers::NONE, Key::Delete);
    press(&mut screen, Modifiers::NONE, Key::Enter);
    assert_eq!(statics(&screen).toe_deg, [None, None]);
}

#[test]
fn a_short_spring_unit_is_a_low_frame() {
    let mut screen = set_up("good");
    turn_to(&mut screen, SetUpPage::Static);
    fill(&mut screen, "Spring unit left", "13");
    assert_eq!(statics(&screen).shock, [Some(13.0), None]);
    assert!(shows(&screen, "lower there than drawn"));
    fill(&mut screen, "Spring unit left", "30");
    assert!(!shows(&screen, "lower there than drawn"));
    fill(&mut screen, "Camber left", "-1.5");
    assert!(shows(&screen, "Left −0.50° against the build's −1.00°"));
}

#[test]
fn a_castor_sweep_is_kept() {
    let mut screen = set_up("good");
    turn_to(&mut screen, SetUpPage::Static);
    fill(&mut screen, "Camber, front outward", "0.55");
    fill(&mut screen, "Camber, front inward", "-2.6");
    assert_eq!(statics(&screen).castor_sweep, Some([15.0, 0.55, -2.6]));
    assert!(shows(&screen, "Castor 6.06°"));
}
