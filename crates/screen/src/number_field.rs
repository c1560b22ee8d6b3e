//! A field that shows a value as text and takes back what was typed; the caller reads it and decides.

use egui::{Align2, Id, Key, TextEdit, Ui};

use crate::tokens::Tokens;

/// What a field looks like.
#[derive(Clone, Debug)]
pub struct NumberField<'a> {
    /// Name for the screen reader; unique on the screen.
    pub name: &'a str,
    /// The value as it is shown while nobody types.
    pub shown: &'a str,
    /// What is taken when the field is empty, shown faintly.
    pub hint: &'a str,
    /// Width, points.
    pub width: f32,
    /// Whether it can be typed in.
    pub enabled: bool,
}

impl NumberField<'_> {
    /// Shows the field. `Some` with what was typed when the typing was finished with Enter, Tab or a click elsewhere and it differs from what was
    /// shown; Escape gives it up.
    pub fn ui(&self, ui: &mut Ui, tokens: &Tokens) -> Option<String> {
        let id = ui.scope_id().with(("field", self.name));
        let kept = id.with("typed");
        let typing = ui.memory(|m| m.has_focus(id));
        let mut text = typing
            .then(|| ui.data(|d| d.get_temp::<String>(kept)))
            .flatten()
            .unwrap_or_else(|| self.shown.to_owned());
        let edit = TextEdit::singleline(&mut text)
            .id(id)
            .desired_width(self.width)
            .align(Align2::RIGHT_CENTER)
            .hint_text(egui::RichText::new(self.hint).color(tokens.ink_hint))
            .margin(egui::Margin::symmetric(5, 2));
        let response = ui
            .add_enabled_ui(self.enabled, |ui| ui.add_sized([self.width, 22.0], edit))
            .inner;
        name_node(ui, response.id, self.name);
        if response.gained_focus() {
            select_all(ui, response.id, &text);
        }
        if response.lost_focus() {
            let typed = ui.data_mut(|d| {
                let typed = d.get_temp::<String>(kept);
                d.remove::<String>(kept);
                typed
            });
            let given_up = ui.input(|i| i.key_pressed(Key::Escape));
            // What was typed up to the last frame, or in this very frame.
            let last = if response.changed() {
                Some(text)
            } else {
                typed
            };
            return last.filter(|t| !given_up && t.trim() != self.shown.trim());
        }
        if response.has_focus() {
            ui.data_mut(|d| d.insert_temp(kept, text));
        }
        None
    }
}

/// Gives a widget the name that a screen reader says.
pub fn name_node(ui: &Ui, id: Id, name: &str) {
    ui.ctx()
        .accesskit_node_builder(id, |node| node.set_label(name));
}

/// Gives a picture the words that a screen reader says for what it shows.
pub fn tell_node(ui: &Ui, id: Id, words: &str) {
    ui.ctx()
        .accesskit_node_builder(id, |node| node.set_value(words));
}

fn select_all(ui: &Ui, id: Id, text: &str) {
    if let Some(mut state) = egui::TextEdit::load_state(ui.ctx(), id) {
        let end = egui::text::CCursor::new(text.chars().count());
        state
            .cursor
            .set_char_range(Some(egui::text::CCursorRange::two(
                egui::text::CCursor::default(),
                end,
            )));
        state.store(ui.ctx(), id);
    }
}
