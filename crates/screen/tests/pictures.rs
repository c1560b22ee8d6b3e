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
