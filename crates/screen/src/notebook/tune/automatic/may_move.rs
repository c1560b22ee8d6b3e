//! What may move, from where to where, and in which steps.

use egui::{CollapsingHeader, Grid, RichText, Ui};
use trammel_build::{LengthUnit, format_length, parse_length};

use super::Page;
use crate::{
    number_field::NumberField,
    request::Request,
    tokens::type_size,
    tune::{
        auto::{Part, Row, label, locked},
        settings::shop_step,
    },
    view::View,
    words::length,
};

/// Farthest that anything may move, and the longest step, mm.
const FARTHEST: f64 = 300.0;
const LONGEST_STEP: f64 = 100.0;
const SHORTEST_STEP: f64 = 0.01;

pub(super) fn ui(ui: &mut Ui, page: Page<'_>, view: &mut View, requests: &mut Vec<Request>) {
    ui.add_space(4.0);
    ui.label(RichText::new("May move").font(type_size::head()));
    for part in Part::ALL {
        let moves = &mut view.tune.auto.moves;
        let ticked = moves.iter().filter(|r| r.part == part && r.on).count();
        let title = match ticked {
            0 => part.label().to_owned(),
            n => format!("{} ({n})", part.label()),
        };
        CollapsingHeader::new(title)
            .id_salt(("may move", part.label()))
            .default_open(part == Part::TieRod)
            .show(ui, |ui| rows(ui, page, part, moves, requests));
    }
}

fn rows(ui: &mut Ui, page: Page<'_>, part: Part, moves: &mut [Row], requests: &mut Vec<Request>) {
    let soft = |text: &str| {
        RichText::new(text)
            .small()
            .color(page.input.tokens.ink_soft)
    };
    let unit = page.input.build.unit.sign();
    Grid::new(("may move", part.label()))
        .num_columns(4)
        .spacing(egui::vec2(6.0, 2.0))
        .show(ui, |ui| {
            ui.label("");
            ui.label(soft(&format!("from, {unit}")))
                .on_hover_text("Least, from where it is now. In, down and back are negative.");
            ui.label(soft("to"))
                .on_hover_text("Most, from where it is now. Out, up and forward are positive.");
            ui.label(soft("step"))
                .on_hover_text("Layouts in whole steps are rounded to this.");
            ui.end_row();
            for row in moves.iter_mut().filter(|r| r.part == part) {
                one(ui, page, row, requests);
                ui.end_row();
            }
        });
}

fn one(ui: &mut Ui, page: Page<'_>, row: &mut Row, requests: &mut Vec<Request>) {
    let unit = page.input.build.unit;
    let name = label(row.dimension);
    let locked = locked(row.dimension, page.input.build, page.axle.model.name);
    let help = if locked {
        "A lock holds it; free the point first."
    } else {
        "May move between the two ends, counted from where it is now."
    };
    ui.add_enabled(!locked, egui::Checkbox::new(&mut row.on, &name))
        .on_hover_text(help)
        .on_disabled_hover_text(help);
    let enabled = row.on && !locked;
    let [low, high] = row.range;
    let step = row.step.unwrap_or(shop_step(unit));
    let mut typed = [low, high, step]
        .into_iter()
        .zip(["from", "to", "step"])
        .map(|(value, end)| {
            let shown = format_length(unit.from_mm(value), unit);
            let name = format!("{name}, {end}");
            let field = NumberField {
                name: &name,
                shown: &shown,
                hint: "",
                width: 54.0,
                enabled,
            };
            let typed = field.ui(ui, page.input.tokens)?;
            let read = read(&typed, unit, row, end);
            read.map_err(|why| {
                requests.push(Request::Refuse(format!("{why} It stays at {shown}.")));
            })
            .ok()
        });
    let (from, to, step) = (
        typed.next().flatten(),
        typed.next().flatten(),
        typed.next().flatten(),
    );
    drop(typed);
    row.range = [from.unwrap_or(low), to.unwrap_or(high)];
    row.step = step.or(row.step);
}

/// One of a row's three lengths as it was typed, mm, or what was expected.
fn read(typed: &str, unit: LengthUnit, row: &Row, end: &str) -> Result<f64, String> {
    let mm = parse_length(typed, unit).map_err(|fault| fault.to_string())? * unit.mm();
    let [low, high] = row.range;
    let most = length(FARTHEST, unit);
    let (good, expected) = match end {
        "from" => (
            mm >= -FARTHEST && mm < high,
            format!("less than where it may move to, and no more than {most} away"),
        ),
        "to" => (
            mm <= FARTHEST && mm > low,
            format!("more than where it may move from, and no more than {most} away"),
        ),
        _ => (
            (SHORTEST_STEP..=LONGEST_STEP).contains(&mm),
            "a step such as 1/16 in or 1 mm".to_owned(),
        ),
    };
    if good {
        Ok(mm)
    } else {
        Err(format!("Read {}, expected {expected}.", length(mm, unit)))
    }
}
