//! What a build, a rear axle and a spring unit begin with, to be dragged, typed or surveyed to where they are. Plain shapes in round figures: a judgement, no source.

use crate::{
    ArmPoints, AxleSpec, Build, LengthUnit, SpringSpec, TieRodPoints, Triple, WheelSpec, defaults,
};

/// A new build: the plainest front axle that works, equal parallel arms with the tie rod in their plane, so that toe keeps over all of travel.
#[must_use]
pub fn build(unit: LengthUnit) -> Build {
    // In quarters of an inch, or in mm.
    let [
        step,
        half_base,
        inner,
        outer,
        upper,
        lower,
        steer,
        behind,
        hub,
        radius,
    ] = match unit {
        LengthUnit::Millimetre => [
            1.0, 100.0, 170.0, 550.0, 340.0, 180.0, 240.0, 90.0, 620.0, 260.0,
        ],
        LengthUnit::Inch => [0.25, 16.0, 27.0, 88.0, 54.0, 28.0, 38.0, 14.0, 98.0, 42.0],
    };
    let at = |x: f64, y: f64, z: f64| [x * step, y * step, z * step];
    let arm = |z: f64| ArmPoints {
        front_pivot: at(half_base, inner, z),
        rear_pivot: at(-half_base, inner, z),
        ball_joint: at(0.0, outer, z),
    };
    Build::new(
        "New build".to_owned(),
        unit,
        AxleSpec::new(
            arm(upper),
            arm(lower),
            TieRodPoints {
                inner: at(-behind, inner, steer),
                outer: at(-behind, outer, steer),
            },
            WheelSpec {
                centre: at(0.0, hub, radius),
                loaded_radius: radius * step,
                toe_deg: 0.0,
                camber_deg: 0.0,
            },
        ),
    )
}

/// A rear axle to begin with: the front one a wheelbase farther back, unsteered, its tie rod a toe link. Parts are not taken along: they are the builder's to say.
#[must_use]
pub fn rear_axle(build: &Build) -> AxleSpec {
    let front = &build.front;
    let base = build.vehicle.wheelbase;
    let base = base.unwrap_or_else(|| build.unit.from_mm(defaults::WHEELBASE_MM).round());
    let back = |[x, y, z]: Triple| [x - base, y, z];
    let arm = |arm: ArmPoints| ArmPoints {
        front_pivot: back(arm.front_pivot),
        rear_pivot: back(arm.rear_pivot),
        ball_joint: back(arm.ball_joint),
    };
    AxleSpec {
        spring: front.spring.map(|spring| SpringSpec {
            chassis_mount: back(spring.chassis_mount),
            arm_mount: back(spring.arm_mount),
            ..spring
        }),
        travel: front.travel,
        ..AxleSpec::new(
            arm(front.upper_arm),
            arm(front.lower_arm),
            TieRodPoints {
                inner: back(front.tie_rod.inner),
                outer: back(front.tie_rod.outer),
            },
            WheelSpec {
                centre: back(front.wheel.centre),
                ..front.wheel
            },
        )
    }
}

/// A spring unit to begin with: from two thirds of the way out on the lower arm to above the upper arm's pivots, as far above them as the lower ones are below.
#[must_use]
pub fn spring_unit(axle: &AxleSpec, unit: LengthUnit) -> SpringSpec {
    let step = match unit {
        LengthUnit::Inch => 0.25,
        LengthUnit::Millimetre => 1.0,
    };
    let round = |v: f64| (v / step).round() * step;
    let middle = |arm: &ArmPoints| {
        [0, 1, 2].map(|i| {
            let [front, rear] = [arm.front_pivot, arm.rear_pivot].map(|p| coordinate(p, i));
            0.5 * (front + rear)
        })
    };
    let (upper, lower) = (middle(&axle.upper_arm), middle(&axle.lower_arm));
    let out = axle.lower_arm.ball_joint;
    let arm_mount = [0, 1, 2].map(|i| {
        let [from, to] = [lower, out].map(|p| coordinate(p, i));
        round(from + (to - from) * 2.0 / 3.0)
    });
    let rise = (upper[2] - lower[2]).abs();
    SpringSpec {
        arm: trammel_geometry::ArmName::Lower,
        chassis_mount: [
            arm_mount[0],
            round(upper[1]),
            round(upper[2].max(lower[2]) + rise),
        ],
        arm_mount,
        open_length: None,
        closed_length: None,
        rate: None,
    }
}

fn coordinate(of: Triple, axis: usize) -> f64 {
    of.get(axis).copied().unwrap_or(0.0)
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test stops where it fails")]

    use super::*;
    use crate::{AxleName, Edit, Side};

    #[test]
    fn a_new_build_keeps_its_toe_over_all_of_its_travel_in_either_unit() {
        for unit in [LengthUnit::Inch, LengthUnit::Millimetre] {
            let build = build(unit);
            assert!(build.faults().is_empty(), "{:?}", build.faults());
            let axle = build.axle(AxleName::Front).unwrap();
            let linkage = axle.linkage(Side::Left);
            for travel in [axle.travel.droop, 0.0, axle.travel.bump] {
                let pose = linkage.pose(travel, 0.0).unwrap();
                let toe = linkage.measures(&pose).toe;
                assert!(toe.abs() < 1e-9, "{unit:?} {travel} {toe}");
            }
        }
    }

    #[test]
    fn a_rear_axle_and_spring_units_can_be_added_to_any_front() {
        for unit in [LengthUnit::Inch, LengthUnit::Millimetre] {
            let mut next = build(unit);
            for axle in [AxleName::Front, AxleName::Rear] {
                if axle == AxleName::Rear {
                    let rear = Some(Box::new(rear_axle(&next)));
                    next = Edit::SetRear(rear).apply(&next).unwrap();
                }
                let spring = spring_unit(next.axle_spec(axle).unwrap(), unit);
                next = Edit::SetSpring(axle, Some(spring)).apply(&next).unwrap();
                let posed = next.axle(axle).unwrap();
                assert!(
                    posed
                        .linkage(Side::Left)
                        .pose(posed.travel.bump, 0.0)
                        .is_ok()
                );
            }
            let [front, rear] = [&next.front, next.rear.as_ref().unwrap()];
            assert!(rear.wheel.centre[0] < front.wheel.centre[0]);
            assert_eq!(rear.wheel.centre[1], front.wheel.centre[1]);
        }
    }
}
