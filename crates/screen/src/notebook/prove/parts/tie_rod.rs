//! The tie rod: tube, adapters, rod ends.

use egui::Ui;
use trammel_build::{
    AxleName, Edit, Force, LengthUnit, PartsEdit, TieRodParts,
    defaults::{self, NEWTONS_PER_POUND_FORCE},
};

use super::{
    super::super::form::{Field, Form, Takes},
    in_pounds, named, stock, typed_force,
};

pub(super) fn ui(ui: &mut Ui, form: &mut Form<'_>, rod: &TieRodParts, axle: AxleName) {
    let edit = |rod: TieRodParts| Edit::Parts(PartsEdit::TieRod(axle, Box::new(rod)));
    super::super::head(ui, "Tube");
    if let Some(tube) = stock::tube(ui, form, "tie-rod tube", rod.tube.as_ref()) {
        form.edit(edit(TieRodParts {
            tube,
            ..rod.clone()
        }));
    }
    form.group(ui, "Ends", |form, ui| {
        names(ui, form, rod, edit);
        form.fields(ui, rod, edit, &lengths(rod));
        form.fields(ui, rod, edit, &[side_hit(rod, form.unit)]);
    });
}

fn names(ui: &mut Ui, form: &mut Form<'_>, rod: &TieRodParts, edit: impl Fn(TieRodParts) -> Edit) {
    type Set = fn(&mut TieRodParts, Option<String>);
    let rows: [(&str, &Option<String>, &str, &str, Set); 3] = [
        (
            "Rod-end thread",
            &rod.thread,
            "",
            "Of rod ends and adapters, such as 3/8-24. Without it their shanks are not checked.",
            |r, t| r.thread = t,
        ),
        (
            "Rod-end grade",
            &rod.grade,
            defaults::BOLT_GRADE,
            "Of the rod ends' shanks.",
            |r, t| r.grade = t,
        ),
        (
            "Adapter material",
            &rod.adapter_material,
            "",
            "By its name: one of the table or one of your own.",
            |r, t| r.adapter_material = t,
        ),
    ];
    for (label, value, hint, help, set) in rows {
        let shown = value.as_deref().unwrap_or_default();
        if let Some(t) = form.text_row(ui, label, shown, hint, help) {
            let mut next = rod.clone();
            set(&mut next, named(t));
            form.edit(edit(next));
        }
    }
}

fn lengths(rod: &TieRodParts) -> [Field<TieRodParts>; 4] {
    [
        Field {
            label: "Adapter length",
            value: rod.adapter_length,
            takes: Takes::MaybeLength,
            help: "What each adapter adds to the tube's length.",
            set: |r, v| r.adapter_length = v,
        },
        Field {
            label: "Thread in adapter",
            value: rod.engagement,
            takes: Takes::MaybeLength,
            help: "Thread of a rod end engaged in its adapter at the middle of its adjustment.",
            set: |r, v| r.engagement = v,
        },
        Field {
            label: "Adjustment each way",
            value: rod.adjustment,
            takes: Takes::MaybeLength,
            help: "How far each rod end can be screwed in or out from there.",
            set: |r, v| r.adjustment = v,
        },
        Field {
            label: "Rod's jam nut",
            value: rod.jam_nut,
            takes: Takes::MaybeLength,
            help: "Thickness of each jam nut.",
            set: |r, v| r.jam_nut = v,
        },
    ]
}

fn side_hit(rod: &TieRodParts, unit: LengthUnit) -> Field<TieRodParts> {
    let pounds = in_pounds(rod.side_hit, unit);
    Field {
        label: "Hit at mid-span",
        value: typed_force(rod.side_hit),
        takes: if pounds {
            let default = (defaults::SIDE_HIT_N / NEWTONS_PER_POUND_FORCE).round();
            Takes::number_or("lbf", default)
        } else {
            Takes::number_or("N", defaults::SIDE_HIT_N)
        },
        help: "Force of a rock across the middle of the rod.",
        set: if pounds {
            |r, v| r.side_hit = v.map(Force::PoundsForce)
        } else {
            |r, v| r.side_hit = v.map(Force::Newtons)
        },
    }
}
