//! The notebook's lower part in the Set up stage.

mod adjusters;
mod log;
mod method;
mod moved_line;
mod next_move;
mod parts;
mod readings;
mod sides;
mod static_page;
mod static_toe;
mod survey;
mod table;
mod traces;

pub(super) use traces::traces;

use egui::{RichText, ScrollArea, Ui};
use trammel_analysis::Study;
use trammel_build::AxleName;

use super::{NotebookInput, page_names::PageNames};
use crate::{
    number_field::name_node,
    request::Request,
    set_up::settings::SetUpPage,
    tokens::{Tokens, type_size},
    view::View,
};

pub(super) fn ui(
    ui: &mut Ui,
    input: &NotebookInput<'_>,
    study: &Study,
    view: &mut View,
    requests: &mut Vec<Request>,
) {
    legend(ui, input);
    page_switch(ui, input.tokens, view);
    if view.axle != AxleName::Front {
        soft(
            ui,
            input,
            "Setting up is for the steered front axle; choose it in the strip above.",
        );
        return;
    }
    ScrollArea::vertical()
        .id_salt(("set-up page", view.set_up.page))
        .auto_shrink(false)
        .show(ui, |ui| {
            ui.spacing_mut().item_spacing.y = 4.0;
            match view.set_up.page {
                SetUpPage::Readings => readings::ui(ui, input, study, view, requests),
                SetUpPage::NextMove => next_move::ui(ui, input, requests),
                SetUpPage::TapeSurvey => survey::ui(ui, input, study, view, requests),
                SetUpPage::Static => static_page::ui(ui, input, study, requests),
                SetUpPage::Log => log::ui(ui, input, requests),
                SetUpPage::Parts => parts::ui(ui, input, study, requests),
            }
        });
}

/// What the lines of the plot are.
fn legend(ui: &mut Ui, input: &NotebookInput<'_>) {
    let tokens = input.tokens;
    let read = input
        .set_up
        .measured()
        .is_some_and(|m| !m.points.is_empty());
    let known = matches!(input.set_up.next(), Some(Ok(_)));
    ui.horizontal(|ui| {
        ui.spacing_mut().item_spacing.x = 12.0;
        for (word, colour, shown) in [
            ("— as drawn", tokens.tie_rod, true),
            ("• read", tokens.ink, read),
            ("— most likely", tokens.lower_arm, known),
            ("‒ ‒ after the move", tokens.upper_arm, known),
        ] {
            if shown {
                ui.label(RichText::new(word).small().color(colour));
            }
        }
    });
}

fn page_switch(ui: &mut Ui, tokens: &Tokens, view: &mut View) {
    ui.add_space(2.0);
    let names = PageNames {
        pages: &SetUpPage::ALL,
        open: view.set_up.page,
        label: SetUpPage::label,
        before: "",
        gap: 5.0,
    };
    if let Some(page) = names.ui(ui, tokens) {
        view.set_up.page = page;
    }
}

/// A box for pasted lines, which keeps its height however many there are.
fn paste_box(ui: &mut Ui, name: &str, edit: egui::TextEdit<'_>) {
    ScrollArea::vertical()
        .id_salt(name)
        .max_height(PASTE_HEIGHT)
        .show(ui, |ui| {
            let response = ui.add(edit);
            name_node(ui, response.id, name);
        });
}

/// Height of a box for pasted lines, points.
const PASTE_HEIGHT: f32 = 96.0;

/// A line of second text that wraps.
fn soft(ui: &mut Ui, input: &NotebookInput<'_>, text: &str) {
    let text = RichText::new(text).small().color(input.tokens.ink_soft);
    ui.add(egui::Label::new(text).wrap());
}

/// A line of text that wraps.
fn plain(ui: &mut Ui, text: impl Into<RichText>) {
    ui.add(egui::Label::new(text.into()).wrap());
}

/// A line that asks for attention.
fn ask(ui: &mut Ui, input: &NotebookInput<'_>, text: &str) {
    plain(ui, RichText::new(text).color(input.tokens.caution));
}

/// A head.
fn head(ui: &mut Ui, text: &str) {
    ui.add_space(4.0);
    ui.label(RichText::new(text).font(type_size::head()));
}
