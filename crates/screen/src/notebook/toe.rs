//! The large plot: toe change against travel, with its scores in large figures.

use egui::{Rect, Ui, pos2};
use trammel_analysis::{Study, TravelCurve};
use trammel_build::{AxleName, Side, defaults};

use super::{NotebookInput, scores};
use crate::{
    landmark::{self, Landmark},
    plot::{Curve, Manner, Trace},
    request::Request,
    terms::{self, Told},
    tokens::type_size,
    tune::{preview_curve, settings::TunePage, sides_are_alike},
    view::{Stage, View},
    words,
};

pub(super) fn ui(
    ui: &mut Ui,
    input: &NotebookInput<'_>,
    study: &Study,
    view: &mut View,
    requests: &mut Vec<Request>,
    height: f32,
) {
    let Some(axle) = study.axle(view.axle) else {
        return;
    };
    let tokens = input.tokens;
    heading(ui, input, view);
    let side = match view.stage {
        Stage::SetUp => view.set_up.side,
        _ => view.side,
    };
    let curve = axle.curve(side);
    let unit = input.build.unit;
    let mut traces = Vec::new();
    if let Some(ghost) = view.ghost.as_ref().filter(|_| view.stage != Stage::SetUp) {
        traces.push(trace(
            "before the change",
            ghost,
            unit,
            tokens.ink_soft,
            Manner::Ghost,
        ));
    }
    let mut band = Vec::new();
    if view.stage == Stage::SetUp {
        traces.extend(super::set_up::traces(input));
    }
    if view.stage == Stage::Tune {
        band = tuned(input, &mut traces);
        if view.tune.page == TunePage::WhatIf {
            what_if(input, view, &mut traces);
        } else if let Some(corner) = input.tune.previewed(view) {
            let points = preview_curve(&corner, axle)
                .iter()
                .map(|(t, c)| [unit.from_mm(*t), c.to_degrees()])
                .collect();
            traces.push(Trace {
                name: "layout shown".to_owned(),
                points,
                colour: tokens.spring,
                manner: Manner::Dashed,
            });
        }
    }
    let plot_top = ui.cursor().min;
    traces.push(trace(
        "toe change",
        curve,
        unit,
        tokens.tie_rod,
        Manner::Plain,
    ));
    let limit = input
        .build
        .limits
        .toe_change_deg
        .unwrap_or(defaults::TOE_CHANGE_LIMIT_DEG);
    let range = axle.model.travel;
    let asked = Curve {
        name: "Toe change against wheel travel",
        height,
        here: here(curve, view.travel).map(|(t, c)| [unit.from_mm(t), c.to_degrees()]),
        traces,
        x: unit.from_mm(range.droop)..=unit.from_mm(range.bump),
        least_span: 0.04,
        within: Some(limit),
        band,
        x_sign: unit.sign(),
        y_sign: "°",
        x_label: format!("droop  ◂  wheel travel, {}  ▸  bump", unit.sign()),
    }
    .ui(ui, tokens);
    let plot = Rect::from_two_pos(
        plot_top,
        pos2(ui.max_rect().right(), ui.cursor().top() - 9.0),
    );
    landmark::mark(ui.ctx(), Landmark::ToePlot, plot);
    if let Some(x) = asked {
        requests.push(Request::Pose {
            travel: x * unit.mm(),
            rack: view.rack,
        });
    }
    if view.stage != Stage::SetUp {
        scores::ui(ui, input, curve);
    }
}

/// The best spot's curve, added to the traces, and the band of the builds; degrees.
fn tuned(input: &NotebookInput<'_>, traces: &mut Vec<Trace>) -> Vec<[f64; 3]> {
    let unit = input.build.unit;
    let colour = if input.tokens.dark {
        input.tokens.accent
    } else {
        input.tokens.ink
    };
    if let Some(advice) = input.tune.advice().filter(|a| !a.best_curve.is_empty()) {
        let points = advice
            .best_curve
            .iter()
            .map(|(t, c)| [unit.from_mm(*t), c.to_degrees()])
            .collect();
        traces.push(Trace {
            name: "best spot".to_owned(),
            points,
            colour,
            manner: Manner::Thin,
        });
    }
    let scatter = input
        .tune
        .scatter()
        .shown()
        .and_then(|(_, s)| s.as_ref().ok());
    let bands = scatter
        .and_then(|s| s.racks.first())
        .map_or(&[][..], |r| &r.bands);
    traces.push(Trace {
        name: "middle of the builds".to_owned(),
        points: bands
            .iter()
            .map(|b| [unit.from_mm(b.travel), b.built.median.to_degrees()])
            .collect(),
        colour: input.tokens.wash(input.tokens.tie_rod, 0.6),
        manner: Manner::Hair,
    });
    bands
        .iter()
        .map(|b| {
            [
                unit.from_mm(b.travel),
                b.built.low.to_degrees(),
                b.built.high.to_degrees(),
            ]
        })
        .collect()
}

/// The curve of what is tried out and the faint family about it.
fn what_if(input: &NotebookInput<'_>, view: &View, traces: &mut Vec<Trace>) {
    let Some(looked) = input.tune.what_if() else {
        return;
    };
    let (unit, tokens) = (input.build.unit, input.tokens);
    let name = view.tune.along.label();
    let faint = tokens.wash(tokens.spring, 0.55);
    let family = looked.family.iter();
    traces.extend(family.map(|curve| trace(name, curve, unit, faint, Manner::Hair)));
    if let Ok((_, curve)) = &looked.now
        && !view.tune.what_if.is_nothing()
    {
        traces.push(trace("what if", curve, unit, tokens.spring, Manner::Dashed));
    }
}

fn heading(ui: &mut Ui, input: &NotebookInput<'_>, view: &mut View) {
    ui.horizontal(|ui| {
        ui.label(egui::RichText::new("Toe change against travel").font(type_size::head()))
            .told(terms::TOE_CHANGE);
        ui.with_layout(egui::Layout::right_to_left(egui::Align::Center), |ui| {
            let note = egui::RichText::new("in is +")
                .small()
                .color(input.tokens.ink_soft);
            ui.label(note).told(terms::TOE_CHANGE);
            // The two sides only differ where the build says so.
            if sides_are_alike(input.build, view.axle) {
                let wheel = match view.axle {
                    AxleName::Front => "each front wheel,",
                    AxleName::Rear => "each rear wheel,",
                };
                let wheel = egui::RichText::new(wheel).small().color(input.tokens.ink_soft);
                ui.label(wheel).on_hover_text(
                    "Left and right are mirror images: what is done to one side is done to both. Points of its own make the right side another.",
                );
            } else {
                sides(ui, view);
            }
        });
    });
}

/// The choice of the side that is looked at, and tuned.
fn sides(ui: &mut Ui, view: &mut View) {
    for side in [Side::Right, Side::Left] {
        let chosen = view.side == side;
        let response = ui.selectable_label(chosen, side.word());
        let name = format!("Side: {}", side.word());
        response.widget_info(|| {
            egui::WidgetInfo::selected(egui::Role::RadioButton, true, chosen, &name)
        });
        let help = "The right side has points of its own: each side has its own curve, and is tuned by itself.";
        if response.on_hover_text(help).clicked() && !chosen {
            view.side = side;
            view.ghost = None;
        }
    }
}

fn trace(
    name: &str,
    curve: &TravelCurve,
    unit: trammel_build::LengthUnit,
    colour: egui::Color32,
    manner: Manner,
) -> Trace {
    let points = curve
        .stations
        .iter()
        .map(|s| [unit.from_mm(s.pose.travel), s.toe_change.to_degrees()])
        .collect();
    Trace {
        name: words::typeset(name),
        points,
        colour,
        manner,
    }
}

/// Toe change at a travel, by straight lines between the stations.
fn here(curve: &TravelCurve, travel: f64) -> Option<(f64, f64)> {
    let after = curve
        .stations
        .iter()
        .position(|s| s.pose.travel >= travel)?;
    let b = curve.stations.get(after)?;
    let a = after
        .checked_sub(1)
        .and_then(|i| curve.stations.get(i))
        .unwrap_or(b);
    let span = b.pose.travel - a.pose.travel;
    let part = if span > 0.0 {
        (travel - a.pose.travel) / span
    } else {
        1.0
    };
    (0.0..=1.0)
        .contains(&part)
        .then_some((travel, a.toe_change + part * (b.toe_change - a.toe_change)))
}
