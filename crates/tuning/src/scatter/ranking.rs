//! Which measurement to take twice: each coordinate's share of the variance.

use trammel_geometry::{Corner, Linkage, greatest_first};

use super::{
    draw::built,
    request::{ScatterFault, Tolerance},
};
use crate::{Coordinate, Stations, ToeCurves};

/// Difference step for the derivatives, mm.
const STEP: f64 = 1e-2;

/// A coordinate's part in the spread of the toe curve, all stations together.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Share {
    /// Which coordinate.
    pub coordinate: Coordinate,
    /// First-order share of the variance by derivatives: of all tolerances together they add up to 1.
    pub linear: f64,
    /// The same by regression on the builds: they add up to the part of the variance that straight lines explain.
    pub regressed: f64,
    /// Root mean square, over the stations, of the toe change for each mm, rad/mm.
    pub toe_per_mm: f64,
}

/// Toe change per mm: for each tolerance one figure for each station.
pub(crate) fn derivatives(
    corner: &Corner,
    tolerances: &[Tolerance],
    stations: &Stations,
) -> Result<Vec<Vec<f64>>, ScatterFault> {
    let changes = |corner: &Corner| -> Result<Vec<f64>, ScatterFault> {
        let linkage = Linkage::new(corner)?;
        let curves = ToeCurves::of(&linkage, stations)?;
        Ok(curves.changes().collect())
    };
    let mut all = Vec::with_capacity(tolerances.len());
    for t in tolerances {
        let one = std::slice::from_ref(t);
        let up = changes(&built(corner, one, &[STEP]))?;
        let down = changes(&built(corner, one, &[-STEP]))?;
        all.push(
            up.iter()
                .zip(&down)
                .map(|(u, d)| (u - d) / (2.0 * STEP))
                .collect(),
        );
    }
    Ok(all)
}

/// Shares in order of the linear one, largest first. `errors` and `changes` hold one row for each build, of so many
/// tolerances and stations.
pub(crate) fn shares(
    tolerances: &[Tolerance],
    derivatives: &[Vec<f64>],
    errors: &[f64],
    changes: &[f64],
) -> Vec<Share> {
    let stations = derivatives.first().map_or(0, Vec::len).max(1);
    let variance = |t: &Tolerance| t.spread.deviation().powi(2);
    let square = |d: &[f64]| d.iter().map(|v| v * v).sum::<f64>();
    let total: f64 = tolerances
        .iter()
        .zip(derivatives)
        .map(|(t, d)| variance(t) * square(d))
        .sum();
    let regressed = regressed(tolerances.len(), stations, errors, changes);
    let mut shares: Vec<Share> = tolerances
        .iter()
        .zip(derivatives)
        .zip(regressed)
        .map(|((t, d), regressed)| Share {
            coordinate: t.coordinate,
            linear: if total > 0.0 {
                variance(t) * square(d) / total
            } else {
                0.0
            },
            regressed,
            toe_per_mm: (square(d) / stations as f64).sqrt(),
        })
        .collect();
    greatest_first(&mut shares, |s| s.linear);
    shares
}

/// For each tolerance, the part of the toe changes' variance that a straight line in its error explains.
fn regressed(count: usize, stations: usize, errors: &[f64], changes: &[f64]) -> Vec<f64> {
    let builds = (changes.len() / stations).max(1) as f64;
    let mean_change = means(stations, changes);
    let mean_error = means(count, errors);
    let mut total = 0.0;
    let mut error_squares = vec![0.0; count];
    let mut products = vec![0.0; count * stations];
    let mut centred = vec![0.0; stations];
    for (e, c) in errors
        .chunks_exact(count)
        .zip(changes.chunks_exact(stations))
    {
        for (d, (v, m)) in centred.iter_mut().zip(c.iter().zip(&mean_change)) {
            *d = v - m;
            total += *d * *d;
        }
        let rows = products.chunks_exact_mut(stations);
        for (((row, s), v), m) in rows.zip(&mut error_squares).zip(e).zip(&mean_error) {
            let off = v - m;
            *s += off * off;
            for (p, d) in row.iter_mut().zip(&centred) {
                *p += off * d;
            }
        }
    }
    products
        .chunks_exact(stations)
        .zip(&error_squares)
        .map(|(row, s)| {
            let explained: f64 = row.iter().map(|p| p * p).sum();
            let share = explained / (s * total);
            if builds > 2.0 && share.is_finite() {
                share
            } else {
                0.0
            }
        })
        .collect()
}

fn means(width: usize, rows: &[f64]) -> Vec<f64> {
    let mut sums = vec![0.0; width];
    for row in rows.chunks_exact(width) {
        for (s, v) in sums.iter_mut().zip(row) {
            *s += v;
        }
    }
    let count = (rows.len() / width.max(1)).max(1) as f64;
    sums.iter_mut().for_each(|s| *s /= count);
    sums
}
