//! Static set-up: toe and turns, camber, castor by the sweep, weights.

use egui::{Grid, RichText, Ui};
use trammel_analysis::Study;
use trammel_build::{Edit, LengthUnit, Mass, Side};
use trammel_setup::{
    CastorSweep, CornerWeights, castor_factor, difference_of_toe, turn_effect, turns_and_flats,
    turns_for_toe,
};

use super::{
    super::{
        NotebookInput,
        form::{Form, Takes},
    },
    ask, head, plain, soft,
};
use crate::{request::Request, tune::advice::pitch, view::View};

pub(super) fn ui(
    ui: &mut Ui,
    input: &NotebookInput<'_>,
    study: &Study,
    view: &mut View,
    requests: &mut Vec<Request>,
) {
    toe(ui, input, study, view, requests);
    castor(ui, input, view, requests);
    weights(ui, input, view, requests);
    soft(
        ui,
        input,
        "Ride height is the build's design position; the Tune stage puts another one into it. What is typed on this page is worked with here and kept in the build where a button says so.",
    );
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

fn per_turn(input: &NotebookInput<'_>) -> Option<f64> {
    let rod = input.build.set_up.adjusters.rod;
    rod.map(|r| r.per_turn * input.build.unit.mm())
        .or_else(|| pitch(input.build))
}

fn toe(
    ui: &mut Ui,
    input: &NotebookInput<'_>,
    study: &Study,
    view: &mut View,
    requests: &mut Vec<Request>,
) {
    let unit = input.build.unit;
    let corner = *study.front.model.linkage(Side::Left).corner();
    let tyre = 2.0 * corner.wheel.loaded_radius;
    let mut form = Form {
        unit,
        tokens: input.tokens,
        requests,
    };
    form.group(ui, "Toe of one wheel", |form, ui| {
        let [read, wanted] = &mut view.set_up.toe;
        number(
            form,
            ui,
            "Toe read",
            read,
            "°",
            "Static toe of this wheel as it was read, in is positive.",
        );
        number(
            form,
            ui,
            "Toe wanted",
            wanted,
            "°",
            "Static toe that this wheel should have, in is positive.",
        );
    });
    let [read, wanted] = view.set_up.toe;
    let across = |degrees: f64| unit.from_mm(difference_of_toe(degrees.to_radians(), tyre));
    plain(ui, RichText::new(format!(
        "Wanted: {wanted:.2}° a wheel, {:.2}° in all; {:.3} {} over one tyre, {:.3} {} over both.",
        2.0 * wanted, across(wanted), unit.sign(), 2.0 * across(wanted), unit.sign()
    )).small());
    let Some(per_turn) = per_turn(input) else {
        return ask(
            ui,
            input,
            "The tie rod's thread isn't known, so turns can't be told.",
        );
    };
    match turns_for_toe(&corner, read.to_radians(), wanted.to_radians(), per_turn) {
        Ok(turns) if turns.longer == 0.0 => {
            soft(ui, input, "Read and wanted are the same: nothing to turn.");
        }
        Ok(turns) => {
            let way = if turns.longer > 0.0 {
                "longer"
            } else {
                "shorter"
            };
            let words = turns_and_flats(turns.longer, per_turn);
            plain(
                ui,
                format!(
                    "Turn the tie rod {words} {way} ({:.2} turns).",
                    turns.turns.abs()
                ),
            );
        }
        Err(fault) => ask(ui, input, &fault.to_string()),
    }
    if let Ok(effect) = turn_effect(&corner, per_turn, tyre) {
        let way = if effect.per_turn > 0.0 { "in" } else { "out" };
        soft(
            ui,
            input,
            &format!(
                "One turn longer: {:.2}° {way}, {:.3} {} at the tyre; one flat: {:.3}°, {:.4} {}.",
                effect.per_turn.to_degrees().abs(),
                unit.from_mm(effect.per_turn_at_tyre.abs()),
                unit.sign(),
                effect.per_flat.to_degrees().abs(),
                unit.from_mm(effect.per_flat_at_tyre.abs()),
                unit.sign()
            ),
        );
    }
    let help =
        "The wanted toe becomes the build's static toe, for both wheels; Undo takes it back.";
    if ui
        .button("Put the wanted toe into the build")
        .on_hover_text(help)
        .clicked()
    {
        let mut wheel = input.build.front.wheel;
        wheel.toe_deg = wanted;
        requests.push(Request::Edit(Edit::SetWheel(
            trammel_build::AxleName::Front,
            wheel,
        )));
    }
}

fn castor(ui: &mut Ui, input: &NotebookInput<'_>, view: &mut View, requests: &mut Vec<Request>) {
    let mut form = Form {
        unit: input.build.unit,
        tokens: input.tokens,
        requests,
    };
    form.group(ui, "Castor by a sweep", |form, ui| {
        let [steered, out, inward] = &mut view.set_up.castor;
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
    let [steered, out, inward] = view.set_up.castor.map(f64::to_radians);
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

fn weights(ui: &mut Ui, input: &NotebookInput<'_>, view: &mut View, requests: &mut Vec<Request>) {
    let unit = input.build.unit;
    let sign = if unit == LengthUnit::Inch { "lb" } else { "kg" };
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
            for (name, value) in names.iter().zip(&mut view.set_up.weights) {
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
    let [front_left, front_right, rear_left, rear_right] = view.set_up.weights;
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
        vehicle.mass = Some(if unit == LengthUnit::Inch {
            Mass::Pounds(shares.total)
        } else {
            Mass::Kilograms(shares.total)
        });
        vehicle.front_share = Some((shares.front * 1e4).round() / 1e4);
        requests.push(Request::Edit(Edit::SetVehicle(vehicle)));
    }
}
