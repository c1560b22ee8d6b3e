//! The notebook at the right: curves, points, figures, and the cautions that never hide.

mod accept;
mod cautions;
mod curves;
mod figures;
mod form;
mod make;
mod page_names;
mod points;
mod prove;
mod remedies;
mod scores;
mod set_up;
mod steady;
mod thread_table;
mod toe;
mod tune;

pub(crate) use points::member_colour;

use egui::{Panel, ScrollArea, Ui};
use trammel_analysis::Study;
use trammel_build::Build;

use page_names::PageNames;

use crate::{
    prove::Prove,
    request::Request,
    results::Results,
    set_up::SetUpWork,
    tokens::{Tokens, type_size},
    tune::Tune,
    view::{Page, Stage, View},
};

/// What the notebook reads.
#[derive(Clone, Copy)]
pub struct NotebookInput<'a> {
    /// The build.
    pub build: &'a Build,
    /// What was worked out from it.
    pub results: &'a Results,
    /// What the Tune stage has worked out.
    pub tune: &'a Tune,
    /// What the Prove stage has worked out.
    pub prove: &'a Prove,
    /// What the Make stage has worked out.
    pub make: &'a crate::make::Make,
    /// What the Set up stage has worked out.
    pub set_up: &'a SetUpWork,
    /// Colours.
    pub tokens: &'a Tokens,
}

/// Above and below the cautions, points.
const CAUTION_MARGIN: i8 = 8;

/// Shows the notebook; what it asks for goes to `requests`.
pub fn ui(ui: &mut Ui, input: &NotebookInput<'_>, view: &mut View, requests: &mut Vec<Request>) {
    let height = ui.available_height();
    // With something to say the panel has room for two or three cautions; it is never higher than what it says.
    let most = if input.results.cautions.is_empty() {
        100.0
    } else if matches!(view.stage, Stage::Make | Stage::SetUp) {
        // Sheets with a bracket's figures, or a table of readings, need the rest.
        (0.18 * height).clamp(110.0, 220.0)
    } else if view.stage == Stage::Tune {
        (0.24 * height).clamp(140.0, 280.0)
    } else {
        (0.30 * height).clamp(150.0, 330.0)
    };
    let margins = f32::from(2 * CAUTION_MARGIN);
    let caution_height = cautions::last_height(ui.ctx()).map_or(most, |h| (h + margins).min(most));
    Panel::bottom("cautions")
        .exact_size(caution_height)
        .show_separator_line(false)
        .frame(
            egui::Frame::new()
                .fill(input.tokens.panel_deep)
                .inner_margin(egui::Margin::symmetric(14, CAUTION_MARGIN)),
        )
        .show(ui, |ui| cautions::ui(ui, input, view, requests));
    let margin = egui::Frame::new().inner_margin(egui::Margin {
        left: 14,
        right: 12,
        top: 8,
        bottom: 4,
    });
    margin.show(ui, |ui| {
        let Some(study) = &input.results.study else {
            problem(ui, input);
            return;
        };
        let plot_height = match view.stage {
            Stage::LayOut => (0.25 * height).clamp(150.0, 300.0),
            Stage::SetUp => (0.21 * height).clamp(130.0, 280.0),
            Stage::Tune => (0.19 * height).clamp(120.0, 260.0),
            Stage::Prove => return prove::ui(ui, input, view, requests),
            Stage::Make => {
                make::ui(ui, input, view, requests);
                return;
            }
        };
        toe::ui(ui, input, study, view, requests, plot_height);
        if view.stage == Stage::Tune {
            tune::ui(ui, input, study, view, requests);
            return;
        }
        if view.stage == Stage::SetUp {
            set_up::ui(ui, input, study, view, requests);
            return;
        }
        page_switch(ui, input.tokens, view);
        ScrollArea::vertical()
            .id_salt(("page", view.page))
            .auto_shrink(false)
            .show(ui, |ui| {
                page(ui, input, study, view, requests);
            });
    });
}

fn page(
    ui: &mut Ui,
    input: &NotebookInput<'_>,
    study: &Study,
    view: &mut View,
    requests: &mut Vec<Request>,
) {
    match view.page {
        Page::Curves => curves::ui(ui, input, study, view, requests),
        Page::Points => points::ui(ui, input, view, requests),
        Page::Figures => figures::ui(ui, input, study, view, requests),
    }
}

fn problem(ui: &mut Ui, input: &NotebookInput<'_>) {
    ui.label(egui::RichText::new("This build can't be posed").font(type_size::head()));
    if let Some(fault) = &input.results.fault {
        ui.label(egui::RichText::new(fault).color(input.tokens.danger));
    }
    ui.label("Undo brings the last build back that could.");
}

fn page_switch(ui: &mut Ui, tokens: &Tokens, view: &mut View) {
    ui.add_space(2.0);
    let names = PageNames {
        pages: &Page::ALL,
        open: view.page,
        label: Page::label,
        before: "",
        gap: 8.0,
    };
    if let Some(page) = names.ui(ui, tokens) {
        view.page = page;
    }
}
