//! How steep the tie rod stands at the rack.

use trammel_build::{AxleName, PointName, defaults};
use trammel_geometry::Vector;

use super::{After, Case, rack_height::rack_height};
use crate::{
    Bound, Caution, CautionKind, Figure, FigureUnit, Grade, Remedy, WorstPose, pose_grid::PoseGrid,
    words::angle,
};

/// A remedy that leaves more than this share of the angle is none.
const WORTH_IT: f64 = 0.95;

pub(super) fn check(case: &Case<'_>) -> Option<Caution> {
    let limit = case.build.limits.tie_rod_angle_deg;
    let limit = limit.unwrap_or(defaults::TIE_ROD_ANGLE_LIMIT_DEG);
    let worst = case.grid.worst(&case.view, |r| Some(r.rod_angle))?;
    let found = worst.badness.to_degrees();
    if found <= limit {
        return None;
    }
    let reading = worst.reading;
    Some(Caution {
        kind: CautionKind::TieRodAngle,
        grade: Grade::Caution,
        axle: AxleName::Front,
        side: case.side,
        headline: format!(
            "{} stands {} to the rack, limit {}",
            case.subject("tie rod"),
            angle(found),
            angle(limit)
        ),
        detail: format!("{}.", case.pose_words(reading.travel, reading.rack)),
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
        reason: "The steeper the rod, the more of its force goes across the rack end and bends it."
            .into(),
        remedies: case.mended(|| other_height(case, found, limit)),
        point: Some(case.point(PointName::TieRodInner)),
        source: if case.build.limits.tie_rod_angle_deg.is_some() {
            "limit set in the build".into()
        } else {
            "common practice, no source".into()
        },
    })
}

/// The rack raised or lowered until the rod stays within the limit, or as low as it comes.
fn other_height(case: &Case<'_>, now: f64, limit: f64) -> Option<Remedy> {
    let coarse = |up: f64| {
        let view = case.view.with_rack_moved(Vector::new(0.0, 0.0, up))?;
        let grid = PoseGrid::sized(&view, 3, 3);
        grid.worst_node(|r| Some(r.rod_angle)).map(|w| w.badness)
    };
    let exact = |after: &After| {
        let grid = PoseGrid::of(&after.view);
        grid.worst(&after.view, |r| Some(r.rod_angle))
            .map(|w| w.badness)
    };
    let found = rack_height(case, limit.to_radians(), coarse, exact)?;
    let then = found.then.to_degrees();
    (then < WORTH_IT * now).then(|| Remedy {
        text: format!("{}: {} becomes {}", found.what, angle(now), angle(then)),
        value: Some(then),
        edit: Some(found.edit),
    })
}
