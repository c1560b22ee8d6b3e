//! Room that wheel and spring unit take; the steering wheel.

use egui::Ui;
use trammel_build::{AxleName, AxleSpec, Edit, PartsEdit, SteeringSpec, WheelParts, defaults};

use super::super::super::form::{Field, Form, Takes};

pub(super) fn ui(ui: &mut Ui, form: &mut Form<'_>, spec: &AxleSpec, axle: AxleName) {
    let wheel = spec.parts.wheel;
    let radius = spec.wheel.loaded_radius * form.unit.mm();
    form.group(ui, "Rim and tyre", |form, ui| {
        let edit = |w| Edit::Parts(PartsEdit::Wheel(axle, w));
        form.fields(ui, &wheel, edit, &fields(wheel, radius));
    });
    form.group(ui, "Spring unit", |form, ui| {
        let takes = Takes::length_or(defaults::SPRING_DIAMETER_MM);
        let help = "Over its coil.";
        let now = spec.parts.spring_diameter;
        if let Some(v) = form.row(ui, "Diameter over coil", now, takes, help) {
            form.edit(Edit::Parts(PartsEdit::SpringDiameter(axle, v)));
        }
    });
}

fn fields(wheel: WheelParts, radius: f64) -> [Field<WheelParts>; 5] {
    [
        Field {
            label: "Rim diameter",
            value: wheel.rim_diameter,
            takes: Takes::length_or(defaults::RIM_DIAMETER_MM),
            help: "Outer diameter: hits on the rim act there.",
            set: |w, v| w.rim_diameter = v,
        },
        Field {
            label: "Rim width",
            value: wheel.rim_width,
            takes: Takes::length_or(defaults::RIM_WIDTH_MM),
            help: "Between the flanges.",
            set: |w, v| w.rim_width = v,
        },
        Field {
            label: "Rim thickness",
            value: wheel.rim_thickness,
            takes: Takes::length_or(defaults::RIM_THICKNESS_MM),
            help: "Of the rim's metal.",
            set: |w, v| w.rim_thickness = v,
        },
        Field {
            label: "Tyre diameter",
            value: wheel.tyre_diameter,
            takes: Takes::length_or(2.0 * radius * defaults::TYRE_GROWTH),
            help: "Outer diameter without load.",
            set: |w, v| w.tyre_diameter = v,
        },
        Field {
            label: "Tyre width",
            value: wheel.tyre_width,
            takes: Takes::length_or(defaults::TYRE_WIDTH_MM),
            help: "Across the walls.",
            set: |w, v| w.tyre_width = v,
        },
    ]
}

pub(super) fn steering(ui: &mut Ui, form: &mut Form<'_>, steering: SteeringSpec) {
    let fields: [Field<SteeringSpec>; 3] = [
        Field {
            label: "Steering-wheel diameter",
            value: steering.wheel_diameter,
            takes: Takes::length_or(defaults::STEERING_WHEEL_DIAMETER_MM),
            help: "Over the middle of its rim.",
            set: |s, v| s.wheel_diameter = v,
        },
        Field {
            label: "Lost to friction",
            value: steering.friction,
            takes: Takes::number_or("0 to 0.9", 0.0),
            help: "Part of the force lost between rack and hands.",
            set: |s, v| s.friction = v,
        },
        Field {
            label: "Positive stop at",
            value: steering.stop,
            takes: Takes::MaybeLength,
            help: "Rack travel each way at which a stop on frame or upright holds the steering. Empty: the rack's own end stops it.",
            set: |s, v| s.stop = v,
        },
    ];
    form.group(ui, "Steering", |form, ui| {
        let edit = |s| Edit::Parts(PartsEdit::Steering(s));
        form.fields(ui, &steering, edit, &fields);
    });
}
