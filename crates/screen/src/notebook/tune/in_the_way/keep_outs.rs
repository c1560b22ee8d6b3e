//! The keep-outs of the build: named, typed, added and taken off.

use egui::{Button, RichText, Ui};
use trammel_build::{Axis, Edit, KeepOut, KeepOutCorners};

use super::super::{
    super::{
        NotebookInput,
        form::{Form, Takes},
    },
    choice,
};
use crate::{
    request::Request,
    tokens::type_size,
    tune::{keep_outs, mapped_point},
    view::View,
    words::tape,
};

const HELP: &str = "A frame tube, an engine: where no tie-rod joint may go. It counts for its twin on the other side of the car too. Give it the room that the joint's own body needs.";

pub(super) fn ui(
    ui: &mut Ui,
    input: &NotebookInput<'_>,
    view: &mut View,
    requests: &mut Vec<Request>,
) {
    ui.add_space(4.0);
    ui.label(RichText::new("Keep-outs").font(type_size::head()))
        .on_hover_text(HELP);
    let build = input.build;
    for (index, keep_out) in build.keep_outs.iter().enumerate() {
        let chosen = view.tune.keep_out == Some(index);
        let text = format!("{}: {}", keep_out.name, extent(keep_out, input));
        let name = Button::selectable(chosen, text).truncate();
        if ui.add(name).clicked() {
            view.tune.keep_out = (!chosen).then_some(index);
        }
        if chosen {
            one(ui, input, view, index, keep_out, requests);
        }
    }
    if build.keep_outs.is_empty() {
        let none = "None yet. Draw what is in the way, and the map shows what is left.";
        ui.label(RichText::new(none).small().color(input.tokens.ink_soft));
    }
    tools(ui, input, view, requests);
}

/// Its extent in a few words.
fn extent(keep_out: &KeepOut, input: &NotebookInput<'_>) -> String {
    let unit = input.build.unit;
    let along = |axis: Axis| match keep_out.corners.along(axis) {
        None => "every x".to_owned(),
        Some([a, b]) => {
            let [low, high] = [a.min(b), a.max(b)].map(|v| tape(unit.mm() * v, unit));
            format!("{} {low} to {high}", axis.letter())
        }
    };
    [Axis::Y, Axis::Z, Axis::X].map(along).join(", ")
}

fn tools(ui: &mut Ui, input: &NotebookInput<'_>, view: &mut View, requests: &mut Vec<Request>) {
    ui.horizontal(|ui| {
        let help = "Puts a keep-out beside the joint, to be moved, resized or typed.";
        let add = ui.button("Add keep-out").on_hover_text(help).clicked();
        let corners = keep_outs::beside(input.build, mapped_point(view));
        if let Some(corners) = corners.filter(|_| add) {
            let new = input.build.keep_outs.len();
            let edit = keep_outs::put(input.build, new, corners);
            requests.push(keep_outs::step(input.build, new, "Add", edit));
            view.tune.keep_out = Some(new);
        }
        let help = "With this on, a drag on the table in any view draws a keep-out. In the front view it counts at every x, in the others it is a box about the joint. Escape puts the tool down.";
        let draw = Button::new("Draw keep-out").selected(view.tune.draws_keep_out);
        if ui.add(draw).on_hover_text(help).clicked() {
            view.tune.draws_keep_out = !view.tune.draws_keep_out;
        }
    });
    if view.tune.draws_keep_out {
        let text = "Drag a rectangle on the table; Escape puts the tool down.";
        ui.label(RichText::new(text).small().color(input.tokens.accent));
    }
}

/// Name, extent and corners of the chosen one.
fn one(
    ui: &mut Ui,
    input: &NotebookInput<'_>,
    view: &mut View,
    index: usize,
    keep_out: &KeepOut,
    requests: &mut Vec<Request>,
) {
    let build = input.build;
    let flat = keep_out.corners.along(Axis::X).is_none();
    let ways = [
        (
            true,
            "at every x",
            "A rectangle in the front view, for the front axle's joints.",
        ),
        (
            false,
            "between two",
            "A box between two places along x, for the joints of either axle.",
        ),
    ];
    let help = "How far along the car it goes.";
    if let Some(every) = choice(ui, input.tokens, "Counts", help, &ways, flat) {
        let corners = if every {
            keep_out.corners.at_every_x()
        } else {
            let x = keep_outs::about(build, mapped_point(view));
            keep_out.corners.between(x)
        };
        let edit = keep_outs::put(build, index, corners);
        requests.push(keep_outs::step(build, index, "Resize", edit));
    }
    let mut form = Form {
        unit: build.unit,
        tokens: input.tokens,
        requests,
    };
    let mut wanted: Option<(&str, Edit)> = None;
    form.group(ui, "Name and corners", |form, ui| {
        let help = "What is there.";
        let typed = form.text_row(ui, "Keep-out name", &keep_out.name, "", help);
        if let Some(name) = typed {
            wanted = Some(("Rename", keep_outs::renamed(build, index, &name)));
        }
        if let Some(corners) = corner_rows(ui, form, keep_out.corners) {
            wanted = Some(("Resize", keep_outs::put(build, index, corners)));
        }
    });
    let help =
        "One step; Undo takes it back. On the table: Delete, with the keep-out chosen by keyboard.";
    if ui.button("Remove keep-out").on_hover_text(help).clicked() {
        wanted = Some(("Remove", keep_outs::without(build, index)));
        view.tune.keep_out = None;
    }
    if let Some((deed, edit)) = wanted {
        requests.push(keep_outs::step(build, index, deed, edit));
    }
}

/// Rows for the coordinates of both corners; the corners with what was typed.
fn corner_rows(
    ui: &mut Ui,
    form: &mut Form<'_>,
    corners: KeepOutCorners,
) -> Option<KeepOutCorners> {
    const NAMES: [[&str; 2]; 3] = [
        ["Keep-out x, from", "Keep-out x, to"],
        ["Keep-out y, from", "Keep-out y, to"],
        ["Keep-out z, from", "Keep-out z, to"],
    ];
    let takes = Takes::Length { default_mm: None };
    let mut next = None;
    for (axis, names) in Axis::ALL.into_iter().zip(NAMES) {
        let Some(ends) = corners.along(axis) else {
            continue;
        };
        for (n, name) in names.into_iter().enumerate() {
            let help = "One of the two opposite corners, vehicle axes.";
            let typed = form.row(ui, name, ends.get(n).copied(), takes, help);
            if let Some(v) = typed.flatten() {
                let mut ends = ends;
                if let Some(end) = ends.get_mut(n) {
                    *end = v;
                }
                next = Some(corners.with_along(axis, ends));
            }
        }
    }
    next
}
