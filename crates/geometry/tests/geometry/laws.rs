//! What holds at every pose of every corner.

use nalgebra::Rotation3;
use proptest::prelude::*;
use trammel_geometry::{Linkage, Point, Pose, Vector};

use crate::corners::{any_corner, linkage};

/// Distances that no motion changes, mm.
fn lengths(l: &Linkage, p: &Pose) -> [f64; 13] {
    let c = l.corner();
    let d = |a: Point, b: Point| (a - b).norm();
    [
        d(p.upper_ball_joint, c.upper_arm.front_pivot),
        d(p.upper_ball_joint, c.upper_arm.rear_pivot),
        d(p.lower_ball_joint, c.lower_arm.front_pivot),
        d(p.lower_ball_joint, c.lower_arm.rear_pivot),
        d(p.upper_ball_joint, p.lower_ball_joint),
        d(p.tie_rod_outer, p.tie_rod_inner),
        d(p.tie_rod_outer, p.upper_ball_joint),
        d(p.tie_rod_outer, p.lower_ball_joint),
        d(p.wheel_centre, p.upper_ball_joint),
        d(p.wheel_centre, p.lower_ball_joint),
        d(p.wheel_centre, p.tie_rod_outer),
        d(p.wheel_centre + p.spin_axis * 300.0, p.lower_ball_joint),
        d(p.wheel_centre + p.spin_axis * 300.0, p.tie_rod_outer),
    ]
}

/// Six times the volume of the tetrahedron of the upright's joints: its sign tells a mirror image apart.
fn handedness(p: &Pose) -> f64 {
    let a = p.upper_ball_joint - p.lower_ball_joint;
    let b = p.tie_rod_outer - p.lower_ball_joint;
    a.cross(&b).dot(&(p.wheel_centre - p.lower_ball_joint))
}

proptest! {
    #[test]
    fn members_keep_their_lengths(corner in any_corner(), travel in -120.0..120.0_f64, rack in -60.0..60.0_f64) {
        let l = linkage(&corner);
        let design = l.pose(0.0, 0.0).unwrap();
        let Ok(pose) = l.pose(travel, rack) else {
            return Err(TestCaseError::reject("out of reach"));
        };
        for (i, (now, then)) in lengths(&l, &pose).iter().zip(lengths(&l, &design)).enumerate() {
            prop_assert!((now - then).abs() < 1e-9, "length {i}: {now} for {then}");
        }
        prop_assert!((handedness(&pose) - handedness(&design)).abs() < 1e-3);
        prop_assert!((pose.wheel_centre.z - corner.wheel.centre.z - travel).abs() < 1e-9);
        prop_assert_eq!(pose.tie_rod_inner, l.inner_joint(rack));
        // The lowest point of the tyre's circle: in the wheel plane, a radius away, straight down as far as that allows.
        let spoke = pose.contact - pose.wheel_centre;
        prop_assert!((spoke.norm() - corner.wheel.loaded_radius).abs() < 1e-9);
        prop_assert!(spoke.dot(&pose.spin_axis).abs() < 1e-9);
        prop_assert!(spoke.cross(&Vector::z()).dot(&pose.spin_axis).abs() > -1e-9 && spoke.z < 0.0);
        prop_assert!(spoke.dot(&pose.spin_axis.cross(&Vector::z())).abs() < 1e-9);
    }

    #[test]
    fn the_design_position_is_as_drawn(corner in any_corner()) {
        let l = linkage(&corner);
        let p = l.pose(0.0, 0.0).unwrap();
        let m = l.measures(&p);
        let pairs = [
            (p.upper_ball_joint, corner.upper_arm.ball_joint),
            (p.lower_ball_joint, corner.lower_arm.ball_joint),
            (p.tie_rod_outer, corner.tie_rod.outer),
            (p.tie_rod_inner, corner.tie_rod.inner),
            (p.wheel_centre, corner.wheel.centre),
        ];
        for (found, drawn) in pairs {
            prop_assert!((found - drawn).norm() < 1e-9);
        }
        prop_assert!((m.toe - corner.wheel.toe).abs() < 1e-12);
        prop_assert!((m.camber - corner.wheel.camber).abs() < 1e-12);
        prop_assert!(m.half_track_change.abs() < 1e-9);
        prop_assert!(p.arm_angle.abs() < 1e-12);
        let k = corner.upper_arm.ball_joint - corner.lower_arm.ball_joint;
        prop_assert!((m.castor.tan() + k.x / k.z).abs() < 1e-12);
        prop_assert!((m.steering_axis_inclination.tan() + k.y / k.z).abs() < 1e-12);
    }

    /// Scrub radius and trail come back from the point where the steering axis meets the ground, in the frame of a wheel turned by its toe.
    #[test]
    fn ground_offsets_in_the_wheels_frame(corner in any_corner(), travel in -60.0..60.0_f64, rack in -40.0..40.0_f64) {
        let l = linkage(&corner);
        let Ok(p) = l.pose(travel, rack) else {
            return Err(TestCaseError::reject("out of reach"));
        };
        let m = l.measures(&p);
        prop_assert!((m.axis_at_ground.z - p.contact.z).abs() < 1e-9);
        let off_axis = (m.axis_at_ground - p.upper_ball_joint).cross(&p.steering_axis).norm();
        prop_assert!(off_axis < 1e-8);
        let wheel_frame = Rotation3::from_axis_angle(&Vector::z_axis(), -m.steer);
        let offset = wheel_frame * (m.axis_at_ground - p.contact);
        prop_assert!((offset.x - m.mechanical_trail).abs() < 1e-9);
        prop_assert!((-offset.y - m.scrub_radius).abs() < 1e-9);
    }

    /// In small steps the outer joint moves as its velocities say.
    #[test]
    fn sweeps_are_continuous(corner in any_corner(), rack in -40.0..40.0_f64) {
        let l = linkage(&corner);
        for way in [-1.0, 1.0] {
            let mut last: Option<Pose> = None;
            for i in 0..400 {
                let Ok(pose) = l.pose(way * 0.5 * f64::from(i), rack) else { break };
                if let Some(before) = last.filter(|_| pose.margins.least() > 0.25) {
                    let velocity = |p: &Pose| {
                        let arm = p.tie_rod_outer - p.lower_ball_joint;
                        p.rates.lower_ball_joint + p.rates.upright.cross(&arm)
                    };
                    let mean = (velocity(&before) + velocity(&pose)) * 0.5;
                    let way = pose.tie_rod_outer - before.tie_rod_outer;
                    let off = (way - mean * (pose.travel - before.travel)).norm();
                    prop_assert!(off < 0.1 * way.norm(), "{off} of {}", way.norm());
                }
                last = Some(pose);
            }
        }
    }
}
