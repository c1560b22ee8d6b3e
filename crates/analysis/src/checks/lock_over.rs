//! Tie rod and steering arm near to standing in line.

use trammel_build::{AxleName, PointName, defaults};

use super::{After, Case, stops};
use crate::{
    Bound, Caution, CautionKind, Figure, FigureUnit, Grade, Remedy, WorstPose,
    corner_view::Reading,
    pose_grid::PoseGrid,
    words::{least_angle, work_length},
};

/// Below this, degrees, play and flex can carry the steering over centre (a judgement, no source).
const REACHED_DEG: f64 = 5.0;

pub(super) fn check(case: &Case<'_>) -> Option<Caution> {
    let limit = case.build.limits.lock_over_deg;
    let limit = limit.unwrap_or(defaults::LOCK_OVER_LIMIT_DEG);
    let worst = case.grid.worst(&case.view, badness)?;
    let found = worst.reading.steering.to_degrees();
    if found >= limit {
        return None;
    }
    let reading = worst.reading;
    Some(Caution {
        kind: CautionKind::LockOver,
        grade: if found < REACHED_DEG {
            Grade::Danger
        } else {
            Grade::Caution
        },
        axle: case.name(),
        side: case.side,
        headline: format!(
            "{} comes within {} of the steering arm's line, wanted {}",
            case.subject("tie rod"),
            least_angle(found),
            least_angle(limit)
        ),
        detail: format!("{}.", case.pose_words(reading.travel, reading.rack)),
        figure: Some(Figure {
            value: found,
            limit,
            bound: Bound::AtLeast,
            unit: FigureUnit::Degrees,
        }),
        worst: Some(WorstPose {
            travel: reading.travel,
            rack: reading.rack,
        }),
        reason: "Rod and arm in line can fold to the wrong side: the wheel then locks over and does not come back.".into(),
        remedies: case.mended(|| less_lock(case, found, limit)),
        point: Some(case.point(PointName::TieRodOuter)),
        source: if case.build.limits.lock_over_deg.is_some() {
            "limit set in the build".into()
        } else {
            "common practice, no source".into()
        },
    })
}

#[expect(
    clippy::unnecessary_wraps,
    reason = "the measures of a grid may be absent"
)]
fn badness(r: &Reading) -> Option<f64> {
    Some(-r.steering)
}

fn least(after: &After) -> f64 {
    let worst = PoseGrid::of(&after.view).worst(&after.view, badness);
    worst.map_or(0.0, |w| w.reading.steering.to_degrees())
}

fn less_lock(case: &Case<'_>, now: f64, limit: f64) -> Option<Remedy> {
    if case.name() == AxleName::Rear {
        return None;
    }
    let guess = lock_within(case, limit.to_radians())?;
    let then = std::cell::Cell::new(now);
    let (edit, travel) = stops::shorter_rack(case, guess, |after| {
        then.set(least(after));
        then.get() >= limit
    })?;
    Some(Remedy {
        text: format!(
            "Rack stops at {} each way: {} becomes {}",
            work_length(travel, case.unit()),
            least_angle(now),
            least_angle(then.get())
        ),
        value: Some(then.get()),
        edit: Some(edit),
    })
}

/// The rack travel each way up to which every travel keeps the angle, mm.
fn lock_within(case: &Case<'_>, limit: f64) -> Option<f64> {
    let within = |travel: f64, rack: f64| {
        let found = case.view.reading_at(travel, rack);
        found.is_some_and(|r| r.steering >= limit)
    };
    let past = case.grid.readings().filter(|r| r.steering < limit);
    let mut least = case.view.lock;
    for reading in past {
        let (mut good, mut bad) = (0.0, reading.rack);
        if !within(reading.travel, 0.0) {
            return None;
        }
        for _ in 0..12 {
            let middle = 0.5 * (good + bad);
            if within(reading.travel, middle) {
                good = middle;
            } else {
                bad = middle;
            }
        }
        least = least.min(good.abs());
    }
    Some(least)
}
