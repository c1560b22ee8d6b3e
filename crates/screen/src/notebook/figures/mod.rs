//! Everything of a build that is not a point: wheel, travel, spring, rack, vehicle, hit, limits, title and notes.

mod corner;
mod rack;
mod vehicle;

use egui::Ui;
use trammel_analysis::Study;
use trammel_build::AxleName;

use super::{NotebookInput, form::Form};
use crate::{request::Request, view::View};

pub(super) fn ui(
    ui: &mut Ui,
    input: &NotebookInput<'_>,
    study: &Study,
    view: &View,
    requests: &mut Vec<Request>,
) {
    let Some(spec) = input.build.axle_spec(view.axle) else {
        return;
    };
    let mut form = Form {
        unit: input.build.unit,
        tokens: input.tokens,
        requests,
    };
    corner::wheel(ui, &mut form, spec, view.axle);
    corner::travel(ui, &mut form, spec, study, view.axle);
    corner::spring_unit(ui, &mut form, spec, view.axle);
    if view.axle == AxleName::Front {
        rack::rack(ui, &mut form, spec);
        rack::rack_end(ui, &mut form, spec);
        rack::hit(ui, &mut form, input.build.hit);
    }
    vehicle::rear_axle(ui, &mut form, input.build);
    vehicle::vehicle(ui, &mut form, input.build.vehicle);
    vehicle::limits(ui, &mut form, input.build.limits);
    vehicle::title(ui, &mut form, &input.build.title);
    vehicle::notes(ui, input, requests);
}
