//! How steep the tie rod stands at the rack.

use trammel_build::{AxleName, PointName, defaults};
use trammel_geometry::Vector;

use super::Case;
use crate::{
    Bound, Caution, CautionKind, Figure, FigureUnit, Grade, Remedy, WorstPose,
    pose_grid::PoseGrid,
    search::{Shift, shift_to, shop_step, step_down, step_up},
    words::{angle, work_length},
};

/// How far up or down the rack is looked at, mm (a judgement, no source).
const RACK_SHIFT_MM: f64 = 100.0;

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
        remedies: other_height(case, found, limit).into_iter().collect(),
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
    let steepest = |view: &crate::corner_view::CornerView, grid: &PoseGrid| {
        grid.worst(view, |r| Some(r.rod_angle)).map(|w| w.badness)
    };
    let coarse = |up: f64| {
        let view = case.view.with_rack_moved(Vector::new(0.0, 0.0, up))?;
        let grid = PoseGrid::sized(&view, 3, 3);
        grid.worst_node(|r| Some(r.rod_angle)).map(|w| w.badness)
    };
    let step = shop_step(case.unit());
    let (mut up, reaches) = match shift_to(limit.to_radians(), RACK_SHIFT_MM, coarse) {
        Shift::Reaches(up) => (step_up(up, step), true),
        Shift::Lowest(up) => (step_down(up, step), false),
    };
    for _ in 0..3 {
        if up == 0.0 {
            return None;
        }
        let edit = case.move_inner_joint(Vector::new(0.0, 0.0, up))?;
        let after = case.after(&edit)?;
        let then = steepest(&after.view, &PoseGrid::of(&after.view))?.to_degrees();
        if then <= limit || !reaches {
            let way = if up > 0.0 { "up" } else { "down" };
            return (then < 0.95 * now).then(|| Remedy {
                text: format!(
                    "Rack and inner joint {way} {}: {} becomes {}",
                    work_length(up.abs(), case.unit()),
                    angle(now),
                    angle(then)
                ),
                value: Some(then),
                edit: Some(edit),
            });
        }
        up += step.copysign(up);
    }
    None
}
