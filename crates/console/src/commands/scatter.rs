//! `trammel scatter`: what build error does to the toe curve.

use serde::Serialize;
use trammel_analysis::{coordinate_name, tolerances};
use trammel_build::{LengthUnit, defaults};
use trammel_tuning::{Quantiles, Scatter, ScatterRequest, scatter};

use super::chosen::Chosen;
use crate::arguments::tune::ScatterArguments;
use crate::fault::Fault;
use crate::terminal;

/// Threads; the result does not depend on them.
const THREADS: usize = 2;
/// Coordinates of the ranking that are told in words.
const TOLD: usize = 10;

#[derive(Serialize)]
struct ScatterOut<'a> {
    title: &'a str,
    unit: &'static str,
    axle: &'static str,
    side: &'static str,
    builds: usize,
    seed: u32,
    limit_deg: f64,
    swept: usize,
    failed: usize,
    within_limit: f64,
    largest_deg: Option<Percentiles>,
    band: Vec<BandOut>,
    ranking: Vec<ShareOut>,
    explained: f64,
}

#[derive(Serialize)]
struct Percentiles {
    p5: f64,
    p25: f64,
    p50: f64,
    p75: f64,
    p95: f64,
}

#[derive(Serialize)]
struct BandOut {
    travel: f64,
    drawn_deg: f64,
    mean_deg: f64,
    deviation_deg: f64,
    #[serde(flatten)]
    built_deg: Percentiles,
}

#[derive(Serialize)]
struct ShareOut {
    coordinate: String,
    deviation: f64,
    share: f64,
    deg_per_length: f64,
}

pub(crate) fn run(arguments: &ScatterArguments) -> Result<(), Fault> {
    let chosen = Chosen::of(&arguments.corner)?;
    let limit = arguments.limit.or(chosen.build().limits.toe_change_deg);
    let limit = limit.unwrap_or(defaults::TOE_CHANGE_LIMIT_DEG);
    let rack = chosen.length("--rack", &arguments.rack)?;
    let request = ScatterRequest {
        corner: *chosen.corner(),
        tolerances: tolerances(chosen.build(), chosen.axle(), chosen.side),
        stations: chosen.stations(rack)?,
        builds: arguments.builds,
        seed: arguments.seed,
        limit: limit.to_radians(),
        threads: THREADS,
    };
    let found = scatter(&request)?;
    let out = out(&chosen, arguments, limit, &found);
    if arguments.json {
        let json = serde_json::to_string_pretty(&out).map_err(|e| Fault::Output(e.into()))?;
        terminal::print(&(json + "\n"))
    } else {
        terminal::print(&text(&out, chosen.unit()))
    }
}

fn out<'a>(
    chosen: &'a Chosen,
    arguments: &ScatterArguments,
    limit_deg: f64,
    found: &Scatter,
) -> ScatterOut<'a> {
    let unit = chosen.unit();
    let bands = found.racks.first().map(|r| r.bands.as_slice());
    ScatterOut {
        title: &chosen.build().title,
        unit: unit.word(),
        axle: chosen.axle().word(),
        side: chosen.side.word(),
        builds: arguments.builds,
        seed: arguments.seed,
        limit_deg,
        swept: found.swept,
        failed: found.failed,
        within_limit: found.within_limit,
        largest_deg: found.largest.as_ref().map(percentiles),
        band: bands
            .unwrap_or_default()
            .iter()
            .map(|b| BandOut {
                travel: unit.from_mm(b.travel),
                drawn_deg: b.drawn.to_degrees(),
                mean_deg: b.mean.to_degrees(),
                deviation_deg: b.deviation.to_degrees(),
                built_deg: percentiles(&b.built),
            })
            .collect(),
        ranking: ranking(chosen, found),
        explained: found.explained,
    }
}

fn ranking(chosen: &Chosen, found: &Scatter) -> Vec<ShareOut> {
    let unit = chosen.unit();
    let share = |s: &trammel_tuning::Share| {
        let at = coordinate_name(chosen.axle(), s.coordinate);
        ShareOut {
            coordinate: at.to_string(),
            deviation: unit.from_mm(chosen.build().deviation_mm(at)),
            share: s.linear,
            deg_per_length: s.toe_per_mm.to_degrees() * unit.mm(),
        }
    };
    found.ranking.iter().map(share).collect()
}

fn percentiles(q: &Quantiles) -> Percentiles {
    Percentiles {
        p5: q.low.to_degrees(),
        p25: q.lower.to_degrees(),
        p50: q.median.to_degrees(),
        p75: q.upper.to_degrees(),
        p95: q.high.to_degrees(),
    }
}

fn text(out: &ScatterOut<'_>, unit: LengthUnit) -> String {
    let sign = unit.sign();
    let mut lines = vec![
        out.title.to_owned(),
        format!(
            "{} axle, {} side: {} builds, seed {}.",
            out.axle, out.side, out.builds, out.seed
        ),
        format!(
            "Largest toe change within {}°: {:.1} per cent of the builds.",
            out.limit_deg,
            100.0 * out.within_limit
        ),
    ];
    lines.extend(out.largest_deg.as_ref().map(|q| {
        format!(
            "Largest toe change of the builds: median {:.3}°, 5 to 95 per cent {:.3}° to {:.3}°.",
            q.p50, q.p5, q.p95
        )
    }));
    if out.failed > 0 {
        lines.push(format!(
            "{} builds do not reach the whole travel.",
            out.failed
        ));
    }
    lines.push(String::new());
    lines.push(format!(
        "Travel, {sign}   as drawn    5 %    median    95 %   (toe change, °)"
    ));
    let every = (out.band.len() / 10).max(1);
    lines.extend(out.band.iter().step_by(every).map(|b| {
        let q = &b.built_deg;
        format!(
            "{:>9.3} {:>10.3} {:>8.3} {:>8.3} {:>8.3}",
            b.travel, b.drawn_deg, q.p5, q.p50, q.p95
        )
    }));
    lines.push(String::new());
    lines.push(
        "Measure these twice (share of the spread; deviation taken; toe change for its length):"
            .into(),
    );
    lines.extend(out.ranking.iter().take(TOLD).map(|s| {
        format!(
            "{:<32} {:>5.1} %   {:.4} {sign}   {:.3}°/{sign}",
            s.coordinate,
            100.0 * s.share,
            s.deviation,
            s.deg_per_length
        )
    }));
    lines.join("\n") + "\n"
}
