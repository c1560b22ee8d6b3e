//! A new ride height: the study over a range of lifts, and the step that makes one.

use egui::{RichText, Slider, Ui};
use trammel_analysis::{AxleStudy, Study};

use super::super::NotebookInput;
use crate::{
    number_field::name_node,
    plot::{Curve, Manner, Trace},
    request::Request,
    tune::{
        lift::{Height, LiftFigure, edits},
        settings::shop_step,
    },
    view::View,
    words::{self, decimal, length},
};

pub(super) fn ui(
    ui: &mut Ui,
    input: &NotebookInput<'_>,
    study: &Study,
    axle: &AxleStudy,
    view: &mut View,
    requests: &mut Vec<Request>,
) {
    ui.spacing_mut().item_spacing.y = 4.0;
    let heights = input.tune.lift().shown(axle.model.name);
    let (Some(first), Some(last)) = (heights.first(), heights.last()) else {
        ui.label(
            RichText::new("The heights are being worked out.")
                .small()
                .color(input.tokens.ink_soft),
        );
        return;
    };
    // Ends in whole steps, so that the slider's steps are whole ones.
    let step = shop_step(input.build.unit);
    let range = (first.lift / step).ceil() * step..=(last.lift / step).floor() * step;
    view.tune.lift = view.tune.lift.clamp(*range.start(), *range.end());
    slider(ui, input, study, &range, view, requests);
    now_and_then(ui, input, heights, view);
    chips(ui, input, view);
    plot(ui, input, heights, view);
    let help = "Between the same stops: the spring unit keeps its lengths. Static toe and camber are set again at each height by tie rod and upper arm.";
    ui.add(egui::Label::new(RichText::new(help).small().color(input.tokens.ink_soft)).wrap());
}

fn slider(
    ui: &mut Ui,
    input: &NotebookInput<'_>,
    study: &Study,
    range: &std::ops::RangeInclusive<f64>,
    view: &mut View,
    requests: &mut Vec<Request>,
) {
    let unit = input.build.unit;
    ui.horizontal(|ui| {
        ui.label("Frame").on_hover_text("How much higher the frame stands over the ground; the wheels stay down.");
        ui.spacing_mut().slider_width = 130.0;
        let slider = Slider::new(&mut view.tune.lift, range.clone()).show_value(false).step_by(shop_step(unit));
        let response = ui.add(slider);
        name_node(ui, response.id, "Lift of the frame");
        let lift = view.tune.lift;
        let word = if lift >= 0.0 { "up" } else { "down" };
        ui.label(format!("{word} {}", length(lift.abs(), unit)));
        let help = "Every point is put where it then stands over the ground, on all axles; static toe and camber stay as they are. One step; Undo takes it back.";
        let button = ui.add_enabled(lift.abs() > 0.1, egui::Button::new("Make it the ride height"));
        if button.on_hover_text(help).clicked() {
            match edits(input.build, study, lift) {
                Ok(edits) => {
                    let name = format!("{} the frame by {}", if lift > 0.0 { "Raise" } else { "Lower" }, length(lift.abs(), unit));
                    requests.push(Request::EditAs { name, edits });
                    view.tune.lift = 0.0;
                }
                Err(why) => requests.push(Request::Refuse(why)),
            }
        }
    });
}

fn chips(ui: &mut Ui, input: &NotebookInput<'_>, view: &mut View) {
    let options = LiftFigure::ALL.map(|f| (f, f.label(), f.meaning()));
    if let Some(figure) = super::choice(
        ui,
        input.tokens,
        "Plot",
        "What the plot shows over the lift.",
        &options,
        view.tune.lift_figure,
    ) {
        view.tune.lift_figure = figure;
    }
}

fn sign(figure: LiftFigure, input: &NotebookInput<'_>) -> (&'static str, f64) {
    match figure {
        LiftFigure::RackEnd => ("", 1.0),
        LiftFigure::HalfTrack => (input.build.unit.sign(), 1.0 / input.build.unit.mm()),
        _ => ("°", 1.0),
    }
}

fn points(heights: &[Height], figure: LiftFigure, input: &NotebookInput<'_>) -> Vec<[f64; 2]> {
    let (_, factor) = sign(figure, input);
    heights
        .iter()
        .filter_map(|h| Some([input.build.unit.from_mm(h.lift), h.get(figure)? * factor]))
        .collect()
}

/// The figure at a lift, straight between the heights.
fn at(points: &[[f64; 2]], x: f64) -> Option<[f64; 2]> {
    let after = points.iter().position(|p| p[0] >= x - 1e-9)?;
    let b = points.get(after)?;
    let a = after
        .checked_sub(1)
        .and_then(|i| points.get(i))
        .unwrap_or(b);
    let span = b[0] - a[0];
    let part = if span > 0.0 {
        ((x - a[0]) / span).clamp(0.0, 1.0)
    } else {
        1.0
    };
    Some([x, a[1] + part * (b[1] - a[1])])
}

/// Toe change and rack end at this height and at the one chosen: what the trade says of a lift, looked at for this car.
fn now_and_then(ui: &mut Ui, input: &NotebookInput<'_>, heights: &[Height], view: &View) {
    let x = input.build.unit.from_mm(view.tune.lift);
    let text = [LiftFigure::Toe, LiftFigure::RackEnd, LiftFigure::RodAngle]
        .into_iter()
        .filter_map(|figure| {
            let points = points(heights, figure, input);
            let (now, then) = (at(&points, 0.0)?, at(&points, x)?);
            let (sign, _) = sign(figure, input);
            Some(format!(
                "{} {}{sign} → {}{sign}",
                figure.label().to_lowercase(),
                decimal(now[1], 2),
                decimal(then[1], 2)
            ))
        });
    let text = text.collect::<Vec<_>>().join(" · ");
    ui.add(egui::Label::new(RichText::new(text).small()).wrap());
}

fn plot(ui: &mut Ui, input: &NotebookInput<'_>, heights: &[Height], view: &mut View) {
    let unit = input.build.unit;
    let figure = view.tune.lift_figure;
    let points = points(heights, figure, input);
    if points.is_empty() {
        ui.label(
            RichText::new("There is no such figure: no rack, or no load on its end.")
                .color(input.tokens.ink_soft),
        );
        return;
    }
    let ends = [heights.first(), heights.last()].map(|h| h.map_or(0.0, |h| unit.from_mm(h.lift)));
    let (y_sign, _) = sign(figure, input);
    let asked = Curve {
        name: "Figure over the lift",
        height: (ui.available_height() - 24.0).clamp(130.0, 220.0),
        here: at(&points, unit.from_mm(view.tune.lift)),
        traces: vec![Trace {
            name: figure.label().to_owned(),
            points,
            colour: input.tokens.lower_arm,
            manner: Manner::Plain,
        }],
        x: ends[0]..=ends[1],
        least_span: 0.1,
        within: None,
        band: Vec::new(),
        x_sign: unit.sign(),
        y_sign,
        x_label: format!("lower  ◂  frame, {}  ▸  higher", unit.sign()),
    }
    .ui(ui, input.tokens);
    if let Some(x) = asked {
        view.tune.lift = words::on_step(x * unit.mm(), shop_step(unit));
    }
}
