//! What the steering asks of the driver, in large figures.

use egui::{Align, Layout, RichText, Ui};
use trammel_analysis::SteeringFigures;

use super::{super::NotebookInput, head};
use crate::{
    tokens::type_size,
    words::{decimal, force_unit, moment_unit},
};

pub(super) fn ui(ui: &mut Ui, input: &NotebookInput<'_>, figures: &SteeringFigures) {
    let (per_newton, force) = force_unit(input.build.unit);
    let (per_newton_mm, moment) = moment_unit(input.build.unit);
    let hand = |n: Option<f64>| n.map(|n| format!("{} {force}", decimal(n * per_newton, 0)));
    let torque = |t: Option<f64>| {
        t.map_or_else(String::new, |t| {
            format!(" {} {moment} at the pinion.", decimal(t * per_newton_mm, 1))
        })
    };
    let angle = figures
        .over_centre
        .map(|a| format!("{}°", decimal(a.to_degrees(), 0)));
    let shown = [
        (
            Some(decimal(figures.turns, 1)),
            "turns",
            "Turns of the steering wheel from stop to stop.".to_owned(),
        ),
        (
            hand(figures.parked_hand_force),
            "parked, at the rim",
            format!(
                "Greatest force at the rim of the steering wheel to turn the wheels on the spot.{}",
                torque(figures.parked_torque)
            ),
        ),
        (
            hand(figures.kick_back),
            "kick-back",
            format!(
                "Greatest force with which one wheel tears at the rim of the steering wheel.{}",
                torque(figures.kick_back_torque)
            ),
        ),
        (
            angle,
            "before over centre",
            "Least angle between tie rod and steering arm over travel and lock.".to_owned(),
        ),
    ];
    head(ui, "Steering");
    ui.columns(shown.len(), |columns| {
        for (column, (value, name, meaning)) in columns.iter_mut().zip(shown) {
            let value = value.unwrap_or_else(|| "—".to_owned());
            let value = RichText::new(value).font(type_size::head());
            let name = RichText::new(name).small().color(input.tokens.ink_soft);
            // Columns spread the letters of a line that wraps; these stand as they are.
            column.with_layout(Layout::top_down(Align::Min), |ui| {
                ui.spacing_mut().item_spacing.y = 0.0;
                ui.label(value).on_hover_text(&meaning);
                ui.label(name).on_hover_text(&meaning);
            });
        }
    });
}
