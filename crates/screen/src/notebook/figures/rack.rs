//! Figures of the steering: rack, rack end, and the hit that the rack end is checked against.

use egui::Ui;
use trammel_build::{AxleSpec, Edit, Hit, HitPoint, RackEndSpec, RackSpec, defaults};

use super::super::form::{Field, Form, Takes, word};

pub(super) fn rack(ui: &mut Ui, form: &mut Form<'_>, spec: &AxleSpec) {
    let rack = spec.rack;
    let fields: [Field<RackSpec>; 2] = [
        Field {
            label: "Travel each way",
            value: rack.travel,
            takes: Takes::length_or(defaults::RACK_TRAVEL_MM),
            help: "From the centre to either lock.",
            set: |r, v| r.travel = v,
        },
        Field {
            label: "Travel for one turn",
            value: rack.travel_per_turn,
            takes: Takes::length_or(defaults::RACK_TRAVEL_PER_TURN_MM),
            help: "How far the rack moves for one turn of the pinion.",
            set: |r, v| r.travel_per_turn = v,
        },
    ];
    form.group(ui, "Rack", |form, ui| {
        form.fields(ui, &rack, Edit::SetRack, &fields);
    });
}

pub(super) fn rack_end(ui: &mut Ui, form: &mut Form<'_>, spec: &AxleSpec) {
    let end = &spec.rack_end;
    let none_if_empty = |t: String| (!t.is_empty()).then_some(t);
    let fields: [Field<RackEndSpec>; 2] = [
        Field {
            label: "Thread engaged",
            value: end.engagement,
            takes: Takes::MaybeLength,
            help: "Length of thread inside the rack bar; about one diameter in steel is handbook practice.",
            set: |e, v| e.engagement = v,
        },
        Field {
            label: "Jam nut",
            value: end.jam_nut,
            takes: Takes::MaybeLength,
            help: "Thickness of the jam nut on the rack end.",
            set: |e, v| e.jam_nut = v,
        },
    ];
    form.group(ui, "Rack end", |form, ui| {
        let shown = end.thread.as_deref().unwrap_or_default();
        let help = "Such as 1/2-20, 3/8-24 or M12x1.25.";
        if let Some(t) = form.text_row(ui, "Thread", shown, defaults::THREAD, help) {
            form.edit(Edit::SetRackEnd(RackEndSpec {
                thread: none_if_empty(t),
                ..end.clone()
            }));
        }
        let shown = end.grade.as_deref().unwrap_or_default();
        let help = "Such as grade 5, grade 8, 8.8 or 10.9.";
        if let Some(t) = form.text_row(ui, "Grade", shown, defaults::GRADE, help) {
            form.edit(Edit::SetRackEnd(RackEndSpec {
                grade: none_if_empty(t),
                ..end.clone()
            }));
        }
        form.fields(ui, end, Edit::SetRackEnd, &fields);
    });
}

pub(super) fn hit(ui: &mut Ui, form: &mut Form<'_>, hit: Hit) {
    let size: Field<Hit> = Field {
        label: "Size",
        value: hit.weights,
        takes: Takes::number_or("× vehicle weight", defaults::HIT_WEIGHTS),
        help: "The force that the rack end is checked against, in weights of the vehicle, straight back unless the file says otherwise.",
        set: |h, v| h.weights = v,
    };
    form.group(ui, "Hit on one front wheel", |form, ui| {
        form.fields(ui, &hit, Edit::SetHit, &[size]);
        word(
            ui,
            "Acts at",
            "A wheel that rolls freely passes no moment about its spin axis, so a hit on the front of the tyre acts through the wheel centre. A braked wheel passes it: the force acts at the ground.",
        );
        ui.horizontal(|ui| {
            let at = hit.at.unwrap_or(HitPoint::WheelCentre);
            let points = [(HitPoint::WheelCentre, "wheel centre"), (HitPoint::Contact, "ground")];
            for (point, word) in points {
                if ui.selectable_label(at == point, word).clicked() && at != point {
                    form.edit(Edit::SetHit(Hit { at: Some(point), ..hit }));
                }
            }
        });
        ui.end_row();
    });
}
