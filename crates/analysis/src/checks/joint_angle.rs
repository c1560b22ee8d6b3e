//! Swivel of the tie-rod joints over travel and lock.
//!
//! Which way a joint's bolt stands is not in the build. The inner joint is charged with the whole angle of the rod from its design direction, seen
//! from the rack and chassis: no bolt makes it more. The outer joint is charged with the angle out of the plane square to the steering axis,
//! from its design lean, seen from the upright: turning about the steering axis is steering, and a joint whose bolt stands along it is free there.

use trammel_build::{PointName, defaults};
use trammel_geometry::Vector;

use super::{Case, stops};
use crate::{
    Bound, Caution, CautionKind, Figure, FigureUnit, Grade, Remedy, WorstPose,
    corner_view::Reading,
    pose_grid::PoseGrid,
    words::{angle, work_length},
};

pub(super) fn check(case: &Case<'_>) -> Vec<Caution> {
    let inner = caution(case, PointName::TieRodInner, "inner joint", |r| {
        r.inner_swivel
    });
    let outer = caution(case, PointName::TieRodOuter, "outer joint", |r| {
        r.outer_swivel
    });
    inner.into_iter().chain(outer).collect()
}

fn caution(
    case: &Case<'_>,
    point: PointName,
    what: &str,
    swivel: impl Fn(&Reading) -> f64,
) -> Option<Caution> {
    let limit = case.build.limits.joint_angle_deg;
    let limit = limit.unwrap_or(defaults::JOINT_ANGLE_LIMIT_DEG);
    let worst = case.grid.worst(&case.view, |r| Some(swivel(r)))?;
    let found = worst.badness.to_degrees();
    if found <= limit {
        return None;
    }
    let reading = worst.reading;
    let from = if point == PointName::TieRodInner {
        "the rod's angle from its design direction, whichever way the bolt stands"
    } else {
        "the rod's angle from its design lean on the upright, turning about the steering axis left out"
    };
    let remedies = case.mended(|| {
        let turned = (point == PointName::TieRodInner).then(|| bolts(case, found));
        let less = less_travel(case, limit, found, &swivel);
        turned.into_iter().flatten().chain(less).collect::<Vec<_>>()
    });
    Some(Caution {
        kind: CautionKind::JointAngle,
        grade: Grade::Caution,
        axle: case.name(),
        side: case.side,
        headline: format!(
            "{} swivels {}, limit {}",
            case.subject(&format!("tie rod's {what}")),
            angle(found),
            angle(limit)
        ),
        detail: format!("{}; {from}.", case.pose_words(reading.travel, reading.rack)),
        figure: Some(Figure {
            value: found,
            limit,
            bound: Bound::AtMost,
            unit: FigureUnit::Degrees,
        }),
        worst: Some(WorstPose {
            travel: reading.travel,
            rack: reading.rack,
        }),
        reason: "A rod end that binds pries on its own shank: the shank bends, cracks and breaks."
            .into(),
        remedies,
        point: Some(case.point(point)),
        source: if case.build.limits.joint_angle_deg.is_some() {
            "limit set in the build".into()
        } else {
            "common practice: a plain rod end takes 12 to 18 degrees; the low end".into()
        },
    })
}

/// What a bolt standing one way or the other would see.
fn bolts(case: &Case<'_>, now: f64) -> Vec<Remedy> {
    let mut found: Vec<(f64, Remedy)> = [("fore and aft", Vector::x()), ("upright", Vector::z())]
        .into_iter()
        .filter_map(|(way, bolt)| {
            let seen = |r: &Reading| Some(case.view.swivel_about(bolt, r));
            let then = case.grid.worst(&case.view, seen)?.badness.to_degrees();
            let remedy = Remedy {
                text: format!(
                    "A rod end on a bolt standing {way}: {} becomes {}",
                    angle(now),
                    angle(then)
                ),
                value: Some(then),
                edit: None,
            };
            (then < 0.8 * now).then_some((then, remedy))
        })
        .collect();
    found.sort_by(|a, b| a.0.total_cmp(&b.0));
    found.into_iter().map(|(_, remedy)| remedy).collect()
}

fn less_travel(
    case: &Case<'_>,
    limit: f64,
    now: f64,
    swivel: &impl Fn(&Reading) -> f64,
) -> Option<Remedy> {
    let then = std::cell::Cell::new(now);
    let (edit, droop, bump) = stops::closer_stops(
        case,
        limit.to_radians(),
        |r| Some(swivel(r)),
        |after| {
            let grid = PoseGrid::of(&after.view);
            let worst = grid.worst(&after.view, |r| Some(swivel(r)));
            then.set(worst.map_or(f64::INFINITY, |w| w.badness.to_degrees()));
            then.get() <= limit
        },
    )?;
    Some(Remedy {
        text: format!(
            "Stops at {} of droop and {} of bump: {} becomes {}",
            work_length(-droop, case.unit()),
            work_length(bump, case.unit()),
            angle(now),
            angle(then.get())
        ),
        value: Some(then.get()),
        edit: Some(edit),
    })
}
