//! The screen as pictures, painted without a display; they fail when anything moves. Accept a wanted change with `UPDATE_SNAPSHOTS=1`.

mod common;

use trammel_screen::{Start, view::Page};

#[test]
fn lay_out_dark_inch() {
    let (mut screen, _) = common::bench(Start::NamedDemo("lifted".into()));
    screen.state_mut().view_mut().travel = 40.0;
    screen.run_steps(3);
    screen.snapshot("lay_out_dark_inch");
}

#[test]
fn points_light_mm() {
    let (mut screen, _) = common::bench(Start::NamedDemo("badly-placed-rack".into()));
    screen.state_mut().set_light(true);
    screen.state_mut().view_mut().page = Page::Points;
    common::click(&mut screen, "inch");
    common::press(&mut screen, egui::Modifiers::NONE, egui::Key::Escape);
    screen.run_steps(500);
    // The proof of the converted build comes in when it is done.
    while !screen.state().prove().is_current() {
        std::thread::sleep(std::time::Duration::from_millis(10));
        screen.step();
    }
    screen.run_steps(2);
    screen.snapshot("points_light_mm");
}

/// The Tune stage with its map and clear area worked out, on the page for what is in the way.
fn tune(name: &str, light: bool) -> common::Screen {
    let (mut screen, _) = common::bench(Start::NamedDemo(name.into()));
    screen.state_mut().set_light(light);
    common::click(&mut screen, "Tune");
    common::click(&mut screen, "Room");
    for _ in 0..3000 {
        screen.step();
        if screen.state().tune().inside_is_current() && screen.state().tune().scatter_is_current() {
            break;
        }
        std::thread::sleep(std::time::Duration::from_millis(10));
    }
    screen.run_steps(3);
    screen
}

#[test]
fn tune_map_dark_inch() {
    let mut screen = tune("badly-placed-rack", false);
    screen.state_mut().view_mut().tune.keep_out = Some(0);
    screen.run_steps(3);
    screen.snapshot("tune_map_dark_inch");
}

#[test]
fn tune_map_light() {
    tune("lifted", true).snapshot("tune_map_light");
}
