//! Hands for the stage's pages, which may be longer than the screen.

use egui::{Key, Modifiers, Role};
use egui_kittest::kittest::{NodeT, Queryable};
use trammel_screen::{Start, prove::settings::ProvePage, view::Stage};

use crate::common::{Screen, bench, press};

/// The stage with a demo and a page.
pub(crate) fn prove(name: &str, page: ProvePage) -> Screen {
    let (mut screen, _) = bench(Start::NamedDemo(name.into()));
    screen.state_mut().go(Stage::Prove);
    screen.state_mut().view_mut().prove.page = page;
    screen.run_steps(3);
    screen
}

/// Steps until the proof is that of the build; half a minute at most.
pub(crate) fn settle(screen: &mut Screen) {
    for _ in 0..3000 {
        screen.step();
        if screen.state().prove().is_current() {
            screen.run_steps(2);
            return;
        }
        std::thread::sleep(std::time::Duration::from_millis(10));
    }
    panic!("still not proved");
}

/// Clicks a control by its kind and name, wherever on its page it is.
pub(crate) fn use_it(screen: &mut Screen, role: Role, label: &str) {
    screen.get_by_role_and_label(role, label).scroll_to_me();
    screen.run_steps(30);
    screen.get_by_role_and_label(role, label).click();
    screen.run_steps(3);
}

/// Replaces what stands in a field and ends with Enter.
pub(crate) fn fill(screen: &mut Screen, name: &str, text: &str) {
    use_it(screen, Role::TextInput, name);
    press(screen, Modifiers::COMMAND, Key::A);
    if text.is_empty() {
        press(screen, Modifiers::NONE, Key::Backspace);
    } else {
        let field = screen.get_by_role_and_label(Role::TextInput, name);
        field.type_text(text);
        screen.step();
    }
    press(screen, Modifiers::NONE, Key::Enter);
}

/// Takes the last step back.
pub(crate) fn undo(screen: &mut Screen) {
    press(screen, Modifiers::COMMAND, Key::Z);
}

/// Names of all controls of a kind.
pub(crate) fn names(screen: &Screen, role: Role) -> Vec<String> {
    let nodes = screen.query_all_by_role(role);
    nodes.filter_map(|n| n.accesskit_node().label()).collect()
}
