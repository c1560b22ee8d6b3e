//! What sits at a point: joint, bolt, bracket.

use egui::{ComboBox, Ui};
use trammel_build::{
    AxleName, AxleParts, AxleSpec, BoltAxis, BoltSpec, Edit, Force, JointBolts, JointEnd,
    JointParts, LengthUnit, PartsEdit, PointName, ShearPlane, defaults,
};

use super::{
    super::super::form::{Field, Form, Takes},
    bracket, choice, in_pounds, named, typed_force,
};

const PLANES: [(Option<ShearPlane>, &str, &str); 3] = [
    (None, "not said", "Taken as the thread, which is weaker."),
    (
        Some(ShearPlane::Shank),
        "shank",
        "The plain shank lies in the shear plane.",
    ),
    (
        Some(ShearPlane::Thread),
        "thread",
        "The thread lies in the shear plane.",
    ),
];

const AXES: [(Option<BoltAxis>, &str, &str); 4] = [
    (
        None,
        "not said",
        "Without it the joint's swivel is not known well.",
    ),
    (
        Some(BoltAxis::ForeAft),
        "fore-and-aft",
        "Along the vehicle.",
    ),
    (Some(BoltAxis::Vertical), "upright", "Up and down."),
    (Some(BoltAxis::Lateral), "crosswise", "Across the vehicle."),
];

pub(super) fn ui(
    ui: &mut Ui,
    form: &mut Form<'_>,
    spec: &AxleSpec,
    axle: AxleName,
    point: &mut PointName,
) {
    pick(ui, spec, point);
    let point = *point;
    let joint = spec.parts.joints.get(&point).cloned().unwrap_or_default();
    let edit = |j: JointParts| Edit::Parts(PartsEdit::Joint(axle, point, Box::new(j)));
    let end = joint.end.clone().unwrap_or_default();
    let of_end = |end: JointEnd| {
        edit(JointParts {
            end: (end != JointEnd::default()).then_some(end),
            ..joint.clone()
        })
    };
    form.group(ui, "Joint", |form, ui| {
        listed(ui, form, &end, of_end);
        form.fields(ui, &end, of_end, &ends(&end, form.unit));
    });
    let bolt = joint.bolt.clone().unwrap_or_default();
    let of_bolt = |bolt: BoltSpec| {
        edit(JointParts {
            bolt: (bolt != BoltSpec::default()).then_some(bolt),
            ..joint.clone()
        })
    };
    form.group(ui, "Bolt", |form, ui| names(ui, form, &bolt, of_bolt));
    planes(ui, form, &bolt, of_bolt);
    direction(ui, form, spec, axle, point, &bolt, of_bolt);
    super::super::head(ui, "Bracket");
    if let Some(bracket) = bracket::ui(ui, form, joint.bracket.as_ref()) {
        form.edit(edit(JointParts {
            bracket,
            ..joint.clone()
        }));
    }
}

/// The point whose joint is entered; those that have something entered are marked.
fn pick(ui: &mut Ui, spec: &AxleSpec, point: &mut PointName) {
    ui.horizontal(|ui| {
        let label = ui.label("Joint at");
        let combo = ComboBox::from_id_salt("joint")
            .selected_text(point.label())
            .width(200.0)
            .show_ui(ui, |ui| {
                for here in AxleParts::JOINTS {
                    let entered = spec.parts.joints.contains_key(&here);
                    let mark = if entered { "" } else { " (nothing entered)" };
                    let text = format!("{}{mark}", here.label());
                    ui.selectable_value(point, here, text);
                }
            });
        combo.response.labelled_by(label.id);
    });
}

fn listed(ui: &mut Ui, form: &mut Form<'_>, end: &JointEnd, edit: impl Fn(JointEnd) -> Edit) {
    let shown = end.listed.as_deref().unwrap_or_default();
    let help = "A size of the open standard's table, such as AS81935/1-06; figures entered below go before the table's.";
    if let Some(t) = form.text_row(ui, "Listed size", shown, "", help) {
        form.edit(edit(JointEnd {
            listed: named(t),
            ..end.clone()
        }));
    }
}

fn ends(end: &JointEnd, unit: LengthUnit) -> [Field<JointEnd>; 6] {
    let pounds = in_pounds(end.rating, unit);
    let length = |label, value, help, set| Field {
        label,
        value,
        takes: Takes::MaybeLength,
        help,
        set,
    };
    [
        Field {
            label: "Rating",
            value: typed_force(end.rating),
            takes: Takes::MaybeNumber {
                sign: if pounds { "lbf" } else { "N" },
            },
            help: "Load rating from the maker's sheet. Without it the joint's load is not checked.",
            set: if pounds {
                |e, v| e.rating = v.map(Force::PoundsForce)
            } else {
                |e, v| e.rating = v.map(Force::Newtons)
            },
        },
        Field {
            label: "Swivel each way",
            value: end.swivel_deg,
            takes: Takes::MaybeNumber { sign: "°" },
            help: "From the maker's sheet.",
            set: |e, v| e.swivel_deg = v,
        },
        length(
            "Ball width",
            end.ball_width,
            "Width of ball or bush along the bolt.",
            |e, v| e.ball_width = v,
        ),
        length(
            "Body width",
            end.body_width,
            "Width of the body along the bolt.",
            |e, v| e.body_width = v,
        ),
        length(
            "Head diameter",
            end.head_diameter,
            "Of the head round the ball.",
            |e, v| e.head_diameter = v,
        ),
        length(
            "Ball to shank end",
            end.length,
            "From the ball's centre to the end of the shank.",
            |e, v| e.length = v,
        ),
    ]
}

fn names(ui: &mut Ui, form: &mut Form<'_>, bolt: &BoltSpec, edit: impl Fn(BoltSpec) -> Edit) {
    let shown = bolt.thread.as_deref().unwrap_or_default();
    let help = "Such as 3/8-24 or M10x1.25. Without it the bolt is not checked.";
    if let Some(t) = form.text_row(ui, "Bolt thread", shown, "", help) {
        form.edit(edit(BoltSpec {
            thread: named(t),
            ..bolt.clone()
        }));
    }
    let shown = bolt.grade.as_deref().unwrap_or_default();
    let help = "Such as grade 5, grade 8, 8.8 or 10.9.";
    if let Some(t) = form.text_row(ui, "Bolt grade", shown, defaults::BOLT_GRADE, help) {
        form.edit(edit(BoltSpec {
            grade: named(t),
            ..bolt.clone()
        }));
    }
    let spacer = Field {
        label: "Spacer",
        value: bolt.spacer,
        takes: Takes::length_or(0.0),
        help: "Between tab and ball; on each side in double shear.",
        set: |b: &mut BoltSpec, v| b.spacer = v,
    };
    form.fields(ui, bolt, edit, &[spacer]);
}

fn planes(ui: &mut Ui, form: &mut Form<'_>, bolt: &BoltSpec, edit: impl Fn(BoltSpec) -> Edit) {
    let tokens = form.tokens;
    let help = "What the shear plane of the bolt cuts.";
    if let Some(shear_plane) = choice(ui, tokens, "Shear through", help, &PLANES, bolt.shear_plane)
    {
        form.edit(edit(BoltSpec {
            shear_plane,
            ..bolt.clone()
        }));
    }
}

/// Which way the bolt stands; those of the tie-rod joints are the axle's.
fn direction(
    ui: &mut Ui,
    form: &mut Form<'_>,
    spec: &AxleSpec,
    axle: AxleName,
    point: PointName,
    bolt: &BoltSpec,
    edit: impl Fn(BoltSpec) -> Edit,
) {
    let bolts = spec.joint_bolts;
    let here = match point {
        PointName::TieRodInner => bolts.inner,
        PointName::TieRodOuter => bolts.outer,
        _ => bolt.direction,
    };
    let tokens = form.tokens;
    let help = "Which way the bolt stands at the design position.";
    let Some(picked) = choice(ui, tokens, "Bolt stands", help, &AXES, here) else {
        return;
    };
    let rod = |bolts: JointBolts| Edit::SetJointBolts(axle, bolts);
    form.edit(match point {
        PointName::TieRodInner => rod(JointBolts {
            inner: picked,
            ..bolts
        }),
        PointName::TieRodOuter => rod(JointBolts {
            outer: picked,
            ..bolts
        }),
        _ => edit(BoltSpec {
            direction: picked,
            ..bolt.clone()
        }),
    });
}
