//! The threaded end of the rack.

use egui::Ui;
use trammel_build::{AxleSpec, Edit, JamNutAt, RackEndSpec, ThreadMaking, defaults};

use super::{
    super::super::form::{Field, Form, Takes},
    choice, named,
};

const NUTS: [(Option<JamNutAt>, &str, &str); 3] = [
    (None, "not said", "Nothing is taken."),
    (
        Some(JamNutAt::Rack),
        "rack face",
        "The jam nut is tightened against the face of the rack bar.",
    ),
    (
        Some(JamNutAt::Joint),
        "joint",
        "The jam nut is tightened against the joint.",
    ),
];

const MAKINGS: [(Option<ThreadMaking>, &str, &str); 3] = [
    (None, "not said", "Taken as cut."),
    (
        Some(ThreadMaking::Rolled),
        "rolled",
        "As on bought bolts and studs.",
    ),
    (
        Some(ThreadMaking::Cut),
        "cut",
        "With a die or in the lathe.",
    ),
];

pub(super) fn ui(ui: &mut Ui, form: &mut Form<'_>, spec: &AxleSpec) {
    let end = &spec.rack_end;
    form.group(ui, "Rack end", |form, ui| {
        names(ui, form, end);
        form.fields(ui, end, Edit::SetRackEnd, &fields(end));
    });
    let tokens = form.tokens;
    let help = "What the jam nut on the rack end is tightened against.";
    if let Some(jam_nut_at) = choice(ui, tokens, "Jam nut", help, &NUTS, end.jam_nut_at) {
        form.edit(Edit::SetRackEnd(RackEndSpec {
            jam_nut_at,
            ..end.clone()
        }));
    }
    let help = "How its thread was made: a rolled thread lasts longer.";
    if let Some(making) = choice(ui, tokens, "Made", help, &MAKINGS, end.making) {
        form.edit(Edit::SetRackEnd(RackEndSpec {
            making,
            ..end.clone()
        }));
    }
}

fn names(ui: &mut Ui, form: &mut Form<'_>, end: &RackEndSpec) {
    type Set = fn(&mut RackEndSpec, Option<String>);
    let rows: [(&str, &Option<String>, &str, &str, Set); 3] = [
        (
            "Rack-end thread",
            &end.thread,
            defaults::THREAD,
            "Such as 1/2-20, 3/8-24 or M12x1.25.",
            |e, t| e.thread = t,
        ),
        (
            "Rack-end grade",
            &end.grade,
            defaults::GRADE,
            "Such as grade 5, grade 8, 8.8 or 10.9.",
            |e, t| e.grade = t,
        ),
        (
            "Steel of the bar",
            &end.bar_grade,
            "",
            "By its name: one of the table or one of your own. Without it the bar is not checked.",
            |e, t| e.bar_grade = t,
        ),
    ];
    for (label, value, hint, help, set) in rows {
        let shown = value.as_deref().unwrap_or_default();
        if let Some(t) = form.text_row(ui, label, shown, hint, help) {
            let mut next = end.clone();
            set(&mut next, named(t));
            form.edit(Edit::SetRackEnd(next));
        }
    }
}

fn fields(end: &RackEndSpec) -> [Field<RackEndSpec>; 5] {
    [
        Field {
            label: "Thread engaged",
            value: end.engagement,
            takes: Takes::MaybeLength,
            help: "Length of thread inside the rack bar; about one diameter in steel is handbook practice.",
            set: |e, v| e.engagement = v,
        },
        Field {
            label: "Jam-nut thickness",
            value: end.jam_nut,
            takes: Takes::MaybeLength,
            help: "Of the jam nut on the rack end.",
            set: |e, v| e.jam_nut = v,
        },
        Field {
            label: "Bar diameter",
            value: end.bar_diameter,
            takes: Takes::MaybeLength,
            help: "Of the rack bar that is tapped: the wall left around the thread is checked against it.",
            set: |e, v| e.bar_diameter = v,
        },
        Field {
            label: "Depth of the bore",
            value: end.bore_depth,
            takes: Takes::MaybeLength,
            help: "Of the tapped hole in the rack bar.",
            set: |e, v| e.bore_depth = v,
        },
        Field {
            label: "Hard teeth to",
            value: end.hard_to,
            takes: Takes::MaybeLength,
            help: "From the middle of the bar to where its hardened teeth end, found with a file. The card for drilling and tapping says where the hole would reach into them.",
            set: |e, v| e.hard_to = v,
        },
    ]
}
