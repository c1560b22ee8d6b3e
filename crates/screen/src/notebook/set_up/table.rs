//! The table of readings: what was typed can be changed, and a line below takes the next. Enter goes on.

use egui::{Button, Grid, Id, Key, RichText, TextEdit, Ui};
use trammel_analysis::Study;
use trammel_build::{Session, format_length, parse_length};

use super::super::NotebookInput;
use crate::{
    number_field::{NumberField, name_node},
    request::Request,
    set_up::{edits, rows, settings::Entry},
    view::View,
};

/// What the number before a reading is.
const RUN: &str = "Run of the readings, with the rack's place where that is not its middle. A new run goes through the travel again.";
/// Widths of a place and of a reading, points.
const PLACE: f32 = 74.0;
const READING: f32 = 92.0;

pub(super) fn ui(
    ui: &mut Ui,
    input: &NotebookInput<'_>,
    study: &Study,
    session: &Session,
    view: &mut View,
    requests: &mut Vec<Request>,
) {
    let set_up = &view.set_up;
    let lines: Vec<_> = rows::looked_at(session, set_up).collect();
    let next = rows::next_place(session, set_up, input.build, &study.front.model);
    Grid::new("readings")
        .num_columns(5)
        .spacing(egui::vec2(6.0, 2.0))
        .show(ui, |ui| {
            heads(ui, input, session);
            for (n, (index, row)) in lines.iter().enumerate() {
                let following = lines.get(n + 1).map(|(i, _)| *i);
                line(ui, input, session, (*index, row), following, requests);
            }
            entry(ui, input, session, view, next, requests);
        });
}

fn heads(ui: &mut Ui, input: &NotebookInput<'_>, session: &Session) {
    let small = |text: &str| RichText::new(text).small().color(input.tokens.ink_soft);
    ui.label(small("run"));
    ui.label(small(&rows::place_word(session.travel_by).to_lowercase()));
    ui.label(small(&rows::first_word(session.method).to_lowercase()));
    ui.label(small(
        &rows::second_word(session.method)
            .unwrap_or("")
            .to_lowercase(),
    ));
    ui.end_row();
}

fn name(word: &str, index: usize) -> String {
    format!("{word}, line {}", index + 1)
}

/// A field whose Enter goes to the same field of another line.
fn cell(
    ui: &mut Ui,
    input: &NotebookInput<'_>,
    word: &str,
    (index, following): (usize, Option<usize>),
    (shown, width): (&str, f32),
) -> Option<String> {
    let name_of = |i| name(word, i);
    let own = name_of(index);
    let id = |name: &str| ui.scope_id().with(("field", name));
    let had_focus = ui.memory(|m| m.has_focus(id(&own)));
    let then = following.map(|i| id(&name_of(i)));
    let field = NumberField {
        name: &own,
        shown,
        hint: "",
        width,
        enabled: true,
    };
    let typed = field.ui(ui, input.tokens);
    if let (true, Some(then)) = (had_focus && ui.input(|i| i.key_pressed(Key::Enter)), then) {
        ui.memory_mut(|m| m.request_focus(then));
    }
    typed
}

fn line(
    ui: &mut Ui,
    input: &NotebookInput<'_>,
    session: &Session,
    (index, row): (usize, &trammel_build::ReadingRow),
    following: Option<usize>,
    requests: &mut Vec<Request>,
) {
    let unit = input.build.unit;
    let rack = if row.rack == 0.0 {
        String::new()
    } else {
        format!(" rack {}", format_length(row.rack, unit))
    };
    let ride = if row.ride { " ride" } else { "" };
    ui.label(
        RichText::new(format!("{}{rack}{ride}", row.run))
            .small()
            .color(input.tokens.ink_soft),
    )
    .on_hover_text(RUN);
    let place = format_length(row.place, unit);
    let at = (index, following);
    let place_word = rows::place_word(session.travel_by);
    if let Some(typed) = cell(ui, input, place_word, at, (&place, PLACE)) {
        match parse_length(typed.trim(), unit) {
            Ok(place) => change(input, index, requests, |r| {
                r.place = place;
            }),
            Err(fault) => refuse(requests, &fault.to_string()),
        }
    }
    let [first, second] = rows::shown(row.shown, unit);
    let words = (
        rows::first_word(session.method),
        rows::second_word(session.method),
    );
    let mut now = [first.clone(), second.clone()];
    let mut typed_any = false;
    if let Some(typed) = cell(ui, input, words.0, at, (&first, READING)) {
        now[0] = typed;
        typed_any = true;
    }
    match words.1 {
        Some(word) => {
            if let Some(typed) = cell(ui, input, word, at, (&second, READING)) {
                now[1] = typed;
                typed_any = true;
            }
        }
        None => {
            ui.label("");
        }
    }
    if typed_any {
        match rows::raw(session.method, &now[0], &now[1], unit) {
            Ok(shown) => change(input, index, requests, |r| r.shown = shown),
            Err(why) => refuse(requests, &why),
        }
    }
    let out = ui.add(Button::new(RichText::new("×").size(12.0)).frame(false));
    name_node(ui, out.id, &format!("Take out line {}", index + 1));
    if out.on_hover_text("Take this line out").clicked() {
        requests.push(edits::change_session(
            input.build,
            "Take out a reading",
            |s| {
                if index < s.rows.len() {
                    s.rows.remove(index);
                }
            },
        ));
    }
    ui.end_row();
}

fn change(
    input: &NotebookInput<'_>,
    index: usize,
    requests: &mut Vec<Request>,
    with: impl FnOnce(&mut trammel_build::ReadingRow),
) {
    requests.push(edits::change_session(
        input.build,
        "Change a reading",
        |s| {
            if let Some(row) = s.rows.get_mut(index) {
                with(row);
            }
        },
    ));
}

fn refuse(requests: &mut Vec<Request>, why: &str) {
    let why = why.trim_end_matches('.');
    requests.push(Request::Refuse(format!(
        "{why}. The reading stays as it was."
    )));
}

/// The line that is being typed. Enter goes to the next field, and in the last one takes the line.
fn entry(
    ui: &mut Ui,
    input: &NotebookInput<'_>,
    session: &Session,
    view: &mut View,
    next: Option<f64>,
    requests: &mut Vec<Request>,
) {
    let unit = input.build.unit;
    let ids = ["place", "first", "second"].map(|n| Id::unique(("new reading", n)));
    let hint = next.map(|v| format_length(v, unit)).unwrap_or_default();
    let words = (
        rows::first_word(session.method),
        rows::second_word(session.method),
    );
    ui.label(
        RichText::new(format!("{}", view.set_up.run))
            .small()
            .color(input.tokens.accent),
    )
    .on_hover_text(RUN);
    let typed = &mut view.set_up.entry;
    let place_word = format!("New {}", rows::place_word(session.travel_by).to_lowercase());
    let mut entered = field(
        ui,
        input,
        (ids[0], &place_word),
        &mut typed.place,
        (&hint, PLACE),
    );
    let first = format!("New {}", words.0.to_lowercase());
    let first_hint = rows::first_hint(session.method);
    entered |= field(
        ui,
        input,
        (ids[1], &first),
        &mut typed.first,
        (first_hint, READING),
    );
    match words.1 {
        Some(word) => {
            let word = format!("New {}", word.to_lowercase());
            entered |= field(ui, input, (ids[2], &word), &mut typed.second, ("", READING));
        }
        None => {
            ui.label("");
        }
    }
    ui.end_row();
    if !entered {
        return;
    }
    let missing = if view.set_up.entry.first.trim().is_empty() {
        Some(ids[1])
    } else if words.1.is_some() && view.set_up.entry.second.trim().is_empty() {
        Some(ids[2])
    } else {
        None
    };
    if let Some(id) = missing {
        ui.memory_mut(|m| m.request_focus(id));
        return;
    }
    match rows::entered(&view.set_up.entry, session, &view.set_up, unit, next) {
        Ok(row) => {
            requests.push(edits::change_session(input.build, "Take a reading", |s| {
                s.rows.push(row);
            }));
            view.set_up.entry = Entry::default();
            let to = if next.is_some() { ids[1] } else { ids[0] };
            ui.memory_mut(|m| m.request_focus(to));
        }
        Err(why) => {
            let why = why.trim_end_matches('.');
            requests.push(Request::Refuse(format!(
                "{why}. What you typed still stands in the line."
            )));
            ui.memory_mut(|m| m.request_focus(ids[1]));
        }
    }
}

/// A field of the line being typed; whether Enter was pressed in it.
fn field(
    ui: &mut Ui,
    input: &NotebookInput<'_>,
    (id, name): (Id, &str),
    text: &mut String,
    (hint, width): (&str, f32),
) -> bool {
    let edit = TextEdit::singleline(text)
        .id(id)
        .desired_width(width)
        .align(egui::Align2::RIGHT_CENTER)
        .hint_text(RichText::new(hint).color(input.tokens.ink_hint))
        .margin(egui::Margin::symmetric(5, 2));
    let response = ui.add_sized([width, 22.0], edit);
    name_node(ui, response.id, name);
    // The line goes down with every reading; it stays in sight.
    if response.gained_focus() {
        response.scroll_to_me(None);
    }
    response.lost_focus() && ui.input(|i| i.key_pressed(Key::Enter))
}
