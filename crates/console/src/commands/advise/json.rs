//! Advice as JSON.

use serde_json::{Value, json};
use trammel_analysis::{SideNext, advice_words as words};
use trammel_build::LengthUnit;
use trammel_setup::{Plan, RodThread, ToePoint, Way};

use super::Answer;
use crate::fault::Fault;

pub(super) fn told(answer: &Answer<'_>) -> Result<String, Fault> {
    let unit = answer.build.unit;
    let next = &answer.next;
    let asks: Vec<String> = next
        .sides
        .iter()
        .flat_map(|s| words::asks(s, unit))
        .collect();
    let sides: Vec<Value> = next
        .sides
        .iter()
        .map(|s| side(s, &next.rod, unit))
        .collect();
    let value = json!({
        "title": answer.build.title,
        "unit": unit.word(),
        "limit_deg": next.limit.to_degrees(),
        "cured": next.cured(),
        "adjusters_assumed": next.adjusters_assumed,
        "shims": next.shims,
        "read_together": answer.build.set_up.sessions.iter().find_map(words::read_together),
        "asks": asks,
        "sides": sides,
        "out": answer.out,
    });
    let text = serde_json::to_string_pretty(&value).map_err(|e| Fault::Output(e.into()))?;
    Ok(text + "\n")
}

fn points<'a>(all: impl Iterator<Item = &'a ToePoint>, unit: LengthUnit) -> Vec<Value> {
    all.map(|p| {
        json!({
            "rack": unit.from_mm(p.rack),
            "travel": unit.from_mm(p.travel),
            "toe_deg": p.change.to_degrees(),
            "way": Way::of(p.change).map(|w| w.to_string()),
            "deviation_deg": p.deviation.to_degrees(),
        })
    })
    .collect()
}

fn plan(p: &Plan, rod: &RodThread, unit: LengthUnit) -> Value {
    json!({
        "moves": p.moves.iter().map(|m| json!({
            "adjuster": m.kind.name(),
            "steps": m.steps,
            "length": unit.from_mm(m.length),
            "words": m.to_string(),
        })).collect::<Vec<_>>(),
        "largest_deg": p.largest.to_degrees(),
        "confidence": p.confidence,
        "rod_longer": unit.from_mm(p.rod_longer),
        "rod_words": words::rod_words(p, rod),
        "rod_allows": p.rod_allows,
    })
}

fn lengths(mm: [f64; 3], unit: LengthUnit) -> [f64; 3] {
    mm.map(|v| unit.from_mm(v))
}

fn side(s: &SideNext, rod: &RodThread, unit: LengthUnit) -> Value {
    let latest = &s.readings.latest;
    let cause = s.cause.as_ref().map(|c| {
        let slope = c
            .shape
            .as_ref()
            .map(trammel_setup::Shape::degrees_per_25_mm);
        let bowl = c.shape.as_ref().map(|s| s.bowl);
        json!({
            "tie_rod": c.side.to_string(),
            "slope_deg_per_25_mm": slope.map(|v| v.value),
            "slope_deviation": slope.map(|v| v.deviation),
            "bowl_deg": bowl.map(|v| v.value.to_degrees()),
            "bowl_deviation": bowl.map(|v| v.deviation.to_degrees()),
            "height_error": unit.from_mm(c.height_error.value),
            "height_error_deviation": unit.from_mm(c.height_error.deviation),
            "length_error": unit.from_mm(c.length_error.value),
            "length_error_deviation": unit.from_mm(c.length_error.deviation),
            "words": words::cause(s, unit),
        })
    });
    let name =
        |c: &trammel_tuning::Coordinate| format!("{}.{:?}", c.point.name(), c.axis).to_lowercase();
    let told = &s.learned.told;
    let alternatives = s.advice.alternatives.iter().map(|p| plan(p, rod, unit));
    json!({
        "side": s.readings.side.word(),
        "readings": points(latest.readings.points(), unit),
        "return_to_zero_deg": latest.runs.iter().map(|r| r.return_to_zero.map(f64::to_degrees)).collect::<Vec<_>>(),
        "came_back": latest.runs.iter().map(trammel_setup::RunCheck::came_back).collect::<Vec<_>>(),
        "repeatability_deg": latest.repeatability.map(f64::to_degrees),
        "cause": cause,
        "learned": {
            "figures": told.figures,
            "misfit": s.learned.misfit,
            "alike": told.alike.iter().map(|g| g.iter().map(name).collect::<Vec<_>>()).collect::<Vec<_>>(),
            "unseen": told.unseen.iter().map(name).collect::<Vec<_>>(),
            "errors": s.learned.errors.iter().map(|e| json!({
                "coordinate": name(&e.coordinate),
                "error": unit.from_mm(e.error),
                "before": unit.from_mm(e.before),
                "after": unit.from_mm(e.after),
            })).collect::<Vec<_>>(),
        },
        "now": plan(&s.advice.now, rod, unit),
        "best": plan(&s.advice.best, rod, unit),
        "alternatives": alternatives.collect::<Vec<_>>(),
        "reweld": s.advice.reweld.map(|w| json!({
            "by": lengths([w.by.x, w.by.y, w.by.z], unit),
            "to": lengths([w.to.x, w.to.y, w.to.z], unit),
            "largest_deg": w.then.largest.to_degrees(),
        })),
        "next": points(s.next.iter(), unit),
    })
}
