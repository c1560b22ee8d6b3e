//! The build that comes of a search, and what its corner does.

use trammel_analysis::point_name;
use trammel_build::{Axis, AxleName, Build, Coordinate, Edit, EditFault, PointName};
use trammel_geometry::{Corner, Linkage};
use trammel_tuning::{FrontPoint, Hardpoint, Score, TieRodJoint, ToeCurves, two_line_rule};

use super::Found;
use crate::commands::chosen::Chosen;
use crate::fault::Fault;

/// Nearer than this nothing has moved, mm.
const MOVED_MM: f64 = 1e-7;

/// A coordinate that moved, in the build's unit and vehicle axes.
pub(super) struct Moved {
    pub coordinate: Coordinate,
    pub from: f64,
    pub to: f64,
    /// Whether it is a point of the rack that went along with its joint.
    pub with_rack: bool,
}

pub(super) struct Outcome {
    pub build: Build,
    pub moves: Vec<Moved>,
    /// Tie-rod length before and after, mm.
    pub rod: [f64; 2],
    pub before: Option<Score>,
    pub after: Score,
    pub exact: Option<Score>,
    /// The keep-out that a tie-rod joint of the result lies in.
    pub keep_out: Option<String>,
    /// The joint by the two-line rule, in the corner's own frame, and how far the result is off it, mm.
    pub rule: Option<(FrontPoint, f64)>,
}

impl Outcome {
    pub(super) fn of(chosen: &Chosen, joint: TieRodJoint, found: &Found) -> Result<Self, Fault> {
        let build = edited(chosen, &found.corner)?;
        let model = build.axle(chosen.axle())?;
        let written = *model.linkage(chosen.side).corner();
        let score = |corner: &Corner| -> Option<Score> {
            let stations = chosen.stations(0.0).ok()?;
            let linkage = Linkage::new(corner).ok()?;
            Some(ToeCurves::of(&linkage, &stations).ok()?.score())
        };
        let length = |c: &Corner| (c.tie_rod.outer - c.tie_rod.inner).norm();
        let joints = [written.tie_rod.inner, written.tie_rod.outer];
        let rule = two_line_rule(&written).map(|rule| {
            let by_rule = rule.place(joint);
            let at = FrontPoint {
                y: by_rule.y,
                z: by_rule.z,
            };
            let there = joint.place(&written);
            (at, (at.y - there.y).hypot(at.z - there.z))
        });
        Ok(Self {
            moves: moves(chosen, &build),
            rod: [length(chosen.corner()), length(&written)],
            before: score(chosen.corner()),
            after: score(&written).ok_or(Fault::NoPlace)?,
            exact: found.exact.as_ref().and_then(score),
            keep_out: joints
                .into_iter()
                .find_map(|p| chosen.keep_out(p))
                .map(str::to_owned),
            rule,
            build,
        })
    }
}

/// The build with the corner's points where the search put them.
fn edited(chosen: &Chosen, corner: &Corner) -> Result<Build, Fault> {
    let mut build = chosen.build().clone();
    let (mut old, mut new) = (*chosen.corner(), *corner);
    for hardpoint in Hardpoint::ALL {
        let (from, to) = (*hardpoint.of(&mut old), *hardpoint.of(&mut new));
        if (to - from).amax() <= MOVED_MM {
            continue;
        }
        let name = point_name(hardpoint);
        let point = chosen.point(name);
        // Coordinates that did not move stay as they were typed.
        let mut typed = build.point(point).unwrap_or_default();
        let moved = chosen.typed(to);
        let by = to - from;
        for ((typed, moved), by) in typed.iter_mut().zip(moved).zip(by.iter()) {
            if by.abs() > MOVED_MM {
                *typed = moved;
            }
        }
        let alone = Edit::MovePoint { point, to: typed };
        let with_rack = Edit::MoveRack { point, to: typed };
        let steered = name == PointName::TieRodInner && chosen.axle() == AxleName::Front;
        build = match (steered, with_rack.apply(&build)) {
            (true, Ok(next)) => next,
            // A rack that is locked stays; its joint moves on the bracket.
            (true, Err(EditFault::Locked(c))) if c.point != name => alone.apply(&build)?,
            (true, Err(fault)) => return Err(fault.into()),
            (false, _) => alone.apply(&build)?,
        };
    }
    Ok(build)
}

fn moves(chosen: &Chosen, build: &Build) -> Vec<Moved> {
    let mut all = Vec::new();
    for point in PointName::ALL {
        let at = chosen.point(point);
        let Some((old, new)) = chosen.build().point(at).zip(build.point(at)) else {
            continue;
        };
        // A rack point that was left out follows by itself and is not in the file.
        let on_rack = matches!(point, PointName::RackFace | PointName::RackBoreMouth);
        let spec = build.axle_spec(chosen.axle());
        if on_rack && spec.is_none_or(|s| s.typed_point(point).is_none()) {
            continue;
        }
        for ((axis, from), to) in Axis::ALL.into_iter().zip(old).zip(new) {
            if from != to {
                let coordinate = Coordinate {
                    axle: chosen.axle(),
                    point,
                    axis,
                };
                all.push(Moved {
                    coordinate,
                    from,
                    to,
                    with_rack: on_rack,
                });
            }
        }
    }
    all
}
