//! Automatic tuning: what may move, what is wanted, the search, and the layouts it found.

mod figures;
mod layouts;
mod may_move;
mod trade_off;
mod wanted;

use egui::{ProgressBar, Ui};
use trammel_analysis::AxleStudy;
use trammel_build::Side;
use trammel_tuning::Emphasis;

use super::{super::NotebookInput, choice};
use crate::{
    request::Request,
    tune::auto::{SearchRun, Shown},
    view::View,
    words::decimal,
};

/// What every part of this page reads.
#[derive(Clone, Copy)]
struct Page<'a> {
    input: &'a NotebookInput<'a>,
    axle: &'a AxleStudy,
    side: Side,
}

pub(super) fn ui(
    ui: &mut Ui,
    input: &NotebookInput<'_>,
    axle: &AxleStudy,
    view: &mut View,
    requests: &mut Vec<Request>,
) {
    ui.spacing_mut().item_spacing.y = 3.0;
    let page = Page {
        input,
        axle,
        side: view.side,
    };
    let shown = input.tune.search().map(SearchRun::shown);
    controls(ui, shown.as_ref(), requests);
    if let Some(shown) = &shown {
        trade_off::ui(ui, page, shown, view);
        layouts::ui(ui, page, shown, view, requests);
    }
    may_move::ui(ui, page, view, requests);
    emphasis(ui, page, view);
    wanted::ui(ui, page, view, requests);
}

/// Start, stop and progress.
fn controls(ui: &mut Ui, shown: Option<&Shown>, requests: &mut Vec<Request>) {
    let running = shown.is_some_and(|s| !s.done);
    ui.horizontal(|ui| {
        let (word, help) = if running {
            ("Stop", "Stops the search; what it has found so far stays.")
        } else {
            (
                "Find good layouts",
                "Searches everything that may move at once, from many starts. The same settings give the same answer.",
            )
        };
        if ui.button(word).on_hover_text(help).clicked() {
            requests.push(Request::Search(!running));
        }
        if let Some(s) = shown {
            let text = format!("{} %", decimal(100.0 * s.part, 0));
            ui.add(
                ProgressBar::new(s.part as f32)
                    .desired_width(150.0)
                    .text(text),
            );
        }
    });
}

/// Which part of the travel counts most.
fn emphasis(ui: &mut Ui, page: Page<'_>, view: &mut View) {
    let options = [
        (
            Emphasis::Whole,
            "whole travel",
            "Every travel counts alike.",
        ),
        (
            Emphasis::Middle,
            "most in the middle",
            "The ride height counts most, the farther stop a tenth of it.",
        ),
    ];
    let help = "Which part of the travel counts most when toe change is made small.";
    let chosen = view.tune.auto.emphasis;
    if let Some(picked) = choice(ui, page.input.tokens, "Toe over", help, &options, chosen) {
        view.tune.auto.emphasis = picked;
    }
}
