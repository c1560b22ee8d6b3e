//! The notebook's lower part in the Tune stage.

mod automatic;
mod build_error;
mod in_the_way;
mod made_by;
mod ride_height;
mod spot;
mod what_if;

use egui::{Button, RichText, ScrollArea, Ui};
use trammel_analysis::Study;

use super::{NotebookInput, page_names::PageNames};
use crate::{request::Request, tokens::Tokens, tune::settings::TunePage, view::View};

pub(super) fn ui(
    ui: &mut Ui,
    input: &NotebookInput<'_>,
    study: &Study,
    view: &mut View,
    requests: &mut Vec<Request>,
) {
    page_switch(ui, input.tokens, view);
    ScrollArea::vertical()
        .id_salt(("tune page", view.tune.page))
        .auto_shrink(false)
        .show(ui, |ui| match view.tune.page {
            TunePage::InTheWay => {
                if let Some(axle) = study.axle(view.axle) {
                    in_the_way::ui(ui, input, axle, view, requests);
                }
            }
            TunePage::BuildError => build_error::ui(ui, input, view, requests),
            TunePage::Automatic => {
                if let Some(axle) = study.axle(view.axle) {
                    automatic::ui(ui, input, axle, view, requests);
                }
            }
            TunePage::RideHeight => ride_height::ui(ui, input, view, requests),
            TunePage::WhatIf => {
                if let Some(axle) = study.axle(view.axle) {
                    what_if::ui(ui, input, axle, view, requests);
                }
            }
            TunePage::Spot => spot::ui(ui, input, study, view, requests),
        });
}

fn page_switch(ui: &mut Ui, tokens: &Tokens, view: &mut View) {
    ui.add_space(2.0);
    let names = PageNames {
        pages: &TunePage::ALL,
        open: view.tune.page,
        label: TunePage::label,
        before: "",
        gap: 10.0,
    };
    if let Some(page) = names.ui(ui, tokens) {
        view.tune.page = page;
    }
}

/// A row of choices, one of them chosen; the one that was clicked.
pub(super) fn choice<T: Copy + PartialEq>(
    ui: &mut Ui,
    tokens: &Tokens,
    word: &str,
    help: &str,
    options: &[(T, &str, &str)],
    chosen: T,
) -> Option<T> {
    let mut picked = None;
    ui.horizontal_wrapped(|ui| {
        ui.spacing_mut().item_spacing = egui::vec2(5.0, 3.0);
        ui.spacing_mut().button_padding = egui::vec2(8.0, 1.0);
        ui.spacing_mut().interact_size.y = 20.0;
        // One column for the words of rows below each other; a long word takes what it needs.
        let before = ui.cursor().left();
        ui.label(RichText::new(word).small().color(tokens.ink_soft))
            .on_hover_text(help);
        let taken = ui.cursor().left() - before;
        ui.add_space((58.0 - taken).max(0.0));
        for (value, label, meaning) in options {
            let on = *value == chosen;
            let text = RichText::new(*label).size(12.0);
            let button = if on {
                Button::new(text.color(tokens.on_accent)).fill(tokens.accent)
            } else {
                Button::new(text)
            };
            let response = ui.add(button.corner_radius(10.0)).on_hover_text(*meaning);
            let name = format!("{word}: {label}");
            response.widget_info(|| {
                egui::WidgetInfo::selected(egui::Role::RadioButton, true, on, &name)
            });
            if response.clicked() && !on {
                picked = Some(*value);
            }
        }
    });
    picked
}
