//! What if: sliders that change nothing until they are applied.

use egui::{Button, Grid, Label, RichText, Slider, Ui};
use trammel_analysis::{AxleStudy, TravelCurve};

use super::super::NotebookInput;
use crate::{
    number_field::name_node,
    request::Request,
    tune::{
        settings::shop_step,
        what_if::{Looked, Slide},
    },
    view::View,
    words::{decimal, length, signed},
};

pub(super) fn ui(
    ui: &mut Ui,
    input: &NotebookInput<'_>,
    axle: &AxleStudy,
    view: &mut View,
    requests: &mut Vec<Request>,
) {
    ui.spacing_mut().item_spacing.y = 4.0;
    sliders(ui, input, view);
    buttons(ui, view, requests);
    if let Some(looked) = input.tune.what_if() {
        outcome(ui, input, axle.curve(view.side), looked, view);
    }
    let along = view.tune.along;
    let text = format!(
        "Faint in the plot above: {} from {} {} to {} {}, the others as they stand. Static toe is set again in each. Nothing is written to the build before it is applied.",
        along.label().to_lowercase(),
        length(along.reach(), input.build.unit),
        along.ways()[1],
        length(along.reach(), input.build.unit),
        along.ways()[0],
    );
    ui.add(Label::new(RichText::new(text).small().color(input.tokens.ink_soft)).wrap());
}

fn sliders(ui: &mut Ui, input: &NotebookInput<'_>, view: &mut View) {
    let unit = input.build.unit;
    let step = shop_step(unit);
    Grid::new("what if")
        .num_columns(3)
        .spacing(egui::vec2(10.0, 4.0))
        .show(ui, |ui| {
            for slide in Slide::ALL {
                let chosen = view.tune.along == slide;
                let label = ui.selectable_label(chosen, slide.label());
                let help = format!(
                    "{} A click draws the family of curves along it.",
                    slide.meaning()
                );
                if label.on_hover_text(help).clicked() {
                    view.tune.along = slide;
                }
                let end = (slide.reach() / step).floor() * step;
                let value = slide.of(&mut view.tune.what_if);
                ui.spacing_mut().slider_width = 130.0;
                let slider = Slider::new(value, -end..=end)
                    .show_value(false)
                    .step_by(step);
                let response = ui.add(slider);
                name_node(ui, response.id, &format!("What if: {}", slide.label()));
                let value = *value;
                if response.changed() {
                    view.tune.along = slide;
                }
                let [more, less] = slide.ways();
                let word = if value < 0.0 { less } else { more };
                ui.label(if value.abs() < 0.5 * step {
                    "as built".to_owned()
                } else {
                    format!("{} {word}", length(value.abs(), unit))
                });
                ui.end_row();
            }
        });
}

fn buttons(ui: &mut Ui, view: &mut View, requests: &mut Vec<Request>) {
    let changed = !view.tune.what_if.is_nothing();
    ui.horizontal(|ui| {
        let help = "Writes what the sliders say into the build. One step; Undo takes it back.";
        let apply = ui.add_enabled(changed, Button::new("Apply"));
        if apply.on_hover_text(help).clicked() {
            requests.push(Request::ApplyWhatIf);
        }
        let help = "Puts every slider back to the build as it stands.";
        let back = ui.add_enabled(changed, Button::new("Back to the build"));
        if back.on_hover_text(help).clicked() {
            view.tune.what_if = trammel_analysis::WhatIf::default();
        }
    });
}

/// Scores as they stand and as they would be.
fn outcome(
    ui: &mut Ui,
    input: &NotebookInput<'_>,
    now: &TravelCurve,
    looked: &Looked,
    view: &View,
) {
    let tokens = input.tokens;
    let then = match &looked.now {
        Ok((_, curve)) => curve,
        Err(why) => {
            let text = format!("Not so: {why}.");
            ui.add(Label::new(RichText::new(text).color(tokens.danger)).wrap());
            return;
        }
    };
    if view.tune.what_if.is_nothing() {
        return;
    }
    let degrees = |rad: f64| decimal(rad.to_degrees(), 2);
    let text = format!(
        "largest toe change {}° → {}°   RMS {}° → {}°",
        degrees(now.score.largest),
        degrees(then.score.largest),
        degrees(now.score.rms),
        degrees(then.score.rms),
    );
    ui.label(text);
    let camber = |curve: &TravelCurve| {
        let design = curve.stations.iter().find(|s| s.pose.travel == 0.0)?;
        Some(design.measures.camber.to_degrees())
    };
    if let (Some(a), Some(b)) = (camber(now), camber(then)) {
        let text = format!("static camber {}° → {}°", signed(a, 2), signed(b, 2));
        ui.label(RichText::new(text).small().color(tokens.ink_soft));
    }
    let ends = [&then.droop_end, &then.bump_end].into_iter().flatten();
    for end in ends {
        let text = format!("It does not reach the whole travel: {end}.");
        ui.add(Label::new(RichText::new(text).small().color(tokens.caution)).wrap());
    }
}
