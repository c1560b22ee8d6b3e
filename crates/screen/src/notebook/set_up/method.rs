//! How a session was measured.

use egui::Ui;
use trammel_build::{LengthUnit, Session, ToeMethod, TravelMeasure};
use trammel_setup::{Board, Way};

use super::super::{
    NotebookInput,
    form::{Form, Takes},
    tune::choice,
};
use crate::{request::Request, set_up::edits::change_session};

/// Accuracies below this, mm, are written as decimals.
const FINE: f64 = 0.2;

/// The usual first length of a method, mm: spacing, way across, distance (common practice, no source).
fn usual(mm: f64, unit: LengthUnit) -> f64 {
    match unit {
        LengthUnit::Inch => unit.from_mm(mm).round(),
        LengthUnit::Millimetre => mm,
    }
}

fn methods(unit: LengthUnit) -> [(ToeMethod, &'static str, &'static str); 6] {
    [
        (
            ToeMethod::Degrees,
            "Degrees",
            "An instrument that shows degrees.",
        ),
        (
            ToeMethod::TwoDials(usual(250.0, unit), Way::In),
            "Two dials",
            "Two dial indicators, or two tapes from a straight edge, on a plate on the hub.",
        ),
        (
            ToeMethod::OneDial(usual(250.0, unit), Way::In),
            "One dial",
            "One dial at the plate's front, its rear held by a roller.",
        ),
        (
            ToeMethod::Tape(usual(530.0, unit)),
            "Tape",
            "A tape across the fronts and across the rears of both tyres: both wheels together, half each.",
        ),
        (
            ToeMethod::Laser(usual(3000.0, unit), Board::Ahead),
            "Laser",
            "A laser on the hub, a board square to the vehicle.",
        ),
        (
            ToeMethod::Mirror(usual(3000.0, unit)),
            "Mirror",
            "A mirror flat on the hub, a light and a board beside the vehicle: the spot goes twice the angle.",
        ),
    ]
}

pub(super) fn ui(
    ui: &mut Ui,
    input: &NotebookInput<'_>,
    session: &Session,
    requests: &mut Vec<Request>,
) {
    let build = input.build;
    let methods = methods(build.unit);
    let options: Vec<(&str, &str, &str)> = methods.iter().map(|(_, l, h)| (*l, *l, *h)).collect();
    let now = methods
        .iter()
        .find(|(m, ..)| m.name() == session.method.name())
        .map_or("", |(_, l, _)| *l);
    let help = "How toe was measured; a session keeps one way.";
    if let Some(label) = choice(ui, input.tokens, "Toe by", help, &options, now) {
        match methods.iter().find(|(_, l, _)| *l == label) {
            Some((method, ..)) if session.rows.is_empty() => {
                let method = *method;
                requests.push(change_session(build, "Change how toe is measured", |s| {
                    s.method = method;
                    s.accuracy = None;
                }));
            }
            _ => requests.push(Request::Refuse(
                "A session keeps one way of measuring. Take its lines out, or start a new session on the Log page.".to_owned(),
            )),
        }
    }
    let options = [
        (
            TravelMeasure::Travel,
            "Travel",
            "From ride height, up positive.",
        ),
        (
            TravelMeasure::WheelHeight,
            "Wheel height",
            "Height of the wheel centre.",
        ),
        (
            TravelMeasure::ShockLength,
            "Shock",
            "Length of the spring unit between its mounts, or edges of its eyes.",
        ),
        (
            TravelMeasure::Blocks,
            "Blocks",
            "Height of blocks under the frame, wheels on the ground.",
        ),
    ];
    let help = "How wheel travel was measured.";
    if let Some(by) = choice(
        ui,
        input.tokens,
        "Travel by",
        help,
        &options,
        session.travel_by,
    ) {
        if session.rows.is_empty() {
            requests.push(change_session(
                build,
                "Change how travel is measured",
                |s| s.travel_by = by,
            ));
        } else {
            requests.push(Request::Refuse(
                "A session keeps one way of measuring travel. Take its lines out, or start a new session on the Log page.".to_owned(),
            ));
        }
    }
    ways(ui, input, session, requests);
    lengths(ui, input, session, requests);
}

/// Which way a dial counts, where a board stands.
fn ways(ui: &mut Ui, input: &NotebookInput<'_>, session: &Session, requests: &mut Vec<Request>) {
    let build = input.build;
    match session.method {
        ToeMethod::TwoDials(v, way) | ToeMethod::OneDial(v, way) => {
            let options = [
                (
                    Way::In,
                    "IN",
                    "The plate goes towards the vehicle when the number grows.",
                ),
                (
                    Way::Out,
                    "OUT",
                    "The plate goes away from the vehicle when the number grows.",
                ),
            ];
            let help = "Which way the plate goes at a dial whose number grows.";
            if let Some(way) = choice(ui, input.tokens, "Grows", help, &options, way) {
                let two = matches!(session.method, ToeMethod::TwoDials(..));
                requests.push(change_session(
                    build,
                    "Change which way the dial counts",
                    |s| {
                        s.method = if two {
                            ToeMethod::TwoDials(v, way)
                        } else {
                            ToeMethod::OneDial(v, way)
                        };
                    },
                ));
            }
        }
        ToeMethod::Laser(v, board) => {
            let options = [
                (
                    Board::Ahead,
                    "ahead",
                    "The board stands ahead of the wheel.",
                ),
                (
                    Board::Behind,
                    "behind",
                    "The board stands behind the wheel.",
                ),
            ];
            if let Some(board) = choice(
                ui,
                input.tokens,
                "Board",
                "Where the board stands.",
                &options,
                board,
            ) {
                requests.push(change_session(
                    build,
                    "Change where the board stands",
                    |s| {
                        s.method = ToeMethod::Laser(v, board);
                    },
                ));
            }
        }
        ToeMethod::Tape(_) | ToeMethod::Mirror(_) | ToeMethod::Degrees => {}
    }
}

fn lengths(ui: &mut Ui, input: &NotebookInput<'_>, session: &Session, requests: &mut Vec<Request>) {
    let build = input.build;
    let mut changes = Vec::new();
    let mut form = Form {
        unit: build.unit,
        tokens: input.tokens,
        requests,
    };
    let method = session.method;
    let length = match method {
        ToeMethod::TwoDials(v, _) | ToeMethod::OneDial(v, _) => {
            Some((v, "Spacing", "Between the contacts, or roller and dial."))
        }
        ToeMethod::Tape(v) => Some((
            v,
            "Across one tyre",
            "From the front mark to the rear mark on one tyre, at the tape's height.",
        )),
        ToeMethod::Laser(v, _) | ToeMethod::Mirror(v) => {
            Some((v, "Distance", "From the wheel to the board."))
        }
        ToeMethod::Degrees => None,
    };
    egui::Grid::new("method").num_columns(3).show(ui, |ui| {
        if let Some((v, label, help)) = length {
            let takes = Takes::Length { default_mm: None };
            if let Some(Some(v)) = form.row(ui, label, Some(v), takes, help) {
                let method = match method {
                    ToeMethod::TwoDials(_, way) => ToeMethod::TwoDials(v, way),
                    ToeMethod::OneDial(_, way) => ToeMethod::OneDial(v, way),
                    ToeMethod::Tape(_) => ToeMethod::Tape(v),
                    ToeMethod::Laser(_, board) => ToeMethod::Laser(v, board),
                    ToeMethod::Mirror(_) => ToeMethod::Mirror(v),
                    ToeMethod::Degrees => ToeMethod::Degrees,
                };
                changes.push(change_session(build, "Change how toe is measured", |s| s.method = method));
            }
        }
        let usual = method.kernel(LengthUnit::Millimetre).usual_deviation();
        let takes = if method == ToeMethod::Degrees {
            Takes::number_or("°", usual)
        } else if usual < FINE {
            // Finer than a tape's fractions can show.
            let shown = (build.unit.from_mm(usual) * 1e4).round() / 1e4;
            Takes::number_or(build.unit.sign(), shown)
        } else {
            Takes::length_or(usual)
        };
        let help = "How well one number can be read: its standard deviation. Left empty, the method's usual one.";
        if let Some(v) = form.row(ui, "Good to", session.accuracy, takes, help) {
            changes.push(change_session(build, "Change the accuracy of readings", |s| s.accuracy = v));
        }
        let help = "The day of this session, as you write it.";
        if let Some(text) = form.text_row(ui, "Date", &session.date, "such as 3 May", help) {
            changes.push(change_session(build, "Date the session", |s| s.date = text));
        }
    });
    form.requests.extend(changes);
}
