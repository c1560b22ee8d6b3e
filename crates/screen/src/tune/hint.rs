//! The hint at the joint: which way, how far, what it gains, why, and a button that does it.

use egui::{Button, Frame, Margin, Pos2, Rect, RichText, Stroke, Ui, UiBuilder, pos2, vec2};
use trammel_build::{AxleName, Build, Edit, LengthUnit, PointRef};
use trammel_geometry::{Corner, TieRod, Vector};
use trammel_tuning::{Cause, Score, Scoring, TieRodJoint};

use super::{
    advice::Advice,
    moves,
    settings::{point_of, scoring_label},
};
use crate::{
    landmark::{self, Landmark},
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
    pub scoring: Scoring,
    pub axle: AxleName,
    pub view: &'a View,
    pub unit: LengthUnit,
    pub build: &'a Build,
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

/// The edits that put the joints that may move where the search has them, as one step; coordinates that it left alone
/// keep what was typed. Places in whole steps are written as whole steps.
pub(crate) fn move_to(hint: &Hint<'_>, rod: &TieRod, snapped: bool) -> Request {
    let moving = hint.advice.moving.iter();
    let mut edits: Vec<Edit> = moving
        .filter_map(|&joint| edit(hint, joint, rod, snapped))
        .collect();
    match (edits.len(), edits.pop()) {
        (1, Some(edit)) => Request::Edit(edit),
        (_, last) => Request::EditAs {
            name: "Move both joints".to_owned(),
            edits: edits.into_iter().chain(last).collect(),
        },
    }
}

/// The edit for one joint; `None` where it stays.
fn edit(hint: &Hint<'_>, joint: TieRodJoint, rod: &TieRod, snapped: bool) -> Option<Edit> {
    let by = way(hint, joint, rod);
    let grid = match (snapped, hint.unit) {
        (true, LengthUnit::Inch) => 16.0,
        (true, LengthUnit::Millimetre) => 1.0,
        (false, _) => 1e4,
    };
    let point = PointRef {
        axle: hint.axle,
        side: hint.view.side,
        point: point_of(joint),
    };
    let place = hint
        .view
        .side
        .place_in_vehicle(joint.place(hint.corner) + by);
    let mut to = hint.build.point(point)?;
    for (axis, slot) in to.iter_mut().enumerate() {
        if by[axis].abs() > 1e-6 {
            *slot = (hint.unit.from_mm(place[axis]) * grid).round() / grid;
        }
    }
    (by.amax() > 1e-6).then(|| hint.view.moving(point, to))
}

/// How far a joint is from where a search has it, mm.
fn way(hint: &Hint<'_>, joint: TieRodJoint, rod: &TieRod) -> Vector {
    let there = Corner {
        tie_rod: *rod,
        ..*hint.corner
    };
    joint.place(&there) - joint.place(hint.corner)
}

/// Where the box may stand: beside the loupe, else in the corner that is left.
pub(crate) fn place(table: Rect, loupe: Option<Rect>, joint: Pos2) -> Pos2 {
    let height = 166.0;
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
    let room = Rect::from_min_size(at, vec2(WIDTH, 176.0));
    let mut child = ui.new_child(UiBuilder::new().id_salt("hint").max_rect(room));
    let rect = frame
        .show(&mut child, |ui| {
            ui.set_width(WIDTH - 20.0);
            ui.spacing_mut().item_spacing.y = 2.0;
            contents(ui, hint, requests);
        })
        .response
        .rect;
    landmark::mark(ui.ctx(), Landmark::Hint, rect);
    rect
}

fn contents(ui: &mut Ui, hint: &Hint<'_>, requests: &mut Vec<Request>) {
    let tokens = hint.tokens;
    let best = match &hint.advice.best {
        Ok(best) => best,
        Err(fault) => {
            let head = if hint.advice.waiting {
                "Looking for the best spot"
            } else {
                "No best spot"
            };
            ui.label(RichText::new(head).font(type_size::head()));
            ui.label(RichText::new(fault).small().color(tokens.ink_soft));
            return;
        }
    };
    let (exact, snapped) = (&best.exact, best.snapped.as_ref());
    let target = snapped.unwrap_or(exact);
    let (head, worthwhile) = headline(hint, &target.tie_rod, &target.score);
    for line in head {
        ui.label(RichText::new(line).font(type_size::head()));
    }
    ui.label(RichText::new(gain(hint, &target.score, worthwhile)).color(tokens.accent));
    if let Some(cause) = &hint.advice.cause {
        for line in causes(cause, hint.unit) {
            ui.label(RichText::new(line).small().color(tokens.ink_soft));
        }
    }
    if let Some(along) = hint.along {
        ui.label(RichText::new(along).small().color(tokens.caution));
    }
    let moves = |rod: &TieRod| {
        let mut ways = hint.advice.moving.iter().map(|&j| way(hint, j, rod).norm());
        ways.any(|w| w > 2e-3)
    };
    ui.horizontal(|ui| {
        if snapped.is_some() {
            let help = "Puts the joint at the best place in whole steps of the shop. One step; Undo takes it back.";
            let button = ui.add_enabled(worthwhile, Button::new("Move it there"));
            if worthwhile {
                landmark::mark(ui.ctx(), Landmark::MoveIt, button.rect);
            }
            if button.on_hover_text(help).clicked() {
                requests.push(move_to(hint, &target.tie_rod, true));
            }
        }
        let help = format!(
            "Puts the joint at the exact best place, {} of its own. One step; Undo takes it back.",
            figure(&best.exact.score, hint.scoring, hint.unit)
        );
        if ui.add_enabled(moves(&exact.tie_rod), Button::new("Exactly")).on_hover_text(help).clicked() {
            requests.push(move_to(hint, &exact.tie_rod, false));
        }
    });
}

/// The moves, and whether there is one that gains something.
fn headline(hint: &Hint<'_>, target: &TieRod, then: &Score) -> (Vec<String>, bool) {
    let both = hint.advice.moving.len() > 1;
    let lines = hint.advice.moving.iter().filter_map(|&joint| {
        let words = moves::in_words(way(hint, joint, target), hint.unit)?;
        let name = match joint {
            TieRodJoint::Inner => "inner",
            TieRodJoint::Outer => "outer",
        };
        Some(if both {
            format!("{name} {words}")
        } else {
            words
        })
    });
    let lines: Vec<String> = lines.collect();
    let better = hint
        .advice
        .now
        .is_none_or(|now| then.by(hint.scoring) < now.by(hint.scoring) - 1e-9);
    if better && !lines.is_empty() {
        return (lines, true);
    }
    let place = if both {
        "Both joints are at their best spot"
    } else {
        "The joint is at its best spot"
    };
    (vec![place.to_owned()], false)
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
    let name = match cause.joint {
        TieRodJoint::Inner => "inner",
        TieRodJoint::Outer => "outer",
    };
    if cause.height(LEAST_ERROR).is_some() {
        let word = if cause.height_error > 0.0 {
            "too high"
        } else {
            "too low"
        };
        lines.push(format!(
            "slope: {name} joint {} {word}",
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
