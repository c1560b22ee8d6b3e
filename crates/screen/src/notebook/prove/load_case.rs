//! Every figure of a load case.

use egui::Ui;
use trammel_build::{
    Edit, Force, Hold, LoadAction, LoadAxes, LoadCaseSpec, LoadPlace, LoadUnit, PartsEdit,
    Pressure, RimHalf, TyrePatch,
};

use super::{
    super::{
        NotebookInput,
        form::{Form, Takes},
        tune::choice,
    },
    load_cases::WEIGHT,
};
use crate::{number_field::NumberField, request::Request, view::View};

const HOLDS: [(Hold, &str, &str); 2] = [
    (
        Hold::Rolling,
        "rolling",
        "The wheel turns freely: no moment about its spin axis reaches the upright.",
    ),
    (
        Hold::Braked,
        "braked",
        "A brake on the upright holds the wheel: the moment about its spin axis reaches the upright.",
    ),
];

const UNITS: [(LoadUnit, &str, &str); 4] = [
    (
        LoadUnit::StaticWheelLoad,
        "static wheel load",
        "The weight on this wheel at rest.",
    ),
    (
        LoadUnit::WheelLoad,
        "wheel load",
        "The load on this wheel with the braking and cornering of the case.",
    ),
    (
        LoadUnit::VehicleWeight,
        "vehicle weight",
        "The weight of the whole vehicle.",
    ),
    (LoadUnit::Newtons, "newtons", "Plain newtons."),
];

const AXES: [(LoadAxes, &str, &str); 2] = [
    (
        LoadAxes::Vehicle,
        "vehicle",
        "Forward and outboard on the vehicle.",
    ),
    (
        LoadAxes::Wheel,
        "wheel",
        "Where the wheel is heading, and outboard across it.",
    ),
];

/// Where a force acts, without figures.
#[derive(Clone, Copy, PartialEq)]
enum At {
    Ground,
    Centre,
    FrontOfRim,
    RearOfRim,
}

const PLACES: [(At, &str, &str); 4] = [
    (At::Ground, "ground", "At the tyre's contact point."),
    (At::Centre, "wheel centre", "At the wheel centre."),
    (
        At::FrontOfRim,
        "front of rim",
        "On the rim ahead of the wheel centre.",
    ),
    (
        At::RearOfRim,
        "rear of rim",
        "On the rim behind the wheel centre.",
    ),
];

pub(super) fn ui(
    ui: &mut Ui,
    input: &NotebookInput<'_>,
    case: &LoadCaseSpec,
    others: Option<&[&str]>,
    view: &mut View,
    requests: &mut Vec<Request>,
) {
    let mut next = case.clone();
    let mut form = Form {
        unit: input.build.unit,
        tokens: input.tokens,
        requests,
    };
    words(ui, &mut form, &mut next, others);
    for index in 0..case.actions.len() {
        action(ui, &mut form, &mut next, index);
    }
    more(ui, &mut next);
    poses(ui, &mut form, &mut next);
    if next == *case {
        return;
    }
    let save = Edit::Parts(PartsEdit::LoadCase(Box::new(next.clone())));
    if next.name == case.name {
        requests.push(Request::Edit(save));
        return;
    }
    view.prove.edited_case = Some(next.name.clone());
    requests.push(Request::EditAs {
        name: format!("Rename load case {}", case.name),
        edits: vec![
            Edit::Parts(PartsEdit::DropLoadCase(case.name.clone())),
            save,
        ],
    });
}

/// Name and description. `others` are the names that are taken; without them the name stays, since it is a usual case's.
fn words(ui: &mut Ui, form: &mut Form<'_>, next: &mut LoadCaseSpec, others: Option<&[&str]>) {
    if let Some(others) = others {
        form.group(ui, "What it is", |form, ui| {
            let help = "What you call it; no two cases share a name.";
            let Some(name) = form.text_row(ui, "Name of the case", &next.name, "", help) else {
                return;
            };
            if name.is_empty() || others.contains(&name.as_str()) {
                form.refuse(format!(
                    "A case needs a name that no other has; it stays {}.",
                    next.name
                ));
            } else {
                next.name = name;
            }
        });
    }
    ui.label("What happens").on_hover_text("In a sentence.");
    let field = NumberField {
        name: "What happens",
        shown: &next.what,
        hint: "",
        width: ui.available_width() - 8.0,
        enabled: true,
    };
    if let Some(what) = field.ui(ui, form.tokens) {
        next.what = what.trim().to_owned();
    }
}

fn action(ui: &mut Ui, form: &mut Form<'_>, next: &mut LoadCaseSpec, index: usize) {
    let Some(mut action) = next.actions.get(index).copied() else {
        return;
    };
    let number = index + 1;
    let mut removed = false;
    ui.horizontal(|ui| {
        super::head(ui, &title(&action, number));
        let name = format!("Remove {}", title(&action, number));
        let button = ui.small_button("Remove");
        button.widget_info(|| egui::WidgetInfo::labeled(egui::Role::Button, true, &name));
        removed = button.clicked();
    });
    // A file may hold two of a kind.
    ui.push_id(("action", number), |ui| match &mut action {
        LoadAction::Force(size, unit, at, axes) => {
            force(ui, form, number, (size, unit, at, axes));
        }
        LoadAction::TurnedOnTheSpot(friction, patch) => turned(ui, form, friction, patch),
        LoadAction::AgainstStop(force) => against_stop(ui, form, force),
    });
    if removed {
        next.actions.remove(index);
    } else if let Some(place) = next.actions.get_mut(index) {
        *place = action;
    }
}

fn title(action: &LoadAction, number: usize) -> String {
    match action {
        LoadAction::Force(..) => format!("Force {number}"),
        LoadAction::TurnedOnTheSpot(..) => format!("Turned on the spot ({number})"),
        LoadAction::AgainstStop(_) => format!("Against the stop ({number})"),
    }
}

type ForceParts<'a> = (
    &'a mut [f64; 3],
    &'a mut LoadUnit,
    &'a mut LoadPlace,
    &'a mut LoadAxes,
);

fn force(ui: &mut Ui, form: &mut Form<'_>, number: usize, parts: ForceParts<'_>) {
    let (size, unit, at, axes) = parts;
    let sign = match unit {
        LoadUnit::Newtons => "N",
        _ => "×",
    };
    egui::Grid::new(("force", number))
        .num_columns(3)
        .show(ui, |ui| {
            let [x, y, z] = size;
            for (value, way) in [(x, "forward"), (y, "outboard"), (z, "up")] {
                let label = format!("Force {number}, {way}");
                let help = "In the unit chosen below; the other way with a minus.";
                number_row(ui, form, &label, value, sign, help);
            }
            if let LoadPlace::Rim(_, height, outboard) = at {
                let label = format!("Force {number}, height on rim");
                let help = "Over the wheel centre in rim radii: −1 lowest, 0 level, 1 highest.";
                number_row(ui, form, &label, height, "", help);
                let label = format!("Force {number}, across rim");
                let help = "From the middle plane in half rim widths: 1 is the outer flange.";
                number_row(ui, form, &label, outboard, "", help);
            }
        });
    let tokens = form.tokens;
    let help = "What the three numbers are multiples of.";
    if let Some(picked) = choice(ui, tokens, "times", help, &UNITS, *unit) {
        *unit = picked;
    }
    let here = match at {
        LoadPlace::Contact => At::Ground,
        LoadPlace::WheelCentre => At::Centre,
        LoadPlace::Rim(RimHalf::Front, ..) => At::FrontOfRim,
        LoadPlace::Rim(RimHalf::Rear, ..) => At::RearOfRim,
    };
    if let Some(picked) = choice(ui, tokens, "at", "Where it acts.", &PLACES, here) {
        let (height, outboard) = match *at {
            LoadPlace::Rim(_, height, outboard) => (height, outboard),
            _ => (0.0, 0.0),
        };
        *at = match picked {
            At::Ground => LoadPlace::Contact,
            At::Centre => LoadPlace::WheelCentre,
            At::FrontOfRim => LoadPlace::Rim(RimHalf::Front, height, outboard),
            At::RearOfRim => LoadPlace::Rim(RimHalf::Rear, height, outboard),
        };
    }
    let help = "Which way forward and outboard are.";
    if let Some(picked) = choice(ui, tokens, "axes", help, &AXES, *axes) {
        *axes = picked;
    }
}

fn number_row(
    ui: &mut Ui,
    form: &mut Form<'_>,
    label: &str,
    value: &mut f64,
    sign: &'static str,
    help: &str,
) {
    if let Some(Some(typed)) = form.row(
        ui,
        label,
        Some(*value),
        Takes::Number {
            sign,
            default: None,
        },
        help,
    ) {
        *value = typed;
    }
}

fn turned(ui: &mut Ui, form: &mut Form<'_>, friction: &mut f64, patch: &mut TyrePatch) {
    egui::Grid::new("turned on the spot")
        .num_columns(3)
        .show(ui, |ui| {
            let help = "Between tyre and ground; dry asphalt has about 0.7.";
            number_row(ui, form, "Friction", friction, "", help);
            let help = "The softer the tyre, the larger its patch and the harder it turns.";
            match patch {
                TyrePatch::Pressure(Pressure::Kilopascals(v)) => {
                    number_row(ui, form, "Tyre pressure", v, "kPa", help);
                }
                TyrePatch::Pressure(Pressure::Psi(v)) => {
                    number_row(ui, form, "Tyre pressure", v, "psi", help);
                }
                TyrePatch::Length(v) => {
                    let takes = Takes::Length { default_mm: None };
                    let label = "Length of the patch";
                    if let Some(Some(typed)) = form.row(ui, label, Some(*v), takes, help) {
                        *v = typed;
                    }
                }
            }
        });
}

fn against_stop(ui: &mut Ui, form: &mut Form<'_>, force: &mut Force) {
    egui::Grid::new("against the stop").num_columns(3).show(ui, |ui| {
        let help = "With which the driver pulls at the rim of the steering wheel, the steering against its stop.";
        let (value, sign) = match force {
            Force::Newtons(v) => (v, "N"),
            Force::PoundsForce(v) => (v, "lbf"),
        };
        number_row(ui, form, "Pull at the rim", value, sign, help);
    });
}

/// Buttons that add what acts.
fn more(ui: &mut Ui, next: &mut LoadCaseSpec) {
    ui.horizontal_wrapped(|ui| {
        if ui.small_button("Add a force").clicked() {
            next.actions.push(WEIGHT);
        }
        let help = "The ground resists a wheel that is turned on the spot.";
        let button = ui.small_button("Add turning on the spot");
        if button.on_hover_text(help).clicked() {
            let patch = TyrePatch::Pressure(Pressure::Kilopascals(70.0));
            next.actions.push(LoadAction::TurnedOnTheSpot(0.7, patch));
        }
        let help = "The driver pulls the steering against its stop.";
        let button = ui.small_button("Add a pull against the stop");
        if button.on_hover_text(help).clicked() {
            next.actions
                .push(LoadAction::AgainstStop(Force::Newtons(200.0)));
        }
    });
}

fn poses(ui: &mut Ui, form: &mut Form<'_>, next: &mut LoadCaseSpec) {
    form.group(ui, "When it happens", |form, ui| {
        let help = "Deceleration in units of gravity, for forces in multiples of the wheel load.";
        number_row(ui, form, "Braking", &mut next.braking, "g", help);
        let help = "Sideways acceleration in units of gravity; positive when this is the outer wheel.";
        number_row(ui, form, "Cornering", &mut next.cornering, "g", help);
        let [low, high] = &mut next.travel;
        let help = "Part of the wheel travel: −1 full droop, 0 design height, 1 full bump. The worst place between both ends is looked for.";
        number_row(ui, form, "Travel from", low, "", help);
        number_row(ui, form, "Travel to", high, "", help);
        let [low, high] = &mut next.lock;
        let help = "Part of the lock: 0 straight ahead, 1 at the stop; both ways are looked at.";
        number_row(ui, form, "Lock from", low, "", help);
        number_row(ui, form, "Lock to", high, "", help);
    });
    let help = "Whether the wheel is held by its brake.";
    if let Some(hold) = choice(ui, form.tokens, "Wheel", help, &HOLDS, next.hold) {
        next.hold = hold;
    }
}
