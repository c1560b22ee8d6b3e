//! The tour points at the thing itself, goes on when it was done, ends at any moment, and is shown once.

use egui::{Key, Modifiers, vec2};
use egui_kittest::kittest::Queryable;
use trammel_screen::{Bench, Start, drawing::Projection, view::Stage};

use crate::common::{INNER, Screen, TestHost, bench_on, click, drag, press, wait};

fn step(screen: &Screen, number: usize) -> bool {
    let head = format!("Tour, step {number} of 3");
    screen.query_by_label(&head).is_some()
}

fn toured() -> Screen {
    let (mut screen, _) = crate::common::bench(Start::Demo);
    screen.state_mut().begin_tour();
    screen.run_steps(4);
    screen
}

fn first_start(folder: &std::path::Path) -> Screen {
    let host = TestHost::default();
    host.0.borrow_mut().folder = Some(folder.to_owned());
    let mut screen = bench_on(host, Start::Demo);
    Bench::offer_tour(screen.state_mut());
    screen.run_steps(3);
    screen
}

#[test]
fn it_is_offered_once_and_never_unasked() {
    let folder = tempfile::tempdir().expect("a folder");
    assert!(step(&first_start(folder.path()), 1));
    assert!(!first_start(folder.path()).state().is_touring());
    assert!(!crate::common::demo().state().is_touring());
    let (mut nowhere, _) = crate::common::bench(Start::Demo);
    nowhere.state_mut().offer_tour();
    assert!(!nowhere.state().is_touring(), "nowhere to remember it");
}

#[test]
fn it_goes_on_when_each_step_was_really_done() {
    let mut screen = toured();
    assert!(step(&screen, 1));
    drag(&mut screen, INNER, Projection::Front, vec2(0.0, -18.0));
    screen.run_steps(3);
    assert!(step(&screen, 2));
    click(&mut screen, "Tune");
    wait(&mut screen, |s| s.query_by_label("Move it there").is_some());
    assert!(step(&screen, 2), "looking is not doing");
    click(&mut screen, "Move it there");
    screen.run_steps(4);
    assert!(step(&screen, 3));
    click(&mut screen, "Finish");
    assert!(!screen.state().is_touring());
}

#[test]
fn next_and_skip_and_escape_work_at_every_step() {
    for steps in 0..3 {
        for escape in [true, false] {
            let mut screen = toured();
            for _ in 0..steps {
                click(&mut screen, "Next");
            }
            assert!(step(&screen, steps + 1));
            if escape {
                press(&mut screen, Modifiers::NONE, Key::Escape);
            } else {
                click(&mut screen, "Skip the tour");
            }
            assert!(!screen.state().is_touring(), "step {steps}");
        }
    }
}

#[test]
fn the_help_menu_has_it_again_on_the_demo() {
    let (mut screen, _) = crate::common::bench(Start::NamedDemo("lifted".into()));
    click(&mut screen, "Prove");
    click(&mut screen, "Help");
    click(&mut screen, "Guided tour");
    screen.run_steps(3);
    assert!(step(&screen, 1));
    assert_eq!(screen.state().view().stage, Stage::LayOut);
    assert!(
        !screen
            .state()
            .build()
            .title
            .to_lowercase()
            .contains("lifted")
    );
}

/// Writes what the tour and what is read look like, to be looked at: `cargo test --workspace --test guide -- --ignored`.
#[test]
#[ignore = "writes pictures for the eye"]
fn pictures() {
    let folder = std::env::temp_dir().join("trammel-guide");
    std::fs::create_dir_all(&folder).expect("a folder");
    for (w, h) in [(1024.0, 700.0), (1280.0, 800.0), (1920.0, 1080.0)] {
        for light in [false, true] {
            let mut screen = toured();
            screen.set_size(vec2(w, h));
            screen.state_mut().set_light(light);
            screen.run_steps(6);
            let save = |screen: &mut Screen, what: &str| {
                screen.run_steps(4);
                let look = if light { "light" } else { "dark" };
                let picture = screen.render().expect("a picture");
                let path = folder.join(format!("{what}-{w}-{look}.png"));
                picture.save(path).expect("written");
            };
            save(&mut screen, "tour1");
            click(&mut screen, "Next");
            save(&mut screen, "tour2a");
            drag(&mut screen, INNER, Projection::Front, vec2(0.0, -18.0));
            click(&mut screen, "Tune");
            wait(&mut screen, |s| s.query_by_label("Move it there").is_some());
            screen.run_steps(30);
            save(&mut screen, "tour2b");
            click(&mut screen, "Next");
            save(&mut screen, "tour3");
            press(&mut screen, Modifiers::NONE, Key::Escape);
            press(&mut screen, Modifiers::NONE, Key::G);
            save(&mut screen, "glossary");
            press(&mut screen, Modifiers::NONE, Key::Escape);
            press(&mut screen, Modifiers::SHIFT, Key::F1);
            save(&mut screen, "manual");
            press(&mut screen, Modifiers::NONE, Key::Escape);
            press(&mut screen, Modifiers::NONE, Key::F1);
            save(&mut screen, "keys");
        }
    }
}
