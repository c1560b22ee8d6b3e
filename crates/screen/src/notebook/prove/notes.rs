//! What was not checked, what was taken, what no check knows, and the usual cautions.

use egui::{CollapsingHeader, RichText, Ui};
use trammel_analysis::{NoteKind, Proof, USUAL_CAUTIONS, not_in_it};

use super::{super::NotebookInput, head, small};

pub(super) fn ui(ui: &mut Ui, input: &NotebookInput<'_>, proof: &Proof) {
    ui.add_space(4.0);
    let notes = |kind| proof.notes.iter().filter(move |n| n.kind == kind);
    for (kind, title) in [
        (NoteKind::LeftOut, "Not checked"),
        (NoteKind::Taken, "Taken where the build says nothing"),
    ] {
        let count = notes(kind).count();
        if count == 0 {
            continue;
        }
        CollapsingHeader::new(format!("{title} ({count})"))
            .id_salt(title)
            .show(ui, |ui| {
                for note in notes(kind) {
                    small(ui, input.tokens, format!("{}: {}", note.about, note.text));
                }
            });
    }
    CollapsingHeader::new("Not in these figures").show(ui, |ui| {
        for line in not_in_it() {
            small(ui, input.tokens, *line);
        }
    });
    head(ui, "Before you trust steering with it");
    for line in USUAL_CAUTIONS {
        let text = RichText::new(format!("• {line}")).small();
        ui.add(egui::Label::new(text).wrap());
    }
}
