//! The hint at the joint: which way, how far, what it gains, why, and a button that does it.

use egui::{Button, Frame, Margin, Pos2, Rect, RichText, Stroke, Ui, UiBuilder, pos2, vec2};
use trammel_build::{AxleName, LengthUnit, PointRef, Triple};
use trammel_geometry::{Corner, Point};
use trammel_tuning::{Cause, Score, Scoring, TieRodJoint};

use super::{
    advice::Advice,
    in_vehicle, moves,
    settings::{point_of, scoring_label},
};
use crate::{
    request::Request,
    tokens::{Tokens, type_size},
    view::View,
    words::{decimal, length},
};

/// Errors smaller than this are not worth a word, mm.
pub(crate) const LEAST_ERROR: f64 = 25.4 / 64.0;
/// Width of the box, points.
const WIDTH: f32 = 268.0;

/// What the hint is about.
pub(crate) struct Hint<'a> {
    pub advice: &'a Advice,
    pub corner: &'a Corner,
    pub joint: TieRodJoint,
    pub scoring: Scoring,
    pub axle: AxleName,
    pub view: &'a View,
    pub unit: LengthUnit,
    /// The joint as it was typed, the build's unit.
    pub typed: Triple,
    /// What else goes along when the joint is moved, in words.
    pub along: Option<&'static str>,
    pub tokens: &'a Tokens,
}

/// A score as it is shown: degrees, or degrees per inch or 25 mm of travel.
pub(crate) fn figure(score: &Score, scoring: Scoring, unit: LengthUnit) -> String {
    let value = score.by(scoring) * factor(scoring, unit);
    match scoring {
        Scoring::Slope => format!("{}° per {}", decimal(value, 2), per(unit)),
        Scoring::Largest | Scoring::Rms => format!("{}°", decimal(value, 2)),
    }
}

/// From a score's own unit to what is shown.
pub(crate) fn factor(scoring: Scoring, unit: LengthUnit) -> f64 {
    let per_mm = match unit {
        LengthUnit::Inch => 25.4,
        LengthUnit::Millimetre => 25.0,
    };
    match scoring {
        Scoring::Slope => 1f64.to_degrees() * per_mm,
        Scoring::Largest | Scoring::Rms => 1f64.to_degrees(),
    }
}

fn per(unit: LengthUnit) -> &'static str {
    match unit {
        LengthUnit::Inch => "in",
        LengthUnit::Millimetre => "25 mm",
    }
}

/// The edit that puts a joint at a place, mm; coordinates that the search left alone keep what was typed. A place in whole steps is written as whole steps.
pub(crate) fn move_to(hint: &Hint<'_>, place: Point, snapped: bool) -> Request {
    let here = hint.joint.place(hint.corner);
    let there = in_vehicle(hint.view.side, place);
    let grid = match (snapped, hint.unit) {
        (true, LengthUnit::Inch) => 16.0,
        (true, LengthUnit::Millimetre) => 1.0,
        (false, _) => 1e4,
    };
    let mut to = hint.typed;
    for (axis, slot) in to.iter_mut().enumerate() {
        if (place[axis] - here[axis]).abs() > 1e-6 {
            *slot = (hint.unit.from_mm(there[axis]) * grid).round() / grid;
        }
    }
    let point = PointRef {
        axle: hint.axle,
        side: hint.view.side,
        point: point_of(hint.joint),
    };
    Request::Edit(hint.view.moving(point, to))
}

/// Where the box may stand: beside the loupe, else in the corner that is left.
pub(crate) fn place(table: Rect, loupe: Option<Rect>, joint: Pos2) -> Pos2 {
    let height = 150.0;
    let inner = table.shrink(12.0);
    match loupe {
        Some(l) if l.right() + WIDTH + 24.0 < inner.right() => {
            pos2(l.right() + 12.0, l.bottom() - height)
        }
        Some(l) if l.left() - WIDTH - 24.0 > inner.left() => {
            pos2(l.left() - WIDTH - 12.0, l.bottom() - height)
        }
        _ => pos2(
            (joint.x + 30.0).min(inner.right() - WIDTH),
            (joint.y + 30.0).min(inner.bottom() - height),
        ),
    }
}

/// Shows the box; the rectangle it took.
pub(crate) fn ui(ui: &mut Ui, at: Pos2, hint: &Hint<'_>, requests: &mut Vec<Request>) -> Rect {
    let tokens = hint.tokens;
    let frame = Frame::new()
        .fill(tokens.panel)
        .stroke(Stroke::new(1.0, tokens.accent))
        .corner_radius(6.0)
        .inner_margin(Margin::symmetric(10, 7));
    let room = Rect::from_min_size(at, vec2(WIDTH, 160.0));
    let mut child = ui.new_child(UiBuilder::new().id_salt("hint").max_rect(room));
    frame
        .show(&mut child, |ui| {
            ui.set_width(WIDTH - 20.0);
            ui.spacing_mut().item_spacing.y = 2.0;
            contents(ui, hint, requests);
        })
        .response
        .rect
}

fn contents(ui: &mut Ui, hint: &Hint<'_>, requests: &mut Vec<Request>) {
    let tokens = hint.tokens;
    let best = match &hint.advice.best {
        Ok(best) => best,
        Err(fault) => {
            ui.label(RichText::new("No best spot").font(type_size::head()));
            ui.label(RichText::new(fault).small().color(tokens.ink_soft));
            return;
        }
    };
    let here = hint.joint.place(hint.corner);
    let Some((exact, snapped)) = hint.advice.places(hint.joint) else {
        return;
    };
    let target = snapped.unwrap_or(exact);
    let then = best
        .snapped
        .as_ref()
        .map_or(&best.exact.score, |s| &s.score);
    let (head, worthwhile) = headline(hint, target, then);
    ui.label(RichText::new(head).font(type_size::head()));
    ui.label(RichText::new(gain(hint, then, worthwhile)).color(tokens.accent));
    if let Some(cause) = hint
        .advice
        .cause
        .as_ref()
        .filter(|_| hint.joint == TieRodJoint::Inner)
    {
        for line in causes(cause, hint.unit) {
            ui.label(RichText::new(line).small().color(tokens.ink_soft));
        }
    }
    if let Some(along) = hint.along {
        ui.label(RichText::new(along).small().color(tokens.caution));
    }
    ui.horizontal(|ui| {
        if snapped.is_some() {
            let help = "Puts the joint at the best place in whole steps of the shop. One step; Undo takes it back.";
            if ui.add_enabled(worthwhile, Button::new("Move it there")).on_hover_text(help).clicked() {
                requests.push(move_to(hint, target, true));
            }
        }
        let help = format!(
            "Puts the joint at the exact best place, {} of its own. One step; Undo takes it back.",
            figure(&best.exact.score, hint.scoring, hint.unit)
        );
        if ui.add_enabled((exact - here).norm() > 2e-3, Button::new("Exactly")).on_hover_text(help).clicked() {
            requests.push(move_to(hint, exact, false));
        }
    });
}

/// The move, and whether there is one that gains something.
fn headline(hint: &Hint<'_>, target: Point, then: &Score) -> (String, bool) {
    let by = target - hint.joint.place(hint.corner);
    let better = hint
        .advice
        .now
        .is_none_or(|now| then.by(hint.scoring) < now.by(hint.scoring) - 1e-9);
    match moves::in_words(by, hint.unit) {
        Some(words) if better => (words, true),
        _ => ("The joint is at its best spot".to_owned(), false),
    }
}

fn gain(hint: &Hint<'_>, then: &Score, worthwhile: bool) -> String {
    let name = scoring_label(hint.scoring);
    match (&hint.advice.now, worthwhile) {
        (Some(now), true) => {
            format!(
                "{name} {} becomes {}",
                figure(now, hint.scoring, hint.unit),
                figure(then, hint.scoring, hint.unit)
            )
        }
        (Some(now), false) => format!("{name} toe change {}", figure(now, hint.scoring, hint.unit)),
        (None, _) => format!(
            "out of reach now; {name} becomes {}",
            figure(then, hint.scoring, hint.unit)
        ),
    }
}

/// Slope and bowl in words.
pub(crate) fn causes(cause: &Cause, unit: LengthUnit) -> Vec<String> {
    let mut lines = Vec::new();
    if let Some(height) = cause.height(LEAST_ERROR) {
        let word = match height {
            trammel_tuning::HeightError::InnerTooHigh => "too high",
            trammel_tuning::HeightError::InnerTooLow => "too low",
        };
        lines.push(format!(
            "slope: inner joint {} {word}",
            length(cause.height_error.abs(), unit)
        ));
    }
    if let Some(error) = cause.length(LEAST_ERROR) {
        let word = match error {
            trammel_tuning::LengthError::TooLong => "too long",
            trammel_tuning::LengthError::TooShort => "too short",
        };
        lines.push(format!(
            "bowl: tie rod {} {word}",
            length(cause.length_error.abs(), unit)
        ));
    }
    lines
}
