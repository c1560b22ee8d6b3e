//! Advice as it is said.

use super::{Doubt, NextMoves, SideNext};
use trammel_build::{LengthUnit, Session, format_length, signed};
use trammel_setup::{Plan, Reduced, RodThread, Uncertain, Way, turns_and_flats};

/// `0.123 IN`.
#[must_use]
pub fn toe(change: f64) -> String {
    let size = change.to_degrees().abs();
    match Way::of(change).filter(|_| size >= 0.0005) {
        Some(way) => format!("{size:.3} {way}"),
        None => "0.000".to_owned(),
    }
}

/// `4.1 +- 0.3 mm`.
#[must_use]
pub fn length(value: &Uncertain, unit: LengthUnit) -> String {
    let [size, deviation] = [value.value.abs(), value.deviation].map(|v| unit.from_mm(v));
    match unit {
        LengthUnit::Inch => format!("{size:.3} +- {deviation:.3} in"),
        LengthUnit::Millimetre => format!("{size:.1} +- {deviation:.1} mm"),
    }
}

/// What the readings say is wrong, a line each.
#[must_use]
pub fn cause(side: &SideNext, unit: LengthUnit) -> Vec<String> {
    let Some(cause) = &side.cause else {
        return vec!["What is wrong can't be told from these readings.".to_owned()];
    };
    let mut lines = vec![format!("The {}.", cause.side)];
    if let Some(shape) = &cause.shape {
        let (each, reach) = match unit {
            LengthUnit::Inch => (
                (25.4, "inch"),
                format!("{:.1} in", unit.from_mm(shape.reach)),
            ),
            LengthUnit::Millimetre => ((25.0, "25 mm"), format!("{:.0} mm", shape.reach)),
        };
        let degrees = |radians: f64| (radians * each.0).to_degrees();
        let way = |v: f64| Way::of(v).map_or(String::new(), |w| format!(" {w}"));
        lines.push(format!(
            "Slope {:.3} +- {:.3} degrees{} in bump for each {}; bowl {:.3} +- {:.3} degrees{} both ways at {reach}.",
            degrees(shape.slope.value).abs(),
            degrees(shape.slope.deviation),
            way(shape.slope.value),
            each.1,
            shape.bowl.value.abs().to_degrees(),
            shape.bowl.deviation.to_degrees(),
            way(shape.bowl.value),
        ));
    }
    match cause.height() {
        Some(error) => lines.push(format!(
            "By {}: {error}.",
            length(&cause.height_error, unit)
        )),
        None => lines.push("No height error that stands out of the readings' accuracy.".to_owned()),
    }
    match cause.length() {
        Some(error) => lines.push(format!(
            "By {}: {error}.",
            length(&cause.length_error, unit)
        )),
        None => lines.push("No length error that stands out of the readings' accuracy.".to_owned()),
    }
    lines
}

/// The moves of a plan, the tie rod's among them.
#[must_use]
pub fn moves(plan: &Plan, rod: &RodThread) -> String {
    if plan.moves.is_empty() {
        return "no move".to_owned();
    }
    let said: Vec<String> = plan.moves.iter().map(ToString::to_string).collect();
    format!("{}; {}", said.join(", "), rod_words(plan, rod))
}

/// What the tie rod's own thread has to do so that static toe stays.
#[must_use]
pub fn rod_words(plan: &Plan, rod: &RodThread) -> String {
    let turns = turns_and_flats(plan.rod_longer, rod.per_turn);
    let way = if plan.rod_longer > 0.0 {
        "longer"
    } else {
        "shorter"
    };
    if turns.turns == 0 && turns.flats == 0 {
        return "the tie rod stays".to_owned();
    }
    let range = match plan.rod_allows {
        Some(false) => " (more than its thread allows)",
        _ => "",
    };
    format!("tie rod {turns} {way}{range}, so that static toe stays")
}

/// `largest 0.05 degrees, chance 93 %`.
#[must_use]
pub fn expected(plan: &Plan) -> String {
    format!(
        "largest toe change expected {:.3} degrees, chance of staying within the limit {}",
        plan.largest.to_degrees(),
        chance(plan.confidence)
    )
}

/// A chance is counted on a few hundred likely vehicles, so it is never told as certain.
fn chance(share: f64) -> String {
    if share > 0.99 {
        "over 99 %".to_owned()
    } else if share < 0.01 {
        "under 1 %".to_owned()
    } else {
        format!("{:.0} %", 100.0 * share)
    }
}

/// Questions about readings that look wrong.
#[must_use]
pub fn asks(side: &SideNext, unit: LengthUnit) -> Vec<String> {
    let wheel = side.readings.side.word();
    side.readings
        .doubts
        .iter()
        .map(|doubt| match doubt {
            Doubt::Whole(flip) => format!("{wheel} wheel: {}", flip.question()),
            Doubt::Sign(d) => format!(
                "{wheel} wheel at a travel of {}: {} was read, its neighbours say {}. Is the word right?",
                format_length(unit.from_mm(d.travel), unit),
                toe(d.read),
                toe(d.expected),
            ),
        })
        .collect()
}

/// What to do with the shims under the rack; `None` where they stay.
#[must_use]
pub fn shims(next: &NextMoves) -> Option<String> {
    let verb = if next.shims > 0 { "add" } else { "take out" };
    let count = next.shims.unsigned_abs();
    (count != 0).then(|| format!("{verb} {count} of the shims under the rack"))
}

/// What a session can't tell that reads both wheels together; `None` for one that reads each by itself.
#[must_use]
pub fn read_together(session: &Session) -> Option<&'static str> {
    (session.method.reads_both_wheels() && !session.rows.is_empty()).then_some(
        "A tape across both tyres reads the sum of both wheels; each is given half of it. If one wheel is off more than the other, half of the \
         difference is laid on the wrong one, and no figure here shows it. Read each wheel from a string or straight edge to tell them apart.",
    )
}

/// Where to weld, when no adjuster cures it.
#[must_use]
pub fn reweld(side: &SideNext, unit: LengthUnit) -> Option<String> {
    let weld = side.advice.reweld.as_ref()?;
    let by = [weld.by.x, weld.by.y, weld.by.z].map(|v| signed(unit.from_mm(v), 2));
    Some(format!(
        "No adjuster within its range cures it. The inner joint must be welded elsewhere: by ({}) {} forward, outboard and up; largest toe change then {:.3} degrees.",
        by.join(", "),
        unit.sign(),
        weld.then.largest.to_degrees()
    ))
}

/// What the runs say of their return to ride height.
#[must_use]
pub fn returns(latest: &Reduced) -> Vec<String> {
    let line = |(run, n): (&trammel_setup::RunCheck, i32)| match (
        run.came_back(),
        run.return_to_zero,
    ) {
        (Some(false), Some(off)) => Some(format!(
            "CHECK: run {n} came back {:.3} degrees off its first reading; the accuracy allows {:.3}. Look for play, or a plate that slipped.",
            off.abs().to_degrees(),
            run.allowed.to_degrees()
        )),
        (None, _) => Some(format!(
            "Run {n} was not read again at ride height, so its return is not checked."
        )),
        _ => None,
    };
    latest.runs.iter().zip(1..).filter_map(line).collect()
}
