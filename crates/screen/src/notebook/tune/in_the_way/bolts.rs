//! Which way the joints' bolts stand, and what each way would see.

use egui::{Button, Grid, Label, RichText, Ui};
use trammel_analysis::{BoltStudy, Swivel};
use trammel_build::{AxleName, BoltAxis, Edit, JointBolts, defaults};
use trammel_tuning::TieRodJoint;

use super::super::super::{
    NotebookInput,
    form::{Form, Takes},
};
use crate::{
    request::Request,
    terms::{self, Told},
    tokens::type_size,
    view::View,
    words::decimal,
};

/// A bolt that takes this part of the present angle off is worth turning, as in the caution.
const WORTH_TURNING: f64 = 0.8;

pub(super) fn ui(ui: &mut Ui, input: &NotebookInput<'_>, view: &View, requests: &mut Vec<Request>) {
    let Some(studies) = input.tune.bolts() else {
        return;
    };
    ui.add_space(4.0);
    ui.label(RichText::new("Joint bolts").font(type_size::head()));
    let text = "A joint turns freely about its bolt. What it has little of is tilt: the rod out of the plane square to the bolt.";
    ui.add(Label::new(RichText::new(text).small().color(input.tokens.ink_soft)).wrap());
    for study in studies {
        joint(ui, input, view.axle, study, requests);
    }
}

fn joint_name(joint: TieRodJoint) -> &'static str {
    match joint {
        TieRodJoint::Inner => "Inner bolt",
        TieRodJoint::Outer => "Outer bolt",
    }
}

fn bolts(input: &NotebookInput<'_>, axle: AxleName) -> JointBolts {
    let spec = input.build.axle_spec(axle);
    spec.map(|s| s.joint_bolts).unwrap_or_default()
}

/// The edit that has a joint's bolt stand so.
fn turned(
    input: &NotebookInput<'_>,
    axle: AxleName,
    joint: TieRodJoint,
    bolt: Option<BoltAxis>,
) -> Request {
    let all = bolts(input, axle);
    let next = match joint {
        TieRodJoint::Inner => JointBolts { inner: bolt, ..all },
        TieRodJoint::Outer => JointBolts { outer: bolt, ..all },
    };
    Request::Edit(Edit::SetJointBolts(axle, next))
}

fn joint(
    ui: &mut Ui,
    input: &NotebookInput<'_>,
    axle: AxleName,
    study: &BoltStudy,
    requests: &mut Vec<Request>,
) {
    let name = joint_name(study.joint);
    let soft = |text: &str| RichText::new(text).small().color(input.tokens.ink_soft);
    Grid::new(("bolts", name))
        .num_columns(3)
        .spacing(egui::vec2(14.0, 2.0))
        .show(ui, |ui| {
            ui.label(RichText::new(name).strong());
            ui.label(soft("tilt")).on_hover_text(
                "The most that the rod is out of the plane square to the bolt, over the whole of travel and lock. A plain rod end takes 12° to 18° (common practice).",
            );
            ui.label(soft("turns freely"))
                .on_hover_text("How far the rod turns about the bolt from one end to the other. That costs nothing.");
            ui.end_row();
            for (option, label, swivel) in rows(study) {
                if row(ui, input, study, option, label, swivel) {
                    requests.push(turned(input, axle, study.joint, option));
                }
            }
        });
    if let Some(BoltAxis::Direction(direction)) = study.bolt {
        direction_rows(ui, input, axle, study.joint, direction, requests);
    }
    verdict(ui, input, axle, study, requests);
}

/// One row for each way: the bolt, its name and what it sees.
fn rows(study: &BoltStudy) -> Vec<(Option<BoltAxis>, &'static str, Option<Swivel>)> {
    let present = |here: bool| here.then_some(study.present);
    let own = match study.bolt {
        Some(bolt @ BoltAxis::Direction(_)) => Some(bolt),
        // What is typed next begins with the way that it stands now.
        other => Some(BoltAxis::Direction(
            other.map_or([1.0, 0.0, 0.0], |b| b.direction().into()),
        )),
    };
    let label = |axis: BoltAxis| match axis {
        BoltAxis::ForeAft => "fore-and-aft",
        BoltAxis::Vertical => "upright",
        BoltAxis::Lateral => "crosswise",
        BoltAxis::Direction(_) => "any way",
    };
    let mut rows = vec![(None, "not known", present(study.bolt.is_none()))];
    let plain = study.plain.iter();
    rows.extend(plain.map(|(axis, s)| (Some(*axis), label(*axis), Some(*s))));
    let typed = matches!(study.bolt, Some(BoltAxis::Direction(_)));
    rows.push((own, "any way", present(typed)));
    rows
}

/// Shows a row; whether it was chosen.
fn row(
    ui: &mut Ui,
    input: &NotebookInput<'_>,
    study: &BoltStudy,
    option: Option<BoltAxis>,
    label: &str,
    swivel: Option<Swivel>,
) -> bool {
    let tokens = input.tokens;
    let on = study.bolt == option;
    let text = RichText::new(label).size(12.0);
    let button = if on {
        Button::new(text.color(tokens.on_accent)).fill(tokens.accent)
    } else {
        Button::new(text)
    };
    let response = ui.add(button.corner_radius(10.0));
    let name = format!("{}: {label}", joint_name(study.joint));
    response.widget_info(|| egui::WidgetInfo::selected(egui::Role::RadioButton, true, on, &name));
    let degrees = |rad: f64| format!("{}°", decimal(rad.to_degrees(), 1));
    match swivel {
        Some(s) => {
            let past = s.most.to_degrees() > limit(input);
            let colour = if past { tokens.caution } else { tokens.ink };
            let mark = if past { " past" } else { "" };
            ui.label(RichText::new(format!("{}{mark}", degrees(s.most))).color(colour))
                .told(terms::JOINT_SWIVEL);
            ui.label(s.turn.map_or_else(String::new, degrees))
                .told(terms::BOLT_TURN);
        }
        None => {
            ui.label("");
            ui.label("");
        }
    }
    ui.end_row();
    response.clicked() && !on
}

fn limit(input: &NotebookInput<'_>) -> f64 {
    let own = input.build.limits.joint_angle_deg;
    own.unwrap_or(defaults::JOINT_ANGLE_LIMIT_DEG)
}

/// Three numbers for a bolt that stands any way.
fn direction_rows(
    ui: &mut Ui,
    input: &NotebookInput<'_>,
    axle: AxleName,
    joint: TieRodJoint,
    direction: [f64; 3],
    requests: &mut Vec<Request>,
) {
    let (title, names) = match joint {
        TieRodJoint::Inner => (
            "Along the inner bolt",
            ["Inner bolt, x", "Inner bolt, y", "Inner bolt, z"],
        ),
        TieRodJoint::Outer => (
            "Along the outer bolt",
            ["Outer bolt, x", "Outer bolt, y", "Outer bolt, z"],
        ),
    };
    let mut next = None;
    let mut form = Form {
        unit: input.build.unit,
        tokens: input.tokens,
        requests,
    };
    let takes = Takes::Number {
        sign: "",
        default: None,
    };
    form.group(ui, title, |form, ui| {
        for (n, name) in names.into_iter().enumerate() {
            let help = "Along the bolt on the left side, vehicle axes: x forward, y left, z up. Only the direction counts.";
            let typed = form.row(ui, name, direction.get(n).copied(), takes, help);
            if let Some(v) = typed.flatten() {
                let mut to = direction;
                if let Some(slot) = to.get_mut(n) {
                    *slot = v;
                }
                next = Some(to);
            }
        }
    });
    if let Some(to) = next {
        requests.push(turned(input, axle, joint, Some(BoltAxis::Direction(to))));
    }
}

/// What the present bolt sees against its limit, and the way that would see least, to be had with one click.
fn verdict(
    ui: &mut Ui,
    input: &NotebookInput<'_>,
    axle: AxleName,
    study: &BoltStudy,
    requests: &mut Vec<Request>,
) {
    let degrees = |s: &Swivel| format!("{}°", decimal(s.most.to_degrees(), 1));
    let on = |axis| study.plain.iter().find(|(a, _)| *a == axis).map(|(_, s)| s);
    let limit_text = format!("{}°", decimal(limit(input), 0));
    if let (Some(upright), Some(along)) = (on(BoltAxis::Vertical), on(BoltAxis::ForeAft)) {
        let text = format!(
            "An upright bolt tilts {}, a fore-and-aft one {}; limit {limit_text}.",
            degrees(upright),
            degrees(along)
        );
        ui.add(Label::new(RichText::new(text).small().color(input.tokens.ink_soft)).wrap());
    }
    let least = study
        .plain
        .iter()
        .min_by(|a, b| a.1.most.total_cmp(&b.1.most));
    let worthwhile = least.filter(|(_, s)| s.most < WORTH_TURNING * study.present.most);
    if let Some((axis, then)) = worthwhile {
        let text = format!(
            "Turn the {} {}: {} becomes {}",
            joint_name(study.joint).to_lowercase(),
            axis.words(),
            degrees(&study.present),
            degrees(then)
        );
        let help = "One step; Undo takes it back.";
        if ui.button(text).on_hover_text(help).clicked() {
            requests.push(turned(input, axle, study.joint, Some(*axis)));
        }
    }
}
