//! The tape survey: marks, sought points, readings; coordinates and what is wrong with them.

use egui::{Button, ComboBox, RichText, TextEdit, Ui};
use trammel_analysis::Study;
use trammel_analysis::surveyed;
use trammel_setup::{Blunder, Slip, Surveyed};

use super::{super::NotebookInput, ask, head, moved_line, next_move::capital, plain, soft};
use crate::{
    number_field::name_node,
    request::Request,
    set_up::{
        edits,
        settings::SurveyEntry,
        survey::{KINDS, Kind, SurveyAnswer, place_words, said, take},
    },
    view::View,
};

pub(super) fn ui(
    ui: &mut Ui,
    input: &NotebookInput<'_>,
    study: &Study,
    view: &mut View,
    requests: &mut Vec<Request>,
) {
    if input.build.set_up.survey.is_empty() {
        plain(
            ui,
            "Mark at least three places on the jig table or frame whose coordinates you know, name the hardpoints you look for, and type what the tape shows from mark to point. A hardpoint is called as in the point table's file, such as tie_rod.inner; front.right.tie_rod.inner is the right one.",
        );
    }
    entry(ui, input, view, requests);
    if let Some(answer) = input
        .set_up
        .survey()
        .filter(|_| !input.build.set_up.survey.is_empty())
    {
        answer_ui(ui, input, answer, requests);
        super::sides::ui(ui, input, study);
    }
    lines(ui, input, requests);
    let help = "A table as `trammel survey --help` tells it; it takes the place of the survey that is here, as one step.";
    if ui.button("Open a survey…").on_hover_text(help).clicked() {
        requests.push(Request::OpenSurvey);
    }
    paste(ui, input, view, requests);
}

fn small_edit(
    ui: &mut Ui,
    input: &NotebookInput<'_>,
    name: &str,
    text: &mut String,
    hint: &str,
    width: f32,
) -> bool {
    let edit = TextEdit::singleline(text)
        .desired_width(width)
        .hint_text(RichText::new(hint).color(input.tokens.ink_hint));
    let response = ui.add(edit);
    name_node(ui, response.id, name);
    response.lost_focus() && ui.input(|i| i.key_pressed(egui::Key::Enter))
}

fn entry(ui: &mut Ui, input: &NotebookInput<'_>, view: &mut View, requests: &mut Vec<Request>) {
    let entry = &mut view.set_up.survey_entry;
    let Kind {
        word,
        two,
        hint,
        about,
    } = KINDS.get(entry.kind).copied().unwrap_or(KINDS[0]);
    let mut add = false;
    ui.horizontal_wrapped(|ui| {
        let kinds = ComboBox::from_id_salt("survey kind")
            .selected_text(word)
            .width(74.0)
            .show_ui(ui, |ui| {
                for (i, kind) in KINDS.iter().enumerate() {
                    ui.selectable_value(&mut entry.kind, i, kind.word)
                        .on_hover_text(kind.about);
                }
            });
        name_node(ui, kinds.response.id, "Kind of line");
        let from = if two { "from" } else { "name" };
        small_edit(ui, input, "Survey point", &mut entry.from, from, 90.0);
        if two {
            small_edit(ui, input, "Survey second point", &mut entry.to, "to", 90.0);
        }
        add |= small_edit(ui, input, "Survey value", &mut entry.value, hint, 84.0);
        if !matches!(word, "mark" | "point") {
            let help = "accuracy 2";
            add |= small_edit(ui, input, "Survey remark", &mut entry.extra, help, 84.0);
        }
        let button = ui.button("Add").on_hover_text("Behind a reading may stand: accuracy 2, round (the tape went round something), starts 1 (a burned end), from near 12, to far 12 (held at the edge of a hole of that diameter).");
        add |= button.clicked();
    });
    soft(ui, input, about);
    if add {
        let line = line_of(entry);
        let unit = input.build.unit.sign();
        let text = line.clone();
        requests.push(edits::change(
            input.build,
            "Add a line to the survey",
            |s| {
                if s.survey.is_empty() {
                    s.survey.push(format!("unit, {unit}"));
                }
                s.survey.push(text);
            },
        ));
        let kind = entry.kind;
        *entry = SurveyEntry {
            kind,
            ..SurveyEntry::default()
        };
    }
}

fn line_of(entry: &SurveyEntry) -> String {
    let Kind { word, two, .. } = KINDS.get(entry.kind).copied().unwrap_or(KINDS[0]);
    let mut cells = vec![word, entry.from.trim()];
    if two {
        cells.push(entry.to.trim());
    }
    for cell in [entry.value.trim(), entry.extra.trim()] {
        if !cell.is_empty() {
            cells.push(cell);
        }
    }
    cells.join(", ")
}

fn lines(ui: &mut Ui, input: &NotebookInput<'_>, requests: &mut Vec<Request>) {
    let count = input.build.set_up.survey.len();
    egui::CollapsingHeader::new(format!("{count} lines"))
        .id_salt("survey lines")
        .default_open(count < 14)
        .show(ui, |ui| {
            for (index, line) in input.build.set_up.survey.iter().enumerate() {
                ui.horizontal(|ui| {
                    let out = ui.add(Button::new(RichText::new("×").size(12.0)).frame(false));
                    name_node(ui, out.id, &format!("Take out survey line {}", index + 1));
                    if out.clicked() {
                        requests.push(edits::change(
                            input.build,
                            "Take out a line of the survey",
                            |s| {
                                if index < s.survey.len() {
                                    s.survey.remove(index);
                                }
                            },
                        ));
                    }
                    ui.label(RichText::new(line).small());
                });
            }
        });
}

fn answer_ui(
    ui: &mut Ui,
    input: &NotebookInput<'_>,
    answer: &SurveyAnswer,
    requests: &mut Vec<Request>,
) {
    let file = match &answer.file {
        Ok(file) => file,
        Err(why) => return ask(ui, input, why),
    };
    match &answer.found {
        Err(why) => ask(ui, input, &capital(why)),
        Ok(found) => {
            if let Some(blunder) = &found.blunder {
                ask(ui, input, &blunder_words(answer, blunder));
            }
            found_ui(ui, input, answer, found);
            let help = "The points go to their surveyed places as one step, and how well they are known is kept for the tolerance study; Undo takes it back.";
            let request = take(input.build, file, found);
            let button = Button::new("Take it into the build");
            if ui
                .add_enabled(request.is_some(), button)
                .on_hover_text(help)
                .clicked()
            {
                requests.extend(request);
            }
        }
    }
    if !answer.further.is_empty() {
        head(ui, "Readings that would help most");
        for text in &answer.further {
            plain(ui, RichText::new(format!("{}.", capital(text))).small());
        }
    }
    moved_ui(ui, input, answer);
}

fn found_ui(ui: &mut Ui, input: &NotebookInput<'_>, answer: &SurveyAnswer, found: &Surveyed) {
    let Ok(file) = &answer.file else { return };
    let unit = file.unit;
    head(ui, "Coordinates");
    let digits = if unit == trammel_build::LengthUnit::Inch {
        3
    } else {
        1
    };
    for placed in &found.points {
        let name = file.survey.name(placed.point);
        let s = placed.deviations();
        let known = [s.x, s.y, s.z]
            .map(|v| format!("{:.digits$}", unit.from_mm(v)))
            .join(", ");
        let note = if surveyed::hardpoint(name).is_none() {
            " (no hardpoint)"
        } else {
            ""
        };
        plain(
            ui,
            RichText::new(format!(
                "{name}{note}: {} ± {known} {}",
                place_words(placed, unit),
                unit.sign()
            ))
            .small(),
        );
    }
    for weak in &found.weak {
        let text = format!(
            "{} is poorly fixed {}: ± {:.digits$} {}. Take a reading in that direction.",
            file.survey.name(weak.point),
            weak.direction_words(),
            unit.from_mm(weak.deviation),
            unit.sign()
        );
        ask(ui, input, &text);
    }
    let spare = if found.spare == 0 {
        "No reading beyond the fewest: nothing checks them.".to_owned()
    } else {
        format!(
            "{} readings beyond the fewest check the others.",
            found.spare
        )
    };
    soft(ui, input, &spare);
}

fn blunder_words(answer: &SurveyAnswer, blunder: &Blunder) -> String {
    let Ok(file) = &answer.file else {
        return String::new();
    };
    let Some(reading) = file.survey.reading(blunder.reading) else {
        return String::new();
    };
    let what = file.survey.describe(reading.what);
    let off = said(reading.what, blunder.off_by.abs(), file.unit);
    let expected = said(reading.what, blunder.expected, file.unit);
    let slip = match blunder.slip {
        Some(Slip::BurnedInch) => " An inch burned and not taken off?",
        Some(Slip::HundredMillimetres) => " Ten centimetres misread?",
        Some(Slip::TenMillimetres) => " A centimetre misread?",
        Some(Slip::Foot) => " A foot misread?",
        None => "",
    };
    format!(
        "{} contradicts the others: off by {off}, expected {expected}.{slip}",
        capital(&what)
    )
}

fn moved_ui(ui: &mut Ui, input: &NotebookInput<'_>, answer: &SurveyAnswer) {
    if answer.moved.is_empty() {
        return;
    }
    head(ui, "As built against as drawn");
    soft(
        ui,
        input,
        "Forward, outboard, up; and what it alone makes of its wheel's toe change.",
    );
    for (axle, side, moved) in &answer.moved {
        let of = format!("{} {}", axle.word(), side.word());
        moved_line::show(ui, input.build.unit, &of, moved);
    }
}

fn paste(ui: &mut Ui, input: &NotebookInput<'_>, view: &mut View, requests: &mut Vec<Request>) {
    egui::CollapsingHeader::new("Paste a survey").show(ui, |ui| {
        soft(ui, input, "Lines such as `mark, A, 0, 0, 0`, `point, tie_rod.inner, above`, `tape, A, tie_rod.inner, 412.5`; `trammel survey --help` lists them all.");
        let edit = TextEdit::multiline(&mut view.set_up.survey_paste)
            .desired_rows(4)
            .desired_width(f32::INFINITY)
            .font(egui::TextStyle::Small);
        super::paste_box(ui, "Table of the survey", edit);
        let given = !view.set_up.survey_paste.trim().is_empty();
        if ui.add_enabled(given, Button::new("Take the survey")).clicked() {
            let lines = edits::survey_lines(&view.set_up.survey_paste);
            requests.push(edits::change(input.build, "Paste a survey", |s| s.survey = lines));
            view.set_up.survey_paste.clear();
        }
    });
}
