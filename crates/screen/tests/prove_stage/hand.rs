//! Hands for the stage's pages, which may be longer than the screen.

use egui::{Key, Modifiers, Role};
use egui_kittest::kittest::{NodeT, Queryable};
use trammel_screen::{Start, prove::settings::ProvePage, view::Stage};

use crate::common::{Screen, bench, press, wait};
pub(crate) use crate::common::{fill, use_it};

/// The stage with a demo and a page.
pub(crate) fn prove(name: &str, page: ProvePage) -> Screen {
    let (mut screen, _) = bench(Start::NamedDemo(name.into()));
    screen.state_mut().go(Stage::Prove);
    screen.state_mut().view_mut().prove.page = page;
    screen.run_steps(3);
    screen
}

/// Steps until the proof is that of the build; a minute at most.
pub(crate) fn settle(screen: &mut Screen) {
    wait(screen, |s| s.state().prove().is_current());
    screen.run_steps(2);
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
