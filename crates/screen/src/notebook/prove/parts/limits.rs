//! The factors, gaps and forces that the proof wants kept.

use egui::Ui;
use trammel_build::{
    Edit, Force, Limits,
    defaults::{self, NEWTONS_PER_POUND_FORCE},
};

use super::{
    super::super::form::{Field, Form, Takes},
    in_pounds, typed_force,
};

pub(super) fn ui(ui: &mut Ui, form: &mut Form<'_>, limits: Limits) {
    let fields: [Field<Limits>; 6] = [
        Field {
            label: "Rack-end factor",
            value: limits.rack_end_factor,
            takes: Takes::number_or("×", defaults::RACK_END_FACTOR),
            help: "Wanted yield strength over stress in the rack end.",
            set: |l, v| l.rack_end_factor = v,
        },
        Field {
            label: "Factor of other parts",
            value: limits.strength_factor,
            takes: Takes::number_or("×", defaults::STRENGTH_FACTOR),
            help: "Wanted against yield, buckling and rupture in every other part.",
            set: |l, v| l.strength_factor = v,
        },
        Field {
            label: "Gap",
            value: limits.clearance,
            takes: Takes::length_or(defaults::CLEARANCE_MM),
            help: "Wanted between parts that pass each other.",
            set: |l, v| l.clearance = v,
        },
        Field {
            label: "Toe from bending",
            value: limits.rack_end_toe_deg,
            takes: Takes::number_or("°", defaults::RACK_END_TOE_LIMIT_DEG),
            help: "Toe that the rack end's bending may cost.",
            set: |l, v| l.rack_end_toe_deg = v,
        },
        hand_force(limits, form),
        kick_back(limits, form),
    ];
    form.group(ui, "Where the proof's cautions begin", |form, ui| {
        form.fields(ui, &limits, Edit::SetLimits, &fields);
    });
}

/// What a force field takes, in pounds-force or newtons.
fn takes(pounds: bool, default_n: f64) -> Takes {
    if pounds {
        Takes::number_or("lbf", (default_n / NEWTONS_PER_POUND_FORCE).round())
    } else {
        Takes::number_or("N", default_n)
    }
}

fn hand_force(limits: Limits, form: &Form<'_>) -> Field<Limits> {
    let pounds = in_pounds(limits.hand_force, form.unit);
    Field {
        label: "Force of the hands",
        value: typed_force(limits.hand_force),
        takes: takes(pounds, defaults::HAND_FORCE_N),
        help: "Greatest force at the rim of the steering wheel that is asked of the driver.",
        set: if pounds {
            |l, v| l.hand_force = v.map(Force::PoundsForce)
        } else {
            |l, v| l.hand_force = v.map(Force::Newtons)
        },
    }
}

fn kick_back(limits: Limits, form: &Form<'_>) -> Field<Limits> {
    let pounds = in_pounds(limits.kick_back, form.unit);
    Field {
        label: "Kick-back",
        value: typed_force(limits.kick_back),
        takes: takes(pounds, defaults::KICK_BACK_N),
        help: "Greatest force with which a hit may tear at the rim of the steering wheel.",
        set: if pounds {
            |l, v| l.kick_back = v.map(Force::PoundsForce)
        } else {
            |l, v| l.kick_back = v.map(Force::Newtons)
        },
    }
}
