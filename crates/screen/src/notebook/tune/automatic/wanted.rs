//! What is wanted besides little toe change: every figure as a limit or as a target.

use egui::{Button, Grid, RichText, Ui};

use super::Page;
use crate::{
    number_field::NumberField,
    request::Request,
    terms::Told,
    tokens::type_size,
    tune::auto::{Want, factor, long_name, sign, taken, term},
    view::View,
    words::typeset,
};

/// Most that a thing may count against the others.
const MOST_WEIGHT: f64 = 100.0;

pub(super) fn ui(ui: &mut Ui, page: Page<'_>, view: &mut View, requests: &mut Vec<Request>) {
    ui.add_space(4.0);
    ui.horizontal_wrapped(|ui| {
        ui.label(RichText::new("Wanted").font(type_size::head()));
        let soft = |text: &str| {
            RichText::new(text)
                .small()
                .color(page.input.tokens.ink_soft)
        };
        ui.label(soft("least toe change over the travel, weight"));
        weight(
            ui,
            page,
            "Least toe change",
            (true, &mut view.tune.auto.toe_weight),
            requests,
        );
        ui.label(soft("and"));
    });
    let racked = page.axle.model.lock() > 0.0;
    Grid::new("wanted")
        .num_columns(5)
        .spacing(egui::vec2(6.0, 2.0))
        .show(ui, |ui| {
            for _ in 0..4 {
                ui.label("");
            }
            let help = "What each counts against the others. Twice the weight is paid for with about as much of the others.";
            let head = RichText::new("weight").small().color(page.input.tokens.ink_soft);
            ui.label(head).on_hover_text(help);
            ui.end_row();
            let wants = view.tune.auto.wants.iter_mut();
            for want in wants.filter(|w| racked || !w.figure.needs_rack()) {
                one(ui, page, want, requests);
                ui.end_row();
            }
        });
}

fn one(ui: &mut Ui, page: Page<'_>, want: &mut Want, requests: &mut Vec<Request>) {
    let unit = page.input.build.unit;
    let name = long_name(want.figure);
    ui.checkbox(&mut want.on, name)
        .told_with(term(want.figure), taken(want.figure));
    let how = ui
        .add_enabled(want.on, Button::new(RichText::new(want.how.word()).small()))
        .on_hover_text("A limit comes before little toe change, a target stands beside it. Click for the next of: at least, at most, near.");
    how.widget_info(|| {
        egui::WidgetInfo::labeled(
            egui::Role::Button,
            want.on,
            format!("{name}, {}", want.how.word()),
        )
    });
    if how.clicked() {
        want.how = want.how.next();
    }
    let factor = factor(want.figure, unit);
    // What a value is shown as does not carry float dust.
    let rounded = (want.value * factor * 1e4).round() / 1e4;
    let shown = typeset(&(rounded + 0.0).to_string());
    let field_name = format!("{name}, figure");
    let field = NumberField {
        name: &field_name,
        shown: &shown,
        hint: "",
        width: 58.0,
        enabled: want.on,
    };
    if let Some(typed) = field.ui(ui, page.input.tokens) {
        match typed.trim().replace('−', "-").parse::<f64>() {
            Ok(v) if v.abs() < 1e4 => want.value = v / factor,
            _ => requests.push(Request::Refuse(format!(
                "Read “{}”, expected a number such as 1.5; it stays at {shown}.",
                typed.trim()
            ))),
        }
    }
    let sign = RichText::new(sign(want.figure, unit)).small();
    ui.label(sign.color(page.input.tokens.ink_soft));
    weight(ui, page, name, (want.on, &mut want.weight), requests);
}

/// What a thing that is wanted counts against the others.
fn weight(
    ui: &mut Ui,
    page: Page<'_>,
    name: &str,
    (enabled, weight): (bool, &mut f64),
    requests: &mut Vec<Request>,
) {
    let shown = typeset(&weight.to_string());
    let field_name = format!("{name}, weight");
    let field = NumberField {
        name: &field_name,
        shown: &shown,
        hint: "",
        width: 40.0,
        enabled,
    };
    let Some(typed) = field.ui(ui, page.input.tokens) else {
        return;
    };
    match typed.trim().parse::<f64>() {
        Ok(v) if (0.0..=MOST_WEIGHT).contains(&v) => *weight = v,
        _ => requests.push(Request::Refuse(format!(
            "Read “{}”, expected a weight from 0 to {MOST_WEIGHT}, such as 2; it stays at {shown}.",
            typed.trim()
        ))),
    }
}
