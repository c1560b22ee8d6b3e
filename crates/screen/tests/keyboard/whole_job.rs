//! The job from the demo to the saved build, by keys alone: no pointer, no call into the screen.

use egui::{Event, Key, Modifiers};
use egui_kittest::kittest::{NodeT, Queryable};
use trammel_screen::{
    Start,
    drawing::{Projection, handle_name},
    host::{Pick, Picked},
    set_up::settings::SetUpPage,
    tune::settings::TunePage,
    view::Stage,
};

use crate::common::{INNER, Screen, TestHost, bench_on, pages::Turn, place, press, wait};

/// The name of the control that has the keyboard.
fn focused(screen: &Screen) -> Option<String> {
    (screen.root().children_recursive())
        .find(|n| n.accesskit_node().is_focused())
        .filter(|n| !n.accesskit_node().is_root())
        .map(|n| n.accesskit_node().label().unwrap_or_default())
}

/// Presses Tab until the control of this name has the keyboard.
fn tab_to(screen: &mut Screen, name: &str) {
    let mut passed = Vec::new();
    for _ in 0..400 {
        let on = focused(screen);
        if on.as_deref() == Some(name) {
            return;
        }
        passed.extend(on);
        press(screen, Modifiers::NONE, Key::Tab);
    }
    passed.dedup();
    panic!("“{name}” is not reached by Tab; passed were {passed:#?}");
}

fn enter(screen: &mut Screen, name: &str) {
    tab_to(screen, name);
    press(screen, Modifiers::NONE, Key::Enter);
    screen.run_steps(3);
}

fn write(screen: &mut Screen, text: &str) {
    screen.event(Event::Text(text.to_owned()));
    screen.step();
    press(screen, Modifiers::NONE, Key::Enter);
    screen.run_steps(2);
}

#[test]
fn the_whole_job_is_done_by_keys_alone() {
    let folder = tempfile::tempdir().expect("a temporary folder");
    let host = TestHost::default();
    let mut screen = bench_on(host.clone(), Start::Demo);

    // Select a point, nudge it, type a number.
    enter(&mut screen, &handle_name(INNER, Projection::Front));
    assert_eq!(screen.state().view().selected, Some(INNER));
    let before = place(&screen, INNER);
    press(&mut screen, Modifiers::NONE, Key::ArrowUp);
    assert_eq!(place(&screen, INNER)[2], before[2] + 1.0 / 16.0);
    tab_to(&mut screen, "Selected point, z");
    write(&mut screen, "9 3/8");
    let now = place(&screen, INNER);
    let step = screen.state().undo_name();
    assert_eq!(
        now[2],
        9.375,
        "{now:?}, {:?}, {step:?}",
        screen.state().said()
    );

    // Another stage, another page and back, a move of Tune.
    press(&mut screen, Modifiers::NONE, Key::F3);
    assert_eq!(screen.state().view().stage, Stage::Tune);
    enter(&mut screen, TunePage::BuildError.label());
    assert_eq!(screen.state().view().tune.page, TunePage::BuildError);
    enter(&mut screen, TunePage::Spot.label());
    wait(&mut screen, |s| s.query_by_label("Move it there").is_some());
    screen.run_steps(3);
    let before = place(&screen, INNER);
    enter(&mut screen, "Move it there");
    assert_ne!(place(&screen, INNER), before);

    // A caution is accepted with a reason.
    wait(&mut screen, |s| s.state().prove().is_current());
    screen.run_steps(2);
    let caution = screen.state().results().cautions[0].clone();
    let name = format!("{}: {}", caution.grade.word(), caution.headline);
    enter(&mut screen, &name);
    tab_to(&mut screen, "Reason for accepting");
    write(&mut screen, "looked at every season");
    assert_eq!(
        screen.state().build().accepted.len(),
        1,
        "{:?}",
        screen.state().said()
    );

    // Sheets are exported by the desktop's own dialog.
    press(&mut screen, Modifiers::NONE, Key::F5);
    wait(&mut screen, |s| s.state().make().is_current());
    screen.run_steps(3);
    enter(&mut screen, "Export…");
    enter(&mut screen, "Browse…");
    assert_eq!(host.0.borrow().asked, [Pick::SheetsFolder]);
    let sheets = folder.path().join("sheets");
    std::fs::create_dir(&sheets).expect("made");
    host.0.borrow_mut().answer = Some(Picked::Path(sheets.clone()));
    screen.run_steps(2);
    wait(&mut screen, |s| s.state().make().exporting().is_none());
    screen.run_steps(3);
    let written = std::fs::read_dir(&sheets).expect("read").count();
    assert!(written > 3, "{written} files; {:?}", screen.state().said());

    // Readings are typed.
    press(&mut screen, Modifiers::NONE, Key::F6);
    enter(&mut screen, SetUpPage::Readings.label());
    enter(&mut screen, "Start a session of readings");
    tab_to(&mut screen, "New toe");
    write(&mut screen, "0.1 in");
    let rows = screen.state().build().set_up.sessions[0].rows.len();
    assert_eq!(rows, 1, "{:?}", screen.state().said());

    // Saved.
    press(&mut screen, Modifiers::COMMAND, Key::S);
    let path = folder.path().join("mine.ron");
    press(&mut screen, Modifiers::COMMAND, Key::A);
    write(&mut screen, &path.display().to_string());
    let text = std::fs::read_to_string(&path).expect("saved");
    assert_eq!(
        trammel_persistence::read(&text).as_ref(),
        Ok(screen.state().build())
    );
    assert!(!screen.state().has_unsaved_work());
}

/// Every control that can have the keyboard gets it by Tab, is in sight then, and looks different with it; and Tab leads on from each.
#[test]
fn tab_leads_round_every_page_and_shows_where_it_is() {
    let mut faults = Vec::new();
    let mut screen = bench_on(TestHost::default(), Start::NamedDemo("measured".into()));
    for turn in Turn::all() {
        turn.to(screen.state_mut());
        screen.run_steps(4);
        screen.ctx.memory_mut(egui::Memory::stop_text_input);
        round(&mut screen, &format!("{turn:?}"), &mut faults);
    }
    assert!(
        faults.is_empty(),
        "{} faults\n{}",
        faults.len(),
        faults.join("\n")
    );
}

fn round(screen: &mut Screen, place: &str, faults: &mut Vec<String>) {
    let mut passed = Vec::new();
    for _ in 0..600 {
        press(screen, Modifiers::NONE, Key::Tab);
        let Some(id) = screen.ctx.memory(egui::Memory::focused) else {
            continue;
        };
        if passed.first() == Some(&id) {
            break;
        }
        if passed.contains(&id) {
            faults.push(format!(
                "{place}: Tab comes back to “{}” before the round is done",
                focused(screen).unwrap_or_default()
            ));
            break;
        }
        passed.push(id);
        let name = focused(screen).unwrap_or_default();
        // A page that scrolls needs a frame to ask and one to move.
        screen.run_steps(2);
        let in_sight = screen
            .ctx
            .read_response(id)
            .is_some_and(|r| r.interact_rect.area() > 0.7 * r.rect.area().min(1600.0));
        if !in_sight {
            faults.push(format!("{place}: “{name}” has the keyboard out of sight"));
        }
    }
    // What can have the keyboard by its own account.
    let able = (screen.root().children_recursive())
        .filter(|n| {
            let node = n.accesskit_node();
            !node.is_disabled() && node.data().supports_action(egui::accesskit::Action::Focus)
        })
        .count();
    if passed.len() + 2 < able {
        faults.push(format!(
            "{place}: Tab passes {} of {able} controls",
            passed.len()
        ));
    }
}

/// The ring about the control that Tab has led to is painted in the accent.
#[test]
fn the_focus_is_ringed_wherever_it_is() {
    let mut screen = bench_on(TestHost::default(), Start::NamedDemo("lifted".into()));
    let accent = trammel_screen::tokens::Tokens::dark().accent;
    let rings = |screen: &Screen| {
        (screen.output().shapes.iter())
            .filter(|s| matches!(&s.shape, egui::Shape::Rect(r) if r.stroke.color == accent && r.fill == egui::Color32::TRANSPARENT))
            .count()
    };
    let before = rings(&screen);
    for _ in 0..60 {
        press(&mut screen, Modifiers::NONE, Key::Tab);
        if focused(&screen).is_some() {
            assert!(
                rings(&screen) > before,
                "{:?} has no ring",
                focused(&screen)
            );
        }
    }
}
