//! What to do now: the cause in words, the move, what to expect of it, and what else would do.

use egui::{RichText, Ui};
use trammel_analysis::{NextMoves, SideNext, advice_words as words};
use trammel_build::{AdjustedPart, LengthUnit};
use trammel_geometry::greatest_first;
use trammel_setup::Plan;

use super::{super::NotebookInput, adjusters, ask, head, plain, soft};
use crate::{
    request::Request,
    set_up::edits,
    terms::{self, Told},
    tokens::type_size,
    words::{decimal, signed, tape},
};

pub(super) fn ui(ui: &mut Ui, input: &NotebookInput<'_>, requests: &mut Vec<Request>) {
    let next = match input.set_up.next() {
        None => return soft(ui, input, "The next move is being worked out."),
        Some(Err(why)) => {
            plain(ui, format!("{}.", capital(why)));
            soft(ui, input, "Readings are typed on the first page.");
            return adjusters::ui(ui, input, true, requests);
        }
        Some(Ok(next)) => next,
    };
    if !input.set_up.is_current() {
        soft(ui, input, "Being worked out anew.");
    }
    for question in next
        .sides
        .iter()
        .flat_map(|s| words::asks(s, input.build.unit))
    {
        ask(ui, input, &question);
    }
    if let Some(text) = words::shims(next) {
        move_line(ui, input, &format!("Both sides: {text}"));
    }
    for side in &next.sides {
        side_moves(ui, input, next, side);
    }
    steps(ui, input, next, requests);
    if let Some(text) = input
        .build
        .set_up
        .sessions
        .iter()
        .find_map(words::read_together)
    {
        ask(ui, input, text);
    }
    for side in &next.sides {
        side_reasons(ui, input, next, side);
    }
    adjusters::ui(ui, input, next.adjusters_assumed, requests);
    soft(
        ui,
        input,
        "Winding the tie rod alone sets static toe; it doesn't cure toe change. Keep the rack centred and locked, turn both rod ends back tight, read again. Chances count build tolerances and reading accuracy, nothing else.",
    );
}

fn move_line(ui: &mut Ui, input: &NotebookInput<'_>, text: &str) {
    plain(
        ui,
        RichText::new(text)
            .font(type_size::head())
            .color(input.tokens.accent),
    );
}

/// What to move, and what to expect of it.
fn side_moves(ui: &mut Ui, input: &NotebookInput<'_>, next: &NextMoves, side: &SideNext) {
    let unit = input.build.unit;
    let advice = &side.advice;
    head(ui, &format!("{} wheel", capital(side.readings.side.word())));
    let text = capital(&words::moves(&advice.best, &next.rod));
    move_line(ui, input, &text);
    let now = if next.shims == 0 {
        "Now"
    } else {
        "With the shims"
    };
    chance(ui, now, &advice.now);
    chance(ui, "Then", &advice.best);
    if let Some(text) = words::reweld(side, unit) {
        ask(ui, input, &text);
    }
}

/// Why, what to read then, what else would do.
fn side_reasons(ui: &mut Ui, input: &NotebookInput<'_>, next: &NextMoves, side: &SideNext) {
    let unit = input.build.unit;
    let advice = &side.advice;
    head(ui, &format!("Why, {} wheel", side.readings.side.word()));
    for line in words::cause(side, unit) {
        plain(ui, RichText::new(line.replace("+-", "±")).small());
    }
    expected(ui, input, side, unit);
    if !advice.alternatives.is_empty() {
        egui::CollapsingHeader::new(format!("Other moves, {} wheel", side.readings.side.word()))
            .show(ui, |ui| {
                for plan in &advice.alternatives {
                    plain(
                        ui,
                        RichText::new(format!(
                            "{}: {}.",
                            capital(&words::moves(plan, &next.rod)),
                            words::expected(plan)
                        ))
                        .small(),
                    );
                }
            });
    }
    learned(ui, input, side, unit);
}

fn chance(ui: &mut Ui, word: &str, plan: &Plan) {
    plain(ui, format!("{word}: {}.", words::expected(plan)));
}

/// What was read and what should be read then.
fn expected(ui: &mut Ui, input: &NotebookInput<'_>, side: &SideNext, unit: LengthUnit) {
    egui::CollapsingHeader::new(format!(
        "Next readings, {} wheel",
        side.readings.side.word()
    ))
    .default_open(true)
    .show(ui, |ui| {
        egui::Grid::new(("expected", side.readings.side))
            .num_columns(4)
            .striped(true)
            .show(ui, |ui| {
                for text in ["travel", "read", "then", "± one deviation"] {
                    ui.label(RichText::new(text).small().color(input.tokens.ink_soft));
                }
                ui.end_row();
                for (read, then) in side.readings.latest.readings.points().zip(&side.next) {
                    ui.label(tape(read.travel, unit)).told(terms::WHEEL_TRAVEL);
                    ui.label(words::toe(read.change)).told(terms::READING);
                    ui.label(words::toe(then.change)).told(terms::EXPECTED);
                    ui.label(format!("{:.3}", then.deviation.to_degrees()))
                        .told(terms::DEVIATION);
                    ui.end_row();
                }
            });
    });
}

/// What the readings tell of the geometry.
fn learned(ui: &mut Ui, input: &NotebookInput<'_>, side: &SideNext, unit: LengthUnit) {
    let word = side.readings.side.word();
    egui::CollapsingHeader::new(format!("Likely geometry, {word} wheel")).show(ui, |ui| {
        let told = &side.learned.told;
        soft(ui, input, &format!("The readings fix {} figures better than the build's tolerances did; where they can't tell errors apart, the blame is shared.", told.figures));
        let mut errors: Vec<_> = side.learned.errors.iter().collect();
        greatest_first(&mut errors, |e| e.error.abs());
        let digits = if unit == LengthUnit::Inch { 3 } else { 2 };
        for e in errors.iter().take(5) {
            let [error, after] = [e.error, e.after].map(|v| unit.from_mm(v));
            plain(ui, RichText::new(format!("{}: {} ± {} {}", coordinate(&e.coordinate), signed(error, digits), decimal(after, digits), unit.sign())).small());
        }
        for group in told.alike.iter().filter(|g| g.len() > 1).take(3) {
            let names: Vec<String> = group.iter().take(4).map(coordinate).collect();
            soft(ui, input, &format!("Can't be told apart: {}.", names.join("; ")));
        }
    });
}

fn coordinate(c: &trammel_tuning::Coordinate) -> String {
    let axis = c.axis.letter();
    let label =
        trammel_build::PointName::from_path(c.point.name()).map_or(c.point.name(), |p| p.label());
    format!("{label}, {axis}")
}

fn steps(ui: &mut Ui, input: &NotebookInput<'_>, next: &NextMoves, requests: &mut Vec<Request>) {
    ui.horizontal_wrapped(|ui| {
        let moves = next.shims != 0 || next.sides.iter().any(|s| !s.advice.best.moves.is_empty());
        let help = "The moves go to the log, and the next session begins; the next round counts both.";
        if ui.add_enabled(moves, egui::Button::new("Moves done")).on_hover_text(help).clicked() {
            requests.push(edits::moves_done(input.build, next));
        }
        let help = "The hardpoints go where the readings say that they most likely are, as one step; Undo takes it back.";
        if ui.button("Learn the true geometry").on_hover_text(help).clicked() {
            match edits::learned(input.build, next) {
                Some(request) => requests.push(request),
                None => requests.push(Request::Say("The readings move no point.".to_owned())),
            }
        }
        super::readings::cards_button(ui, requests);
    });
}

pub(super) fn capital(text: &str) -> String {
    let mut chars = text.chars();
    chars
        .next()
        .map(|c| c.to_uppercase().chain(chars).collect())
        .unwrap_or_default()
}

/// What a part is called.
pub(super) fn part_word(part: AdjustedPart) -> &'static str {
    match part {
        AdjustedPart::RackEnd => "rack end",
        AdjustedPart::Washers => "washers under the outer joint",
        AdjustedPart::Shims => "shims under the rack",
    }
}
