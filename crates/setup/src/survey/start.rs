//! First places of the sought points: point by point from what stands already, both mirror images weighed.

use nalgebra::{DMatrix, DVector};
use trammel_geometry::{Point, Vector, least_first};

use super::{Hint, Place, PointId, Reading, Side, Survey, SurveyFault};
use crate::least_squares::{Least, Linear, descend};

/// Readings that fix a point.
const NEEDED: usize = 3;
/// Places whose sums of squares differ by less fit alike (three standard deviations).
const ALIKE: f64 = 9.0;
/// Places nearer than this to each other, mm, are one.
const SAME: f64 = 1.0;
/// A drawn place decides between two only when it is this much nearer to one.
const NEARER: f64 = 2.0;
/// Start distance where no tape reading gives one, mm.
const USUAL_REACH: f64 = 300.0;
/// Singular values below this share of the largest leave a direction open.
pub(super) const OPEN: f64 = 1e-5;

struct Candidate {
    at: Point,
    cost: f64,
}

/// A first place for every point.
pub(super) fn first_places(survey: &Survey) -> Result<Vec<Point>, SurveyFault> {
    let mut placed: Vec<Option<Point>> = survey
        .points()
        .map(|p| match survey.place(p) {
            Some(Place::Given(at) | Place::Measured(at, _)) => Some(at),
            _ => None,
        })
        .collect();
    while let Some(next) = easiest(survey, &placed) {
        let at = choose(survey, next, candidates(survey, next, &placed))?;
        if let Some(place) = placed.get_mut(next.0) {
            *place = Some(at);
        }
    }
    survey
        .points()
        .zip(placed)
        .map(|(p, at)| {
            at.or_else(|| drawn(survey, p))
                .ok_or_else(|| too_few(survey, p))
        })
        .collect()
}

/// The unplaced point with the most readings from placed ones, if it has enough.
fn easiest(survey: &Survey, placed: &[Option<Point>]) -> Option<PointId> {
    let unplaced = survey
        .points()
        .filter(|p| placed.get(p.0).is_some_and(Option::is_none));
    unplaced
        .map(|p| (usable(survey, p, placed).count(), p))
        .filter(|(n, _)| *n >= NEEDED)
        .max_by_key(|(n, p)| (*n, std::cmp::Reverse(*p)))
        .map(|(_, p)| p)
}

/// The readings of a point whose other end stands already.
fn usable<'a>(
    survey: &'a Survey,
    point: PointId,
    placed: &'a [Option<Point>],
) -> impl Iterator<Item = &'a Reading> {
    let stands = move |p: PointId| p == point || placed.get(p.0).is_some_and(Option::is_some);
    survey.readings().iter().filter(move |r| {
        let mut about = false;
        r.what.points().all(|p| {
            about |= p == point;
            stands(p)
        }) && about
    })
}

fn drawn(survey: &Survey, point: PointId) -> Option<Point> {
    match survey.place(point)? {
        Place::Sought(Some(Hint::Near(at))) => Some(at),
        _ => None,
    }
}

fn too_few(survey: &Survey, point: PointId) -> SurveyFault {
    let has = survey
        .readings()
        .iter()
        .filter(|r| r.what.points().any(|p| p == point))
        .count();
    SurveyFault::TooFew {
        point: survey.name(point).to_owned(),
        has,
        needs: NEEDED.max(has + 1),
    }
}

/// Where the readings of one point put it, the others standing; each place once, best first.
fn candidates(survey: &Survey, point: PointId, placed: &[Option<Point>]) -> Vec<Candidate> {
    let readings: Vec<&Reading> = usable(survey, point, placed).collect();
    let evaluate = |x: &DVector<f64>| rows(&readings, point, placed, x);
    let mut found: Vec<Candidate> = Vec::new();
    for start in starts(survey, point, &readings, placed) {
        let fit = descend(evaluate, DVector::from_iterator(3, start.iter().copied()));
        let Some(Least { at, linear, .. }) = fit else {
            continue;
        };
        let at = Point::from_slice(at.as_slice());
        let cost = linear.cost();
        match found.iter_mut().find(|c| (c.at - at).norm() < SAME) {
            Some(same) if cost < same.cost => *same = Candidate { at, cost },
            Some(_) => {}
            None => found.push(Candidate { at, cost }),
        }
    }
    least_first(&mut found, |f| f.cost);
    let best = found.first().map_or(0.0, |c| c.cost);
    found.retain(|c| c.cost <= best + ALIKE);
    found
}

fn rows(
    readings: &[&Reading],
    point: PointId,
    placed: &[Option<Point>],
    x: &DVector<f64>,
) -> Option<Linear> {
    let here = Point::from_slice(x.as_slice());
    let place = |p: PointId| {
        if p == point {
            Some(here)
        } else {
            placed.get(p.0).copied().flatten()
        }
    };
    let mut residuals = DVector::zeros(readings.len());
    let mut jacobian = DMatrix::zeros(readings.len(), 3);
    for (i, r) in readings.iter().enumerate() {
        let model = r.what.model(place)?;
        residuals[i] = (model.value - r.value) / r.deviation;
        for (end, slope) in std::iter::once(model.from).chain(model.to) {
            if end == point {
                jacobian
                    .row_mut(i)
                    .copy_from(&(slope.transpose() / r.deviation));
            }
        }
    }
    Some(Linear {
        residuals,
        jacobian,
    })
}

/// All round the points that it was measured from, at about the distance that was read.
fn starts(
    survey: &Survey,
    point: PointId,
    readings: &[&Reading],
    placed: &[Option<Point>],
) -> Vec<Point> {
    let others: Vec<Point> = readings
        .iter()
        .flat_map(|r| r.what.points())
        .filter(|p| *p != point)
        .filter_map(|p| placed.get(p.0).copied().flatten())
        .collect();
    let middle = others.iter().map(|p| p.coords).sum::<Vector>() / others.len().max(1) as f64;
    let tapes: Vec<f64> = readings
        .iter()
        .filter(|r| matches!(r.what, super::What::Distance(..)))
        .map(|r| r.value)
        .collect();
    let reach = if tapes.is_empty() {
        USUAL_REACH
    } else {
        tapes.iter().sum::<f64>() / tapes.len() as f64
    };
    let steps = [-1.0, 0.0, 1.0];
    let mut starts: Vec<Point> = drawn(survey, point).into_iter().collect();
    for (x, y) in steps.into_iter().flat_map(|x| steps.map(|y| (x, y))) {
        for z in steps {
            if let Some(way) = Vector::new(x, y, z).try_normalize(0.5) {
                // A hair off the axes, so that no start lies on a plane of symmetry of the marks.
                let way = way + Vector::new(0.013, 0.017, 0.011);
                starts.push(Point::from(middle + way * reach));
            }
        }
    }
    starts
}

/// The one place, or the one that the hint picks of two.
fn choose(
    survey: &Survey,
    point: PointId,
    candidates: Vec<Candidate>,
) -> Result<Point, SurveyFault> {
    let mut places = candidates.into_iter().map(|c| c.at);
    let first = places.next().ok_or_else(|| too_few(survey, point))?;
    let rest: Vec<Point> = places.collect();
    let Some(&second) = rest.first() else {
        return Ok(first);
    };
    let ask = SurveyFault::WhichSide {
        point: survey.name(point).to_owned(),
        first,
        second,
        sides: [Side::of(&(first - second)), Side::of(&(second - first))],
    };
    let all = || std::iter::once(first).chain(rest.iter().copied());
    match survey.place(point) {
        Some(Place::Sought(Some(Hint::Side(side)))) => {
            let along = |p: &Point| side.direction().dot(&p.coords);
            let apart = (along(&first) - along(&second)).abs();
            let chosen = all().max_by(|a, b| along(a).total_cmp(&along(b)));
            chosen.filter(|_| apart > SAME).ok_or(ask)
        }
        Some(Place::Sought(Some(Hint::Near(at)))) => {
            let mut near: Vec<Point> = all().collect();
            least_first(&mut near, |n| (n - at).norm());
            match near.as_slice() {
                [a, b, ..] if (b - at).norm() > NEARER * (a - at).norm() => Ok(*a),
                _ => Err(ask),
            }
        }
        _ => Err(ask),
    }
}
