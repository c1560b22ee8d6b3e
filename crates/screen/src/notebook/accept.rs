//! Accepting a caution: only with a written reason, which is kept in the build, and taken back at will.

use egui::{RichText, TextEdit, Ui};
use trammel_build::{AcceptedCaution, Edit, PartsEdit};

use super::NotebookInput;
use crate::{number_field::name_node, request::Request};

/// A caution that may be accepted.
pub(super) struct Proposal<'a> {
    /// What an acceptance goes by.
    pub key: &'a str,
    /// Its figure now.
    pub figure: Option<f64>,
    /// The acceptance, where there is one.
    pub accepted: Option<&'a AcceptedCaution>,
}

/// The reason of an accepted caution, in its line.
pub(super) fn shown(
    ui: &mut Ui,
    input: &NotebookInput<'_>,
    accepted: &AcceptedCaution,
    worse: bool,
) {
    let text = format!("Accepted: {}", accepted.reason);
    ui.add(egui::Label::new(RichText::new(text).small().color(input.tokens.ink)).wrap());
    if worse {
        let text = "It has become worse since it was accepted.";
        let text = RichText::new(text).small().color(input.tokens.danger);
        ui.add(egui::Label::new(text).wrap());
    }
}

/// The field for the reason and the buttons.
pub(super) fn ui(
    ui: &mut Ui,
    input: &NotebookInput<'_>,
    proposal: &Proposal<'_>,
    requests: &mut Vec<Request>,
) {
    let kept = ui.scope_id().with(("reason", proposal.key));
    let before = proposal.accepted.map_or("", |a| a.reason.as_str());
    let mut reason = ui
        .data(|d| d.get_temp::<String>(kept))
        .unwrap_or_else(|| before.to_owned());
    let hint = "Why it may stay as it is";
    let field = TextEdit::singleline(&mut reason)
        .desired_width(f32::INFINITY)
        .hint_text(RichText::new(hint).color(input.tokens.ink_hint));
    let field = ui.add(field);
    name_node(ui, field.id, "Reason for accepting");
    let entered = field.lost_focus() && ui.input(|i| i.key_pressed(egui::Key::Enter));
    let written = !reason.trim().is_empty() && reason.trim() != before;
    ui.horizontal(|ui| {
        let word = if proposal.accepted.is_some() {
            "Change the reason"
        } else {
            "Accept with this reason"
        };
        let help = "It stays in the list with its reason, and is printed with it. One step; Undo takes it back.";
        let button = ui
            .add_enabled(written, egui::Button::new(word).small())
            .on_hover_text(help)
            .on_disabled_hover_text("Write a reason first.");
        if written && (button.clicked() || entered) {
            let accepted = AcceptedCaution {
                caution: proposal.key.to_owned(),
                reason: reason.trim().to_owned(),
                figure: proposal.figure,
            };
            requests.push(Request::Edit(Edit::Parts(PartsEdit::Accept(accepted))));
            reason.clear();
        }
        if proposal.accepted.is_some() && ui.small_button("No longer accept it").clicked() {
            let key = proposal.key.to_owned();
            requests.push(Request::Edit(Edit::Parts(PartsEdit::Withdraw(key))));
            reason.clear();
        }
    });
    // What is half written stays while other things are looked at.
    ui.data_mut(|d| {
        if reason.is_empty() || reason == before {
            d.remove::<String>(kept);
        } else {
            d.insert_temp(kept, reason);
        }
    });
}
