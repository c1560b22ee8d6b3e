//! The list of keys, the glossary, and what this program is.

use egui::{Grid, Key, Modifiers, RichText, TextEdit, Ui};

use super::dialogs::heading;
use crate::{
    action::Action,
    terms,
    tokens::{Tokens, type_size},
};

/// The keys that are no commands: which the screen listens to, as they are shown, and what they do.
pub const OTHER_KEYS: &[(&[Key], &str, &str)] = &[
    (
        &[
            Key::ArrowLeft,
            Key::ArrowRight,
            Key::ArrowUp,
            Key::ArrowDown,
        ],
        "Arrow keys",
        "Nudge what has the focus: point, keep-out, grip of a tab, look at the map",
    ),
    (
        &[Key::PageUp, Key::PageDown],
        "PageUp, PageDown",
        "Nudge it across the view; turn the pages of what is read",
    ),
    (&[], "Shift", "Fine steps when nudging or dragging"),
    (&[], "Alt + arrow keys", "Make a keep-out larger or smaller"),
    (
        &[Key::Delete],
        "Delete",
        "Remove the keep-out that has the focus",
    ),
    (
        &[Key::Enter],
        "Enter",
        "Take what was typed; on the map, put the joint there",
    ),
    (
        &[Key::Escape],
        "Escape",
        "Give a drag or a typed number up; close a list; end the tour",
    ),
    (
        &[Key::Plus, Key::Equals, Key::Minus],
        "+ and −",
        "On the map: look at more or less of it",
    ),
    (&[Key::Home], "Home", "On the map: back to the joint"),
    (
        &[Key::Space],
        "Space",
        "Press the button that has the focus; held with a drag, move the drawing",
    ),
    (&[], "Wheel", "Zoom the drawing"),
    (&[], "Middle drag", "Move the drawing"),
    (
        &[Key::Tab],
        "Tab",
        "Next control, point or figure; a figure then tells what it is",
    ),
];

/// Height of what is read: so much of the screen, points.
pub(super) fn reading_height(ui: &Ui) -> f32 {
    (ui.ctx().content_rect().height() - 230.0).clamp(220.0, 640.0)
}

/// What the glossary is searched for.
#[derive(Debug, Default)]
pub(super) struct Search {
    text: String,
    /// Shown before: the field took the focus then.
    shown: bool,
}

/// Every term, or those that are searched for; whether it was closed.
pub(super) fn glossary(ui: &mut Ui, search: &mut Search, tokens: &Tokens) -> bool {
    heading(ui, "Glossary");
    ui.horizontal(|ui| {
        let label = ui.label("Search");
        let edit = TextEdit::singleline(&mut search.text).desired_width(240.0);
        let field = ui.add(edit).labelled_by(label.id);
        if !std::mem::replace(&mut search.shown, true) {
            field.request_focus();
        }
    });
    ui.add_space(4.0);
    let found = terms::found(&search.text);
    let height = reading_height(ui);
    egui::ScrollArea::vertical()
        .id_salt("glossary")
        .min_scrolled_height(height)
        .max_height(height)
        .auto_shrink(false)
        .show(ui, |ui| {
            turn_pages(ui, height);
            for term in &found {
                ui.label(
                    RichText::new(term.name)
                        .font(type_size::head())
                        .color(tokens.accent),
                );
                ui.add(egui::Label::new(term.text()).wrap());
                ui.add_space(5.0);
            }
            if found.is_empty() {
                let text = format!("No term has “{}” in its name or text.", search.text.trim());
                ui.label(RichText::new(text).color(tokens.ink_soft));
            }
        });
    ui.add_space(6.0);
    ui.button("Close").clicked()
}

/// Scrolls what is read by the page keys.
pub(super) fn turn_pages(ui: &Ui, height: f32) {
    let pages = ui.input_mut(|i| {
        i.count_and_consume_key(Modifiers::NONE, Key::PageUp) as f32
            - i.count_and_consume_key(Modifiers::NONE, Key::PageDown) as f32
    });
    if pages != 0.0 {
        ui.scroll_with_delta(egui::vec2(0.0, pages * (height - 40.0)));
    }
}

/// The list of keys; whether it was closed.
pub(super) fn keys(ui: &mut Ui, tokens: &Tokens) -> bool {
    heading(ui, "Keys");
    egui::ScrollArea::vertical()
        .max_height(420.0)
        .show(ui, |ui| {
            Grid::new("keys")
                .num_columns(2)
                .spacing(egui::vec2(24.0, 3.0))
                .show(ui, |ui| {
                    let mut row = |key: String, what: &str| {
                        ui.label(RichText::new(key).color(tokens.accent));
                        ui.label(what);
                        ui.end_row();
                    };
                    for action in Action::ALL {
                        if let Some(s) = action.shortcut() {
                            row(s.format(&egui::ModifierNames::NAMES, false), action.label());
                        }
                    }
                    for (_, keys, what) in OTHER_KEYS {
                        row((*keys).to_owned(), what);
                    }
                });
        });
    ui.add_space(6.0);
    ui.button("Close").clicked()
}

/// What this is, and the cautions; whether it was closed.
pub(super) fn about(ui: &mut Ui) -> bool {
    heading(ui, &format!("Trammel {}", env!("CARGO_PKG_VERSION")));
    for text in [
        "Lays out suspension and steering of light off-road karts and buggies. The joints are taken as rigid and free of play, the tyre as a circle; bushes, flex and wear are left out.",
        "Steering that fails kills. The figures here are checks against stated limits, not an approval, and not every way to fail is checked.",
        "Don't weld hardened bolts, rod ends or rack bars. Double shear first. Positive steering stops. Locked fasteners. Replace bent parts, never straighten them.",
        "Local codes, series rules and a qualified inspector decide.",
    ] {
        ui.add(egui::Label::new(text).wrap());
        ui.add_space(4.0);
    }
    ui.button("Close").clicked()
}
