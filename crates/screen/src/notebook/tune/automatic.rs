//! Automatic tuning: what may move, what is wanted, the search, and the solutions it found.

use egui::{Grid, ProgressBar, RichText, Ui};
use trammel_analysis::AxleStudy;
use trammel_build::{LengthUnit, format_length, parse_length};
use trammel_tuning::{Figures, Solution};

use super::super::NotebookInput;
use crate::{
    number_field::NumberField,
    request::Request,
    tokens::type_size,
    tune::{
        auto::{Shown, Want},
        moves, points,
        settings::shop_step,
    },
    view::View,
    words::{decimal, length, typeset},
};

pub(super) fn ui(
    ui: &mut Ui,
    input: &NotebookInput<'_>,
    axle: &AxleStudy,
    view: &mut View,
    requests: &mut Vec<Request>,
) {
    ui.spacing_mut().item_spacing.y = 3.0;
    let shown = input.tune.search().map(crate::tune::auto::SearchRun::shown);
    let running = shown.as_ref().is_some_and(|s| !s.done);
    ui.horizontal(|ui| {
        let (word, help) = if running {
            ("Stop", "Stops the search; what it has found so far stays.")
        } else {
            ("Find good layouts", "Searches everything that may move at once, from many starts. The same settings give the same answer.")
        };
        if ui.button(word).on_hover_text(help).clicked() {
            requests.push(Request::Search(!running));
        }
        if let Some(s) = &shown {
            let bar = ProgressBar::new(s.part as f32).desired_width(150.0).text(format!("{} %", decimal(100.0 * s.part, 0)));
            ui.add(bar);
        }
    });
    if let Some(s) = &shown {
        solutions(ui, input, axle, s, view, requests);
    }
    may_move(ui, input, axle, view, requests);
    wanted(ui, input, axle, view, requests);
}

fn may_move(
    ui: &mut Ui,
    input: &NotebookInput<'_>,
    axle: &AxleStudy,
    view: &mut View,
    requests: &mut Vec<Request>,
) {
    let unit = input.build.unit;
    ui.add_space(4.0);
    ui.label(RichText::new("May move").font(type_size::head()));
    Grid::new("may move").num_columns(3).spacing(egui::vec2(8.0, 2.0)).show(ui, |ui| {
        for (what, on, within) in &mut view.tune.auto.moves {
            let locked = what.is_locked(input.build, axle.model.name);
            let help = if locked { "A lock holds it; free the point first." } else { "May move as far either way as the field says, in whole steps of the shop at last." };
            ui.add_enabled(!locked, egui::Checkbox::new(on, what.label())).on_hover_text(help).on_disabled_hover_text(help);
            let name = format!("{}, either way", what.label());
            let shown = format_length(unit.from_mm(*within), unit);
            let field = NumberField { name: &name, shown: &shown, hint: "", width: 62.0, enabled: *on && !locked };
            if let Some(typed) = field.ui(ui, input.tokens) {
                match parse_length(&typed, unit).map(|v| v * unit.mm()) {
                    Ok(mm) if (0.5..=300.0).contains(&mm) => *within = mm,
                    Ok(mm) => requests.push(Request::Refuse(format!("Read {}, expected 0.5 to 300 mm; it stays at {shown}.", length(mm, unit)))),
                    Err(fault) => requests.push(Request::Refuse(format!("{fault} It stays at {shown}."))),
                }
            }
            ui.label(RichText::new(format!("{} either way", unit.sign())).small().color(input.tokens.ink_soft));
            ui.end_row();
        }
    });
}

fn wanted(
    ui: &mut Ui,
    input: &NotebookInput<'_>,
    axle: &AxleStudy,
    view: &mut View,
    requests: &mut Vec<Request>,
) {
    let tokens = input.tokens;
    ui.add_space(4.0);
    ui.horizontal_wrapped(|ui| {
        ui.label(RichText::new("Wanted").font(type_size::head()));
        ui.label(
            RichText::new("least toe change over the travel, and")
                .small()
                .color(tokens.ink_soft),
        );
    });
    let racked = axle.model.lock() > 0.0;
    Grid::new("wanted")
        .num_columns(3)
        .spacing(egui::vec2(8.0, 2.0))
        .show(ui, |ui| {
            for (what, on, value) in view
                .tune
                .auto
                .wants
                .iter_mut()
                .filter(|w| racked || !w.0.needs_rack())
            {
                let (label, sign) = what.label();
                ui.checkbox(on, label).on_hover_text(meaning(*what));
                let shown = typeset(&value.to_string());
                let name = format!("{label}, figure");
                let field = NumberField {
                    name: &name,
                    shown: &shown,
                    hint: "",
                    width: 62.0,
                    enabled: *on,
                };
                if let Some(typed) = field.ui(ui, tokens) {
                    match typed.trim().replace('−', "-").parse::<f64>() {
                        Ok(v) if v.abs() < 1e4 => *value = v,
                        _ => requests.push(Request::Refuse(format!(
                            "Read “{}”, expected a number such as 1.5; it stays at {shown}.",
                            typed.trim()
                        ))),
                    }
                }
                ui.label(RichText::new(sign).small().color(tokens.ink_soft));
                ui.end_row();
            }
        });
}

fn meaning(what: Want) -> &'static str {
    match what {
        Want::ToeAtLock => "Largest toe change over the travel with the rack at either lock.",
        Want::RackEnd => {
            "Yield strength over the stress in the rack end under the build's hit, at the worst of a coarse grid of travel and lock."
        }
        Want::RodAngle => {
            "Largest angle between tie rod and rack in the front view over the travel."
        }
        Want::Ackermann => "Ackermann percentage at full lock; 100 is the pure condition.",
        Want::TurningCircle => "Kerb to kerb at full lock, rolling without slip.",
        Want::CamberGain => {
            "Camber change for 100 mm of travel at the design height. Negative: the top leans in as the wheel rises."
        }
        Want::RollCentre => "Height of the roll centre above the ground at the design height.",
    }
}

fn solutions(
    ui: &mut Ui,
    input: &NotebookInput<'_>,
    axle: &AxleStudy,
    shown: &Shown,
    view: &mut View,
    requests: &mut Vec<Request>,
) {
    let tokens = input.tokens;
    if let Some(fault) = &shown.fault {
        ui.add(
            egui::Label::new(
                RichText::new(format!("Nothing found: {fault}.")).color(tokens.danger),
            )
            .wrap(),
        );
    }
    let stale = input.tune.search().is_some_and(|s| {
        (s.axle, s.side) != (axle.model.name, view.side)
            || s.corner != *axle.model.linkage(view.side).corner()
    });
    if stale && !shown.solutions.is_empty() {
        let text = "The build has changed since this search began; search again to apply a layout.";
        ui.label(RichText::new(text).small().color(tokens.caution));
    }
    for (n, solution) in shown.solutions.iter().enumerate() {
        one(ui, input, axle, n, solution, stale, view, requests);
    }
}

#[allow(
    clippy::too_many_arguments,
    reason = "a row needs the list's whole context"
)]
fn one(
    ui: &mut Ui,
    input: &NotebookInput<'_>,
    axle: &AxleStudy,
    n: usize,
    solution: &Solution,
    stale: bool,
    view: &mut View,
    requests: &mut Vec<Request>,
) {
    let (unit, tokens) = (input.build.unit, input.tokens);
    let chosen = view.tune.preview == Some(n);
    ui.horizontal_wrapped(|ui| {
        ui.spacing_mut().item_spacing.x = 6.0;
        let name = format!("Layout {}", n + 1);
        let look = ui.selectable_label(chosen, &name).on_hover_text(
            "Shows it on the drawing and its curve in the plot, and takes it away again.",
        );
        if look.clicked() {
            view.tune.preview = if chosen { None } else { Some(n) };
        }
        ui.label(RichText::new(summary(&solution.exact.figures)).small());
        let corner = axle.model.linkage(view.side).corner();
        let step = shop_step(unit);
        let grid = match unit {
            LengthUnit::Inch => 16.0,
            LengthUnit::Millimetre => 1.0,
        };
        if let Some(stepped) = &solution.in_steps {
            let text = format!("Apply in {}", length(step, unit));
            let help = format!(
                "In whole steps of the shop: {}. One step; Undo takes it back.",
                summary(&stepped.figures)
            );
            let button = ui
                .add_enabled(!stale, egui::Button::new(text).small())
                .on_hover_text(help);
            button.widget_info(|| {
                egui::WidgetInfo::labeled(
                    egui::Role::Button,
                    true,
                    format!("Apply {name} in steps"),
                )
            });
            if button.clicked() {
                let at = (axle.model.name, view.side);
                requests.push(apply(input, at, corner, &stepped.corner, n, grid));
            }
        }
        let button = ui
            .add_enabled(!stale, egui::Button::new("exactly").small())
            .on_hover_text("One step; Undo takes it back.");
        button.widget_info(|| {
            egui::WidgetInfo::labeled(egui::Role::Button, true, format!("Apply {name} exactly"))
        });
        if button.clicked() {
            requests.push(apply(
                input,
                (axle.model.name, view.side),
                corner,
                &solution.exact.corner,
                n,
                points::EXACT,
            ));
        }
    });
    if chosen {
        let corner = axle.model.linkage(view.side).corner();
        for (name, by) in [
            (
                "inner joint",
                solution.exact.corner.tie_rod.inner - corner.tie_rod.inner,
            ),
            (
                "outer joint",
                solution.exact.corner.tie_rod.outer - corner.tie_rod.outer,
            ),
        ] {
            if let Some(words) = moves::in_words(by, unit) {
                ui.label(
                    RichText::new(format!("    {name} {words}"))
                        .small()
                        .color(tokens.ink_soft),
                );
            }
        }
    }
}

fn apply(
    input: &NotebookInput<'_>,
    at: (trammel_build::AxleName, trammel_build::Side),
    before: &trammel_geometry::Corner,
    after: &trammel_geometry::Corner,
    n: usize,
    grid: f64,
) -> Request {
    let edit = points::edit(input.build, at, before, after, grid);
    Request::EditAs {
        name: format!("Apply layout {}", n + 1),
        edits: vec![edit],
    }
}

fn summary(figures: &Figures) -> String {
    let mut text = format!("toe {}°", decimal(figures.toe.largest.to_degrees(), 2));
    if let Some(lock) = figures.toe_at_lock {
        text += &format!(", at lock {}°", decimal(lock.largest.to_degrees(), 2));
    }
    if let Some(factor) = figures.rack_end_factor {
        text += &format!(", rack end {}", decimal(factor, 1));
    }
    text + &format!(", rod {}°", decimal(figures.tie_rod_angle.to_degrees(), 1))
}
