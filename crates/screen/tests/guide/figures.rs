//! Every figure tells what it is.

use egui::Role;
use egui_kittest::kittest::{NodeT, Queryable};
use trammel_screen::{
    Start,
    prove::settings::ProvePage,
    set_up::settings::SetUpPage,
    tune::settings::TunePage,
    view::{Page, Stage},
};

use crate::common::{Screen, bench};

/// Labels that begin as a number does, without a help text.
fn untold(screen: &Screen) -> Vec<String> {
    let labels = screen.root().children_recursive().filter_map(|node| {
        let node = node.accesskit_node();
        if node.role() != Role::Label {
            return None;
        }
        let text = node.value().or_else(|| node.label())?;
        let told = node.data().description().is_some_and(|d| d.len() > 10);
        (is_figure(&text) && !told).then_some(text)
    });
    labels.collect()
}

/// A number with its unit, rather than a sentence or a count of a list.
fn is_figure(text: &str) -> bool {
    let digits = text.trim_start_matches(['−', '+', '±', '-']);
    digits.starts_with(|c: char| c.is_ascii_digit()) && text.chars().count() <= 16 && !is_name(text)
}

/// Names that begin with a number: threads, a field's range, a count of pages.
fn is_name(text: &str) -> bool {
    ["UNC", "UNF", "0 to 1", " of "]
        .iter()
        .any(|w| text.contains(w))
}

fn settled(stage: Stage, turn: impl FnOnce(&mut trammel_screen::view::View)) -> Screen {
    let (mut screen, _) = bench(Start::NamedDemo("measured".into()));
    screen.state_mut().go(stage);
    turn(screen.state_mut().view_mut());
    for _ in 0..200 {
        screen.step();
        std::thread::sleep(std::time::Duration::from_millis(5));
    }
    screen
}

#[test]
fn every_figure_of_every_page_has_a_help_text() {
    let mut failed = Vec::new();
    let mut walk = |name: String, screen: &Screen| {
        for text in untold(screen) {
            failed.push(format!("{name}: {text}"));
        }
    };
    for page in Page::ALL {
        walk(
            format!("{page:?}"),
            &settled(Stage::LayOut, |v| v.page = page),
        );
    }
    for page in TunePage::ALL {
        walk(
            format!("{page:?}"),
            &settled(Stage::Tune, |v| v.tune.page = page),
        );
    }
    for page in ProvePage::ALL {
        walk(
            format!("{page:?}"),
            &settled(Stage::Prove, |v| v.prove.page = page),
        );
    }
    walk("Make".to_owned(), &settled(Stage::Make, |_| ()));
    for page in SetUpPage::ALL {
        walk(
            format!("{page:?}"),
            &settled(Stage::SetUp, |v| v.set_up.page = page),
        );
    }
    assert!(
        failed.is_empty(),
        "{} without help:\n{}",
        failed.len(),
        failed.join("\n")
    );
}

#[test]
fn a_figure_tells_its_term_to_keyboard_and_screen_reader() {
    let (screen, _) = bench(Start::Demo);
    let castor = screen
        .root()
        .children_recursive()
        .filter_map(|n| n.accesskit_node().data().description().map(str::to_owned))
        .find(|d| d.contains(trammel_screen::terms::CASTOR.what));
    assert!(castor.is_some_and(|d| d.contains("degrees")));
    assert!(screen.query_all_by_label("Castor").next().is_some());
}
