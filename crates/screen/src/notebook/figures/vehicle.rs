//! Figures of the whole vehicle: weight and wheelbase, limits, title, notes.

use egui::Ui;
use trammel_build::{Build, Edit, LengthUnit, Limits, Mass, Vehicle, begin, defaults};

use super::super::{
    NotebookInput,
    form::{Field, Form, Takes, Typed},
};
use crate::request::Request;

/// A way to a rear axle, and out of it.
pub(super) fn rear_axle(ui: &mut Ui, form: &mut Form<'_>, build: &Build) {
    if build.rear.is_some() {
        let help = "The rear end goes out of the build; Undo brings it back.";
        if ui
            .button("Take the rear axle out")
            .on_hover_text(help)
            .clicked()
        {
            form.edit(Edit::SetRear(None));
        }
        return;
    }
    let help = "Begins with the front one a wheelbase farther back, its tie rod a toe link; then drag, type or survey its points.";
    if ui.button("Add a rear axle").on_hover_text(help).clicked() {
        form.edit(Edit::SetRear(Some(Box::new(begin::rear_axle(build)))));
    }
}

pub(super) fn vehicle(ui: &mut Ui, form: &mut Form<'_>, vehicle: Vehicle) {
    let fields: [Field<Vehicle>; 4] = [
        Field {
            label: "Wheelbase",
            value: vehicle.wheelbase,
            takes: Takes::length_or(defaults::WHEELBASE_MM),
            help: "Between the axles.",
            set: |v, typed| v.wheelbase = typed,
        },
        mass(vehicle, form.unit),
        Field {
            label: "Front share of weight",
            value: vehicle.front_share,
            takes: Takes::number_or("0 to 1", defaults::FRONT_SHARE),
            help: "Part of the weight on the front axle, driver aboard.",
            set: |v, typed| v.front_share = typed,
        },
        Field {
            label: "Centre-of-gravity height",
            value: vehicle.centre_of_gravity_height,
            takes: Takes::length_or(defaults::CENTRE_OF_GRAVITY_HEIGHT_MM),
            help: "Above the ground, driver aboard.",
            set: |v, typed| v.centre_of_gravity_height = typed,
        },
    ];
    form.group(ui, "Vehicle", |form, ui| {
        form.fields(ui, &vehicle, Edit::SetVehicle, &fields);
    });
}

/// The mass in the unit it was typed in, or in the one that goes with the build's.
fn mass(vehicle: Vehicle, unit: LengthUnit) -> Field<Vehicle> {
    let (value, in_pounds) = match (vehicle.mass, unit) {
        (Some(Mass::Pounds(v)), _) => (Some(v), true),
        (Some(Mass::Kilograms(v)), _) => (Some(v), false),
        (None, unit) => (None, unit == LengthUnit::Inch),
    };
    let (takes, set): (Takes, fn(&mut Vehicle, Typed)) = if in_pounds {
        let pounds = (defaults::MASS_KG / defaults::KILOGRAMS_PER_POUND).round();
        (Takes::number_or("lb", pounds), |v, typed| {
            v.mass = typed.map(Mass::Pounds);
        })
    } else {
        (Takes::number_or("kg", defaults::MASS_KG), |v, typed| {
            v.mass = typed.map(Mass::Kilograms);
        })
    };
    Field {
        label: "All-up mass",
        value,
        takes,
        help: "Vehicle, driver, fuel.",
        set,
    }
}

pub(super) fn limits(ui: &mut Ui, form: &mut Form<'_>, limits: Limits) {
    let fields: [Field<Limits>; 5] = [
        Field {
            label: "Toe change",
            value: limits.toe_change_deg,
            takes: Takes::number_or("°", defaults::TOE_CHANGE_LIMIT_DEG),
            help: "Greatest toe change of a wheel over its travel.",
            set: |l, v| l.toe_change_deg = v,
        },
        Field {
            label: "Tie-rod angle",
            value: limits.tie_rod_angle_deg,
            takes: Takes::number_or("°", defaults::TIE_ROD_ANGLE_LIMIT_DEG),
            help: "Between tie rod and rack.",
            set: |l, v| l.tie_rod_angle_deg = v,
        },
        Field {
            label: "Joint swivel",
            value: limits.joint_angle_deg,
            takes: Takes::number_or("°", defaults::JOINT_ANGLE_LIMIT_DEG),
            help: "What the tie-rod joints can swivel: see their maker's sheet.",
            set: |l, v| l.joint_angle_deg = v,
        },
        Field {
            label: "Rack-end factor",
            value: limits.rack_end_factor,
            takes: Takes::number_or("×", defaults::RACK_END_FACTOR),
            help: "Wanted yield strength over stress in the rack end.",
            set: |l, v| l.rack_end_factor = v,
        },
        Field {
            label: "Lock-over margin",
            value: limits.lock_over_deg,
            takes: Takes::number_or("°", defaults::LOCK_OVER_LIMIT_DEG),
            help: "Least angle between tie rod and steering arm at any travel and lock.",
            set: |l, v| l.lock_over_deg = v,
        },
    ];
    form.group(ui, "Where cautions begin", |form, ui| {
        form.fields(ui, &limits, Edit::SetLimits, &fields);
    });
}

pub(super) fn title(ui: &mut Ui, form: &mut Form<'_>, title: &str) {
    form.group(ui, "Build", |form, ui| {
        if let Some(t) = form.text_row(ui, "Title", title, "", "What you call this build.") {
            form.edit(Edit::SetTitle(t));
        }
    });
}

/// Free text, taken as one step when the typing is finished.
pub(super) fn notes(ui: &mut Ui, input: &NotebookInput<'_>, requests: &mut Vec<Request>) {
    let label = ui.label("Notes");
    let kept = ui.scope_id().with("notes being typed");
    let mut text = ui
        .data(|d| d.get_temp::<String>(kept))
        .unwrap_or_else(|| input.build.notes.clone());
    let edit = egui::TextEdit::multiline(&mut text)
        .desired_rows(3)
        .desired_width(f32::INFINITY);
    let response = ui.add(edit).labelled_by(label.id);
    if response.lost_focus() {
        ui.data_mut(|d| d.remove::<String>(kept));
        if text != input.build.notes {
            requests.push(Request::Edit(Edit::SetNotes(text)));
        }
    } else if response.has_focus() {
        ui.data_mut(|d| d.insert_temp(kept, text));
    }
}
