//! What is in the way of the joint: limits passed, keep-outs, and how its bolts stand.

mod bolts;
mod keep_outs;

use egui::{Label, RichText, Ui};
use trammel_analysis::{AxleStudy, QuickLook};
use trammel_geometry::Point;
use trammel_tuning::{Scoring, TieRodJoint};

use super::super::{NotebookInput, steady::steady};
use crate::{
    request::Request,
    tokens::type_size,
    tune::{
        hint::factor,
        mapped_point, place_in_words, plane,
        points::EXACT,
        settings::{scoring_label, whole_steps},
    },
    view::View,
    words::decimal,
};

/// Room for what is told about the joint's place and the clear area: a head, four lines, a switch and a row of buttons, points.
const FEWEST_LINES: f32 = 142.0;

pub(super) fn ui(
    ui: &mut Ui,
    input: &NotebookInput<'_>,
    axle: &AxleStudy,
    view: &mut View,
    requests: &mut Vec<Request>,
) {
    ui.spacing_mut().item_spacing.y = 4.0;
    ui.set_max_width(ui.available_width());
    let waiting = !input.tune.inside_is_current();
    let least = if view.tune.clear_area {
        FEWEST_LINES
    } else {
        0.0
    };
    steady(ui, "what is in the way", waiting, least, |ui| {
        here(ui, input, axle, view);
        inside(ui, input, view, requests);
    });
    keep_outs::ui(ui, input, view, requests);
    bolts::ui(ui, input, view, requests);
}

fn joint_word(view: &View) -> &'static str {
    match view.tune.joint {
        TieRodJoint::Inner => "inner joint",
        TieRodJoint::Outer => "outer joint",
    }
}

/// What forbids the joint's present place.
fn here(ui: &mut Ui, input: &NotebookInput<'_>, axle: &AxleStudy, view: &View) {
    let tokens = input.tokens;
    let place = view
        .tune
        .joint
        .place(axle.model.linkage(view.side).corner());
    let joint = joint_word(view);
    ui.label(RichText::new(format!("Where the {joint} is")).font(type_size::head()));
    let help = "Rack-end factor, swivel and keep-outs where the joint is now, over travel and lock in coarse steps; the cautions below have the exact figures. On the map they are worked out at some places and read off between them.";
    let look = QuickLook::of(input.build, &axle.model, view.side);
    let text = match input.tune.blocks_here(view.tune.joint, place, &look) {
        None => "Being worked out.".to_owned(),
        Some(reasons) if reasons.is_empty() => {
            "Nothing that was looked at is in the way: rack end, swivel, keep-outs.".to_owned()
        }
        Some(reasons) => format!("In the way: {}.", reasons.join("; ")),
    };
    ui.add(Label::new(RichText::new(text).color(tokens.ink)).wrap())
        .on_hover_text(help);
}

/// Whether the valley crosses the clear area, and the best place inside it.
fn inside(ui: &mut Ui, input: &NotebookInput<'_>, view: &mut View, requests: &mut Vec<Request>) {
    let unit = input.build.unit;
    ui.horizontal(|ui| {
        let help = "Stripes on the map where the rack end or the joint is past its limit, or a keep-out is in the way.";
        ui.checkbox(&mut view.tune.clear_area, "Show it on the map")
            .on_hover_text(help);
    });
    if !view.tune.clear_area || input.tune.clear().is_none() {
        return;
    }
    let Some(best) = input.tune.inside(unit) else {
        let text = "No whole step on this map is clear of everything. A wider map may hold one.";
        ui.add(Label::new(text).wrap());
        return;
    };
    let crossing = if best.crossed {
        "The valley crosses the clear area"
    } else {
        "The valley does not cross the clear area on this map"
    };
    let per = match view.tune.scoring {
        Scoring::Slope => match unit {
            trammel_build::LengthUnit::Inch => " per in",
            trammel_build::LengthUnit::Millimetre => " per 25 mm",
        },
        Scoring::Largest | Scoring::Rms => "",
    };
    let place = view.side.place_in_vehicle(best.place);
    let text = format!(
        "{crossing}. Best inside, in whole steps: {}, {} toe change about {}°{per}.",
        place_in_words(view.tune.plane, place, unit),
        scoring_label(view.tune.scoring),
        decimal(f64::from(best.score), 2),
    );
    ui.add(Label::new(text).wrap());
    ui.horizontal_wrapped(|ui| {
        let help = "Puts the joint at the best clear place in whole steps of the shop. One step; Undo takes it back.";
        if ui.button("Move it inside").on_hover_text(help).clicked() {
            requests.extend(put(input, view, place, &|mm| whole_steps(mm, unit)));
        }
        let Some((exact, score)) = input.tune.inside_exactly() else {
            return;
        };
        let exact = view.side.place_in_vehicle(exact);
        let figure = decimal(score * factor(view.tune.scoring, unit), 2);
        let help = format!(
            "Puts the joint at the exact best clear place on this map: {figure}°{per}. One step; Undo takes it back."
        );
        if ui.button("Exactly inside").on_hover_text(help).clicked() {
            let fine = |mm: f64| (unit.from_mm(mm) * EXACT).round() / EXACT;
            requests.extend(put(input, view, exact, &fine));
        }
        let soft = RichText::new(format!("exactly {figure}°{per}")).small();
        ui.label(soft.color(input.tokens.ink_soft));
    });
}

/// The request that puts the mapped joint in a place of the map's plane, mm, written as `typed` has it.
fn put(
    input: &NotebookInput<'_>,
    view: &View,
    place: Point,
    typed: &dyn Fn(f64) -> f64,
) -> Option<Request> {
    let point = mapped_point(view);
    let mut to = input.build.point(point)?;
    for axis in plane::axes(view.tune.plane) {
        to[axis.index()] = typed(place[axis.index()]);
    }
    Some(Request::EditAs {
        name: format!("Move {} into the clear area", joint_word(view)),
        edits: vec![view.moving(point, to)],
    })
}
