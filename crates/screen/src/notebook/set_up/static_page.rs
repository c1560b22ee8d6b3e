//! Static set-up: toe and turns, camber, castor by the sweep, weights.

use egui::{Grid, Ui};
use trammel_analysis::Study;
use trammel_build::{Edit, LengthUnit, Mass, Statics, Weights};
use trammel_setup::{CastorSweep, CornerWeights, castor_factor};

use super::{
    super::{
        NotebookInput,
        form::{Form, Takes},
    },
    ask, head, plain, soft, static_toe,
};
use crate::{request::Request, set_up::edits};

pub(super) fn ui(
    ui: &mut Ui,
    input: &NotebookInput<'_>,
    study: &Study,
    requests: &mut Vec<Request>,
) {
    let now = input.build.set_up.statics;
    let mut next = now;
    static_toe::ride_height(ui, input, study, &mut next, requests);
    static_toe::toe(ui, input, study, &mut next, requests);
    static_toe::camber(ui, input, &mut next, requests);
    castor(ui, input, &mut next, requests);
    weights(ui, input, &mut next, requests);
    soft(
        ui,
        input,
        "What is read here is kept in the build; its geometry changes only where a button says so.",
    );
    if next != now {
        requests.push(edits::change(
            input.build,
            "Write down static readings",
            |s| {
                s.statics = next;
            },
        ));
    }
}

/// A field for a number; what was typed goes into it.
fn number(
    form: &mut Form<'_>,
    ui: &mut Ui,
    label: &str,
    value: &mut f64,
    sign: &'static str,
    help: &str,
) {
    let takes = Takes::Number {
        sign,
        default: None,
    };
    if let Some(Some(v)) = form.row(ui, label, Some(*value), takes, help) {
        *value = v;
    }
}

fn castor(ui: &mut Ui, input: &NotebookInput<'_>, next: &mut Statics, requests: &mut Vec<Request>) {
    let mut sweep = next.castor_sweep.unwrap_or([15.0, 0.0, 0.0]);
    let before = sweep;
    let mut form = Form {
        unit: input.build.unit,
        tokens: input.tokens,
        requests,
    };
    form.group(ui, "Castor by a sweep", |form, ui| {
        let [steered, out, inward] = &mut sweep;
        number(
            form,
            ui,
            "Steered each way",
            steered,
            "°",
            "How far this wheel is steered each way from straight ahead, read on the ground.",
        );
        number(
            form,
            ui,
            "Camber, front outward",
            out,
            "°",
            "Camber with the wheel's front pointing outward; top outboard is positive.",
        );
        number(
            form,
            ui,
            "Camber, front inward",
            inward,
            "°",
            "Camber with the wheel's front pointing inward; top outboard is positive.",
        );
    });
    if sweep != before {
        next.castor_sweep = Some(sweep);
    }
    if next.castor_sweep.is_none() {
        return soft(
            ui,
            input,
            "Read camber of one wheel steered outward, then inward, by the same angle.",
        );
    }
    let [steered, out, inward] = sweep.map(f64::to_radians);
    let sweep = CastorSweep {
        camber_toed_out: out,
        camber_toed_in: inward,
        steered,
        deviation: 0.1_f64.to_radians(),
    };
    match (sweep.castor(), sweep.by_factor()) {
        (Ok(castor), Ok(factor)) => {
            plain(
                ui,
                format!(
                    "Castor {:.2}° ± {:.2}° with a gauge good to 0.1°; by the trade's factor of {:.2}: {:.2}°.",
                    castor.to_degrees(),
                    sweep.castor_deviation().to_degrees(),
                    castor_factor(steered),
                    factor.to_degrees()
                ),
            );
        }
        (Err(fault), _) | (_, Err(fault)) => ask(ui, input, &fault.to_string()),
    }
}

fn weights(
    ui: &mut Ui,
    input: &NotebookInput<'_>,
    next: &mut Statics,
    requests: &mut Vec<Request>,
) {
    let unit = input.build.unit;
    // As the scales showed them, whatever unit lengths are in by now.
    let pounds = match next.weights {
        Some(weights) => matches!(weights, Weights::Pounds(_)),
        None => unit == LengthUnit::Inch,
    };
    let sign = if pounds { "lb" } else { "kg" };
    let mut figures = next.weights.map_or([0.0; 4], Weights::figures);
    let before = figures;
    head(ui, "Weights on four scales");
    let mut form = Form {
        unit,
        tokens: input.tokens,
        requests,
    };
    Grid::new("weights")
        .num_columns(3)
        .spacing(egui::vec2(8.0, 3.0))
        .show(ui, |ui| {
            let names = ["Front left", "Front right", "Rear left", "Rear right"];
            for (name, value) in names.iter().zip(&mut figures) {
                number(
                    &mut form,
                    ui,
                    name,
                    value,
                    sign,
                    "What this scale shows, driver in, tank as it is driven.",
                );
            }
        });
    if figures != before {
        next.weights = Some(if pounds {
            Weights::Pounds(figures)
        } else {
            Weights::Kilograms(figures)
        });
    }
    let [front_left, front_right, rear_left, rear_right] = figures;
    let scales = CornerWeights {
        front_left,
        front_right,
        rear_left,
        rear_right,
    };
    let Some(shares) = scales.shares() else {
        return soft(ui, input, "Type what each scale shows.");
    };
    plain(
        ui,
        format!(
            "In all {:.1} {sign}; {:.1} % in front, {:.1} % on the left, {:.1} % on front right and rear left together.",
            shares.total,
            100.0 * shares.front,
            100.0 * shares.left,
            100.0 * shares.cross
        ),
    );
    let help = "Mass and front share of the build become these; Undo takes it back.";
    if ui
        .button("Put the weights into the build")
        .on_hover_text(help)
        .clicked()
    {
        let mut vehicle = input.build.vehicle;
        vehicle.mass = Some(if pounds {
            Mass::Pounds(shares.total)
        } else {
            Mass::Kilograms(shares.total)
        });
        vehicle.front_share = Some((shares.front * 1e4).round() / 1e4);
        requests.push(Request::Edit(Edit::SetVehicle(vehicle)));
    }
}
