//! The drawer of measured parts: what was measured once, put into any build with one click.

use egui::Ui;
use trammel_build::{
    JointPart, LengthUnit, Part, PartKind, RackPart, SpindlePart, SpringPart, SteeringArm,
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

pub(super) fn ui(ui: &mut Ui, input: &NotebookInput<'_>, requests: &mut Vec<Request>) {
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
    for (index, part) in drawer.parts.iter().enumerate() {
        part_ui(ui, input, drawer, (index, part), requests);
    }
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

/// A figure of a part: word, value, whether it is a length, what to measure from where.
type Figure<'a> = (&'static str, &'a mut f64, bool, &'static str);

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
            for (label, value, length, help) in all {
                let takes = if length {
                    Takes::Length { default_mm: None }
                } else {
                    Takes::Number {
                        sign: "°",
                        default: None,
                    }
                };
                if let Some(Some(v)) = form.row(ui, label, Some(*value), takes, help) {
                    *value = v;
                }
            }
            if let PartKind::Rack(r) = &mut next.kind
                && let Some(thread) = form.text_row(
                    ui,
                    "End thread",
                    &r.end_thread,
                    "1/2-20",
                    "Thread of its ends.",
                )
            {
                r.end_thread = thread;
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

fn spindle(s: &mut SpindlePart) -> Vec<Figure<'_>> {
    vec![
        (
            "Ball-joint spacing",
            &mut s.ball_joint_spacing,
            true,
            "From the centre of the lower ball joint to that of the upper one.",
        ),
        (
            "Inclination",
            &mut s.inclination_deg,
            false,
            "Between the line through both ball joints and the wheel's plane, seen from the front; top leaning inboard is positive.",
        ),
        (
            "Spindle height",
            &mut s.spindle_height,
            true,
            "Up the steering axis from the lower ball joint to where the spindle's line crosses it.",
        ),
        (
            "Out to the wheel",
            &mut s.wheel_out,
            true,
            "From there out along the spindle to the wheel's centre plane.",
        ),
        (
            "Arm length",
            &mut s.arm_length,
            true,
            "From the steering axis to the hole of the steering arm, fore and aft, square to the axis.",
        ),
        (
            "Arm height",
            &mut s.arm_height,
            true,
            "Up the steering axis from the lower ball joint to that hole.",
        ),
        (
            "Arm outboard",
            &mut s.arm_out,
            true,
            "How far that hole is outboard of the steering axis; inboard is negative.",
        ),
    ]
}

fn rack(r: &mut RackPart) -> Vec<Figure<'_>> {
    vec![
        (
            "Joint to joint",
            &mut r.joint_to_joint,
            true,
            "Between the centres of the inner tie-rod joints, rack at its centre.",
        ),
        (
            "Travel each way",
            &mut r.travel,
            true,
            "From the centre to a stop.",
        ),
        (
            "Travel a turn",
            &mut r.travel_per_turn,
            true,
            "Travel for one turn of the pinion.",
        ),
    ]
}

fn spring(s: &mut SpringPart) -> Vec<Figure<'_>> {
    vec![
        (
            "Open",
            &mut s.open,
            true,
            "Between the centres of its eyes, fully extended.",
        ),
        (
            "Closed",
            &mut s.closed,
            true,
            "Between the centres of its eyes, on the bump stop.",
        ),
    ]
}

fn joint(j: &mut JointPart) -> Vec<Figure<'_>> {
    vec![
        (
            "Ball width",
            &mut j.ball_width,
            true,
            "Across the ball's flats, where the bolt goes through.",
        ),
        (
            "Swivel",
            &mut j.swivel_deg,
            false,
            "Either way from square, before the body meets the bolt or tab.",
        ),
    ]
}
