//! The notebook's pages in the Prove stage.

mod checks;
mod forces;
mod load_case;
mod load_cases;
mod notes;
mod parts;
mod rack_end;
mod steering;

use egui::{RichText, ScrollArea, Ui};

use super::{NotebookInput, page_names::PageNames};
use crate::{
    prove::settings::ProvePage,
    request::Request,
    tokens::{Tokens, type_size},
    view::View,
};

pub(super) fn ui(
    ui: &mut Ui,
    input: &NotebookInput<'_>,
    view: &mut View,
    requests: &mut Vec<Request>,
) {
    page_switch(ui, input.tokens, view);
    ScrollArea::vertical()
        .id_salt(("prove page", view.prove.page))
        .auto_shrink(false)
        .show(ui, |ui| match view.prove.page {
            ProvePage::Checks => checks::ui(ui, input, view, requests),
            ProvePage::LoadCases => load_cases::ui(ui, input, view, requests),
            ProvePage::Forces => forces::ui(ui, input, view, requests),
            ProvePage::RackEnd => rack_end::ui(ui, input, view, requests),
            ProvePage::Parts => parts::ui(ui, input, view, requests),
        });
}

fn page_switch(ui: &mut Ui, tokens: &Tokens, view: &mut View) {
    let names = PageNames {
        pages: &ProvePage::ALL,
        open: view.prove.page,
        label: ProvePage::label,
        before: "Page: ",
        gap: 8.0,
    };
    if let Some(page) = names.ui(ui, tokens) {
        view.prove.page = page;
    }
}

/// A line of small, soft text.
fn small(ui: &mut Ui, tokens: &Tokens, text: impl Into<String>) {
    let text = RichText::new(text).small().color(tokens.ink_soft);
    ui.add(egui::Label::new(text).wrap());
}

/// A head over a group.
fn head(ui: &mut Ui, text: &str) {
    ui.add_space(5.0);
    ui.label(RichText::new(text).font(type_size::head()));
}
