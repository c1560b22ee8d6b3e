//! What would mend something, each with its button where the build can express it.

use egui::{RichText, Ui};
use trammel_analysis::Remedy;

use super::NotebookInput;
use crate::request::Request;

/// Lists remedies. Those of an `old` proof can't be done: they would undo what was changed since.
pub(super) fn ui(
    ui: &mut Ui,
    input: &NotebookInput<'_>,
    remedies: &[Remedy],
    old: bool,
    requests: &mut Vec<Request>,
) {
    if old && !remedies.is_empty() {
        let text = "The build has changed; what would mend it is being worked out again.";
        ui.label(RichText::new(text).small().color(input.tokens.ink_soft));
    }
    for remedy in remedies {
        ui.horizontal_wrapped(|ui| {
            if let Some(edit) = &remedy.edit {
                let button = ui
                    .add_enabled(!old, egui::Button::new("Do it").small())
                    .on_hover_text("One step; Undo takes it back");
                let name = format!("Do it: {}", remedy.text);
                button.widget_info(|| egui::WidgetInfo::labeled(egui::Role::Button, !old, &name));
                if button.clicked() {
                    requests.push(Request::Edit(edit.clone()));
                }
            } else {
                ui.label("•");
            }
            ui.label(&remedy.text);
        });
    }
}
