//! The forces against the principle of virtual work: no equation of equilibrium in it, only how the linkage moves.
#![allow(
    clippy::unwrap_used,
    reason = "helpers of tests: a bad reference file has to stop the test"
)]

mod common;

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
