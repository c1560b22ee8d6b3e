//! Swivel of the tie-rod joints over travel and lock.
//!
//! A joint turns freely about its bolt. With the bolt's direction in the build, what counts is the rod's angle out of the plane square to it: for
//! the inner joint seen from the rack and chassis, for the outer one from the upright. Without it the inner joint is charged with the whole angle
//! of the rod from its design direction, and the outer one with the angle out of the plane square to the steering axis, from its design lean:
//! turning about the steering axis is steering, and a joint whose bolt stands along it is free there.

use trammel_build::{BoltAxis, Edit, JointBolts, PointName, defaults};
use trammel_geometry::least_first;
use trammel_tuning::TieRodJoint;

use super::{Case, stops};
use crate::{
    Bound, Caution, CautionKind, Figure, FigureUnit, Grade, Remedy, WorstPose,
    corner_view::Reading,
    pose_grid::PoseGrid,
    words::{angle, work_length},
};

/// A bolt that takes this part of the present angle off is worth turning.
const WORTH_TURNING: f64 = 0.8;

pub(super) fn check(case: &Case<'_>) -> Vec<Caution> {
    [TieRodJoint::Inner, TieRodJoint::Outer]
        .into_iter()
        .filter_map(|joint| caution(case, joint))
        .collect()
}

fn swivel(joint: TieRodJoint) -> impl Fn(&Reading) -> f64 {
    move |r| match joint {
        TieRodJoint::Inner => r.inner_swivel,
        TieRodJoint::Outer => r.outer_swivel,
    }
}

fn caution(case: &Case<'_>, joint: TieRodJoint) -> Option<Caution> {
    let limit = case.build.limits.joint_angle_deg;
    let limit = limit.unwrap_or(defaults::JOINT_ANGLE_LIMIT_DEG);
    let worst = case.grid.worst(&case.view, |r| Some(swivel(joint)(r)))?;
    let found = worst.badness.to_degrees();
    if found <= limit {
        return None;
    }
    let reading = worst.reading;
    let (what, point) = match joint {
        TieRodJoint::Inner => ("inner joint", PointName::TieRodInner),
        TieRodJoint::Outer => ("outer joint", PointName::TieRodOuter),
    };
    let remedies = case.mended(|| {
        let mut all = other_bolts(case, joint, found);
        all.extend(less_travel(case, limit, found, &swivel(joint)));
        all
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
        detail: format!(
            "{}; {}.",
            case.pose_words(reading.travel, reading.rack),
            measured_from(joint, bolt(case, joint))
        ),
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

fn bolts(case: &Case<'_>) -> JointBolts {
    case.axle.model.joint_bolts
}

fn bolt(case: &Case<'_>, joint: TieRodJoint) -> Option<BoltAxis> {
    match joint {
        TieRodJoint::Inner => bolts(case).inner,
        TieRodJoint::Outer => bolts(case).outer,
    }
}

fn measured_from(joint: TieRodJoint, bolt: Option<BoltAxis>) -> String {
    match (bolt, joint) {
        (Some(bolt), _) => format!(
            "the rod's angle out of the plane square to the joint's bolt, which stands {}",
            bolt.words()
        ),
        (None, TieRodJoint::Inner) => {
            "the rod's angle from its design direction, whichever way the bolt stands: the build doesn't say which".into()
        }
        (None, TieRodJoint::Outer) => {
            "the rod's angle from its design lean on the upright, turning about the steering axis left out: the build doesn't say which way the bolt stands".into()
        }
    }
}

/// What a bolt standing another way would see, where that is worth the turning.
fn other_bolts(case: &Case<'_>, joint: TieRodJoint, now: f64) -> Vec<Remedy> {
    let present = bolt(case, joint);
    let mut found: Vec<(f64, Remedy)> = BoltAxis::PLAIN
        .into_iter()
        .filter(|axis| present != Some(*axis))
        .filter_map(|axis| {
            let seen = |r: &Reading| Some(r.tilt_on(axis, joint));
            let then = case.grid.worst(&case.view, seen)?.badness.to_degrees();
            (then < WORTH_TURNING * now).then(|| (then, turned(case, joint, axis, now, then)))
        })
        .collect();
    least_first(&mut found, |f| f.0);
    found.into_iter().map(|(_, remedy)| remedy).collect()
}

fn turned(case: &Case<'_>, joint: TieRodJoint, axis: BoltAxis, now: f64, then: f64) -> Remedy {
    let (what, bolts) = match joint {
        TieRodJoint::Inner => (
            "inner",
            JointBolts {
                inner: Some(axis),
                ..bolts(case)
            },
        ),
        TieRodJoint::Outer => (
            "outer",
            JointBolts {
                outer: Some(axis),
                ..bolts(case)
            },
        ),
    };
    let start = match bolt(case, joint) {
        Some(_) => format!("Turn the {what} joint's bolt {}", axis.words()),
        None => format!("The {what} joint on a bolt standing {}", axis.words()),
    };
    Remedy {
        text: format!("{start}: {} becomes {}", angle(now), angle(then)),
        value: Some(then),
        edit: Some(Edit::SetJointBolts(case.name(), bolts)),
    }
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
