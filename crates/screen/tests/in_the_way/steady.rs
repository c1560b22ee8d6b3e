//! Controls stay where they are while something is worked out: nothing moves away from under a hand.

use std::collections::BTreeMap;

use super::*;

/// Where each button of the page is, by its name.
fn buttons(screen: &Screen) -> BTreeMap<String, f32> {
    let mut all = BTreeMap::new();
    for role in [egui::Role::Button, egui::Role::RadioButton] {
        for node in screen.query_all_by_role(role) {
            let name = node.accesskit_node().label().unwrap_or_default();
            // The notebook is at the right.
            if node.rect().left() > 850.0 {
                all.insert(name, node.rect().top());
            }
        }
    }
    all
}

fn is_settled(screen: &Screen) -> bool {
    let tune = screen.state().tune();
    match screen.state().view().tune.page {
        TunePage::InTheWay => tune.inside_is_current(),
        TunePage::RideHeight => tune.lift_is_current(),
        TunePage::WhatIf => tune.what_if_is_current(),
        TunePage::Spot => {
            tune.map_is_complete()
                && (screen.query_by_label("The best spot is being looked for.")).is_none()
        }
        TunePage::BuildError | TunePage::Automatic => true,
    }
}

fn settle(screen: &mut Screen) {
    wait(screen, is_settled);
    // What has no end to wait for comes in meanwhile.
    for _ in 0..10 {
        std::thread::sleep(std::time::Duration::from_millis(10));
        screen.step();
    }
}

fn at_one_place(screen: &mut Screen, page: TunePage, change: impl FnOnce(&mut Screen)) {
    settle(screen);
    change(screen);
    if page == TunePage::InTheWay {
        assert!(!is_settled(screen), "nothing is worked out anew");
    }
    let first = buttons(screen);
    settle(screen);
    let last = buttons(screen);
    for (name, top) in &first {
        if let Some(then) = last.get(name) {
            assert!((top - then).abs() < 0.6, "{page:?}: {name} {top} {then}");
        }
    }
    let kept = first.keys().filter(|&n| last.contains_key(n)).count();
    assert!(kept > 5, "{page:?}: {kept}");
}

#[test]
fn no_control_moves_when_what_was_worked_out_comes_in() {
    for name in ["good", "badly-placed-rack"] {
        let (mut screen, _) = bench(Start::NamedDemo(name.into()));
        click(&mut screen, "Tune");
        for page in TunePage::ALL {
            screen.state_mut().view_mut().tune.page = page;
            at_one_place(&mut screen, page, |s| {
                s.key_press(Key::Num2);
                s.step();
            });
            at_one_place(&mut screen, page, |s| {
                s.key_press(Key::Num1);
                s.step();
            });
        }
    }
}
