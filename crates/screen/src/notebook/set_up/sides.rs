//! The right side against the mirror image of the left one.

use egui::{RichText, Ui};
use trammel_analysis::{
    Study,
    surveyed::{LEAST_MOVED, TOE_STATIONS},
};
use trammel_build::{AxleModel, Side};
use trammel_setup::moved;
use trammel_tuning::Stations;

use super::{super::NotebookInput, head, moved_line, plain, soft};

pub(super) fn ui(ui: &mut Ui, input: &NotebookInput<'_>, study: &Study) {
    head(ui, "Left against right");
    soft(
        ui,
        input,
        "The right side less the mirror image of the left: forward, outboard, up; and what it alone makes of the right wheel's toe change.",
    );
    axle(ui, input, "Front", &study.front.model);
    if let Some(rear) = &study.rear {
        axle(ui, input, "Rear", &rear.model);
    }
}

fn axle(ui: &mut Ui, input: &NotebookInput<'_>, word: &str, model: &AxleModel) {
    // The right corner is told in the mirror, so that both can be laid on each other.
    let [left, right] = [Side::Left, Side::Right].map(|s| *model.linkage(s).corner());
    let range = model.travel;
    let Ok(stations) = Stations::even(range.droop, range.bump, TOE_STATIONS, vec![0.0]) else {
        return;
    };
    let apart = moved(&left, &right, &stations, LEAST_MOVED);
    if apart.is_empty() {
        return plain(
            ui,
            RichText::new(format!("{word}: both sides are mirror images.")).small(),
        );
    }
    for m in &apart {
        moved_line::show(ui, input.build.unit, &word.to_lowercase(), m);
    }
}
