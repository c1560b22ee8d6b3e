//! Pictures of every page to look at: `cargo test -p trammel-screen --test look -- --ignored`; they go to the temporary folder.

#![allow(clippy::expect_used, reason = "a test stops where it fails")]

mod common;

use egui::{Key, Modifiers, vec2};
use trammel_screen::{Start, drawing::Projection, set_up::settings::SetUpPage, view::Page};

fn keep(screen: &mut common::Screen, name: &str) {
    let picture = screen.render().expect("painted");
    picture
        .save(std::env::temp_dir().join(format!("trammel-{name}.png")))
        .expect("written");
}

#[test]
#[ignore = "makes pictures for the eye"]
fn pictures() {
    for demo in ["good", "lifted", "badly-placed-rack"] {
        for size in [
            vec2(1024.0, 700.0),
            vec2(1280.0, 800.0),
            vec2(1920.0, 1080.0),
        ] {
            for light in [false, true] {
                for page in Page::ALL {
                    let (mut screen, _) = common::bench(Start::NamedDemo(demo.into()));
                    screen.set_size(size);
                    screen.state_mut().set_light(light);
                    screen.state_mut().view_mut().page = page;
                    screen.state_mut().view_mut().travel = 40.0;
                    screen.run_steps(3);
                    let tone = if light { "light" } else { "dark" };
                    keep(
                        &mut screen,
                        &format!("{demo}-{}-{tone}-{}", size.x, page.label().to_lowercase()),
                    );
                }
            }
        }
    }
}

#[test]
#[ignore = "makes pictures for the eye"]
fn questions_and_states() {
    let fresh = || common::bench(Start::NamedDemo("lifted".into())).0;
    let mut screen = fresh();
    common::press(&mut screen, Modifiers::COMMAND, Key::O);
    keep(&mut screen, "open");
    let mut screen = fresh();
    common::press(&mut screen, Modifiers::NONE, Key::F1);
    keep(&mut screen, "keys");
    let mut screen = fresh();
    common::click_point(&mut screen, common::INNER, Projection::Front);
    common::press(&mut screen, Modifiers::NONE, Key::ArrowUp);
    common::press(&mut screen, Modifiers::COMMAND, Key::Q);
    keep(&mut screen, "unsaved");
    let mut screen = fresh();
    common::press(&mut screen, Modifiers::NONE, Key::I);
    common::press(&mut screen, Modifiers::NONE, Key::U);
    keep(&mut screen, "centres-mm");
    let mut screen = fresh();
    let headline = screen.state().results().cautions[0].headline.clone();
    common::click(&mut screen, &format!("danger: {headline}"));
    keep(&mut screen, "caution-open");
    let mut screen = fresh();
    common::press(&mut screen, Modifiers::NONE, Key::Num1);
    common::drag_from(
        &mut screen,
        common::INNER,
        Projection::Front,
        vec2(0.0, 30.0),
    );
    keep(&mut screen, "front-drag");
    let mut screen = fresh();
    common::press(&mut screen, Modifiers::NONE, Key::T);
    common::type_in(&mut screen, "Upper arm, front pivot, z, left", "thirteen");
    keep(&mut screen, "refused");
    let mut screen = fresh();
    common::press(&mut screen, Modifiers::NONE, Key::X);
    keep(&mut screen, "rear");
}

/// The measured demo, worked out.
fn set_up(size: egui::Vec2, light: bool) -> common::Screen {
    let (mut screen, _) = common::bench(Start::NamedDemo("measured".into()));
    screen.set_size(size);
    screen.state_mut().set_light(light);
    common::press(&mut screen, Modifiers::NONE, Key::F6);
    common::wait(&mut screen, |s| s.state().set_up().is_current());
    screen
}

#[test]
#[ignore = "makes pictures for the eye"]
fn set_up_pages() {
    for (size, light) in [
        (vec2(1280.0, 800.0), false),
        (vec2(1920.0, 1080.0), false),
        (vec2(1280.0, 800.0), true),
    ] {
        let mut screen = set_up(size, light);
        let tone = if light { "light" } else { "dark" };
        for page in SetUpPage::ALL {
            screen.state_mut().view_mut().set_up.page = page;
            screen.run_steps(4);
            let name = page.label().to_lowercase().replace(' ', "-");
            keep(&mut screen, &format!("set-up-{}-{tone}-{name}", size.x));
        }
        common::press(&mut screen, Modifiers::NONE, Key::U);
        for page in [
            SetUpPage::Readings,
            SetUpPage::NextMove,
            SetUpPage::TapeSurvey,
        ] {
            screen.state_mut().view_mut().set_up.page = page;
            screen.run_steps(200);
            let name = page.label().to_lowercase().replace(' ', "-");
            keep(&mut screen, &format!("set-up-{}-{tone}-{name}-mm", size.x));
        }
    }
}
