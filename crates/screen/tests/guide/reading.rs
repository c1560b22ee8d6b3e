//! The glossary, the manual, and the list of keys.

use std::{collections::BTreeSet, fs, path::Path};

use egui::{Key, Modifiers};
use egui_kittest::kittest::Queryable;
use trammel_screen::{OTHER_KEYS, action::Action, terms, view::Stage};

use crate::common::{click, demo, press};

fn has(screen: &crate::common::Screen, label: &str) -> bool {
    screen.query_all_by_label(label).next().is_some()
}

fn root() -> &'static Path {
    Path::new(concat!(env!("CARGO_MANIFEST_DIR"), "/../.."))
}

#[test]
fn every_term_says_what_it_is_once() {
    let all = terms::all();
    let names: BTreeSet<String> = all.iter().map(|t| t.name.to_lowercase()).collect();
    assert_eq!(names.len(), all.len(), "two terms of one name");
    for term in &all {
        assert!(term.what.ends_with('.') && term.what.len() > 20, "{term:?}");
        assert!(
            term.better.is_empty() || term.better.ends_with('.'),
            "{term:?}"
        );
        assert!(!term.text().to_lowercase().contains("safe"), "{term:?}");
    }
    for word in [
        "toe",
        "camber",
        "castor",
        "kingpin inclination",
        "scrub radius",
        "trail",
        "bump",
        "droop",
        "roll centre",
        "motion ratio",
        "ackermann",
        "rack end",
        "jam nut",
        "proof factor",
    ] {
        assert!(!terms::found(word).is_empty(), "{word}");
    }
}

#[test]
fn the_glossary_is_searched_by_keyboard_alone() {
    let mut screen = demo();
    press(&mut screen, Modifiers::NONE, Key::G);
    screen.run_steps(3);
    screen
        .get_by_role_and_label(egui::Role::TextInput, "Search")
        .type_text("kingpin");
    screen.run_steps(3);
    assert!(has(&screen, terms::INCLINATION.name));
    assert!(!has(&screen, terms::JAM_NUT.name));
    press(&mut screen, Modifiers::NONE, Key::Escape);
    press(&mut screen, Modifiers::NONE, Key::Escape);
    assert!(!has(&screen, "Search"), "closed by Escape");
}

#[test]
fn the_manual_opens_at_the_stage_and_turns_to_the_others() {
    let mut screen = demo();
    screen.state_mut().go(Stage::Prove);
    click(&mut screen, "Help");
    screen.get_by_label_contains("Manual").click();
    screen.run_steps(3);
    assert!(has(&screen, "What it does not do"));
    assert!(
        screen
            .query_by_label_contains("It is no approval")
            .is_some()
    );
    click(&mut screen, "Manual: Set up");
    assert!(
        screen
            .query_by_label_contains("It can't see play")
            .is_some()
    );
}

#[test]
fn the_manual_s_glossary_holds_the_same_terms_and_its_links_lead_somewhere() {
    let folder = root().join("assets/manual");
    let path = folder.join("glossary.md");
    if std::env::var_os("UPDATE_SNAPSHOTS").is_some() {
        fs::write(&path, terms::glossary()).expect("written");
    }
    let kept = fs::read_to_string(&path).expect("the page");
    assert!(
        kept == terms::glossary(),
        "make it anew with UPDATE_SNAPSHOTS=1"
    );
    let anchors: BTreeSet<String> = terms::all().iter().map(terms::Term::anchor).collect();
    for entry in fs::read_dir(&folder).expect("the folder") {
        let text = fs::read_to_string(entry.expect("a file").path()).expect("read");
        for link in text.split("](").skip(1).filter_map(|l| l.split_once(')')) {
            match link.0.split_once('#') {
                Some((_, anchor)) => assert!(anchors.contains(anchor), "{anchor}"),
                None => assert!(folder.join(link.0).is_file(), "{}", link.0),
            }
        }
    }
}

/// The names of keys that stand in the sources of the screen, outside the lists themselves.
fn listened_to(folder: &Path, keys: &mut BTreeSet<String>) {
    for entry in fs::read_dir(folder).expect("the folder") {
        let path = entry.expect("an entry").path();
        if path.is_dir() {
            listened_to(&path, keys);
        } else if !path.ends_with("action.rs") && !path.ends_with("bench/help.rs") {
            let text = fs::read_to_string(&path).expect("read");
            let found = text.match_indices("Key::").filter_map(|(at, sign)| {
                let own = !text.get(..at)?.ends_with(char::is_alphanumeric);
                let name = text.get(at + sign.len()..)?;
                let end = name.find(|c: char| !c.is_alphanumeric())?;
                own.then(|| name.get(..end).map(str::to_owned))?
            });
            keys.extend(found);
        }
    }
}

#[test]
fn the_list_of_keys_has_every_key_that_the_screen_listens_to() {
    let mut keys = BTreeSet::new();
    listened_to(&root().join("crates/screen/src"), &mut keys);
    assert!(keys.len() > 8, "{keys:?}");
    let listed: BTreeSet<String> = OTHER_KEYS
        .iter()
        .flat_map(|(keys, ..)| *keys)
        .map(|k| format!("{k:?}"))
        .collect();
    assert_eq!(keys, listed);
    let mut screen = demo();
    press(&mut screen, Modifiers::NONE, Key::F1);
    for (_, keys, what) in OTHER_KEYS {
        assert!(has(&screen, keys), "{keys}");
        assert!(has(&screen, what), "{what}");
    }
    let shortcuts: BTreeSet<String> = Action::ALL
        .iter()
        .filter_map(|a| a.shortcut().map(|s| format!("{s:?}")))
        .collect();
    let with_key = Action::ALL.iter().filter(|a| a.shortcut().is_some());
    assert_eq!(
        shortcuts.len(),
        with_key.count(),
        "one key for two commands"
    );
}
