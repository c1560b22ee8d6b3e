//! Figures of an axle's corners: wheel, travel, spring unit.

use egui::Ui;
use trammel_analysis::Study;
use trammel_build::{
    AxleName, AxleSpec, Edit, LengthUnit, SpringRate, SpringSpec, TravelSpec, WheelSpec, begin,
    defaults,
};
use trammel_geometry::ArmName;

use super::super::form::{Field, Form, Takes, Typed, word};

const DEGREES: Takes = Takes::Number {
    sign: "°",
    default: None,
};

pub(super) fn wheel(ui: &mut Ui, form: &mut Form<'_>, spec: &AxleSpec, axle: AxleName) {
    let wheel = spec.wheel;
    // None of these may be left empty, so something typed is always a number.
    let fields: [Field<WheelSpec>; 3] = [
        Field {
            label: "Loaded radius",
            value: Some(wheel.loaded_radius),
            takes: Takes::Length { default_mm: None },
            help: "From the wheel centre to the ground with the vehicle's weight on the tyre.",
            set: |w, v| w.loaded_radius = v.unwrap_or(w.loaded_radius),
        },
        Field {
            label: "Static toe",
            value: Some(wheel.toe_deg),
            takes: DEGREES,
            help: "Of each wheel. Positive: the front of the wheel points in.",
            set: |w, v| w.toe_deg = v.unwrap_or(w.toe_deg),
        },
        Field {
            label: "Static camber",
            value: Some(wheel.camber_deg),
            takes: DEGREES,
            help: "Negative: the top of the wheel leans in.",
            set: |w, v| w.camber_deg = v.unwrap_or(w.camber_deg),
        },
    ];
    form.group(ui, "Wheel", |form, ui| {
        form.fields(ui, &wheel, |w| Edit::SetWheel(axle, w), &fields);
    });
}

pub(super) fn travel(
    ui: &mut Ui,
    form: &mut Form<'_>,
    spec: &AxleSpec,
    study: &Study,
    axle: AxleName,
) {
    let each_way = defaults::TRAVEL_EACH_WAY_MM;
    let now = study.axle(axle).map(|a| a.model.travel);
    let (bump_mm, droop_mm) = now.map_or((each_way, each_way), |t| (t.bump, -t.droop));
    let unit = form.unit;
    let help = "Wheel travel between the stops. Left empty, the spring unit's lengths set it, or 3 in (76 mm) each way.";
    form.group(ui, "Travel", |form, ui| {
        // One way typed fixes the other where it is now; one way emptied leaves both to the spring unit.
        let set = |bump: Typed, droop: Typed| {
            let spec = TravelSpec {
                bump: bump.unwrap_or(unit.from_mm(bump_mm)),
                droop: droop.unwrap_or(unit.from_mm(droop_mm)),
            };
            Edit::SetTravel(axle, (bump.is_some() || droop.is_some()).then_some(spec))
        };
        let (bump, droop) = (spec.travel.map(|t| t.bump), spec.travel.map(|t| t.droop));
        if let Some(v) = form.row(ui, "Bump", bump, Takes::length_or(bump_mm.abs()), help) {
            form.edit(set(v, v.and(droop)));
        }
        if let Some(v) = form.row(ui, "Droop", droop, Takes::length_or(droop_mm.abs()), help) {
            form.edit(set(v.and(bump), v));
        }
    });
}

pub(super) fn spring_unit(ui: &mut Ui, form: &mut Form<'_>, spec: &AxleSpec, axle: AxleName) {
    let Some(spring) = spec.spring else {
        let help = "Puts one between lower arm and chassis to begin with; drag its mounts to where they are.";
        if ui.button("Add a spring unit").on_hover_text(help).clicked() {
            let spring = begin::spring_unit(spec, form.unit);
            form.edit(Edit::SetSpring(axle, Some(spring)));
        }
        return;
    };
    let set = move |s: SpringSpec| Edit::SetSpring(axle, Some(s));
    let fields: [Field<SpringSpec>; 2] = [
        Field {
            label: "Open length",
            value: spring.open_length,
            takes: Takes::MaybeLength,
            help: "Between the mounts, fully extended: it sets the droop travel.",
            set: |s, v| s.open_length = v,
        },
        Field {
            label: "Closed length",
            value: spring.closed_length,
            takes: Takes::MaybeLength,
            help: "Between the mounts, on its bump stop: it sets the bump travel.",
            set: |s, v| s.closed_length = v,
        },
    ];
    form.group(ui, "Spring unit", |form, ui| {
        word(ui, "Stands on", "The arm that carries the spring unit.");
        ui.horizontal(|ui| {
            for (arm, word) in [(ArmName::Lower, "lower arm"), (ArmName::Upper, "upper arm")] {
                if ui.selectable_label(spring.arm == arm, word).clicked() && spring.arm != arm {
                    form.edit(set(SpringSpec { arm, ..spring }));
                }
            }
        });
        ui.end_row();
        form.fields(ui, &spring, set, &fields);
        form.fields(ui, &spring, set, &[rate(spring, form.unit)]);
    });
    if ui.button("Take the spring unit out").clicked() {
        form.edit(Edit::SetSpring(axle, None));
    }
}

/// The spring rate in the unit it was typed in, or in the one that goes with the build's.
fn rate(spring: SpringSpec, unit: LengthUnit) -> Field<SpringSpec> {
    let (value, in_pounds) = match (spring.rate, unit) {
        (Some(SpringRate::PoundsPerInch(v)), _) => (Some(v), true),
        (Some(SpringRate::NewtonsPerMillimetre(v)), _) => (Some(v), false),
        (None, unit) => (None, unit == LengthUnit::Inch),
    };
    let set: fn(&mut SpringSpec, Typed) = if in_pounds {
        |s, v| s.rate = v.map(SpringRate::PoundsPerInch)
    } else {
        |s, v| s.rate = v.map(SpringRate::NewtonsPerMillimetre)
    };
    Field {
        label: "Spring rate",
        value,
        takes: Takes::MaybeNumber {
            sign: if in_pounds { "lb/in" } else { "N/mm" },
        },
        help: "Force for each inch or millimetre that the spring shortens.",
        set,
    }
}
