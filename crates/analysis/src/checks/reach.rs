//! Travel or rack positions inside the stops that the linkage can't get to.

use trammel_build::{PointName, Stop};
use trammel_geometry::{Limit, Member, Unreachable};

use super::{Case, stops};
use crate::{
    Bound, Caution, CautionKind, Figure, FigureUnit, Grade, Remedy, WorstPose,
    pose_grid::PoseGrid,
    words::{length, work_length},
};

pub(super) fn check(case: &Case<'_>) -> Option<Caution> {
    let worst = case
        .grid
        .ends
        .iter()
        .min_by(|a, b| share(case, a).total_cmp(&share(case, b)))?;
    let (at, limit) = (reached(worst), asked(case, worst));
    let unit = case.unit();
    let pose = match worst.limit {
        Limit::Travel(travel) => WorstPose {
            travel,
            rack: worst.rack,
        },
        Limit::Rack(rack) => WorstPose { travel: 0.0, rack },
    };
    let (where_, stop) = match worst.limit {
        Limit::Travel(travel) => {
            let way = if travel.is_sign_negative() {
                "droop"
            } else {
                "bump"
            };
            (format!("{} of {way}", length(at, unit)), "stop")
        }
        Limit::Rack(rack) => {
            let way = if rack > 0.0 { "left" } else { "right" };
            (
                format!("{} of rack travel to the {way}", length(at, unit)),
                "rack stop",
            )
        }
    };
    Some(Caution {
        kind: CautionKind::OutOfReach,
        grade: if stop_is_known(case, worst) {
            Grade::Danger
        } else {
            Grade::Caution
        },
        axle: case.name(),
        side: case.side,
        headline: format!(
            "{} runs out at {where_}, {stop} at {}",
            case.subject(&worst.member.to_string()),
            length(limit, unit)
        ),
        detail: format!(
            "{}; {}.",
            case.pose_words(pose.travel, pose.rack),
            if stop_is_known(case, worst) {
                "inside the stops"
            } else {
                "the build gives no stop, so a usual one is assumed"
            }
        ),
        figure: Some(Figure {
            value: unit.from_mm(at),
            limit: unit.from_mm(limit),
            bound: Bound::AtLeast,
            unit: FigureUnit::BuildLength,
        }),
        worst: Some(pose),
        reason: reason(worst.member).into(),
        remedies: case.mended(|| closer(case, worst)),
        point: Some(case.point(point(worst.member))),
        source: "the linkage's own geometry".into(),
    })
}

fn reason(member: Member) -> &'static str {
    match member {
        Member::TieRod => {
            "The rod and the steering arm come into line there: the steering can go over centre and stay there, or the rod itself becomes the stop."
        }
        Member::UpperArm | Member::LowerArm => {
            "A member that runs out becomes the stop itself: joints are pulled apart or bent before any bump stop is met."
        }
    }
}

fn point(member: Member) -> PointName {
    match member {
        Member::TieRod => PointName::TieRodOuter,
        Member::UpperArm => PointName::UpperBallJoint,
        Member::LowerArm => PointName::LowerBallJoint,
    }
}

/// How far it got, mm.
fn reached(end: &Unreachable) -> f64 {
    match end.limit {
        Limit::Travel(at) | Limit::Rack(at) => at.abs(),
    }
}

/// The stop that it should have got to, mm.
fn asked(case: &Case<'_>, end: &Unreachable) -> f64 {
    let range = case.view.travel;
    match end.limit {
        Limit::Rack(_) => case.view.lock,
        Limit::Travel(_) if end.travel < 0.0 => -range.droop,
        Limit::Travel(_) => range.bump,
    }
}

fn share(case: &Case<'_>, end: &Unreachable) -> f64 {
    reached(end) / asked(case, end).max(1e-9)
}

/// Whether somebody set the stop, rather than the program for want of one.
fn stop_is_known(case: &Case<'_>, end: &Unreachable) -> bool {
    let spec = case.build.axle_spec(case.name());
    let range = case.view.travel;
    let stop = match end.limit {
        Limit::Rack(_) => return spec.is_some_and(|s| s.rack.travel.is_some()),
        Limit::Travel(_) if end.travel < 0.0 => range.droop_stop,
        Limit::Travel(_) => range.bump_stop,
    };
    // A spring unit whose end was never met on the way is a stop too, one that comes too late.
    let spring = spec.and_then(|s| s.spring);
    let length = spring.is_some_and(|s| s.open_length.is_some() || s.closed_length.is_some());
    stop != Stop::Default || length
}

/// Stops before the member runs out.
fn closer(case: &Case<'_>, end: &Unreachable) -> Option<Remedy> {
    let all_reached = |view: &crate::corner_view::CornerView| PoseGrid::of(view).ends.is_empty();
    let unit = case.unit();
    let (text, edit) = match end.limit {
        Limit::Rack(at) => {
            let (edit, travel) = stops::shorter_rack(case, at.abs(), |a| all_reached(&a.view))?;
            (
                format!("Rack stops at {} each way", work_length(travel, unit)),
                edit,
            )
        }
        Limit::Travel(_) => {
            let (droop, bump) = reachable(case);
            let (edit, droop, bump) =
                stops::stops_before(case, droop, bump, |a| all_reached(&a.view))?;
            let text = format!(
                "Stops at {} of droop and {} of bump",
                work_length(-droop, unit),
                work_length(bump, unit)
            );
            (text, edit)
        }
    };
    Some(Remedy {
        text: format!("{text}: every pose is reached"),
        value: None,
        edit: Some(edit),
    })
}

/// The travel that is reached at every rack position, mm.
fn reachable(case: &Case<'_>) -> (f64, f64) {
    let range = case.view.travel;
    let mut reached = (range.droop, range.bump);
    for end in &case.grid.ends {
        match end.limit {
            Limit::Travel(at) if end.travel < 0.0 => reached.0 = reached.0.max(at),
            Limit::Travel(at) => reached.1 = reached.1.min(at),
            Limit::Rack(_) => {}
        }
    }
    reached
}
