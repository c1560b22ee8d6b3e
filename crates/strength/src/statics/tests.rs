use super::*;
use approx::assert_relative_eq;
use nalgebra::{Isometry3, Point3, Rotation3, Translation3, Vector3};
use proptest::prelude::*;
use trammel_geometry::mirror_vector;

use crate::force::UprightLoad;

/// A left corner that can be worked by hand: steering axis upright at y = 500, both arms flat and square with pivots at y = 200, rod 100 mm
/// behind the axis, spring upright on the lower arm half-way out.
fn square() -> Joints {
    let arm = |z: f64| ArmJoints {
        front_pivot: Point3::new(100.0, 200.0, z),
        rear_pivot: Point3::new(-100.0, 200.0, z),
        ball_joint: Point3::new(0.0, 500.0, z),
    };
    Joints {
        upper: arm(300.0),
        lower: arm(100.0),
        tie_rod_inner: Point3::new(-100.0, 200.0, 100.0),
        tie_rod_outer: Point3::new(-100.0, 500.0, 100.0),
        spring: Some(SpringMounts {
            arm: ArmName::Lower,
            chassis_mount: Point3::new(0.0, 350.0, 500.0),
            arm_mount: Point3::new(0.0, 350.0, 100.0),
        }),
        rack_axis: Some(Vector3::y()),
    }
}

fn at(point: [f64; 3], force: [f64; 3]) -> UprightLoad {
    UprightLoad::force_at(Point3::from(point), Vector3::from(force)).unwrap()
}

fn close(found: Vector3<f64>, expected: [f64; 3]) {
    assert!(
        (found - Vector3::from(expected)).norm() < 1e-9,
        "{found} is not {expected:?}"
    );
}

/// 1000 N of weight 100 mm outboard of the steering axis. Moments about the lower ball joint: the road tips the upright's top inboard, so the
/// upper arm pushes it out with 1000 x 100 / 200 = 500 N; the lower arm pulls it in as much and takes the 1000 N. Spring at half the arm: 2000 N.
#[test]
fn weight_by_hand() {
    let equilibrium = Equilibrium::new(&square()).unwrap();
    let forces = equilibrium
        .under(&at([0.0, 600.0, 0.0], [0.0, 0.0, 1000.0]))
        .unwrap();
    assert!(forces.tie_rod_tension.abs() < 1e-9);
    close(forces.upper.ball_joint_on_upright, [0.0, 500.0, 0.0]);
    close(forces.lower.ball_joint_on_upright, [0.0, -500.0, -1000.0]);
    assert_relative_eq!(forces.spring_force, 2000.0, max_relative = 1e-12);
    close(forces.spring_on_chassis, [0.0, 0.0, 2000.0]);
    // The upper arm is a strut: 250 N at each pivot, outwards; the lower is pulled out and, with 1000 N up at its end and 2000 N down in the
    // middle, pressed up by 500 N at each pivot.
    close(forces.upper.front_pivot, [0.0, 250.0, 0.0]);
    close(forces.upper.rear_pivot, [0.0, 250.0, 0.0]);
    close(forces.lower.front_pivot, [0.0, -250.0, 500.0]);
    close(forces.lower.rear_pivot, [0.0, -250.0, 500.0]);
}

/// 1200 N rearward at the height of the lower joint on the steering axis: the lower arm takes it all. Moment about a pivot: front pivot
/// pulls out, rear pushes in with 1200 x 300 / 200 = 1800 N; along the axis 1200 N in two halves.
#[test]
fn pull_by_hand() {
    let equilibrium = Equilibrium::new(&square()).unwrap();
    let forces = equilibrium
        .under(&at([0.0, 500.0, 100.0], [-1200.0, 0.0, 0.0]))
        .unwrap();
    close(forces.lower.ball_joint_on_upright, [1200.0, 0.0, 0.0]);
    close(forces.upper.ball_joint_on_upright, [0.0; 3]);
    close(forces.lower.axial_total, [1200.0, 0.0, 0.0]);
    close(forces.lower.front_pivot, [600.0, -1800.0, 0.0]);
    close(forces.lower.rear_pivot, [600.0, 1800.0, 0.0]);
}

/// 50 N m about the steering axis over 100 mm: 500 N in the rod, all of it along the rack. Both sides alike: 1 kN on the rack, at 50.8 mm a turn
/// 1000 x 50.8 / (2 pi) = 8085.07 N mm at the pinion, 57.7505 N at a steering wheel of 140 mm.
#[test]
fn from_the_wheel_to_the_hands() {
    let equilibrium = Equilibrium::new(&square()).unwrap();
    let load = UprightLoad::moment(Vector3::new(0.0, 0.0, 50_000.0)).unwrap();
    let forces = equilibrium.under(&load).unwrap();
    assert_relative_eq!(forces.tie_rod_tension, -500.0, max_relative = 1e-12);
    assert_relative_eq!(forces.rack_force.unwrap(), -500.0, max_relative = 1e-12);
    let steering = Steering::new(50.8, 140.0).unwrap();
    let effort = steering.effort_of(&forces, &forces).unwrap();
    assert_relative_eq!(effort.rack_force, -1000.0, max_relative = 1e-12);
    assert_relative_eq!(effort.pinion_torque, 8_085.071_11, max_relative = 1e-8);
    assert_relative_eq!(effort.hand_force, 57.750_508, max_relative = 1e-7);
    assert_relative_eq!(
        steering.rack_force_by_hand(effort.hand_force),
        1000.0,
        max_relative = 1e-12
    );
    let link = Joints {
        rack_axis: None,
        ..square()
    };
    let on_chassis = Equilibrium::new(&link).unwrap().under(&load).unwrap();
    assert_eq!(on_chassis.rack_force, None);
    assert_eq!(
        steering
            .effort_of(&on_chassis, &on_chassis)
            .unwrap()
            .hand_force,
        0.0
    );
    assert!(Steering::new(0.0, 140.0).is_err());
    assert!(Steering::new(50.0, f64::NAN).is_err());
    assert!(steering.effort(f64::MAX).is_err());
}

#[test]
fn what_stands_in_line_is_refused() {
    let spring = square().spring.unwrap();
    let without = Joints {
        spring: None,
        ..square()
    };
    assert_eq!(Equilibrium::new(&without), Err(StaticsError::NoSpring));
    let at_the_axis = Joints {
        spring: Some(SpringMounts {
            chassis_mount: Point3::new(0.0, 200.0, 100.0),
            ..spring
        }),
        ..square()
    };
    let refused = Equilibrium::new(&at_the_axis).unwrap_err();
    assert!(matches!(
        refused,
        StaticsError::SpringInLine {
            arm: ArmName::Lower,
            ..
        }
    ));
    assert!(refused.to_string().contains("the lower arm's pivot axis"));
    let mut folded = square();
    folded.upper.front_pivot.z = 400.0;
    folded.upper.rear_pivot.z = 400.0;
    folded.upper.front_pivot.y = 500.0;
    folded.upper.rear_pivot.y = 500.0;
    assert!(matches!(
        Equilibrium::new(&folded),
        Err(StaticsError::ArmInLine {
            arm: ArmName::Upper,
            ..
        })
    ));
    let mut in_line = square();
    in_line.tie_rod_inner = Point3::new(-300.0, 500.0, 100.0);
    assert!(matches!(
        Equilibrium::new(&in_line),
        Err(StaticsError::TieRod(_))
    ));
    let mut no_hinge = square();
    no_hinge.lower.front_pivot = no_hinge.lower.rear_pivot;
    assert!(Equilibrium::new(&no_hinge).is_err());
    let mut nowhere = square();
    nowhere.upper.rear_pivot.x = f64::NAN;
    assert!(Equilibrium::new(&nowhere).is_err());
    let huge = at([0.0, 600.0, 0.0], [0.0, 1e308, 1e308]);
    assert!(matches!(
        Equilibrium::new(&square()).unwrap().under(&huge),
        Err(StaticsError::BadNumber(_))
    ));
}

fn near(centre: [f64; 3], spread: f64) -> impl Strategy<Value = Point3<f64>> {
    prop::array::uniform3(-spread..spread)
        .prop_map(move |by| Point3::from(Vector3::from(centre) + Vector3::from(by)))
}

fn arm(front: [f64; 3], rear: [f64; 3], ball: [f64; 3]) -> impl Strategy<Value = ArmJoints> {
    (near(front, 25.0), near(rear, 25.0), near(ball, 25.0)).prop_map(
        |(front_pivot, rear_pivot, ball_joint)| ArmJoints {
            front_pivot,
            rear_pivot,
            ball_joint,
        },
    )
}

fn spring() -> impl Strategy<Value = SpringMounts> {
    (
        any::<bool>(),
        near([0.0, 380.0, 620.0], 40.0),
        near([0.0, 430.0, 0.0], 20.0),
    )
        .prop_map(|(lower, chassis_mount, mut arm_mount)| {
            arm_mount.z += if lower { 170.0 } else { 340.0 };
            let arm = if lower {
                ArmName::Lower
            } else {
                ArmName::Upper
            };
            SpringMounts {
                arm,
                chassis_mount,
                arm_mount,
            }
        })
}

prop_compose! {
    fn corner()(
        upper in arm([100.0, 250.0, 340.0], [-110.0, 250.0, 335.0], [-14.0, 545.0, 335.0]),
        lower in arm([130.0, 210.0, 180.0], [-120.0, 210.0, 170.0], [5.0, 570.0, 160.0]),
        tie_rod_inner in near([-90.0, 230.0, 210.0], 30.0),
        tie_rod_outer in near([-95.0, 552.0, 200.0], 25.0),
        spring in spring(),
        axis in near([0.0, 1.0, 0.0], 0.1),
    ) -> Joints {
        Joints { upper, lower, tie_rod_inner, tie_rod_outer, spring: Some(spring), rack_axis: Some(axis.coords) }
    }
}

prop_compose! {
    fn any_load()(point in near([0.0, 640.0, 100.0], 150.0), force in near([0.0, 0.0, 900.0], 3000.0), twist in near([0.0; 3], 60_000.0)) -> (Point3<f64>, Vector3<f64>, Vector3<f64>) {
        (point, force.coords, twist.coords)
    }
}

fn loaded((point, force, twist): (Point3<f64>, Vector3<f64>, Vector3<f64>)) -> UprightLoad {
    UprightLoad::force_at(point, force).unwrap() + UprightLoad::moment(twist).unwrap()
}

/// Largest force, for a scale.
fn scale(forces: &CornerForces) -> f64 {
    [&forces.upper, &forces.lower]
        .iter()
        .flat_map(|arm| [arm.ball_joint_on_upright, arm.front_pivot, arm.rear_pivot])
        .map(|force| force.norm())
        .fold(
            forces.tie_rod_tension.abs().max(forces.spring_force.abs()),
            f64::max,
        )
}

/// Force and moment about a point that is left of these forces.
fn left_over(forces: &[(Point3<f64>, Vector3<f64>)], about: Point3<f64>) -> (f64, f64) {
    let total: Vector3<f64> = forces.iter().map(|(_, force)| force).sum();
    let moment: Vector3<f64> = forces
        .iter()
        .map(|(point, force)| (point - about).cross(force))
        .sum();
    (total.norm(), moment.norm())
}

/// The largest relative difference of two sets of forces, the first one turned by this.
fn apart(
    first: &CornerForces,
    second: &CornerForces,
    turn: impl Fn(Vector3<f64>) -> Vector3<f64>,
) -> f64 {
    let vectors = |forces: &CornerForces| {
        let mut all = vec![forces.force_on_inner_joint, forces.spring_on_chassis];
        for arm in [&forces.upper, &forces.lower] {
            all.extend([
                arm.ball_joint_on_upright,
                arm.front_pivot,
                arm.rear_pivot,
                arm.axial_total,
            ]);
        }
        all
    };
    let worst = vectors(first)
        .into_iter()
        .zip(vectors(second))
        .map(|(a, b)| (turn(a) - b).norm())
        .fold(0.0, f64::max);
    let scalars = (first.tie_rod_tension - second.tie_rod_tension).abs()
        + (first.spring_force - second.spring_force).abs()
        + (first.rack_force.unwrap() - second.rack_force.unwrap()).abs();
    (worst + scalars) / scale(first)
}

proptest! {
    /// Every body is in balance, force and moment, with the forces that come out put on it.
    #[test]
    fn every_body_is_in_balance(joints in corner(), load in any_load()) {
        let forces = Equilibrium::new(&joints).unwrap().under(&loaded(load)).unwrap();
        let spring = joints.spring.unwrap();
        let (point, force, twist) = load;
        let upright = [
            (point, force),
            (joints.tie_rod_outer, -forces.force_on_inner_joint),
            (joints.upper.ball_joint, forces.upper.ball_joint_on_upright),
            (joints.lower.ball_joint, forces.lower.ball_joint_on_upright),
        ];
        let size = scale(&forces);
        let total: Vector3<f64> = upright.iter().map(|(_, force)| force).sum();
        let about = joints.tie_rod_inner;
        let moment: Vector3<f64> = upright.iter().map(|(point, force)| (point - about).cross(force)).sum::<Vector3<f64>>() + twist;
        prop_assert!(total.norm() < 1e-9 * size);
        prop_assert!(moment.norm() < 1e-9 * size * 500.0);
        for name in [ArmName::Upper, ArmName::Lower] {
            let (arm, on) = (joints.arm(name), forces.arm(name));
            let mut all = vec![
                (arm.ball_joint, -on.ball_joint_on_upright),
                (arm.front_pivot, on.front_pivot),
                (arm.rear_pivot, on.rear_pivot),
            ];
            if spring.arm == name {
                all.push((spring.arm_mount, -forces.spring_on_chassis));
            }
            let (force, moment) = left_over(&all, Point3::new(300.0, -200.0, 100.0));
            prop_assert!(force < 1e-9 * size, "{force}");
            prop_assert!(moment < 1e-9 * size * 500.0, "{moment}");
            // Along the pivots' axis each has half.
            let axis = (arm.front_pivot - arm.rear_pivot).normalize();
            prop_assert!((on.front_pivot.dot(&axis) - on.rear_pivot.dot(&axis)).abs() < 1e-9 * size);
            prop_assert!((on.axial_total - axis * (2.0 * on.front_pivot.dot(&axis))).norm() < 1e-9 * size);
        }
    }

    /// Nothing depends on the frame.
    #[test]
    fn a_turned_frame_turns_the_forces(joints in corner(), load in any_load(), turn in prop::array::uniform3(-3.0..3.0_f64), shift in prop::array::uniform3(-500.0..500.0_f64)) {
        let motion = Isometry3::from_parts(Translation3::from(Vector3::from(shift)), Rotation3::from_scaled_axis(Vector3::from(turn)).into());
        let here = Equilibrium::new(&joints).unwrap().under(&loaded(load)).unwrap();
        let moved = joints.map(|point| motion * point, |vector| motion * vector);
        let (point, force, twist) = load;
        let there = Equilibrium::new(&moved).unwrap().under(&loaded((motion * point, motion * force, motion * twist))).unwrap();
        prop_assert!(apart(&here, &there, |vector| motion * vector) < 1e-9);
    }

    /// A mirrored corner under a mirrored load has mirrored forces, and the same in its rod, spring and along the rack.
    #[test]
    fn mirrored_loads_give_mirrored_forces(joints in corner(), load in any_load()) {
        let here = Equilibrium::new(&joints).unwrap().under(&loaded(load)).unwrap();
        let mirror = |p: Point3<f64>| Point3::from(mirror_vector(p.coords));
        let mirrored = joints.map(mirror, mirror_vector);
        let (point, force, twist) = load;
        let there = Equilibrium::new(&mirrored).unwrap().under(&loaded((mirror(point), mirror_vector(force), -mirror_vector(twist)))).unwrap();
        prop_assert!(apart(&here, &there, mirror_vector) < 1e-9);
        prop_assert!(apart(&here.mirrored(), &there, |vector| vector) < 1e-9);
    }
}

/// Forces that ran over are no forces, on whichever member; large ones are.
#[test]
fn forces_that_overflow_are_refused() {
    let equilibrium = Equilibrium::new(&square()).unwrap();
    let forces = equilibrium
        .under(&at([0.0, 600.0, 0.0], [0.0, 0.0, 1000.0]))
        .unwrap();
    let each: [fn(&mut CornerForces) -> &mut f64; 9] = [
        |f| &mut f.tie_rod_tension,
        |f| &mut f.spring_force,
        |f| &mut f.spring_on_chassis.x,
        |f| &mut f.upper.ball_joint_on_upright.y,
        |f| &mut f.upper.front_pivot.z,
        |f| &mut f.upper.rear_pivot.x,
        |f| &mut f.lower.ball_joint_on_upright.z,
        |f| &mut f.lower.front_pivot.x,
        |f| &mut f.lower.rear_pivot.y,
    ];
    let mut large = forces;
    for one in each {
        for over in [f64::INFINITY, f64::NEG_INFINITY, f64::NAN] {
            let mut bad = forces;
            *one(&mut bad) = over;
            assert!(bad.finite().is_err(), "{bad:?}");
        }
        *one(&mut large) = -1e200;
    }
    assert_eq!(large.finite(), Ok(large));
}
