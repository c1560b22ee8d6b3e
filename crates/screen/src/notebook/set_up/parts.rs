//! The drawer of measured parts: what was measured once, put into any build with one click.

use egui::Ui;
use trammel_analysis::Study;
use trammel_build::{
    Force, JointPart, LengthUnit, Part, PartKind, RackPart, SpindlePart, SpringPart, SpringRate,
    SteeringArm,
    measuring_guide::{self as guide, Measure},
};
use trammel_persistence::Drawer;

use super::{
    super::{
        NotebookInput,
        form::{Form, Takes},
        tune::choice,
    },
    ask, soft,
};
use crate::{
    number_field::name_node,
    request::Request,
    set_up::drawer::{NewPart, PartAsk},
};

pub(super) fn ui(
    ui: &mut Ui,
    input: &NotebookInput<'_>,
    study: &Study,
    requests: &mut Vec<Request>,
) {
    let drawer = match input.set_up.drawer() {
        None => return,
        Some(Err(why)) => return ask(ui, input, why),
        Some(Ok(drawer)) => drawer,
    };
    soft(
        ui,
        input,
        "Parts that you measure once and use again, kept in your own folder. Measure between centres of balls and holes, not bolt heads.",
    );
    ui.horizontal_wrapped(|ui| {
        ui.label("Add a");
        for kind in NewPart::ALL {
            if ui.button(kind.label()).clicked() {
                let mut next = drawer.clone();
                next.parts.push(kind.begun(input.build));
                requests.push(Request::Parts(PartAsk::Keep(next)));
            }
        }
    });
    let help = "What to measure on each kind of part, from where to where, with columns to write in, as a PDF.";
    if ui.button("Measuring sheet…").on_hover_text(help).clicked() {
        requests.push(Request::SaveMeasuringSheet);
    }
    for (index, part) in drawer.parts.iter().enumerate() {
        part_ui(ui, input, drawer, (index, part), requests);
    }
    super::sides::ui(ui, input, study);
}

fn part_ui(
    ui: &mut Ui,
    input: &NotebookInput<'_>,
    drawer: &Drawer,
    (index, part): (usize, &Part),
    requests: &mut Vec<Request>,
) {
    let mut changed: Option<Part> = None;
    egui::CollapsingHeader::new(&part.name)
        .id_salt(("part", index))
        .default_open(drawer.parts.len() < 3)
        .show(ui, |ui| {
            ui.push_id(index, |ui| {
                changed = figures(ui, input, part, requests);
                ui.horizontal(|ui| {
                    let put = ui.button("Put into the build");
                    name_node(ui, put.id, &format!("Put {} into the build", part.name));
                    let help = "One step; where the part decides, the right side becomes the left's mirror image. Undo takes it back.";
                    if put.on_hover_text(help).clicked() {
                        requests.push(Request::Parts(PartAsk::Put(Box::new(part.clone()))));
                    }
                    let out = ui.button("Take out of the drawer");
                    name_node(ui, out.id, &format!("Take {} out of the drawer", part.name));
                    if out.clicked() {
                        let mut next = drawer.clone();
                        next.parts.remove(index);
                        requests.push(Request::Parts(PartAsk::Keep(next)));
                    }
                });
            });
        });
    if let Some(part) = changed {
        let mut next = drawer.clone();
        if let Some(slot) = next.parts.get_mut(index) {
            *slot = part;
            requests.push(Request::Parts(PartAsk::Keep(next)));
        }
    }
}

/// A figure of a part: what to measure from where, its value, what it takes.
type Figure<'a> = (&'static Measure, &'a mut f64, Takes);

const LENGTH: Takes = Takes::Length { default_mm: None };
const DEGREES: Takes = Takes::Number {
    sign: "°",
    default: None,
};

fn figures(
    ui: &mut Ui,
    input: &NotebookInput<'_>,
    part: &Part,
    requests: &mut Vec<Request>,
) -> Option<Part> {
    let mut next = part.clone();
    let mut form = Form {
        unit: part.unit,
        tokens: input.tokens,
        requests,
    };
    if part.unit != input.build.unit {
        let unit = if part.unit == LengthUnit::Inch {
            "inches"
        } else {
            "millimetres"
        };
        soft(
            ui,
            input,
            &format!("Measured in {unit}; it is converted when it is put in."),
        );
    }
    egui::Grid::new("part")
        .num_columns(3)
        .spacing(egui::vec2(8.0, 3.0))
        .show(ui, |ui| {
            if let Some(name) = form.text_row(ui, "Name", &part.name, "", "What you call it.")
                && !name.is_empty()
            {
                next.name = name;
            }
            let all = match &mut next.kind {
                PartKind::Spindle(s) => spindle(s),
                PartKind::Rack(r) => rack(r),
                PartKind::Spring(s) => spring(s),
                PartKind::Joint(j) => joint(j),
            };
            for (measure, value, takes) in all {
                if let Some(Some(v)) = form.row(ui, measure.what, Some(*value), takes, measure.how)
                {
                    *value = v;
                }
            }
            optional(&mut form, ui, part.unit, &mut next.kind);
            let help = "Where it came from, what it was on, what is worn.";
            if let Some(notes) = form.text_row(ui, "Notes", &part.notes, "", help) {
                next.notes = notes;
            }
        });
    if let PartKind::Spindle(s) = &mut next.kind {
        let options = [
            (
                SteeringArm::Behind,
                "behind",
                "The steering arm points behind the steering axis.",
            ),
            (
                SteeringArm::Ahead,
                "ahead",
                "The steering arm points ahead of the steering axis.",
            ),
        ];
        if let Some(arm) = choice(
            ui,
            input.tokens,
            "Steering arm",
            "Which way it points.",
            &options,
            s.arm,
        ) {
            s.arm = arm;
        }
    }
    (next != *part).then_some(next)
}

/// What may be unknown: the thread and hard teeth of a rack, a spring's rate, a joint's rating.
fn optional(form: &mut Form<'_>, ui: &mut Ui, unit: LengthUnit, kind: &mut PartKind) {
    match kind {
        PartKind::Spindle(_) => {}
        PartKind::Rack(r) => {
            let help = "Diameter and pitch by a thread gauge.";
            if let Some(thread) = form.text_row(ui, "End thread", &r.end_thread, "1/2-20", help) {
                r.end_thread = thread;
            }
            let hard = &guide::RACK[3];
            if let Some(v) = form.row(ui, hard.what, r.hard_to, Takes::MaybeLength, hard.how) {
                r.hard_to = v;
            }
        }
        PartKind::Spring(s) => {
            let rate = &guide::SPRING[2];
            let (now, sign, new): (_, _, fn(f64) -> SpringRate) = match (s.rate, unit) {
                (Some(SpringRate::PoundsPerInch(v)), _) => {
                    (Some(v), "lb/in", SpringRate::PoundsPerInch)
                }
                (Some(SpringRate::NewtonsPerMillimetre(v)), _) => {
                    (Some(v), "N/mm", SpringRate::NewtonsPerMillimetre)
                }
                (None, LengthUnit::Inch) => (None, "lb/in", SpringRate::PoundsPerInch),
                (None, LengthUnit::Millimetre) => (None, "N/mm", SpringRate::NewtonsPerMillimetre),
            };
            let takes = Takes::MaybeNumber { sign };
            if let Some(v) = form.row(ui, rate.what, now, takes, rate.how) {
                s.rate = v.map(new);
            }
        }
        PartKind::Joint(j) => {
            let rating = &guide::JOINT[2];
            let (sign, newtons) = match unit {
                LengthUnit::Inch => ("lbf", Force::PoundsForce(1.0).n()),
                LengthUnit::Millimetre => ("N", 1.0),
            };
            let now = j.rating.map(|v| (v / newtons * 1e3).round() / 1e3);
            let takes = Takes::MaybeNumber { sign };
            if let Some(v) = form.row(ui, rating.what, now, takes, rating.how) {
                j.rating = v.map(|v| v * newtons);
            }
        }
    }
}

fn spindle(s: &mut SpindlePart) -> Vec<Figure<'_>> {
    let [
        spacing,
        inclination,
        height,
        out,
        length,
        arm_height,
        arm_out,
    ] = &guide::SPINDLE;
    vec![
        (spacing, &mut s.ball_joint_spacing, LENGTH),
        (inclination, &mut s.inclination_deg, DEGREES),
        (height, &mut s.spindle_height, LENGTH),
        (out, &mut s.wheel_out, LENGTH),
        (length, &mut s.arm_length, LENGTH),
        (arm_height, &mut s.arm_height, LENGTH),
        (arm_out, &mut s.arm_out, LENGTH),
    ]
}

fn rack(r: &mut RackPart) -> Vec<Figure<'_>> {
    let [joints, travel, turn, _] = &guide::RACK;
    vec![
        (joints, &mut r.joint_to_joint, LENGTH),
        (travel, &mut r.travel, LENGTH),
        (turn, &mut r.travel_per_turn, LENGTH),
    ]
}

fn spring(s: &mut SpringPart) -> Vec<Figure<'_>> {
    let [open, closed, _] = &guide::SPRING;
    vec![(open, &mut s.open, LENGTH), (closed, &mut s.closed, LENGTH)]
}

fn joint(j: &mut JointPart) -> Vec<Figure<'_>> {
    let [ball, swivel, _] = &guide::JOINT;
    vec![
        (ball, &mut j.ball_width, LENGTH),
        (swivel, &mut j.swivel_deg, DEGREES),
    ]
}
