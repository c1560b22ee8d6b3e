//! A corner of the kernel back in the words of a build: which points to put where.

use trammel_build::{AxleName, Build, Edit, PointName, PointRef, Side, Triple};
use trammel_geometry::{Corner, Point, Vector};

/// Nearer than this, mm, a point has not moved.
const MOVED: f64 = 1e-6;

fn points(corner: &Corner) -> Vec<(PointName, Point)> {
    let spring = corner.spring.map(|s| {
        [
            (PointName::SpringChassisMount, s.chassis_mount),
            (PointName::SpringArmMount, s.arm_mount),
        ]
    });
    let joints = [
        (PointName::UpperFrontPivot, corner.upper_arm.front_pivot),
        (PointName::UpperRearPivot, corner.upper_arm.rear_pivot),
        (PointName::UpperBallJoint, corner.upper_arm.ball_joint),
        (PointName::LowerFrontPivot, corner.lower_arm.front_pivot),
        (PointName::LowerRearPivot, corner.lower_arm.rear_pivot),
        (PointName::LowerBallJoint, corner.lower_arm.ball_joint),
        (PointName::TieRodInner, corner.tie_rod.inner),
        (PointName::TieRodOuter, corner.tie_rod.outer),
        (PointName::WheelCentre, corner.wheel.centre),
    ];
    joints
        .into_iter()
        .chain(spring.into_iter().flatten())
        .collect()
}

/// The edit that takes a corner of a build from `before` to `after`, both in the corner's own frame: the points that move, and the rack with the inner
/// joint's height where the build says where the rack is. Coordinates that stay keep what was typed; a right-hand point without a place of its own
/// takes its left twin along. `grid`: written numbers are rounded to one part in so many of the build's unit.
pub(crate) fn edit(
    build: &Build,
    (axle, side): (AxleName, Side),
    before: &Corner,
    after: &Corner,
    grid: f64,
) -> Edit {
    let unit = build.unit;
    let place = |point, by: Vector| -> Option<(PointRef, Triple)> {
        let at = PointRef { axle, side, point };
        let mut to = build.point(at)?;
        let by = side.way_in_vehicle(by);
        for (slot, by) in to.iter_mut().zip(by.iter()) {
            if by.abs() > MOVED {
                *slot = ((*slot + unit.from_mm(*by)) * grid).round() / grid;
            }
        }
        Some((at, to))
    };
    let mut moves: Vec<(PointRef, Triple)> = points(before)
        .into_iter()
        .zip(points(after))
        .filter(|((_, a), (_, b))| (b - a).amax() > MOVED)
        .filter_map(|((name, a), (_, b))| place(name, b - a))
        .collect();
    let by = after.tie_rod.inner - before.tie_rod.inner;
    // In and out the rack end takes the move up; any other way the rack goes along.
    let by = Vector::new(by.x, 0.0, by.z);
    if axle == AxleName::Front && by.amax() > MOVED {
        let rack = [PointName::RackFace, PointName::RackBoreMouth].into_iter();
        moves.extend(
            rack.filter(|point| goes_along(build, (axle, side), *point))
                .filter_map(|point| place(point, by)),
        );
    }
    Edit::MovePoints(moves)
}

/// Whether a typed point of the rack belongs to the side whose inner joint moves.
fn goes_along(build: &Build, (axle, side): (AxleName, Side), point: PointName) -> bool {
    let typed = || {
        build
            .axle_spec(axle)
            .is_some_and(|s| s.typed_point(point).is_some())
    };
    let own = |point| build.has_own_right_point(axle, point);
    match side {
        Side::Left => typed(),
        // With a shared joint the left rack end moves too.
        Side::Right => own(point) || (typed() && !own(PointName::TieRodInner)),
    }
}

/// A part of the build's unit that is finer than any work, for places that are not in whole steps.
pub(crate) const EXACT: f64 = 1e4;
