//! The whole job without a mouse.

#![allow(
    clippy::expect_used,
    clippy::panic,
    reason = "a test stops where it fails"
)]

mod common;
#[path = "keyboard/whole_job.rs"]
mod whole_job;

use common::{INNER, click, click_point, demo, place, press, type_in};
use egui::{Key, Modifiers};
use egui_kittest::kittest::Queryable;
use trammel_build::LengthUnit;
use trammel_screen::{
    drawing::{Projection, handle_name},
    view::Page,
};

#[test]
fn arrow_keys_nudge_by_a_sixteenth_and_with_shift_by_a_sixty_fourth() {
    let mut screen = demo();
    click_point(&mut screen, INNER, Projection::Front);
    let before = place(&screen, INNER);
    press(&mut screen, Modifiers::NONE, Key::ArrowUp);
    assert_eq!(place(&screen, INNER)[2], before[2] + 1.0 / 16.0);
    press(&mut screen, Modifiers::SHIFT, Key::ArrowRight);
    assert_eq!(place(&screen, INNER)[1], before[1] + 1.0 / 64.0);
    press(&mut screen, Modifiers::NONE, Key::PageUp);
    assert_eq!(place(&screen, INNER)[0], before[0] + 1.0 / 16.0);
}

#[test]
fn a_point_can_be_reached_and_chosen_by_keyboard() {
    let mut screen = demo();
    screen
        .get_by_label(&handle_name(INNER, Projection::Front))
        .focus();
    screen.run_steps(2);
    press(&mut screen, Modifiers::NONE, Key::Enter);
    assert_eq!(screen.state().view().selected, Some(INNER));
    let before = place(&screen, INNER);
    press(&mut screen, Modifiers::NONE, Key::ArrowUp);
    assert_eq!(place(&screen, INNER)[2], before[2] + 1.0 / 16.0);
}

#[test]
fn a_coordinate_is_typed_as_it_is_read_from_the_tape() {
    let mut screen = demo();
    press(&mut screen, Modifiers::NONE, Key::T);
    assert_eq!(screen.state().view().page, Page::Points);
    type_in(
        &mut screen,
        "Upper arm, front pivot, z, left",
        "1' 1 1/16\"",
    );
    let point = trammel_build::PointRef {
        point: trammel_build::PointName::UpperFrontPivot,
        ..INNER
    };
    assert_eq!(place(&screen, point)[2], 13.0 + 1.0 / 16.0);
    type_in(&mut screen, "Upper arm, front pivot, z, left", "330.2 mm");
    assert_eq!(place(&screen, point)[2], 13.0);
}

#[test]
fn what_can_not_be_read_is_said_and_the_old_value_stands() {
    let mut screen = demo();
    press(&mut screen, Modifiers::NONE, Key::T);
    let before = screen.state().build().clone();
    type_in(&mut screen, "Upper arm, front pivot, z, left", "thirteen");
    assert_eq!(screen.state().build(), &before);
    let said = screen.state().said().expect("something is said").to_owned();
    assert!(
        said.contains("thirteen") && said.contains("stays at"),
        "{said}"
    );
}

#[test]
fn the_unit_is_switched_on_purpose_and_back_by_undo() {
    let mut screen = demo();
    let before = screen.state().build().clone();
    click(&mut screen, "inch");
    let converted = screen.state().build().clone();
    assert_eq!(converted.unit, LengthUnit::Millimetre);
    let (inch, mm) = (
        before.front.tie_rod.inner[2],
        converted.front.tie_rod.inner[2],
    );
    assert!((inch * 25.4 - mm).abs() < 1e-6, "{inch} in is {mm} mm");
    assert!(
        screen
            .state()
            .said()
            .is_some_and(|s| s.contains("millimetres")),
        "it says so"
    );
    press(&mut screen, Modifiers::COMMAND, Key::Z);
    assert_eq!(screen.state().build(), &before);
}

#[test]
fn shortcuts_do_nothing_while_a_field_is_typed_in() {
    let mut screen = demo();
    press(&mut screen, Modifiers::NONE, Key::T);
    let before = screen.state().build().clone();
    screen
        .get_by_label("Upper arm, front pivot, x, left")
        .click();
    screen.run_steps(2);
    press(&mut screen, Modifiers::NONE, Key::U);
    press(&mut screen, Modifiers::NONE, Key::L);
    press(&mut screen, Modifiers::NONE, Key::Escape);
    assert_eq!(screen.state().build(), &before);
}

#[test]
fn every_action_with_a_key_stands_in_the_list_of_keys() {
    let mut screen = demo();
    press(&mut screen, Modifiers::NONE, Key::F1);
    for action in trammel_screen::action::Action::ALL {
        if action.shortcut().is_some() {
            assert!(
                screen.query_all_by_label(action.label()).next().is_some(),
                "{}",
                action.label()
            );
        }
    }
}

/// Tab used to select every point that it passed, so the numbers of the selected one could not be reached.
#[test]
fn tab_past_a_point_leaves_the_selected_one_and_an_arrow_key_takes_the_reached_one() {
    let mut screen = demo();
    click_point(&mut screen, INNER, Projection::Front);
    press(&mut screen, Modifiers::NONE, Key::Tab);
    assert_eq!(screen.state().view().selected, Some(INNER));
    let upper = trammel_build::PointRef {
        point: trammel_build::PointName::UpperBallJoint,
        ..INNER
    };
    screen
        .get_by_label(&handle_name(upper, Projection::Front))
        .focus();
    screen.run_steps(2);
    assert_eq!(screen.state().view().selected, Some(INNER));
    let (inner, before) = (place(&screen, INNER), place(&screen, upper));
    press(&mut screen, Modifiers::NONE, Key::ArrowUp);
    assert_eq!(screen.state().view().selected, Some(upper));
    assert_eq!(place(&screen, INNER), inner);
    assert_eq!(place(&screen, upper)[2], before[2] + 1.0 / 16.0);
}
