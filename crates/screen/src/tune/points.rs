//! A corner of the kernel back in the words of a build: which points to put where.

use trammel_build::{AxleName, Build, Edit, PointName, PointRef, Triple};
use trammel_geometry::{Corner, Point};

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

/// The edit that takes a build's left corner from `before` to `after`: the points that move, and the rack with the inner joint's height where the build
/// says where the rack is. Coordinates that stay keep what was typed. `grid`: written numbers are rounded to one part in so many of the build's unit.
pub(crate) fn edit(
    build: &Build,
    axle: AxleName,
    before: &Corner,
    after: &Corner,
    grid: f64,
) -> Edit {
    let unit = build.unit;
    let place = |point, by: trammel_geometry::Vector| -> Option<(PointRef, Triple)> {
        let at = PointRef::left(axle, point);
        let mut to = build.point(at)?;
        for (i, slot) in to.iter_mut().enumerate() {
            if by[i].abs() > MOVED {
                *slot = ((*slot + unit.from_mm(by[i])) * grid).round() / grid;
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
    let rack = build
        .axle_spec(axle)
        .filter(|_| axle == AxleName::Front)
        .map(|s| s.rack);
    // In and out the rack end takes the move up; any other way the rack goes along.
    let by = trammel_geometry::Vector::new(by.x, 0.0, by.z);
    if let Some(rack) = rack.filter(|_| by.amax() > MOVED) {
        let typed = [
            (PointName::RackFace, rack.face.is_some()),
            (PointName::RackBoreMouth, rack.bore_mouth.is_some()),
        ];
        moves.extend(
            typed
                .into_iter()
                .filter(|(_, is)| *is)
                .filter_map(|(name, _)| place(name, by)),
        );
    }
    Edit::MovePoints(moves)
}

/// A part of the build's unit that is finer than any work, for places that are not in whole steps.
pub(crate) const EXACT: f64 = 1e4;
