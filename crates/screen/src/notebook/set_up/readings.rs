//! Readings of toe against travel: how they were taken, the table, and pasting.

use egui::{Button, RichText, Ui};
use trammel_analysis::{Study, advice_words as words};
use trammel_build::{Build, Session, Side};

use super::{
    super::{NotebookInput, tune::choice},
    ask, head, method, plain, soft, table,
};
use crate::{
    request::Request,
    set_up::{edits, rows, settings::SetUpView},
    view::View,
};

pub(super) fn ui(
    ui: &mut Ui,
    input: &NotebookInput<'_>,
    study: &Study,
    view: &mut View,
    requests: &mut Vec<Request>,
) {
    let build = input.build;
    let Some(session) = build.set_up.sessions.last() else {
        plain(
            ui,
            "No readings yet. Lock the rack at its centre, take the springs out or unload them, and read toe at a few wheel heights: ride height, up, ride height, down, ride height.",
        );
        ui.horizontal(|ui| {
            if ui.button("Start a session of readings").clicked() {
                requests.push(edits::change(build, "Start a session of readings", |s| {
                    s.sessions.push(edits::fresh_session(build));
                }));
            }
            cards_button(ui, requests);
        });
        paste(ui, input, view, requests);
        return;
    };
    heading(ui, build, session, requests);
    // Open until something is read, then out of the way.
    egui::CollapsingHeader::new("How it was measured")
        .id_salt(("measured", session.rows.is_empty()))
        .default_open(session.rows.is_empty())
        .show(ui, |ui| method::ui(ui, input, session, requests));
    which(ui, input, session, view);
    table::ui(ui, input, study, session, view, requests);
    remarks(ui, input);
    paste(ui, input, view, requests);
}

fn heading(ui: &mut Ui, build: &Build, session: &Session, requests: &mut Vec<Request>) {
    ui.horizontal(|ui| {
        let count = build.set_up.sessions.len();
        let date = if session.date.is_empty() {
            String::new()
        } else {
            format!(", {}", session.date)
        };
        head(ui, &format!("Session {count}{date}"));
        ui.with_layout(egui::Layout::right_to_left(egui::Align::Center), |ui| {
            cards_button(ui, requests);
        });
    });
}

/// Saves the cards to print.
pub(super) fn cards_button(ui: &mut Ui, requests: &mut Vec<Request>) {
    let help = "Set-up card with blank columns, readings and moves, turns table and sign-off list, as one PDF.";
    if ui.button("Cards to print…").on_hover_text(help).clicked() {
        requests.push(Request::SaveCards);
    }
}

/// Which wheel, which run, where the rack stands.
fn which(ui: &mut Ui, input: &NotebookInput<'_>, session: &Session, view: &mut View) {
    let set_up = &mut view.set_up;
    let both = session.method.reads_both_wheels();
    ui.columns(2, |columns| {
        let [left, right] = columns else { return };
        wheel(left, input, set_up, both);
        run(right, input, session, set_up);
    });
    let lock = input
        .results
        .study
        .as_ref()
        .map_or(0.0, |s| s.front.model.lock());
    if let Some(text) = words::read_together(session) {
        soft(ui, input, text);
    }
    let half = (input.build.unit.from_mm(0.5 * lock) * 8.0).round() / 8.0;
    let options = [
        (0.0, "centre", "Rack at its centre, locked."),
        (half, "half left", "Rack about half way to the left lock."),
        (
            -half,
            "half right",
            "Rack about half way to the right lock.",
        ),
    ];
    if half > 0.0
        && let Some(rack) = choice(
            ui,
            input.tokens,
            "Rack",
            "Where the rack is locked.",
            &options,
            set_up.rack,
        )
    {
        set_up.rack = rack;
    }
}

fn wheel(ui: &mut Ui, input: &NotebookInput<'_>, set_up: &mut SetUpView, both: bool) {
    let options = [
        (Side::Left, "left", "The left wheel."),
        (Side::Right, "right", "The right wheel."),
    ];
    let help = if both {
        "Which wheel's curves are shown; the lines are of both wheels."
    } else {
        "Which wheel is read."
    };
    if let Some(side) = choice(ui, input.tokens, "Wheel", help, &options, set_up.side) {
        set_up.side = side;
        if !both {
            set_up.run = 1;
        }
    }
}

fn run(ui: &mut Ui, input: &NotebookInput<'_>, session: &Session, set_up: &mut SetUpView) {
    let read = rows::looked_at(session, set_up).map(|(_, r)| r.run);
    let last = read.max().unwrap_or(0);
    let runs: Vec<(u32, String)> = (1..=last + 1).take(4).map(|n| (n, n.to_string())).collect();
    let help = "A way through the travel and back; a second one shows how well readings repeat.";
    let options: Vec<(u32, &str, &str)> =
        runs.iter().map(|(n, l)| (*n, l.as_str(), help)).collect();
    if let Some(run) = choice(ui, input.tokens, "Run", help, &options, set_up.run) {
        set_up.run = run;
    }
}

fn remarks(ui: &mut Ui, input: &NotebookInput<'_>) {
    let Some(measured) = input.set_up.measured() else {
        return;
    };
    for remark in &measured.remarks {
        ask(ui, input, remark);
    }
    if !measured.points.is_empty() && measured.remarks.is_empty() {
        soft(
            ui,
            input,
            "Every run came back to its first reading within the accuracy.",
        );
    }
    if let Some(repeat) = measured.repeatability {
        soft(
            ui,
            input,
            &format!("The runs repeat within {repeat:.3}° (one standard deviation)."),
        );
    }
}

fn paste(ui: &mut Ui, input: &NotebookInput<'_>, view: &mut View, requests: &mut Vec<Request>) {
    ui.add_space(2.0);
    let help = "A CSV file that says how it was measured, as `trammel advise --help` tells, or bare lines for this session; one step.";
    if ui.button("Open a sheet…").on_hover_text(help).clicked() {
        requests.push(Request::OpenReadings);
    }
    egui::CollapsingHeader::new("Paste from a spreadsheet").show(ui, |ui| {
        soft(ui, input, "Lines of place and reading, with or without a heading; or a whole table that says how it was measured, as `trammel advise --help` tells.");
        let edit = egui::TextEdit::multiline(&mut view.set_up.paste)
            .desired_rows(4)
            .desired_width(f32::INFINITY)
            .font(egui::TextStyle::Small);
        super::paste_box(ui, "Table of readings", edit);
        let given = !view.set_up.paste.trim().is_empty();
        let button = Button::new(RichText::new("Take the readings"));
        if ui.add_enabled(given, button).clicked() {
            match edits::pasted(input.build, &view.set_up.paste, view.set_up.side) {
                Ok(request) => {
                    requests.push(request);
                    view.set_up.paste.clear();
                }
                Err(why) => requests.push(Request::Refuse(format!("{why}. No line was taken."))),
            }
        }
    });
}
