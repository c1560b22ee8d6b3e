//! What a screen reader is told: every control has a name of its own, and pictures say in words what they show.

use std::collections::BTreeMap;

use egui::{Key, Modifiers, Role, accesskit::Action};
use egui_kittest::kittest::{NodeT, Queryable};
use trammel_screen::{
    Start, action::Action as Ask, drawing::Projection, set_up::settings::SetUpPage, view::Stage,
};

use crate::common::{
    INNER, Screen, TestHost, bench, bench_on, click_point, find_and_click, odd, pages::Turn, press,
    type_in, wait,
};
use crate::none;

/// What is wrong with the names in the tree of this frame.
fn faults(screen: &Screen) -> Vec<String> {
    let mut faults = Vec::new();
    let mut seen: BTreeMap<(String, String), usize> = BTreeMap::new();
    for node in screen.root().children_recursive() {
        let node = node.accesskit_node();
        let data = node.data();
        let role = node.role();
        let works = data.supports_action(Action::Click) || data.supports_action(Action::Focus);
        let container = matches!(
            role,
            Role::Window
                | Role::GenericContainer
                | Role::ScrollView
                | Role::Unknown
                | Role::Pane
                | Role::Label
                | Role::ScrollBar
        );
        let picture = matches!(role, Role::Figure | Role::Image | Role::Canvas);
        if !picture && (!works || container) {
            continue;
        }
        let name = node.label().unwrap_or_default();
        if name.trim().is_empty() {
            faults.push(format!(
                "no name: {role:?}, value {:?}, at {:?}",
                node.value(),
                node.raw_bounds()
            ));
            continue;
        }
        if !name.chars().any(char::is_alphanumeric) {
            faults.push(format!("a name without a word: {role:?} “{name}”"));
        }
        if picture && node.value().is_none_or(|v| v.trim().is_empty()) {
            faults.push(format!("a picture that says nothing: {role:?} “{name}”"));
        }
        if !node.is_disabled() {
            *seen.entry((format!("{role:?}"), name)).or_default() += 1;
        }
    }
    for ((role, name), times) in seen {
        if times > 1 {
            faults.push(format!("{times} times the same: {role} “{name}”"));
        }
    }
    faults
}

/// Waits for the map and for the sheets.
fn settle(screen: &mut Screen, turn: Turn) {
    let awaited = match turn {
        Turn::Tune(_) => "Loupe of the toe map",
        Turn::Make(_) => "Sheet as it will print",
        _ => return,
    };
    wait(screen, |s| s.query_by_label(awaited).is_some());
    screen.run_steps(2);
}

fn hold(found: &mut Vec<String>, screen: &Screen, place: &str) {
    found.extend(faults(screen).into_iter().map(|f| format!("{place}: {f}")));
}

#[test]
fn everything_on_every_page_has_a_name() {
    let mut found = Vec::new();
    for (name, build) in [
        ("measured", odd::demo("measured")),
        ("empty", odd::empty()),
        ("long", odd::long_names()),
    ] {
        let mut screen = bench_on(TestHost::default(), Start::Build(Box::new(build)));
        for turn in Turn::all() {
            turn.to(screen.state_mut());
            screen.run_steps(4);
            settle(&mut screen, turn);
            hold(&mut found, &screen, &format!("{name}, {turn:?}"));
        }
    }
    none(found);
}

#[test]
fn everything_in_every_dialog_has_a_name() {
    let mut found = Vec::new();
    for ask in [Ask::Open, Ask::SaveAs, Ask::Shortcuts] {
        let mut screen = bench(Start::NamedDemo("good".into())).0;
        let keys = ask.shortcut().expect("it has a key");
        press(&mut screen, keys.modifiers, keys.logical_key);
        screen.run_steps(3);
        hold(&mut found, &screen, &format!("{ask:?}"));
    }
    for ask in [
        Ask::ImportPoints,
        Ask::ExportPoints,
        Ask::PastePoints,
        Ask::About,
    ] {
        let mut screen = bench(Start::NamedDemo("good".into())).0;
        let menu = if ask == Ask::About { "Help" } else { "File" };
        screen.get_by_role_and_label(Role::Button, menu).click();
        screen.run_steps(4);
        hold(&mut found, &screen, menu);
        screen.get_by_label(ask.label()).click();
        screen.run_steps(4);
        hold(&mut found, &screen, &format!("{ask:?}"));
    }
    let mut screen = bench(Start::NamedDemo("good".into())).0;
    press(&mut screen, Modifiers::NONE, Key::U);
    press(&mut screen, Modifiers::COMMAND, Key::Q);
    screen.run_steps(3);
    hold(&mut found, &screen, "unsaved work");
    let mut screen = bench(Start::NamedDemo("lifted".into())).0;
    screen.state_mut().go(Stage::Make);
    screen.run_steps(4);
    screen.get_by_label("Export…").click();
    screen.run_steps(4);
    hold(&mut found, &screen, "export");
    none(found);
}

#[test]
fn everything_that_is_asked_about_files_has_a_name() {
    let mut found = Vec::new();
    let folder = tempfile::tempdir().expect("a folder");
    let path = folder.path().join("shared.ron");
    let text = trammel_persistence::demos()[0].text;
    std::fs::write(&path, text).expect("written");
    let nudge = |screen: &mut Screen| {
        click_point(screen, INNER, Projection::Front);
        press(screen, Modifiers::NONE, Key::ArrowUp);
    };

    let mut screen = bench(Start::File(path.clone())).0;
    nudge(&mut screen);
    std::fs::write(&path, format!("{text}\n// edited elsewhere\n")).expect("written");
    press(&mut screen, Modifiers::COMMAND, Key::S);
    screen.get_by_label("Save over it");
    hold(&mut found, &screen, "changed on disk");

    let mut screen = bench(Start::Demo).0;
    press(&mut screen, Modifiers::COMMAND | Modifiers::SHIFT, Key::S);
    type_in(
        &mut screen,
        "File, with its folder:",
        &path.display().to_string(),
    );
    screen.get_by_label("There is a file of that name already");
    hold(&mut found, &screen, "there already");

    let host = TestHost::default();
    host.0.borrow_mut().folder = Some(folder.path().to_owned());
    let mut screen = bench_on(host.clone(), Start::Demo);
    nudge(&mut screen);
    screen.run_steps(320);
    drop(screen);
    let screen = bench_on(host, Start::Demo);
    screen.get_by_label("Bring back A build that was never saved");
    hold(&mut found, &screen, "brought back");

    for (page, button) in [
        (SetUpPage::Readings, "Cards to print…"),
        (SetUpPage::Readings, "Open a sheet…"),
        (SetUpPage::TapeSurvey, "Open a survey…"),
        (SetUpPage::Parts, "Measuring sheet…"),
    ] {
        let mut screen = bench(Start::NamedDemo("measured".into())).0;
        Turn::SetUp(page).to(screen.state_mut());
        screen.run_steps(4);
        find_and_click(&mut screen, button);
        screen.get_by_label("File, with its folder:");
        hold(&mut found, &screen, button);
    }
    none(found);
}

#[test]
fn what_is_unfolded_has_names_too() {
    let mut found = Vec::new();
    let mut screen = bench(Start::NamedDemo("lifted".into())).0;
    let caution = screen.state().results().cautions[0].clone();
    let name = format!("{}: {}", caution.grade.word(), caution.headline);
    screen.get_by_label(&name).click();
    screen.run_steps(4);
    hold(&mut found, &screen, "caution unfolded");
    none(found);
}
