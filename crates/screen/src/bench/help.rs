//! The list of keys, and what this program is.

use egui::{Grid, RichText, Ui};

use super::dialogs::heading;
use crate::{action::Action, tokens::Tokens};

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
                    row("Arrow keys".into(), "Nudge the selected point in the view");
                    row("PageUp, PageDown".into(), "Nudge it across the view");
                    row("Shift".into(), "Fine steps when nudging or dragging");
                    row("Escape".into(), "Give a drag or a typed number up");
                    row("Wheel".into(), "Zoom the drawing");
                    row("Middle drag".into(), "Move the drawing");
                    row("Tab".into(), "Next control or point");
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
