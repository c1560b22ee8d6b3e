//! A new ride height: the study over a range of lifts, and the step that makes one.

use std::ops::RangeInclusive;

use egui::{Button, Grid, Label, RichText, Slider, Ui};
use trammel_analysis::{RideHeightRow, Stops, ThreadRow};
use trammel_build::AxleName;
use trammel_tuning::Reset;

use super::super::{NotebookInput, thread_table};
use crate::{
    number_field::name_node,
    plot::{Curve, Manner, Trace},
    request::Request,
    terms::Told,
    tune::{
        lift::{LEAST, LiftFigure, LiftStudy},
        settings::shop_step,
    },
    view::View,
    words::{self, decimal, length},
};

/// Figures over the lift, or the threads of the rack end at the lift looked at.
const BELOW: [(bool, &str, &str); 2] = [
    (
        false,
        "figures",
        "Each figure now and then, and over a range of lifts.",
    ),
    (
        true,
        "rack-end threads",
        "Threads and grades side by side for the rack end at this lift, under the load case that is worst for it there.",
    ),
];

pub(super) fn ui(
    ui: &mut Ui,
    input: &NotebookInput<'_>,
    view: &mut View,
    requests: &mut Vec<Request>,
) {
    ui.spacing_mut().item_spacing.y = 4.0;
    let soft = |text: &str| RichText::new(text).small().color(input.tokens.ink_soft);
    let Some(study) = input.tune.lift().shown() else {
        ui.label(soft("The heights are being worked out."));
        return;
    };
    if let Some(range) = range(&study.rows, input) {
        view.tune.raise.by = view.tune.raise.by.clamp(*range.start(), *range.end());
        slider(ui, input, range, view, requests);
    }
    shown_travel(ui, input, view, requests);
    choices(ui, input, view);
    if let Some(Err(why)) = &study.then {
        ui.add(
            Label::new(RichText::new(format!("Not so: {why}.")).color(input.tokens.danger)).wrap(),
        );
    }
    if let Some(verdict) = study.verdict(input.build) {
        ui.add(Label::new(verdict.in_words(input.build.unit)).wrap())
            .on_hover_text("Little is less than a third of the toe limit, multiplied is one and a half times and more (judgements, no source). The saying is common practice, no source. Where the stops stay, arms and rods reach the same places as before and little changes; where they move along, as with longer springs, the rods stand steeper.");
    }
    // Only the steered axle has a rack end whose threads could be compared.
    let steered = view.axle == AxleName::Front;
    if steered {
        let help = "What is shown below.";
        let below = view.tune.lift_threads;
        if let Some(picked) = super::choice(ui, input.tokens, "Look at", help, &BELOW, below) {
            view.tune.lift_threads = picked;
        }
    }
    if steered && view.tune.lift_threads {
        threads(ui, input, study, view);
    } else {
        figures(ui, input, study, view);
        plot(ui, input, study, view);
    }
    let text = format!(
        "The {} {} wheel. All axles go with the frame; static toe is set again by the tie rods.",
        view.side.word(),
        view.axle.word()
    );
    let help = "The study is of the axle and the side that are looked at.";
    ui.add(Label::new(soft(&text)).wrap()).on_hover_text(help);
}

/// Lifts that can be made, the ends in whole steps, so that the slider's steps are whole ones.
fn range(rows: &[RideHeightRow], input: &NotebookInput<'_>) -> Option<RangeInclusive<f64>> {
    let step = shop_step(input.build.unit);
    let (first, last) = (rows.first()?, rows.last()?);
    let (low, high) = (
        (first.by / step).ceil() * step,
        (last.by / step).floor() * step,
    );
    (low <= high).then_some(low..=high)
}

fn slider(
    ui: &mut Ui,
    input: &NotebookInput<'_>,
    range: RangeInclusive<f64>,
    view: &mut View,
    requests: &mut Vec<Request>,
) {
    let unit = input.build.unit;
    ui.horizontal(|ui| {
        let help = "How much higher the frame stands over the ground; the wheels stay down.";
        ui.label("Frame").on_hover_text(help);
        ui.spacing_mut().slider_width = 78.0;
        let by = &mut view.tune.raise.by;
        let slider = Slider::new(by, range).show_value(false).step_by(shop_step(unit));
        let response = ui.add(slider);
        name_node(ui, response.id, "Lift of the frame");
        let by = view.tune.raise.by;
        ui.label(way(by, input));
        let help = "Every point is put where it then stands over the ground, on all axles. One step; Undo takes it back.";
        let button = ui.add_enabled(by.abs() > LEAST, Button::new("Make it the ride height"));
        if button.on_hover_text(help).clicked() {
            requests.push(Request::RideHeight(view.tune.raise));
        }
    });
}

fn way(by: f64, input: &NotebookInput<'_>) -> String {
    let word = if by < 0.0 { "down" } else { "up" };
    format!("{word} {}", length(by.abs(), input.build.unit))
}

/// The button that makes the travel of the moved linkage the ride height.
fn shown_travel(ui: &mut Ui, input: &NotebookInput<'_>, view: &View, requests: &mut Vec<Request>) {
    let travel = view.travel;
    ui.horizontal_wrapped(|ui| {
        let help = "The wheels stand to the frame as the moved linkage shows them now, and the ground goes under them. The slider under the drawing moves the linkage. One step; Undo takes it back.";
        let button = Button::new("Set this travel as the new ride height");
        let response = ui.add_enabled(travel.abs() > LEAST, button);
        if response.on_hover_text(help).on_disabled_hover_text(help).clicked() {
            requests.push(Request::RideHeightAt {
                travel,
                how: view.tune.raise,
            });
        }
        let word = if travel < 0.0 { "droop" } else { "bump" };
        let shown = format!("{} {word}", length(travel.abs(), input.build.unit));
        ui.label(RichText::new(shown).small().color(input.tokens.ink_soft))
            .told(crate::terms::WHEEL_TRAVEL);
    });
}

fn choices(ui: &mut Ui, input: &NotebookInput<'_>, view: &mut View) {
    let raise = &mut view.tune.raise;
    let resets = [
        (
            Reset::ToeAndCamber,
            "set again",
            "Static camber is put back by the upper arm's adjuster: the upright leans as before.",
        ),
        (
            Reset::Toe,
            "as it comes",
            "Camber stays as the arms leave it at the new height.",
        ),
    ];
    let help = "What becomes of static camber. Static toe is set again by the tie rods.";
    if let Some(reset) = super::choice(ui, input.tokens, "Camber", help, &resets, raise.reset) {
        raise.reset = reset;
    }
    let stops = [
        (
            Stops::Kept,
            "stay",
            "The spring unit keeps its lengths: a raised frame leaves more bump and less droop.",
        ),
        (
            Stops::MovedAlong,
            "move along",
            "As much travel each way as before, with a spring unit as much longer as its mounts are further apart.",
        ),
    ];
    let help = "What becomes of the stops of the wheel's travel.";
    if let Some(stops) = super::choice(ui, input.tokens, "Stops", help, &stops, raise.stops) {
        raise.stops = stops;
    }
}

/// Threads and grades of the rack end with the lift looked at.
fn threads(ui: &mut Ui, input: &NotebookInput<'_>, study: &LiftStudy, view: &mut View) {
    let soft = |text: String| RichText::new(text).small().color(input.tokens.ink_soft);
    let Some(first) = study.threads.first() else {
        let text = "Nothing to compare at this lift: this needs a rack, a spring unit that carries the wheel, and a thread and grade that are known.";
        ui.add(Label::new(soft(text.into())).wrap());
        return;
    };
    let unit = input.build.unit;
    let own = |rows: &[ThreadRow]| {
        let factor = rows.iter().find(|r| r.own).and_then(|r| r.factor);
        factor.map_or_else(|| "none".to_owned(), words::factor)
    };
    let (thread, grade) = study
        .threads
        .iter()
        .find(|r| r.own)
        .map_or_else(Default::default, thread_table::names);
    let text = format!(
        "Your own {thread}, {grade}: factor {} as it stands, {} with the frame {}. Wanted {}.",
        own(input.prove.threads(view.side)),
        own(&study.threads),
        way(view.tune.raise.by, input),
        words::factor(thread_table::wanted(input))
    );
    ui.add(Label::new(text).wrap());
    let text = format!(
        "Worst there: {}, at {} of wheel travel, rack {}.",
        first.load_case,
        length(first.pose.travel, unit),
        length(first.pose.rack, unit)
    );
    ui.add(Label::new(soft(text)).wrap());
    thread_table::choices(ui, input, view);
    if let Some(row) = thread_table::picked(&study.threads, view) {
        ui.horizontal_wrapped(|ui| thread_table::summary(ui, input, row));
    }
    thread_table::ui(ui, input, &study.threads, view);
}

/// Sign and factor of a figure as it is shown.
fn sign(figure: LiftFigure, input: &NotebookInput<'_>) -> (&'static str, f64) {
    match figure {
        LiftFigure::RackEnd => ("", 1.0),
        LiftFigure::HalfTrack => (input.build.unit.sign(), 1.0 / input.build.unit.mm()),
        _ => ("°", 1.0),
    }
}

/// All figures now and with the lift; one of them is plotted.
fn figures(ui: &mut Ui, input: &NotebookInput<'_>, study: &LiftStudy, view: &mut View) {
    let soft = |text: &str| RichText::new(text).small().color(input.tokens.ink_soft);
    let then = study.then.as_ref().and_then(|r| r.as_ref().ok());
    Grid::new("ride height figures")
        .num_columns(3)
        .spacing(egui::vec2(14.0, 1.0))
        .show(ui, |ui| {
            ui.spacing_mut().interact_size.y = 17.0;
            ui.spacing_mut().button_padding.y = 0.0;
            ui.label(soft("plotted below"));
            ui.label(soft("as it stands"));
            ui.label(soft(&way(view.tune.raise.by, input)));
            ui.end_row();
            for figure in LiftFigure::ALL {
                let chosen = view.tune.lift_figure == figure;
                let label = ui.selectable_label(chosen, figure.label());
                if label.told_with(figure.term(), figure.here()).clicked() {
                    view.tune.lift_figure = figure;
                }
                for row in [study.now.as_ref(), then] {
                    ui.label(shown(figure, row, input))
                        .told_with(figure.term(), figure.here());
                }
                ui.end_row();
            }
        });
}

fn shown(figure: LiftFigure, row: Option<&RideHeightRow>, input: &NotebookInput<'_>) -> String {
    let (sign, factor) = sign(figure, input);
    let gap = if matches!(sign, "" | "°") { "" } else { " " };
    let value = row.and_then(|r| figure.of(r)).map(|v| match figure {
        // A factor is never shown better than it is.
        LiftFigure::RackEnd => (v * 100.0).floor() / 100.0,
        _ => v * factor,
    });
    value.map_or_else(
        || "none".to_owned(),
        |v| format!("{}{gap}{sign}", decimal(v, 2)),
    )
}

fn points(rows: &[RideHeightRow], figure: LiftFigure, input: &NotebookInput<'_>) -> Vec<[f64; 2]> {
    let (_, factor) = sign(figure, input);
    rows.iter()
        .filter_map(|r| Some([input.build.unit.from_mm(r.by), figure.of(r)? * factor]))
        .collect()
}

fn plot(ui: &mut Ui, input: &NotebookInput<'_>, study: &LiftStudy, view: &mut View) {
    let unit = input.build.unit;
    let figure = view.tune.lift_figure;
    let points = points(&study.rows, figure, input);
    let (Some(first), Some(last)) = (points.first(), points.last()) else {
        ui.label(
            RichText::new("There is no such figure: no rack, or no load on its end.")
                .color(input.tokens.ink_soft),
        );
        return;
    };
    let (y_sign, factor) = sign(figure, input);
    let then = study.then.as_ref().and_then(|r| r.as_ref().ok());
    let here = then.and_then(|r| Some([unit.from_mm(r.by), figure.of(r)? * factor]));
    let asked = Curve {
        name: "Figure over the lift",
        height: (ui.available_height() - 24.0).clamp(130.0, 220.0),
        here,
        x: first[0]..=last[0],
        traces: vec![Trace {
            name: figure.label().to_owned(),
            points,
            colour: input.tokens.lower_arm,
            manner: Manner::Plain,
        }],
        least_span: 0.1,
        within: None,
        band: Vec::new(),
        x_sign: unit.sign(),
        y_sign,
        x_label: format!("lower  ◂  frame, {}  ▸  higher", unit.sign()),
    }
    .ui(ui, input.tokens);
    if let Some(x) = asked {
        view.tune.raise.by = words::on_step(x * unit.mm(), shop_step(unit));
    }
}
