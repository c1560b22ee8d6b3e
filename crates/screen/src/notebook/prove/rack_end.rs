//! Threads and grades of the rack end side by side, for the load that is worst for it.

use egui::Ui;
use trammel_analysis::ThreadRow;
use trammel_build::{AxleName, Edit, RackEndSpec};

use super::{
    super::{
        NotebookInput,
        thread_table::{self, names, picked, wanted},
    },
    small,
};
use crate::{
    request::Request,
    view::View,
    words::{factor, length},
};

pub(super) fn ui(
    ui: &mut Ui,
    input: &NotebookInput<'_>,
    view: &mut View,
    requests: &mut Vec<Request>,
) {
    if view.axle == AxleName::Rear {
        small(
            ui,
            input.tokens,
            "The rear axle has no rack. Press X for the front axle.",
        );
        return;
    }
    let rows = input.prove.threads(view.side);
    let Some(first) = rows.first() else {
        small(
            ui,
            input.tokens,
            "Nothing to compare yet: this needs a rack, a spring unit that carries the wheel, and a thread and grade that are known.",
        );
        return;
    };
    worst(ui, input, first);
    thread_table::choices(ui, input, view);
    ui.add_space(2.0);
    chosen(ui, input, rows, view, requests);
    thread_table::ui(ui, input, rows, view);
}

fn worst(ui: &mut Ui, input: &NotebookInput<'_>, row: &ThreadRow) {
    let unit = input.build.unit;
    let mut text = format!(
        "The load that is worst for the rack end as it is: {}, at {} of wheel travel, rack {}. Wanted factor {}.",
        row.load_case,
        length(row.pose.travel, unit),
        length(row.pose.rack, unit),
        factor(wanted(input))
    );
    if !input.prove.is_current() {
        text.push_str(" These are figures of the build as it was.");
    }
    small(ui, input.tokens, text);
}

/// All figures of the thread that was clicked, and the step that takes it.
fn chosen(
    ui: &mut Ui,
    input: &NotebookInput<'_>,
    rows: &[ThreadRow],
    view: &View,
    requests: &mut Vec<Request>,
) {
    let Some(row) = picked(rows, view) else {
        return;
    };
    let (thread, grade) = names(row);
    ui.horizontal_wrapped(|ui| {
        thread_table::summary(ui, input, row);
        if row.own {
            small(ui, input.tokens, "What the build has.");
            return;
        }
        let help = "Thread and grade of the rack end in one step; Undo takes it back. Bore, engagement and jam nut stay as they are: look at them too.";
        if ui.button("Use it in the build").on_hover_text(help).clicked() {
            requests.push(Request::EditAs {
                name: format!("Make the rack end {thread}, {grade}"),
                edits: vec![Edit::SetRackEnd(RackEndSpec {
                    thread: Some(thread),
                    grade: Some(grade),
                    ..input.build.front.rack_end.clone()
                })],
            });
        }
    });
}
