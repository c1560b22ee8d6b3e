//! What is in the way of the joint: limits passed, keep-outs, and how its bolts stand.

mod bolts;
mod keep_outs;

use egui::{Label, RichText, Ui};
use trammel_analysis::AxleStudy;
use trammel_tuning::{Scoring, TieRodJoint};

use super::super::NotebookInput;
use crate::{
    request::Request,
    tokens::type_size,
    tune::{
        in_vehicle, mapped_point,
        settings::{scoring_label, whole_steps},
    },
    view::View,
    words::{decimal, tape},
};

pub(super) fn ui(
    ui: &mut Ui,
    input: &NotebookInput<'_>,
    axle: &AxleStudy,
    view: &mut View,
    requests: &mut Vec<Request>,
) {
    ui.spacing_mut().item_spacing.y = 4.0;
    ui.set_max_width(ui.available_width());
    here(ui, input, axle, view);
    inside(ui, input, view, requests);
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
    let help = "Rack-end factor, swivel and keep-outs at the joint's place. Rack end and swivel are looked at on a coarse grid here; the cautions below have the exact figures.";
    let text = match input.tune.blocks_at(place) {
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
    let place = in_vehicle(view.side, best.place);
    let text = format!(
        "{crossing}. Best inside, in whole steps: y {}, z {}, {} toe change about {}°{per}.",
        tape(place.y, unit),
        tape(place.z, unit),
        scoring_label(view.tune.scoring),
        decimal(f64::from(best.score), 2),
    );
    ui.add(Label::new(text).wrap());
    let help = "Puts the joint at the best clear place in whole steps of the shop. One step; Undo takes it back.";
    let button = ui.button("Move it inside").on_hover_text(help);
    let point = mapped_point(view);
    let typed = input.build.point(point);
    if let Some(mut to) = typed.filter(|_| button.clicked()) {
        to[1] = whole_steps(place.y, unit);
        to[2] = whole_steps(place.z, unit);
        requests.push(Request::EditAs {
            name: format!("Move {} into the clear area", joint_word(view)),
            edits: vec![view.moving(point, to)],
        });
    }
}
