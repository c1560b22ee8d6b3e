//! Force arrows for the drawing: where each force acts at the present pose, and to which scale.

use trammel_analysis::ForceRow;
use trammel_build::{LengthUnit, PointName, Side};
use trammel_geometry::{ArmName, Linkage, Point, Pose, Vector};

use crate::{
    drawing::{Arrow, ForcePicture},
    words::force_unit,
};

/// Length that stands for the scale's round force, mm on the vehicle.
const BAR_MM: f64 = 100.0;
/// The longest arrow at most, mm on the vehicle.
const LONGEST_MM: f64 = 260.0;
/// Forces below this part of the largest are no more than a dot.
const LEAST_SHARE: f64 = 0.01;

/// The arrows of a corner's forces at a pose, and of what acts on the wheel where it acts: contact point, wheel centre or place on the rim.
pub(crate) fn picture(
    row: &ForceRow,
    on_wheel: &[(Point, Vector)],
    title: String,
    linkage: &Linkage,
    (side, unit): (Side, LengthUnit),
) -> Option<ForcePicture> {
    let pose = linkage.pose(row.travel, row.rack).ok()?;
    let mut forces = members(row, linkage, &pose, side);
    forces.extend(on_wheel.iter().map(|(at, force)| (*at, *force, None)));
    let largest = forces
        .iter()
        .map(|(_, v, _)| v.norm())
        .fold(0.0_f64, f64::max);
    let (per_newton, sign) = force_unit(unit);
    let bar = round_up(largest * per_newton * BAR_MM / LONGEST_MM)?;
    let mm_per_newton = BAR_MM * per_newton / bar;
    let arrows = forces
        .into_iter()
        .filter(|(_, v, _)| v.norm() > LEAST_SHARE * largest)
        .map(|(at, v, of)| Arrow {
            at,
            reach: v * mm_per_newton,
            of,
        })
        .collect();
    Some(ForcePicture {
        arrows,
        bar_mm: BAR_MM,
        bar_text: format!("{bar} {sign}"),
        title,
    })
}

/// Place, force in N in vehicle axes, and the point whose colour it has.
fn members(
    row: &ForceRow,
    linkage: &Linkage,
    pose: &Pose,
    side: Side,
) -> Vec<(Point, Vector, Option<PointName>)> {
    use PointName as P;
    let there = |p: Point| side.place_in_vehicle(p);
    let (f, corner) = (&row.forces, linkage.corner());
    let rod = f.force_on_inner_joint;
    let mut all = vec![
        (there(pose.tie_rod_inner), rod, Some(P::TieRodInner)),
        (
            there(pose.upper_ball_joint),
            f.upper.ball_joint_on_upright,
            Some(P::UpperBallJoint),
        ),
        (
            there(pose.lower_ball_joint),
            f.lower.ball_joint_on_upright,
            Some(P::LowerBallJoint),
        ),
    ];
    for (arm, name, points) in [
        (
            &corner.upper_arm,
            ArmName::Upper,
            [P::UpperFrontPivot, P::UpperRearPivot],
        ),
        (
            &corner.lower_arm,
            ArmName::Lower,
            [P::LowerFrontPivot, P::LowerRearPivot],
        ),
    ] {
        let forces = f.arm(name);
        let pivots = [
            (arm.front_pivot, forces.front_pivot),
            (arm.rear_pivot, forces.rear_pivot),
        ];
        for ((at, on_arm), point) in pivots.into_iter().zip(points) {
            all.push((there(at), -on_arm, Some(point)));
        }
    }
    if let Some(spring) = corner.spring {
        let mount = Some(P::SpringChassisMount);
        all.push((there(spring.chassis_mount), f.spring_on_chassis, mount));
    }
    all
}

/// The next of 1, 2, 5, 10 and so on.
fn round_up(value: f64) -> Option<f64> {
    if !(value.is_finite() && value > 1e-6) {
        return None;
    }
    let power = 10_f64.powf(value.log10().floor());
    [1.0, 2.0, 5.0, 10.0]
        .into_iter()
        .map(|step| step * power)
        .find(|round| *round >= value * (1.0 - 1e-9))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_scale_goes_up_in_ones_twos_and_fives() {
        let ups = [0.7, 1.0, 1.1, 3.0, 5.1, 180.0].map(|v| round_up(v).unwrap());
        assert_eq!(ups, [1.0, 1.0, 2.0, 5.0, 10.0, 200.0]);
        assert_eq!(round_up(0.0), None);
        assert_eq!(round_up(f64::NAN), None);
    }
}
