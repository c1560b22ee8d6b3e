//! What the build is made of: entered part by part, empty where the default is taken.

mod arms;
mod bracket;
mod joints;
mod limits;
mod materials;
mod rack_end;
mod stock;
mod tie_rod;
mod wheel;

use egui::Ui;
use trammel_build::AxleName;

use super::{
    super::{NotebookInput, form::Form, tune::choice},
    small,
};
use crate::{prove::settings::PartPage, request::Request, view::View};

pub(super) fn ui(
    ui: &mut Ui,
    input: &NotebookInput<'_>,
    view: &mut View,
    requests: &mut Vec<Request>,
) {
    let Some(spec) = input.build.axle_spec(view.axle) else {
        return;
    };
    let options = PartPage::ALL.map(|p| (p, p.label(), p.meaning()));
    let help = "What is entered below.";
    if let Some(part) = choice(ui, input.tokens, "Part", help, &options, view.prove.part) {
        view.prove.part = part;
    }
    let axle = view.axle;
    small(
        ui,
        input.tokens,
        format!(
            "Of the {} axle; the right side is made like the left. Empty fields show what is taken instead, if anything.",
            axle.word()
        ),
    );
    let mut form = Form {
        unit: input.build.unit,
        tokens: input.tokens,
        requests,
    };
    match view.prove.part {
        PartPage::RackEnd if axle == AxleName::Front => rack_end::ui(ui, &mut form, spec),
        PartPage::RackEnd => small(ui, input.tokens, "The rear axle has no rack."),
        PartPage::TieRod => tie_rod::ui(ui, &mut form, &spec.parts.tie_rod, axle),
        PartPage::Arms => arms::ui(ui, &mut form, &spec.parts, axle),
        PartPage::Joints => joints::ui(ui, &mut form, spec, axle, &mut view.prove.joint),
        PartPage::Wheel => wheel::ui(ui, &mut form, spec, axle),
        PartPage::Steering => wheel::steering(ui, &mut form, input.build.steering),
        PartPage::Materials => materials::ui(ui, &mut form, &input.build.materials),
        PartPage::Limits => limits::ui(ui, &mut form, input.build.limits),
    }
}

/// A force in the unit it was typed in, or in the one that goes with the build's.
fn in_pounds(force: Option<trammel_build::Force>, unit: trammel_build::LengthUnit) -> bool {
    match force {
        Some(trammel_build::Force::PoundsForce(_)) => true,
        Some(trammel_build::Force::Newtons(_)) => false,
        None => unit == trammel_build::LengthUnit::Inch,
    }
}

/// The number of a force as it was typed.
fn typed_force(force: Option<trammel_build::Force>) -> Option<f64> {
    force.map(|f| match f {
        trammel_build::Force::PoundsForce(v) | trammel_build::Force::Newtons(v) => v,
    })
}

/// What was typed, or nothing where the field was emptied.
fn named(text: String) -> Option<String> {
    (!text.is_empty()).then_some(text)
}
