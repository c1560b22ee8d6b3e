//! Making the builds up and sweeping them.

use trammel_geometry::Linkage;

use super::{
    band::{Band, Quantiles, RackBand},
    draw::{built, errors},
    ranking::{Share, derivatives, shares},
    request::{ScatterFault, ScatterRequest},
};
use crate::ToeCurves;

/// Most threads.
const MOST_THREADS: usize = 64;

/// What build error does.
#[derive(Clone, Debug, PartialEq)]
pub struct Scatter {
    /// The band around the toe curve at each rack position.
    pub racks: Vec<RackBand>,
    /// Builds that could be swept over the whole travel.
    pub swept: usize,
    /// Builds that could not.
    pub failed: usize,
    /// Share of all builds whose largest toe change stays within the limit; those that can't be swept don't.
    pub within_limit: f64,
    /// Largest toe change of the builds, rad; `None` when none could be swept.
    pub largest: Option<Quantiles>,
    /// Which coordinate matters how much, most first.
    pub ranking: Vec<Share>,
    /// Part of the variance that straight lines in the coordinates explain; near 1 the ranking tells all.
    pub explained: f64,
}

/// Makes up and sweeps the builds. In each the static toe is put right again by the tie rod's length, as on a real car.
///
/// The same request gives the same result to the last digit, however many threads work on it.
///
/// # Errors
/// A [`ScatterFault`] when the request makes no sense or the corner as drawn can't be swept.
pub fn scatter(request: &ScatterRequest) -> Result<Scatter, ScatterFault> {
    request.check()?;
    let drawn = ToeCurves::of(&Linkage::new(&request.corner)?, &request.stations)?;
    let derivatives = derivatives(&request.corner, &request.tolerances, &request.stations)?;
    let Swept { errors, changes } = sweep(request);
    let stations = request.stations.racks().len() * request.stations.travels().len();
    let swept = changes.len() / stations;
    let mut largest: Vec<f64> = changes
        .chunks_exact(stations)
        .map(|c| c.iter().fold(0.0_f64, |m, v| m.max(v.abs())))
        .collect();
    let within = largest.iter().filter(|&&v| v <= request.limit).count();
    let ranking = shares(&request.tolerances, &derivatives, &errors, &changes);
    Ok(Scatter {
        racks: bands(request, &drawn, &derivatives, &changes),
        swept,
        failed: request.builds - swept,
        within_limit: within as f64 / request.builds as f64,
        largest: Quantiles::of(&mut largest),
        explained: ranking.iter().map(|s| s.regressed).sum(),
        ranking,
    })
}

/// Rows of the builds that could be swept, in order of their numbers.
struct Swept {
    errors: Vec<f64>,
    changes: Vec<f64>,
}

fn sweep(request: &ScatterRequest) -> Swept {
    let threads = request.threads.clamp(1, MOST_THREADS);
    let each = request.builds.div_ceil(threads);
    let parts: Vec<Swept> = std::thread::scope(|scope| {
        let workers: Vec<_> = (0..threads)
            .map(|i| {
                let range = (i * each).min(request.builds)..((i + 1) * each).min(request.builds);
                scope.spawn(move || sweep_some(request, range))
            })
            .collect();
        // A worker does not panic; were one to, its builds would count as failed.
        workers.into_iter().filter_map(|w| w.join().ok()).collect()
    });
    let mut all = Swept {
        errors: Vec::new(),
        changes: Vec::new(),
    };
    for part in parts {
        all.errors.extend(part.errors);
        all.changes.extend(part.changes);
    }
    all
}

fn sweep_some(request: &ScatterRequest, range: std::ops::Range<usize>) -> Swept {
    let width = request.tolerances.len();
    let mut off = vec![0.0; width];
    let mut all = Swept {
        errors: Vec::with_capacity(range.len() * width),
        changes: Vec::new(),
    };
    for index in range {
        errors(&request.tolerances, index as u32, request.seed, &mut off);
        let corner = built(&request.corner, &request.tolerances, &off);
        let curves = Linkage::new(&corner)
            .ok()
            .and_then(|l| ToeCurves::of(&l, &request.stations).ok());
        if let Some(curves) = curves {
            all.errors.extend_from_slice(&off);
            all.changes.extend(curves.changes());
        }
    }
    all
}

fn bands(
    request: &ScatterRequest,
    drawn: &ToeCurves,
    derivatives: &[Vec<f64>],
    changes: &[f64],
) -> Vec<RackBand> {
    let travels = request.stations.travels();
    let stations = drawn.curves.len() * travels.len();
    let mut station = 0;
    let mut column = Vec::with_capacity(changes.len() / stations);
    let mut band = |travel: f64, drawn: f64| {
        column.clear();
        column.extend(changes.iter().skip(station).step_by(stations));
        let linear = linear_deviation(request, derivatives, station);
        station += 1;
        Band::of(travel, drawn, &mut column, linear)
    };
    let of_rack = |curve: &crate::RackCurve| RackBand {
        rack: curve.rack,
        bands: travels
            .iter()
            .zip(&curve.changes)
            .map(|(&travel, &drawn)| band(travel, drawn))
            .collect(),
    };
    drawn.curves.iter().map(of_rack).collect()
}

fn linear_deviation(request: &ScatterRequest, derivatives: &[Vec<f64>], station: usize) -> f64 {
    let part = |(t, d): (&super::request::Tolerance, &Vec<f64>)| {
        d.get(station)
            .map_or(0.0, |d| (d * t.spread.deviation()).powi(2))
    };
    request
        .tolerances
        .iter()
        .zip(derivatives)
        .map(part)
        .sum::<f64>()
        .sqrt()
}
