//! Arms near to toggling: the upper arm in line with the upright, or the wheel near the end of what the lower arm can lift.

use trammel_build::PointName;

use super::{Case, stops};
use crate::{
    Bound, Caution, CautionKind, Figure, FigureUnit, Grade, Remedy, WorstPose,
    corner_view::Reading,
    pose_grid::PoseGrid,
    words::{least_angle, work_length},
};

/// Below this, degrees, it is worth knowing (a judgement, no source).
const LIMIT_DEG: f64 = 20.0;
/// Below this, degrees, forces in the arms grow several times over (sine 0.17; a judgement, no source).
const NEAR_DEG: f64 = 10.0;

pub(super) fn check(case: &Case<'_>) -> Option<Caution> {
    let worst = case.grid.worst(&case.view, badness)?;
    let reading = worst.reading;
    let found = reading.toggle.to_degrees();
    if found >= LIMIT_DEG {
        return None;
    }
    Some(Caution {
        kind: CautionKind::ArmsNearToggle,
        grade: if found < NEAR_DEG {
            Grade::Caution
        } else {
            Grade::Note
        },
        axle: case.name(),
        side: case.side,
        headline: format!(
            "{} come within {} of toggling, wanted {}",
            case.subject("arms"),
            least_angle(found),
            least_angle(LIMIT_DEG)
        ),
        detail: format!("{}.", case.pose_words(reading.travel, reading.rack)),
        figure: Some(Figure {
            value: found,
            limit: LIMIT_DEG,
            bound: Bound::AtLeast,
            unit: FigureUnit::Degrees,
        }),
        worst: Some(WorstPose {
            travel: reading.travel,
            rack: reading.rack,
        }),
        reason: "Near the end of their swing the arms jam: small bumps make large forces in arms and pivots.".into(),
        remedies: case.mended(|| less_travel(case, found)),
        point: Some(case.point(PointName::UpperBallJoint)),
        source: "a judgement, no source: the arms' forces grow with the inverse of the sine".into(),
    })
}

#[expect(
    clippy::unnecessary_wraps,
    reason = "the measures of a grid may be absent"
)]
fn badness(r: &Reading) -> Option<f64> {
    Some(-r.toggle)
}

fn less_travel(case: &Case<'_>, now: f64) -> Option<Remedy> {
    let then = std::cell::Cell::new(now);
    let (edit, droop, bump) =
        stops::closer_stops(case, -LIMIT_DEG.to_radians(), badness, |after| {
            let worst = PoseGrid::of(&after.view).worst(&after.view, badness);
            then.set(worst.map_or(0.0, |w| w.reading.toggle.to_degrees()));
            then.get() >= LIMIT_DEG
        })?;
    Some(Remedy {
        text: format!(
            "Stops at {} of droop and {} of bump: {} becomes {}",
            work_length(-droop, case.unit()),
            work_length(bump, case.unit()),
            least_angle(now),
            least_angle(then.get())
        ),
        value: Some(then.get()),
        edit: Some(edit),
    })
}
