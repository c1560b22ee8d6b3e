//! Static toe, whether the steering is centred, camber and ride height, each wheel by itself.

use egui::{RichText, Ui};
use trammel_analysis::{Study, rod_per_turn};
use trammel_build::{Edit, LengthUnit, Side, Statics};
use trammel_geometry::Corner;
use trammel_setup::{
    TravelBy, TurnsAndFlats, Way, difference_of_toe, toe_of_difference, travel, turn_effect,
    turns_and_flats, turns_for_toe,
};

use super::{
    super::{
        NotebookInput,
        form::{Form, Takes},
    },
    ask, plain, soft,
};
use crate::{
    request::Request,
    words::{decimal, signed, tape},
};

/// Steered less than this, degrees, is straight ahead (common practice, no source).
const CENTRED: f64 = 0.05;
const SIDES: [(usize, Side, &str); 2] = [(0, Side::Left, "Left"), (1, Side::Right, "Right")];
const DEGREES: Takes = Takes::MaybeNumber { sign: "°" };

pub(super) fn toe(
    ui: &mut Ui,
    input: &NotebookInput<'_>,
    study: &Study,
    next: &mut Statics,
    requests: &mut Vec<Request>,
) {
    let wanted = next
        .wanted_toe_deg
        .unwrap_or(input.build.front.wheel.toe_deg);
    rows(ui, input, next, requests);
    let unit = input.build.unit;
    let left = *study.front.model.linkage(Side::Left).corner();
    let tyre = 2.0 * left.wheel.loaded_radius;
    let spread = |degrees: f64| spread(input, degrees, tyre);
    small(
        ui,
        &format!("Wanted: {}, {} a wheel.", way(wanted), spread(wanted)),
    );
    if let Some(difference) = next.tape_difference {
        match toe_of_difference(difference * unit.mm(), tyre) {
            Some(all) => small(
                ui,
                &format!(
                    "A tape's difference of {difference} {} over the tyre is {} in all, half of it each wheel.",
                    unit.sign(),
                    way(all.to_degrees())
                ),
            ),
            None => ask(ui, input, "The tape's difference is no toe of this tyre."),
        }
    }
    let Ok(per_turn) = rod_per_turn(input.build) else {
        return ask(
            ui,
            input,
            "The tie rod's thread isn't known, so turns can't be told.",
        );
    };
    for (at, side, word) in SIDES {
        if let Some(Some(read)) = next.toe_deg.get(at).copied() {
            small(ui, &format!("{word}: {}, {}.", way(read), spread(read)));
            let corner = *study.front.model.linkage(side).corner();
            turns(ui, input, &corner, (read, wanted, per_turn), word);
        }
    }
    if let [Some(a), Some(b)] = next.toe_deg {
        both(ui, a, b);
    }
    effect(ui, input, &left, per_turn, tyre);
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

fn rows(ui: &mut Ui, input: &NotebookInput<'_>, next: &mut Statics, requests: &mut Vec<Request>) {
    let drawn = input.build.front.wheel.toe_deg;
    let mut form = Form {
        unit: input.build.unit,
        tokens: input.tokens,
        requests,
    };
    form.group(ui, "Toe, rack at its centre", |form, ui| {
        let help = "Static toe of this wheel against a string or straight edge, in is positive.";
        for (at, label) in [(0, "Toe left"), (1, "Toe right")] {
            if let Some(slot) = next.toe_deg.get_mut(at)
                && let Some(v) = form.row(ui, label, *slot, DEGREES, help)
            {
                *slot = v;
            }
        }
        let help = "Static toe that each wheel should have, in is positive; left empty, the build's.";
        let takes = Takes::number_or("°", drawn);
        if let Some(v) = form.row(ui, "Toe wanted", next.wanted_toe_deg, takes, help) {
            next.wanted_toe_deg = v;
        }
        let help = "What a tape reads across the rears of both tyres less across their fronts, at the height of the wheel centres; in is positive.";
        let (now, takes) = (next.tape_difference, Takes::MaybeLength);
        if let Some(v) = form.row(ui, "Tape, rear less front", now, takes, help) {
            next.tape_difference = v;
        }
    });
}

/// `0.20° IN`.
fn way(degrees: f64) -> String {
    match Way::of(degrees).filter(|_| degrees.abs() >= 0.005) {
        Some(way) => format!("{:.2}° {way}", degrees.abs()),
        None => "0.00°".to_owned(),
    }
}

/// The difference that a toe makes over tyre and rim.
fn spread(input: &NotebookInput<'_>, degrees: f64, tyre: f64) -> String {
    let unit = input.build.unit;
    let digits = if unit == LengthUnit::Inch { 3 } else { 1 };
    let over = |mm: f64| {
        let difference = unit.from_mm(difference_of_toe(degrees.to_radians(), mm).abs());
        format!("{difference:.digits$} {}", unit.sign())
    };
    let rim = input.build.front.parts.wheel.rim_diameter;
    let rim = rim.map_or_else(String::new, |d| {
        format!(", {} over the rim", over(d * unit.mm()))
    });
    format!("{} over the tyre{rim}", over(tyre))
}

fn small(ui: &mut Ui, text: &str) {
    plain(ui, RichText::new(text).small());
}

fn turns(
    ui: &mut Ui,
    input: &NotebookInput<'_>,
    corner: &Corner,
    (read, wanted, per_turn): (f64, f64, f64),
    word: &str,
) {
    match turns_for_toe(corner, read.to_radians(), wanted.to_radians(), per_turn) {
        Ok(turns) if is_none(turns_and_flats(turns.longer, per_turn)) => {
            soft(
                ui,
                input,
                &format!("{word}: as wanted to within half a flat."),
            );
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
                    "{word}: turn the tie rod {words} {way} ({:.2} turns).",
                    turns.turns.abs()
                ),
            );
        }
        Err(fault) => ask(ui, input, &fault.to_string()),
    }
}

fn is_none(turns: TurnsAndFlats) -> bool {
    turns.turns == 0 && turns.flats == 0
}

/// Toe in all, and where the pair points.
fn both(ui: &mut Ui, left: f64, right: f64) {
    let steered = 0.5 * (left - right);
    let pointing = if steered.abs() <= CENTRED {
        format!("the steering is centred to within {CENTRED}°")
    } else {
        let to = if steered > 0.0 { "right" } else { "left" };
        format!(
            "the pair points {:.2}° to the {to} with the rack centred: turn each rod as told, not the steering wheel",
            steered.abs()
        )
    };
    plain(ui, format!("In all {}; {pointing}.", way(left + right)));
}

fn effect(ui: &mut Ui, input: &NotebookInput<'_>, corner: &Corner, per_turn: f64, tyre: f64) {
    let unit = input.build.unit;
    if let Ok(effect) = turn_effect(corner, per_turn, tyre) {
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
}

/// Camber of each wheel against the build's.
pub(super) fn camber(
    ui: &mut Ui,
    input: &NotebookInput<'_>,
    next: &mut Statics,
    requests: &mut Vec<Request>,
) {
    let mut form = Form {
        unit: input.build.unit,
        tokens: input.tokens,
        requests,
    };
    form.group(ui, "Camber, wheels straight", |form, ui| {
        let help = "By an angle gauge on the rim or hub, floor level; top outboard is positive.";
        for (at, label) in [(0, "Camber left"), (1, "Camber right")] {
            if let Some(slot) = next.camber_deg.get_mut(at)
                && let Some(v) = form.row(ui, label, *slot, DEGREES, help)
            {
                *slot = v;
            }
        }
    });
    let drawn = input.build.front.wheel.camber_deg;
    let said: Vec<String> = SIDES
        .iter()
        .filter_map(|(at, _, word)| {
            let read = next.camber_deg.get(*at).copied().flatten()?;
            Some(format!(
                "{word} {}° against the build's {}°",
                signed(read - drawn, 2),
                decimal(drawn, 2)
            ))
        })
        .collect();
    if !said.is_empty() {
        let apart = match next.camber_deg {
            [Some(a), Some(b)] => format!("; left less right {}°", signed(a - b, 2)),
            _ => String::new(),
        };
        plain(ui, format!("{}{apart}.", said.join(", ")));
    }
}

/// How the vehicle stands against its design position, by the spring units' lengths.
pub(super) fn ride_height(
    ui: &mut Ui,
    input: &NotebookInput<'_>,
    study: &Study,
    next: &mut Statics,
    requests: &mut Vec<Request>,
) {
    let unit = input.build.unit;
    let model = &study.front.model;
    let mut form = Form {
        unit,
        tokens: input.tokens,
        requests,
    };
    form.group(ui, "Ride height", |form, ui| {
        let help = "Length of the spring unit between the centres of its mounts, as the vehicle stands with the driver in.";
        for (at, label) in [(0, "Spring unit left"), (1, "Spring unit right")] {
            if let Some(slot) = next.shock.get_mut(at)
                && let Some(v) = form.row(ui, label, *slot, Takes::MaybeLength, help)
            {
                *slot = v;
            }
        }
    });
    for (at, side, word) in SIDES {
        let linkage = model.linkage(side);
        let Some(spring) = linkage.corner().spring else {
            return soft(
                ui,
                input,
                "The front axle has no spring unit drawn, so ride height can't be told from its length.",
            );
        };
        let drawn = (spring.arm_mount - spring.chassis_mount).norm();
        let Some(read) = next.shock.get(at).copied().flatten() else {
            soft(
                ui,
                input,
                &format!("{word}: drawn at {}.", tape(drawn, unit)),
            );
            continue;
        };
        let by = TravelBy::ShockLength {
            length: read * unit.mm(),
            at_ride: drawn,
        };
        match travel(linkage, by) {
            Ok(up) => {
                let (sign, way) = (unit.sign(), if up > 0.0 { "lower" } else { "higher" });
                plain(
                    ui,
                    format!(
                        "{word}: drawn at {} {sign}; the frame stands {} {sign} {way} there than drawn.",
                        tape(drawn, unit),
                        tape(up.abs(), unit)
                    ),
                );
            }
            Err(fault) => ask(ui, input, &format!("{word}: {fault}.")),
        }
    }
    soft(
        ui,
        input,
        "Set ride height before toe and camber. The Tune stage puts another ride height into the build.",
    );
}
