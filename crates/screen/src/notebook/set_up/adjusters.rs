//! What this vehicle can adjust: each with its step and range, kept in the build.

use egui::Ui;
use trammel_analysis::rod_per_turn;
use trammel_build::{
    Adjusters, BoltAxis, LengthUnit, RackEndRange, RodRange, Side, StackRange, defaults,
};

use super::{
    super::{
        NotebookInput,
        form::{Form, Takes},
        tune::choice,
    },
    soft,
};
use crate::{request::Request, set_up::edits};

const TURNS: Takes = Takes::Number {
    sign: "turns",
    default: None,
};
const PIECES: Takes = Takes::Number {
    sign: "pieces",
    default: None,
};
const LENGTH: Takes = Takes::Length { default_mm: None };

pub(super) fn ui(
    ui: &mut Ui,
    input: &NotebookInput<'_>,
    assumed: bool,
    requests: &mut Vec<Request>,
) {
    egui::CollapsingHeader::new("What this vehicle can adjust")
        .default_open(assumed)
        .show(ui, |ui| {
            let now = input.build.set_up.adjusters;
            let mut next = now;
            if assumed {
                soft(
                    ui,
                    input,
                    "The build doesn't say, so the usual ones are taken: a rack end, washers under the outer joint, shims under the rack. Ranges count from where each stands now.",
                );
            } else {
                soft(ui, input, "Ranges count from where each stands now. A rack end turns by flats, a sixth of a turn. Rack end and washers are moved on each side by itself, shims under the whole rack raise both.");
            }
            whether(ui, input, &mut next);
            rows(ui, input, &mut next, requests);
            along(ui, input, &mut next);
            where_it_is(ui, input, &mut next);
            if next != now {
                requests.push(edits::change(input.build, "Change what can be adjusted", |s| {
                    s.adjusters = next;
                }));
            }
        });
}

/// The usual figures in the build's unit (common practice, no source).
fn usual((mm, more, fewer): (f64, u32, u32), unit: LengthUnit) -> StackRange {
    let thickness = match unit {
        LengthUnit::Inch => (unit.from_mm(mm) * 64.0).round() / 64.0,
        LengthUnit::Millimetre => (mm * 2.0).round() / 2.0,
    };
    StackRange {
        thickness,
        more,
        fewer,
        only: None,
    }
}

/// Whether each can be adjusted at all.
fn whether(ui: &mut Ui, input: &NotebookInput<'_>, next: &mut Adjusters) {
    let unit = input.build.unit;
    let ask = |ui: &mut Ui, word: &str, help: &str, is: bool| -> Option<bool> {
        let options = [
            (false, "fixed", "It can't be adjusted."),
            (true, "adjusts", "It can be adjusted, as below."),
        ];
        choice(ui, input.tokens, word, help, &options, is)
    };
    let help = "The rack end on its thread.";
    if let Some(on) = ask(ui, "Rack end", help, next.rack_end.is_some()) {
        next.rack_end = on.then_some(RackEndRange {
            turns_out: defaults::RACK_END_TURNS,
            turns_in: defaults::RACK_END_TURNS,
            only: None,
        });
    }
    let help = "Washers between the steering arm and the outer joint.";
    if let Some(on) = ask(ui, "Washers", help, next.washers.is_some()) {
        next.washers = on.then(|| usual(defaults::WASHERS, unit));
    }
    let help = "Shims between rack and frame; they raise both inner joints.";
    if let Some(on) = ask(ui, "Rack shims", help, next.shims.is_some()) {
        next.shims = on.then(|| usual(defaults::SHIMS, unit));
    }
    let help = "The tie rod's own thread, which puts static toe back. Without figures a turn is the pitch of its own thread, else of the rack end's, and its range isn't checked.";
    if let Some(on) = ask(ui, "Tie rod", help, next.rod.is_some()) {
        let tidy = |mm: f64| (unit.from_mm(mm) * 1e4).round() / 1e4;
        let range = match unit {
            LengthUnit::Inch => 0.5,
            LengthUnit::Millimetre => 12.0,
        };
        next.rod = on.then(|| RodRange {
            per_turn: tidy(rod_per_turn(input.build).unwrap_or(1.0)),
            shorter: range,
            longer: range,
        });
    }
}

fn rows(ui: &mut Ui, input: &NotebookInput<'_>, next: &mut Adjusters, requests: &mut Vec<Request>) {
    let mut form = Form {
        unit: input.build.unit,
        tokens: input.tokens,
        requests,
    };
    egui::Grid::new("adjusters")
        .num_columns(3)
        .spacing(egui::vec2(8.0, 3.0))
        .show(ui, |ui| {
            if let Some(r) = &mut next.rack_end {
                let help = "Turns that it can still go out, towards the wheel, with enough thread left in.";
                figure(&mut form, ui, "Rack end out", &mut r.turns_out, TURNS, help);
                let help = "Turns that it can still go in.";
                figure(&mut form, ui, "Rack end in", &mut r.turns_in, TURNS, help);
            }
            if let Some(s) = &mut next.washers {
                stack(&mut form, ui, ["Washer thickness", "Washers more", "Washers fewer"], s);
            }
            if let Some(s) = &mut next.shims {
                stack(&mut form, ui, ["Shim thickness", "Shims more", "Shims fewer"], s);
            }
            if let Some(r) = &mut next.rod {
                let help = "How much one turn changes the rod: the pitch, or both pitches together of a tube with a left-hand and a right-hand end.";
                figure(&mut form, ui, "Tie rod a turn", &mut r.per_turn, LENGTH, help);
                let help = "How much shorter it can still get.";
                figure(&mut form, ui, "Tie rod shorter", &mut r.shorter, LENGTH, help);
                let help = "How much longer it can still get, with enough thread left in.";
                figure(&mut form, ui, "Tie rod longer", &mut r.longer, LENGTH, help);
            }
        });
}

fn stack(form: &mut Form<'_>, ui: &mut Ui, names: [&str; 3], s: &mut StackRange) {
    let [thickness, more, fewer] = names;
    figure(
        form,
        ui,
        thickness,
        &mut s.thickness,
        LENGTH,
        "Thickness of one: a step.",
    );
    count(
        form,
        ui,
        more,
        &mut s.more,
        "How many more fit under the bolt.",
    );
    count(form, ui, fewer, &mut s.fewer, "How many can be taken out.");
}

fn figure(
    form: &mut Form<'_>,
    ui: &mut Ui,
    label: &str,
    value: &mut f64,
    takes: Takes,
    help: &str,
) {
    if let Some(Some(v)) = form.row(ui, label, Some(*value), takes, help) {
        *value = v;
    }
}

fn count(form: &mut Form<'_>, ui: &mut Ui, label: &str, value: &mut u32, help: &str) {
    let Some(Some(v)) = form.row(ui, label, Some(f64::from(*value)), PIECES, help) else {
        return;
    };
    if (0.0..=100.0).contains(&v) && v.fract() == 0.0 {
        // A whole number from nought to a hundred.
        *value = v as u32;
    } else {
        form.refuse(format!(
            "Read {v}, expected a whole number from 0 to 100. {label} stays at {value}."
        ));
    }
}

/// On which side each is.
fn where_it_is(ui: &mut Ui, input: &NotebookInput<'_>, next: &mut Adjusters) {
    let options = [
        (None, "both", "Both sides have it."),
        (Some(Side::Left), "left only", "The left side alone has it."),
        (
            Some(Side::Right),
            "right only",
            "The right side alone has it.",
        ),
    ];
    let ask = |ui: &mut Ui, word: &str, help: &str, only: &mut Option<Side>| {
        if let Some(to) = choice(ui, input.tokens, word, help, &options, *only) {
            *only = to;
        }
    };
    if let Some(r) = &mut next.rack_end {
        ask(
            ui,
            "Rack ends on",
            "Which sides have one that turns.",
            &mut r.only,
        );
    }
    if let Some(s) = &mut next.washers {
        ask(ui, "Washers on", "Which sides take them.", &mut s.only);
    }
    if let Some(s) = &mut next.shims {
        let help = "Both: they raise the whole rack. One side: they tilt it, and that side's joint alone moves.";
        ask(ui, "Shims on", help, &mut s.only);
    }
}

/// Which way washers move the outer joint.
fn along(ui: &mut Ui, input: &NotebookInput<'_>, next: &mut Adjusters) {
    if next.washers.is_none() {
        return;
    }
    let mut options = vec![
        (
            None,
            "as its bolt",
            "Along the outer joint's bolt as the build says; upright where it doesn't.",
        ),
        (
            Some(BoltAxis::Vertical),
            "upright",
            "More washers raise the joint.",
        ),
    ];
    if let Some(own) = next.washers_along.filter(|a| *a != BoltAxis::Vertical) {
        options.push((Some(own), "own", "A direction that the file gives."));
    }
    let help = "Which way washers under the outer joint move it.";
    if let Some(to) = choice(
        ui,
        input.tokens,
        "Washers go",
        help,
        &options,
        next.washers_along,
    ) {
        next.washers_along = to;
    }
}
