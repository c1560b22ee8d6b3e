//! The grips of a tab's outline on its page: dragged, given up, nudged.

use egui::{Key, Modifiers};
use egui_kittest::kittest::Queryable;
use trammel_build::TabOutline;

use super::{bracket, common, common::press, make, settle};

fn grip(screen: &common::Screen, name: &str) -> egui::Pos2 {
    screen
        .get_by_label(&format!("Grip: {name}"))
        .rect()
        .center()
}

/// Takes hold of a grip and moves it, without letting go.
fn pull(screen: &mut common::Screen, name: &str, by: egui::Vec2) -> egui::Pos2 {
    let from = grip(screen, name);
    common::pull(screen, from, by)
}

#[test]
fn the_outline_is_dragged_by_its_grips_as_one_step_with_its_minimums_in_sight() {
    let (mut screen, _) = make();
    let before = bracket(&screen);
    let steps = |s: &common::Screen| s.state().undo_name().map(str::to_owned);
    let none = steps(&screen);
    let to = pull(&mut screen, "edge distance", egui::vec2(0.0, 30.0));
    // It is live: the build has it while the hand still holds it, and the least edge is said on the page and in the notebook.
    let edge = bracket(&screen).edge.expect("dragged");
    assert!(edge < 0.7, "{edge}");
    let on_step = edge * 32.0;
    assert!((on_step - on_step.round()).abs() < 1e-9, "{edge}");
    let pan = screen.state().view().make.pan;
    assert_eq!(pan, egui::Vec2::ZERO, "the page stays");
    screen.drop_at(to);
    screen.run_steps(2);
    assert_eq!(
        screen.state().undo_name(),
        Some("Drag edge distance of Front upper arm, front pivot")
    );
    press(&mut screen, Modifiers::COMMAND, Key::Z);
    assert_eq!(bracket(&screen), before);
    assert_eq!(steps(&screen), none);
    for (name, by) in [
        ("height of the hole", egui::vec2(0.0, -30.0)),
        ("width at the foot", egui::vec2(25.0, 0.0)),
        ("radius beside the hole", egui::vec2(-20.0, 0.0)),
    ] {
        settle(&mut screen);
        let to = pull(&mut screen, name, by);
        screen.drop_at(to);
        screen.run_steps(2);
    }
    let after = bracket(&screen);
    assert!(after.height > before.height && after.width > before.width);
    assert_eq!(after.form, Some(TabOutline::Tapered));
    assert!(after.edge.expect("tapered") < after.width / 2.0);
    // What can't be made is not taken: the end stays round the hole.
    settle(&mut screen);
    let to = pull(&mut screen, "edge distance", egui::vec2(0.0, 300.0));
    screen.drop_at(to);
    screen.run_steps(2);
    let left = bracket(&screen);
    assert!(left.edge.expect("some") * 2.0 > left.hole.expect("typed"));
}

#[test]
fn escape_gives_a_drag_of_the_outline_up_and_arrows_nudge_it() {
    let (mut screen, _) = make();
    let before = screen.state().build().clone();
    let to = pull(&mut screen, "height of the hole", egui::vec2(0.0, -40.0));
    assert_ne!(screen.state().build(), &before);
    press(&mut screen, Modifiers::NONE, Key::Escape);
    screen.drop_at(to);
    screen.run_steps(2);
    assert_eq!(screen.state().build(), &before);
    screen.get_by_label("Grip: height of the hole").focus();
    screen.run_steps(2);
    press(&mut screen, Modifiers::NONE, Key::ArrowUp);
    assert_eq!(bracket(&screen).height, 1.125 + 1.0 / 32.0);
    press(&mut screen, Modifiers::SHIFT, Key::ArrowDown);
    assert_eq!(bracket(&screen).height, 1.125 + 3.0 / 128.0);
    press(&mut screen, Modifiers::NONE, Key::ArrowRight);
    assert_eq!(
        bracket(&screen).height,
        1.125 + 3.0 / 128.0,
        "it goes up and down only"
    );
}
