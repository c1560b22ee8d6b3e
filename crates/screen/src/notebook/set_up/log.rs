//! Every session with what was changed before it, and what to look at before the vehicle is driven.

use egui::{RichText, Ui};
use trammel_build::{LengthUnit, Session, Side};

use super::{
    super::NotebookInput,
    head,
    next_move::{capital, part_word},
    plain, soft,
};
use crate::{number_field::NumberField, request::Request, set_up::edits};

pub(super) fn ui(ui: &mut Ui, input: &NotebookInput<'_>, requests: &mut Vec<Request>) {
    let build = input.build;
    ui.horizontal(|ui| {
        if ui
            .button("New session")
            .on_hover_text("Measured as the last one; what was moved since is typed below.")
            .clicked()
        {
            requests.push(edits::change(build, "Start a session of readings", |s| {
                s.sessions.push(edits::fresh_session(build));
            }));
        }
        super::readings::cards_button(ui, requests);
    });
    if build.set_up.sessions.is_empty() {
        soft(ui, input, "No session yet.");
    }
    for (index, session) in build.set_up.sessions.iter().enumerate().rev() {
        session_ui(ui, input, index, session, requests);
    }
    head(ui, "Before it is driven");
    for (what, should) in trammel_cards::checks(build) {
        plain(ui, RichText::new(format!("{what}: {should}.")).small());
    }
    soft(
        ui,
        input,
        "The list prints with the cards, with places for initials. It is a list of what to look at, no approval.",
    );
}

fn session_ui(
    ui: &mut Ui,
    input: &NotebookInput<'_>,
    index: usize,
    session: &Session,
    requests: &mut Vec<Request>,
) {
    ui.horizontal(|ui| {
        let date = if session.date.is_empty() {
            "no date"
        } else {
            &session.date
        };
        head(ui, &format!("Session {}, {date}", index + 1));
        ui.with_layout(egui::Layout::right_to_left(egui::Align::Center), |ui| {
            let button = ui.small_button("Take out");
            crate::number_field::name_node(
                ui,
                button.id,
                &format!("Take out session {}", index + 1),
            );
            if button.clicked() {
                requests.push(edits::change(input.build, "Take out a session", |s| {
                    if index < s.sessions.len() {
                        s.sessions.remove(index);
                    }
                }));
            }
        });
    });
    let count = |side| session.rows.iter().filter(|r| r.side == side).count();
    let read = if session.method.reads_both_wheels() {
        format!("{} lines, both wheels", session.rows.len())
    } else {
        format!(
            "{} lines left, {} right",
            count(Side::Left),
            count(Side::Right)
        )
    };
    plain(
        ui,
        RichText::new(format!("{} by {}.", capital(&read), session.method.name())).small(),
    );
    let unit = input.build.unit;
    for a in &session.adjusted {
        let more = if a.by >= 0.0 {
            "out or more"
        } else {
            "in or less"
        };
        let size = match unit {
            LengthUnit::Inch => format!("{:.3}", a.by.abs()),
            LengthUnit::Millimetre => format!("{:.2}", a.by.abs()),
        };
        plain(
            ui,
            RichText::new(format!(
                "Before it: {} {}, {size} {} {more}.",
                a.side.word(),
                part_word(a.part),
                unit.sign()
            ))
            .small(),
        );
    }
    written(ui, input, index, session, requests);
}

/// Date and notes, as they are written down.
fn written(
    ui: &mut Ui,
    input: &NotebookInput<'_>,
    index: usize,
    session: &Session,
    requests: &mut Vec<Request>,
) {
    let number = index + 1;
    type Set = fn(&mut Session, String);
    let fields: [(&str, &str, &str, f32, Set); 2] = [
        ("Date", &session.date, "such as 3 May", 110.0, |s, t| {
            s.date = t;
        }),
        (
            "Notes",
            &session.notes,
            "what was locked, who read, what was odd",
            300.0,
            |s, t| {
                s.notes = t;
            },
        ),
    ];
    for (word, shown, hint, width, set) in fields {
        ui.horizontal(|ui| {
            ui.add_sized(
                [44.0, 20.0],
                egui::Label::new(RichText::new(word).small().color(input.tokens.ink_soft)),
            );
            let name = format!("{word} of session {number}");
            let field = NumberField {
                name: &name,
                shown,
                hint,
                width,
                enabled: true,
            };
            if let Some(text) = field.ui(ui, input.tokens) {
                let step = format!("Write down the {} of a session", word.to_lowercase());
                requests.push(edits::change(input.build, &step, |s| {
                    if let Some(session) = s.sessions.get_mut(index) {
                        set(session, text.trim().to_owned());
                    }
                }));
            }
        });
    }
}
