//! What the steering asks of the driver, in large figures.

use egui::{Align, Label, Layout, RichText, Sense, Ui};
use trammel_analysis::SteeringFigures;

use super::{super::NotebookInput, head};
use crate::{
    terms::{self, Told},
    tokens::type_size,
    words::{decimal, force_unit, moment_unit},
};

pub(super) fn ui(ui: &mut Ui, input: &NotebookInput<'_>, figures: &SteeringFigures) {
    let (per_newton, force) = force_unit(input.build.unit);
    let (per_newton_mm, moment) = moment_unit(input.build.unit);
    let hand = |n: Option<f64>| n.map(|n| format!("{} {force}", decimal(n * per_newton, 0)));
    let torque = |t: Option<f64>| {
        t.map_or_else(String::new, |t| {
            format!("{} {moment} at the pinion.", decimal(t * per_newton_mm, 1))
        })
    };
    let angle = figures
        .over_centre
        .map(|a| format!("{}°", decimal(a.to_degrees(), 0)));
    let shown = [
        (
            Some(decimal(figures.turns, 1)),
            "turns",
            terms::LOCK_TO_LOCK,
            String::new(),
        ),
        (
            hand(figures.parked_hand_force),
            "parked, at the rim",
            terms::HAND_FORCE,
            torque(figures.parked_torque),
        ),
        (
            hand(figures.kick_back),
            "kick-back",
            terms::KICK_BACK,
            torque(figures.kick_back_torque),
        ),
        (
            angle,
            "before over centre",
            terms::OVER_CENTRE,
            String::new(),
        ),
    ];
    head(ui, "Steering");
    ui.columns(shown.len(), |columns| {
        for (column, (value, name, term, first)) in columns.iter_mut().zip(shown) {
            let value = value.unwrap_or_else(|| "—".to_owned());
            let value = RichText::new(value).font(type_size::head());
            let name = RichText::new(name).small().color(input.tokens.ink_soft);
            // Columns spread the letters of a line that wraps; these stand as they are.
            column.with_layout(Layout::top_down(Align::Min), |ui| {
                ui.spacing_mut().item_spacing.y = 0.0;
                let label = Label::new(value).sense(Sense::focusable_noninteractive());
                ui.add(label).told_with(term, &first);
                ui.label(name).told_with(term, &first);
            });
        }
    });
}
