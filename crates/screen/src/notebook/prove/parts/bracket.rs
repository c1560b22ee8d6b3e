//! The tabs of a joint and what they stand on.

use egui::Ui;
use trammel_build::{BracketSpec, Ears, FrameTube, LengthUnit, Section, Triple, defaults};

use super::{
    super::super::form::{Field, Form, Takes, Typed},
    choice, named, stock,
};

const EARS: [(Option<Ears>, &str, &str); 3] = [
    (None, "not said", "Taken as two ears."),
    (
        Some(Ears::Double),
        "two ears",
        "The joint sits between two: double shear.",
    ),
    (
        Some(Ears::Single),
        "one tab",
        "The joint hangs on one tab: single shear.",
    ),
];

/// The trade's usual tab to begin with: 1 1/2 in by 3/16 in flat bar, the hole 1 in off the tube; 40 mm by 5 mm, 25 mm off.
fn first(unit: LengthUnit) -> BracketSpec {
    let (width, thickness, height) = match unit {
        LengthUnit::Inch => (1.5, 0.1875, 1.0),
        LengthUnit::Millimetre => (40.0, 5.0, 25.0),
    };
    BracketSpec::new(thickness, width, height)
}

/// Rows of a bracket; `Some` when something was changed.
pub(super) fn ui(
    ui: &mut Ui,
    form: &mut Form<'_>,
    bracket: Option<&BracketSpec>,
) -> Option<Option<BracketSpec>> {
    let Some(bracket) = bracket else {
        let help = "None is entered, so its tabs and weld are not checked. Usual flat bar is put in to begin with.";
        let button = ui.button("Enter the bracket").on_hover_text(help);
        return button.clicked().then(|| Some(first(form.unit)));
    };
    let mut next = bracket.clone();
    let tokens = form.tokens;
    if let Some(ears) = choice(ui, tokens, "Ears", "One tab or two.", &EARS, bracket.ears) {
        next.ears = ears;
    }
    egui::Grid::new("bracket").num_columns(3).show(ui, |ui| {
        for field in needed(bracket).into_iter().chain(optional(bracket)) {
            if let Some(typed) = form.row(ui, field.label, field.value, field.takes, field.help) {
                (field.set)(&mut next, typed);
            }
        }
        let shown = bracket.material.as_deref().unwrap_or_default();
        let help = "By its name: one of the table or one of your own.";
        let hint = defaults::PLATE_MATERIAL;
        if let Some(t) = form.text_row(ui, "Tab material", shown, hint, help) {
            next.material = named(t);
        }
    });
    frame_tube(ui, form, bracket.tube, &mut next);
    stands(ui, form, bracket.stands, &mut next);
    if ui.small_button("Take the bracket out").clicked() {
        return Some(None);
    }
    (next != *bracket).then_some(Some(next))
}

fn needed(b: &BracketSpec) -> [Field<BracketSpec>; 3] {
    let takes = Takes::Length { default_mm: None };
    [
        Field {
            label: "Tab thickness",
            value: Some(b.thickness),
            takes,
            help: "Of each tab.",
            set: |b, v| b.thickness = v.unwrap_or(b.thickness),
        },
        Field {
            label: "Tab width",
            value: Some(b.width),
            takes,
            help: "Across the hole.",
            set: |b, v| b.width = v.unwrap_or(b.width),
        },
        Field {
            label: "Hole above tube",
            value: Some(b.height),
            takes,
            help: "From the face of what it stands on to the hole's centre.",
            set: |b, v| b.height = v.unwrap_or(b.height),
        },
    ]
}

fn optional(b: &BracketSpec) -> [Field<BracketSpec>; 6] {
    type Set = fn(&mut BracketSpec, Typed);
    let length = |label, value, help, set: Set| Field {
        label,
        value,
        takes: Takes::MaybeLength,
        help,
        set,
    };
    [
        length(
            "Hole diameter",
            b.hole,
            "A close fit on the bolt where it is left empty.",
            |b, v| b.hole = v,
        ),
        length(
            "Hole to edge",
            b.edge,
            "From the hole's centre to the free end; half the width where it is left empty.",
            |b, v| b.edge = v,
        ),
        length(
            "Gap between ears",
            b.gap,
            "Inside; ball and spacers where it is left empty.",
            |b, v| b.gap = v,
        ),
        length(
            "Boxing plate",
            b.boxing,
            "Thickness of a plate between the ears' edges; none where it is left empty.",
            |b, v| b.boxing = v,
        ),
        length(
            "Leg of the weld",
            b.weld,
            "Of the fillet round the base; three quarters of the tab's thickness where it is left empty.",
            |b, v| b.weld = v,
        ),
        Field {
            label: "Electrode class",
            value: b.electrode,
            takes: Takes::number_or("ksi", defaults::ELECTRODE_KSI),
            help: "Tensile class of electrode or wire: 70 for E70.",
            set: |b, v| b.electrode = v,
        },
    ]
}

/// The tube that the bracket stands on.
fn frame_tube(ui: &mut Ui, form: &mut Form<'_>, tube: Option<FrameTube>, next: &mut BracketSpec) {
    let Some(tube) = tube else {
        let help = "A straight tube of the frame by both ends of its middle line: it says which way the bracket stands.";
        let button = ui.small_button("Enter the tube that it stands on");
        if button.on_hover_text(help).clicked() {
            let (reach, across, wall) = match form.unit {
                LengthUnit::Inch => (12.0, 1.5, 0.095),
                LengthUnit::Millimetre => (300.0, 40.0, 2.5),
            };
            next.tube = Some(FrameTube {
                from: [-reach, reach, 0.5 * reach],
                to: [reach, reach, 0.5 * reach],
                section: Section::Square(across, wall),
            });
        }
        return;
    };
    let mut changed = tube;
    egui::Grid::new("frame tube").num_columns(3).show(ui, |ui| {
        triple(ui, form, "Tube from", &mut changed.from);
        triple(ui, form, "Tube to", &mut changed.to);
    });
    if let Some(section) = stock::section(ui, form, "frame tube", tube.section) {
        changed.section = section;
    }
    if changed != tube {
        next.tube = Some(changed);
    }
    if ui.small_button("It stands on no tube").clicked() {
        next.tube = None;
    }
}

/// The direction from base to hole.
fn stands(ui: &mut Ui, form: &mut Form<'_>, stands: Option<Triple>, next: &mut BracketSpec) {
    let Some(stands) = stands else {
        let help = "From its base to the hole at the design position, vehicle axes. Left out, it is taken from the middle line of the tube.";
        let button = ui.small_button("Enter which way it stands");
        if button.on_hover_text(help).clicked() {
            next.stands = Some([0.0, 1.0, 0.0]);
        }
        return;
    };
    let mut changed = stands;
    egui::Grid::new("stands").num_columns(3).show(ui, |ui| {
        let ways = ["forward", "left", "up"];
        for (value, way) in changed.iter_mut().zip(ways) {
            let label = format!("Stands {way}");
            let takes = Takes::Number {
                sign: "",
                default: None,
            };
            let help = "A part of its direction; its length does not matter.";
            if let Some(Some(v)) = form.row(ui, &label, Some(*value), takes, help) {
                *value = v;
            }
        }
    });
    if changed != stands {
        next.stands = Some(changed);
    }
    if ui.small_button("Take it from the tube").clicked() {
        next.stands = None;
    }
}

fn triple(ui: &mut Ui, form: &mut Form<'_>, what: &str, place: &mut Triple) {
    for (value, axis) in place.iter_mut().zip(["x", "y", "z"]) {
        let label = format!("{what}, {axis}");
        let takes = Takes::Length { default_mm: None };
        let help = "Vehicle axes: x forward, y left, z up.";
        if let Some(Some(v)) = form.row(ui, &label, Some(*value), takes, help) {
            *value = v;
        }
    }
}
