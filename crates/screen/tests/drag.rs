//! Dragging a joint: everything follows in the same frame, and it is one step.

#![allow(clippy::expect_used, reason = "a test stops where it fails")]

mod common;

use common::{INNER, bench, demo, drag, drag_from, place, press};
use egui::{Key, Modifiers, vec2};
use trammel_screen::{Start, drawing::Projection};

fn largest(screen: &common::Screen) -> f64 {
    let study = screen.state().results().study.as_ref().expect("studied");
    study.front.left.score.largest
}

#[test]
fn a_drag_moves_the_joint_in_the_plane_of_the_view_and_the_curve_with_it() {
    let mut screen = demo();
    let (before, toe_before) = (place(&screen, INNER), largest(&screen));
    drag(&mut screen, INNER, Projection::Front, vec2(0.0, -30.0));
    let after = place(&screen, INNER);
    assert_eq!(
        (after[0], after[1]),
        (before[0], before[1]),
        "only the height moves"
    );
    assert!(
        after[2] > before[2] + 0.5,
        "up on the screen is up: {before:?} to {after:?}"
    );
    assert_eq!(
        (after[2] * 16.0).fract(),
        0.0,
        "snapped to sixteenths: {}",
        after[2]
    );
    assert!(
        largest(&screen) > toe_before + 0.2f64.to_radians(),
        "a higher inner joint spoils the curve"
    );
}

#[test]
fn the_curve_follows_before_the_button_is_let_go() {
    let mut screen = demo();
    let toe_before = largest(&screen);
    drag_from(&mut screen, INNER, Projection::Front, vec2(0.0, -30.0));
    assert!(largest(&screen) > toe_before, "results of the frame itself");
    let ghost = screen
        .state()
        .view()
        .ghost
        .as_ref()
        .expect("a ghost of the curve before the drag");
    assert_eq!(ghost.score.largest, toe_before);
}

#[test]
fn a_drag_is_one_undo_step_with_its_name() {
    let mut screen = demo();
    let before = screen.state().build().clone();
    drag(&mut screen, INNER, Projection::Front, vec2(20.0, -20.0));
    let moved = screen.state().build().clone();
    assert_ne!(moved, before);
    press(&mut screen, Modifiers::COMMAND, Key::Z);
    assert_eq!(screen.state().build(), &before);
    assert_eq!(
        screen.state().said(),
        Some("Taken back: Move rack and inner joint")
    );
    press(&mut screen, Modifiers::COMMAND | Modifiers::SHIFT, Key::Z);
    assert_eq!(screen.state().build(), &moved);
}

#[test]
fn escape_puts_the_joint_back_and_leaves_no_step() {
    let mut screen = demo();
    let before = screen.state().build().clone();
    let at = drag_from(&mut screen, INNER, Projection::Front, vec2(0.0, -40.0));
    press(&mut screen, Modifiers::NONE, Key::Escape);
    assert_eq!(screen.state().build(), &before);
    screen.hover_at(at + vec2(5.0, 5.0));
    screen.run_steps(2);
    screen.drop_at(at);
    screen.run_steps(2);
    assert_eq!(
        screen.state().build(),
        &before,
        "given up is given up until the button is let go"
    );
    assert!(!screen.state().has_unsaved_work());
}

#[test]
fn a_right_hand_joint_moves_its_left_twin() {
    let mut screen = demo();
    let right = trammel_build::PointRef {
        side: trammel_build::Side::Right,
        ..INNER
    };
    let before = place(&screen, INNER);
    drag(&mut screen, right, Projection::Front, vec2(-20.0, 0.0));
    let after = place(&screen, INNER);
    assert!(
        after[1] > before[1],
        "outward on the right is outward on the left: {before:?} {after:?}"
    );
    assert_eq!(place(&screen, right)[1], -after[1]);
}

#[test]
fn a_locked_point_stays() {
    let mut screen = demo();
    common::click_point(&mut screen, INNER, Projection::Front);
    press(&mut screen, Modifiers::NONE, Key::L);
    let before = place(&screen, INNER);
    drag(&mut screen, INNER, Projection::Front, vec2(10.0, -30.0));
    assert_eq!(place(&screen, INNER), before);
}

#[test]
fn a_joint_dragged_where_nothing_can_be_built_waits_and_says_why() {
    let (mut screen, _) = bench(Start::Demo);
    let outer = trammel_build::PointRef {
        point: trammel_build::PointName::TieRodOuter,
        ..INNER
    };
    let ball = trammel_build::PointRef {
        point: trammel_build::PointName::LowerBallJoint,
        ..INNER
    };
    // The outer joint onto the inner one: no rod is left.
    let (a, b) = (
        common::on_screen(&screen, outer, Projection::Front),
        common::on_screen(&screen, INNER, Projection::Front),
    );
    drag(&mut screen, outer, Projection::Front, b - a);
    drag(&mut screen, ball, Projection::Front, vec2(-150.0, 0.0));
    assert!(
        screen.state().results().study.is_some(),
        "whatever was dragged, a build that can be posed is left"
    );
}
