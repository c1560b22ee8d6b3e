//! Which further reading would help most.

use nalgebra::{DMatrix, DVector};
use trammel_geometry::{Point, in_order};
use trammel_tuning::Axis;

use super::{Hint, Place, Survey, What, adjust::Unknowns, start};

/// Nothing at all is known of a point better than this, mm: keeps what no reading fixes finite.
const UNKNOWN: f64 = 1000.0;

/// A reading that could be taken.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Suggestion {
    /// Which.
    pub what: What,
    /// About what it will read, mm.
    pub about: f64,
    /// The worst standard deviation of the sought points that it is about, now, mm.
    pub own_now: f64,
    /// What that would be with this reading, mm.
    pub own_then: f64,
    /// The worst standard deviation among the sought points now, mm.
    pub worst_now: f64,
    /// What it would be with this reading, mm.
    pub worst_then: f64,
    /// Root of the sum of all variances that it would leave, mm.
    pub total_then: f64,
}

/// Readings not taken yet, the most helpful first, each as exact as `deviation` mm. It works before there are enough readings too, as
/// long as every sought point has a place it was drawn at.
#[must_use]
pub fn suggest(survey: &Survey, deviation: f64) -> Vec<Suggestion> {
    let unknowns = Unknowns::of(survey);
    let Some((x, covariance)) = known_now(survey, &unknowns) else {
        return Vec::new();
    };
    let taken = |what: What| {
        survey.readings().iter().any(|r| match (r.what, what) {
            (What::Distance(a, b), What::Distance(c, d)) => (a, b) == (c, d) || (a, b) == (d, c),
            (a, b) => a == b,
        })
    };
    let worst_now = worst(&covariance);
    let mut all: Vec<Suggestion> = possible(survey, &unknowns)
        .into_iter()
        .filter(|what| !taken(*what))
        .filter_map(|what| {
            let model = what.model(|p| unknowns.place(survey, &x, p))?;
            let mut row = DVector::zeros(x.len());
            for (end, slope) in std::iter::once(model.from).chain(model.to) {
                if let Some(c) = unknowns.column(end) {
                    row.fixed_rows_mut::<3>(c).copy_from(&slope);
                }
            }
            let gain = &covariance * &row;
            let scale = deviation * deviation + row.dot(&gain);
            let then = &covariance - &gain * gain.transpose() / scale;
            let ends = std::iter::once(model.from).chain(model.to);
            let columns: Vec<usize> = ends.filter_map(|(end, _)| unknowns.column(end)).collect();
            Some(Suggestion {
                what,
                about: model.value,
                own_now: worst_of(&covariance, &columns),
                own_then: worst_of(&then, &columns),
                worst_now,
                worst_then: worst(&then),
                total_then: then.trace().max(0.0).sqrt(),
            })
        })
        .collect();
    in_order(&mut all, |s| [(s.worst_then * 1e3).round(), s.total_then]);
    all
}

fn possible(survey: &Survey, unknowns: &Unknowns) -> Vec<What> {
    let mut all = Vec::new();
    for &sought in &unknowns.points {
        for other in survey.points() {
            let twice = unknowns.column(other).is_some() && other >= sought;
            if other != sought && !twice {
                all.push(What::Distance(other, sought));
            }
        }
        all.extend([Axis::X, Axis::Y, Axis::Z].map(|axis| What::Offset(sought, axis)));
    }
    all
}

/// Where the points are, or were drawn, and how well the readings so far fix them.
fn known_now(survey: &Survey, unknowns: &Unknowns) -> Option<(DVector<f64>, DMatrix<f64>)> {
    let places: Vec<Point> = match survey.fit() {
        Ok(fit) => fit.points.iter().map(|p| p.at).collect(),
        Err(_) => match start::first_places(survey) {
            Ok(all) => unknowns
                .points
                .iter()
                .filter_map(|p| all.get(p.0).copied())
                .collect(),
            Err(_) => unknowns
                .points
                .iter()
                .map(|p| match survey.place(*p) {
                    Some(Place::Measured(at, _) | Place::Sought(Some(Hint::Near(at)))) => Some(at),
                    _ => None,
                })
                .collect::<Option<_>>()?,
        },
    };
    let flat = places
        .iter()
        .flat_map(|p| p.iter().copied().collect::<Vec<_>>());
    let x = DVector::from_iterator(3 * unknowns.points.len(), flat);
    let jacobian = unknowns.rows(survey, &x)?.jacobian;
    let mut curvature = jacobian.tr_mul(&jacobian);
    for i in 0..curvature.nrows() {
        curvature[(i, i)] += 1.0 / (UNKNOWN * UNKNOWN);
    }
    Some((x, curvature.cholesky()?.inverse()))
}

fn worst(covariance: &DMatrix<f64>) -> f64 {
    let all: Vec<usize> = (0..covariance.nrows() / 3).map(|i| 3 * i).collect();
    worst_of(covariance, &all)
}

/// The same among the points whose coordinates start at these columns.
fn worst_of(covariance: &DMatrix<f64>, columns: &[usize]) -> f64 {
    columns
        .iter()
        .map(|&c| super::ellipse::widest(&covariance.fixed_view::<3, 3>(c, c).into_owned()).1)
        .fold(0.0, f64::max)
}
