//! Toe change over the travel, and where the inner joint belongs instead.

use trammel_build::{Axis, AxleName, LengthUnit, PointName, defaults, signed};
use trammel_geometry::{ToeScore, Vector, Walk};

use super::Case;
use crate::{
    AxleStudy, Bound, Caution, CautionKind, Figure, FigureUnit, Grade, Remedy, WorstPose,
    corner_view::CornerView,
    search::fine_steps,
    words::{toe, work_length},
};

/// Travels at which the search looks at the toe.
const LOOKS: usize = 13;
/// Rounds of the search; it ends sooner when it has come to rest.
const ROUNDS: usize = 8;
/// At rest when the joint would move by less than this, mm.
const AT_REST_MM: f64 = 0.005;
/// Farthest that a joint is moved, mm (a judgement, no source: what a frame has room for).
const FARTHEST_MM: f64 = 150.0;
/// Step of the difference quotients, mm.
const DIFFERENCE_MM: f64 = 0.05;
/// Longest single step of the search, mm.
const LONGEST_MM: f64 = 40.0;

pub(super) fn check(case: &Case<'_>) -> Option<Caution> {
    let limit = case.build.limits.toe_change_deg;
    let limit = limit.unwrap_or(defaults::TOE_CHANGE_LIMIT_DEG);
    let curve = case.axle.curve(case.view.side);
    let score = curve.score;
    let found = score.largest.to_degrees();
    if found <= limit || curve.stations.is_empty() {
        return None;
    }
    Some(Caution {
        kind: CautionKind::ToeChange,
        grade: Grade::Caution,
        axle: case.name(),
        side: case.side,
        headline: format!("{} changes by {}, limit {}", case.subject("toe"), toe(found), toe(limit)),
        detail: format!(
            "{}; slope {} (joint height), bowl {}° (rod length).",
            case.pose_words(score.largest_at, 0.0),
            slope_words(&score, case.unit()),
            signed(score.bowl.to_degrees(), 2)
        ),
        figure: Some(Figure {
            value: found,
            limit,
            bound: Bound::AtMost,
            unit: FigureUnit::Degrees,
        }),
        worst: Some(WorstPose {
            travel: score.largest_at,
            rack: 0.0,
        }),
        reason: "The wheel steers by itself as it rises and falls; winding the tie rod in or out sets static toe and does not cure it.".into(),
        remedies: case.mended(|| remedies(case, found, limit)),
        point: Some(case.point(PointName::TieRodInner)),
        source: if case.build.limits.toe_change_deg.is_some() {
            "limit set in the build".into()
        } else {
            "common practice, no source: 1/8 in over a 21 in tyre is 0.34°".into()
        },
    })
}

fn slope_words(score: &ToeScore, unit: LengthUnit) -> String {
    let (per, words) = match unit {
        LengthUnit::Inch => (25.4, "in"),
        LengthUnit::Millimetre => (25.0, "25 mm"),
    };
    format!("{}°/{words}", signed((score.slope * per).to_degrees(), 2))
}

/// Both ways together, then height alone, then width alone.
fn remedies(case: &Case<'_>, now: f64, limit: f64) -> Vec<Remedy> {
    let free = |axis| {
        let mut points = vec![PointName::TieRodInner];
        if axis == Axis::Z && case.name() == AxleName::Front {
            points.extend([PointName::RackFace, PointName::RackBoreMouth]);
        }
        !points.into_iter().any(|p| case.is_locked(p, axis))
    };
    let (up, out) = (free(Axis::Z), free(Axis::Y));
    let ways = [(up && out, [1.0, 1.0]), (up, [0.0, 1.0]), (out, [1.0, 0.0])];
    ways.into_iter()
        .filter(|(free, _)| *free)
        .filter_map(|(_, way)| remedy(case, now, limit, way))
        .collect()
}

fn remedy(case: &Case<'_>, now: f64, limit: f64, way: [f64; 2]) -> Option<Remedy> {
    let exact = best_move(&case.view, way)?;
    let rounded = fine_steps(case.unit()).map(|step| exact.map(|v| (v / step).round() * step));
    let good = |m: &&[f64; 2]| largest(&case.view, **m).is_some_and(|l| l.to_degrees() <= limit);
    let [out, up] = *rounded.iter().find(good).or(rounded.last())?;
    let edit = case.move_inner_joint(Vector::new(0.0, out, up))?;
    let after = case.after(&edit)?;
    let then = AxleStudy::travel_curve(&after.model, case.view.side)
        .score
        .largest;
    let then = then.to_degrees();
    // A move that betters little only distracts.
    (then < 0.9 * now).then(|| Remedy {
        text: format!(
            "{}: {} becomes {}",
            move_words(case, out, up),
            toe(now),
            toe(then)
        ),
        value: Some(then),
        edit: Some(edit),
    })
}

fn move_words(case: &Case<'_>, out: f64, up: f64) -> String {
    let along = |by: f64, plus: &str, minus: &str| {
        let way = if by > 0.0 { plus } else { minus };
        (by != 0.0).then(|| format!("{way} {}", work_length(by.abs(), case.unit())))
    };
    let ways: Vec<String> = [along(up, "up", "down"), along(out, "outboard", "inboard")]
        .into_iter()
        .flatten()
        .collect();
    format!("Inner joint {}", ways.join(" and "))
}

/// Toe changes of the corner with its rack moved, at even travels between the stops.
fn toe_changes(view: &CornerView, [out, up]: [f64; 2]) -> Option<[f64; LOOKS]> {
    let moved = view.with_rack_moved(Vector::new(0.0, out, up))?;
    let mut walk = Walk::new(&moved.linkage, 0.0).ok()?;
    let toe = |pose: trammel_geometry::Pose| pose.spin_axis.x.atan2(pose.spin_axis.y);
    let at_design = toe(walk.pose(0.0).ok()?);
    let mut changes = [0.0; LOOKS];
    for (i, change) in changes.iter_mut().enumerate() {
        let share = i as f64 / (LOOKS - 1) as f64;
        let travel = view.travel.droop * (1.0 - share) + view.travel.bump * share;
        *change = toe(walk.pose(travel).ok()?) - at_design;
    }
    Some(changes)
}

fn sum_of_squares(changes: &[f64; LOOKS]) -> f64 {
    changes.iter().map(|c| c * c).sum()
}

/// Greatest toe change of the corner so moved, rad, by the curve that the study draws.
fn largest(view: &CornerView, [out, up]: [f64; 2]) -> Option<f64> {
    let moved = view.with_rack_moved(Vector::new(0.0, out, up))?;
    Some(
        AxleStudy::curve_between(&moved.linkage, view.travel)
            .score
            .largest,
    )
}

/// The move (outward, up) of the inner joint, mm, that makes the sum of squared toe changes least; `way` holds 1 for a direction that is free,
/// 0 for one that is not. Gauss-Newton with halved steps.
fn best_move(view: &CornerView, way: [f64; 2]) -> Option<[f64; 2]> {
    let mut at = [0.0, 0.0];
    let mut changes = toe_changes(view, at)?;
    for _ in 0..ROUNDS {
        let slopes = [0, 1].map(|k| {
            let probe = [0, 1].map(|i| at[i] + if i == k { DIFFERENCE_MM } else { 0.0 });
            let there = (way[k] != 0.0).then(|| toe_changes(view, probe)).flatten();
            there.map_or([0.0; LOOKS], |t| {
                std::array::from_fn(|i| (t[i] - changes[i]) / DIFFERENCE_MM)
            })
        });
        let step = least_squares_step(&slopes, &changes);
        let length = step[0].hypot(step[1]);
        if length.is_nan() || length <= AT_REST_MM {
            break;
        }
        let mut share = (LONGEST_MM / length).min(1.0);
        let mut better = None;
        for _ in 0..5 {
            let next = [0, 1].map(|i| (at[i] + share * step[i]).clamp(-FARTHEST_MM, FARTHEST_MM));
            better = toe_changes(view, next)
                .filter(|c| sum_of_squares(c) < sum_of_squares(&changes))
                .map(|c| (next, c));
            if better.is_some() {
                break;
            }
            share *= 0.5;
        }
        let Some((next, there)) = better else {
            break;
        };
        at = next;
        changes = there;
    }
    (at != [0.0, 0.0]).then_some(at)
}

/// The step that brings the linearised changes lowest; a direction without slope stays.
fn least_squares_step(slopes: &[[f64; LOOKS]; 2], changes: &[f64; LOOKS]) -> [f64; 2] {
    let dot = |a: &[f64; LOOKS], b: &[f64; LOOKS]| a.iter().zip(b).map(|(x, y)| x * y).sum::<f64>();
    let [out, up] = slopes;
    let (oo, uu, ou) = (dot(out, out), dot(up, up), dot(out, up));
    let (bo, bu) = (-dot(out, changes), -dot(up, changes));
    let determinant = oo * uu - ou * ou;
    if determinant > 1e-12 * oo * uu {
        return [
            (bo * uu - bu * ou) / determinant,
            (bu * oo - bo * ou) / determinant,
        ];
    }
    let single = |b: f64, square: f64| if square > 0.0 { b / square } else { 0.0 };
    if oo > uu {
        [single(bo, oo), 0.0]
    } else {
        [0.0, single(bu, uu)]
    }
}
