//! The forces against the principle of virtual work: no equation of equilibrium in it, only how the linkage moves.
#![allow(
    clippy::unwrap_used,
    clippy::indexing_slicing,
    reason = "helpers of tests: a bad reference file has to stop the test"
)]

mod common;

use proptest::prelude::*;
use trammel_geometry::{Linkage, Point, Pose, Vector};
use trammel_strength::force::UprightLoad;
use trammel_strength::statics::Equilibrium;

const CORNERS: [&str; 6] = [
    "corner_01_rod_behind.json",
    "corner_02_rod_ahead.json",
    "corner_03_long_travel_upper_spring.json",
    "corner_04_skewed_axes.json",
    "corner_05_tilted_rack.json",
    "corner_08_static_toe_and_camber.json",
];
const FORCE: Vector = Vector::new(-820.0, 310.0, 1240.0);

fn linkages() -> impl Iterator<Item = Linkage> {
    CORNERS
        .iter()
        .map(|name| Linkage::new(&common::corner(&common::reference(name))).unwrap())
}

fn moved(point: Point, by: [f64; 3]) -> Point {
    point + Vector::from(by)
}

prop_compose! {
    /// A corner of the reference with every joint somewhere else, up to 15 mm each way.
    fn any_linkage()(n in 0..CORNERS.len(), by in prop::array::uniform10(prop::array::uniform3(-15.0..15.0_f64))) -> Option<Linkage> {
        let mut corner = common::corner(&common::reference(CORNERS[n]));
        let arms = [&mut corner.upper_arm, &mut corner.lower_arm];
        for (i, arm) in arms.into_iter().enumerate() {
            arm.front_pivot = moved(arm.front_pivot, by[3 * i]);
            arm.rear_pivot = moved(arm.rear_pivot, by[3 * i + 1]);
            arm.ball_joint = moved(arm.ball_joint, by[3 * i + 2]);
        }
        corner.tie_rod.inner = moved(corner.tie_rod.inner, by[6]);
        corner.tie_rod.outer = moved(corner.tie_rod.outer, by[7]);
        corner.spring = corner.spring.map(|spring| trammel_geometry::Spring {
            chassis_mount: moved(spring.chassis_mount, by[8]),
            arm_mount: moved(spring.arm_mount, by[9]),
            ..spring
        });
        Linkage::new(&corner).ok()
    }
}

proptest! {
    /// The same laws for any corner, place and load: in travel at held rack only spring and load do work; with the spring's length held, only rack and load.
    #[test]
    fn work_of_random_corners(linkage in any_linkage(), travel in -30.0..30.0_f64, rack in -15.0..15.0_f64, force in prop::array::uniform3(-2000.0..2000.0_f64)) {
        let Some(linkage) = linkage else { return Ok(()) };
        let Ok(pose) = linkage.pose(travel, rack) else { return Ok(()) };
        let force = Vector::from(force);
        let load = UprightLoad::force_at(pose.contact, force).unwrap();
        let forces = Equilibrium::at(&linkage, &pose).unwrap().under(&load).unwrap();
        let velocity = pose.rates.wheel_centre + pose.rates.upright.cross(&(pose.contact - pose.wheel_centre));
        let motion_ratio = linkage.measures(&pose).spring.unwrap().motion_ratio;
        prop_assume!(motion_ratio.abs() > 0.1);
        let by_work = force.dot(&velocity) / motion_ratio;
        let scale = force.norm() / motion_ratio.abs();
        prop_assert!((forces.spring_force - by_work).abs() < 1e-9 * scale, "{} {by_work}", forces.spring_force);
        let Some(on_rack) = forces.rack_force else { return Ok(()) };
        let step = 0.01;
        let [left, right] = [rack + step, rack - step].map(|rack| {
            let there = same_spring(&linkage, &pose, rack);
            carried(&pose, &there, pose.contact)
        });
        let by_work = force.dot(&(left - right)) / (2.0 * step);
        prop_assert!((on_rack - by_work).abs() < 1e-5 * force.norm(), "{on_rack} {by_work}");
    }
}

fn spring_length(linkage: &Linkage, pose: &Pose) -> f64 {
    linkage.measures(pose).spring.unwrap().length
}

/// The place in `there` of the upright's point that is at `point` in `here`.
fn carried(here: &Pose, there: &Pose, point: Point) -> Point {
    let frame = |pose: &Pose| {
        let k = pose.steering_axis;
        let arm = pose.tie_rod_outer - pose.lower_ball_joint;
        let g = (arm - k * arm.dot(&k)).normalize();
        [k, g, k.cross(&g)]
    };
    let local = point - here.lower_ball_joint;
    frame(here)
        .iter()
        .zip(frame(there))
        .fold(there.lower_ball_joint, |sum, (axis, moved)| {
            sum + moved * local.dot(axis)
        })
}

/// In wheel travel at held rack only spring and load do work: S x motion ratio = F . v.
#[test]
fn spring_force_by_wheel_travel() {
    for linkage in linkages() {
        for (travel, rack) in [(0.0, 0.0), (45.0, -20.0), (-50.0, 25.0)] {
            let pose = linkage.pose(travel, rack).unwrap();
            let load = UprightLoad::force_at(pose.contact, FORCE).unwrap();
            let forces = Equilibrium::at(&linkage, &pose)
                .unwrap()
                .under(&load)
                .unwrap();
            let arm = pose.contact - pose.wheel_centre;
            let velocity = pose.rates.wheel_centre + pose.rates.upright.cross(&arm);
            let by_work =
                FORCE.dot(&velocity) / linkage.measures(&pose).spring.unwrap().motion_ratio;
            let apart = (forces.spring_force - by_work).abs();
            assert!(
                apart < 1e-9 * by_work.abs(),
                "{} {by_work}",
                forces.spring_force
            );
        }
    }
}

/// The travel, near this pose, at which the spring is as long as there, with the rack elsewhere.
fn same_spring(linkage: &Linkage, pose: &Pose, rack: f64) -> Pose {
    let wanted = spring_length(linkage, pose);
    let mut travel = pose.travel;
    for _ in 0..20 {
        let there = linkage.pose(travel, rack).unwrap();
        let spring = linkage.measures(&there).spring.unwrap();
        travel += (spring.length - wanted) / spring.motion_ratio;
    }
    linkage.pose(travel, rack).unwrap()
}

/// With the spring's length held and the rack moved, only rack and load do work: (rods on rack) x ds = F . dr, by central differences.
#[test]
fn rack_force_by_rack_travel() {
    let step = 0.01;
    for linkage in linkages() {
        for (travel, rack) in [(0.0, 0.0), (35.0, -20.0), (-40.0, 22.0)] {
            let pose = linkage.pose(travel, rack).unwrap();
            let load = UprightLoad::force_at(pose.contact, FORCE).unwrap();
            let forces = Equilibrium::at(&linkage, &pose)
                .unwrap()
                .under(&load)
                .unwrap();
            let [left, right] = [rack + step, rack - step].map(|rack| {
                let there = same_spring(&linkage, &pose, rack);
                carried(&pose, &there, pose.contact)
            });
            let by_work = FORCE.dot(&(left - right)) / (2.0 * step);
            let apart = (forces.rack_force.unwrap() - by_work).abs();
            assert!(apart < 1e-6 * FORCE.norm(), "{forces:?} {by_work}");
        }
    }
}
