//! The forces of whole corners against `tests/reference/statics.json`: another formulation, 20 unknowns in one dense solve.
#![allow(
    clippy::unwrap_used,
    reason = "helpers of tests: a bad reference file has to stop the test"
)]

mod common;

use serde_json::Value;
use trammel_geometry::{Linkage, Pose, Vector};
use trammel_strength::force::UprightLoad;
use trammel_strength::statics::{CornerForces, Equilibrium};

fn load(spec: &Value, pose: &Pose) -> UprightLoad {
    let vector = |key: &str| Vector::from_iterator((0..3).map(|i| spec[key][i].as_f64().unwrap()));
    let moment = Vector::new(0.0, 0.0, spec["moment_z"].as_f64().unwrap());
    UprightLoad::force_at(pose.contact, vector("at_contact")).unwrap()
        + UprightLoad::moment(moment).unwrap()
        + UprightLoad::force_at(pose.wheel_centre, vector("at_wheel_centre")).unwrap()
}

/// The numbers of a row from the fourth on, in the order of its columns; the rack's force where there is a rack.
fn numbers(forces: &CornerForces) -> Vec<Option<f64>> {
    let vectors = [
        forces.upper.ball_joint_on_upright,
        forces.lower.ball_joint_on_upright,
        forces.upper.front_pivot,
        forces.upper.rear_pivot,
        forces.lower.front_pivot,
        forces.lower.rear_pivot,
    ];
    let scalars = [
        Some(forces.tie_rod_tension),
        Some(forces.spring_force),
        forces.rack_force,
    ];
    let components = vectors.iter().flat_map(|v| v.iter().copied().map(Some));
    scalars.into_iter().chain(components).collect()
}

#[test]
fn every_force_agrees_with_the_dense_solve() {
    let table = common::reference("statics.json");
    let (mut compared, mut worst) = (0, 0.0_f64);
    for block in table["geometries"].as_array().unwrap() {
        let corner = common::corner(&common::reference(block["file"].as_str().unwrap()));
        let linkage = Linkage::new(&corner).unwrap();
        for row in block["rows"].as_array().unwrap() {
            let at = |i: usize| row[i].as_f64().unwrap();
            let pose = linkage.pose(at(0), at(1)).unwrap();
            let spec = &table["loads"][row[2].as_u64().unwrap() as usize];
            let forces = Equilibrium::at(&linkage, &pose)
                .unwrap()
                .under(&load(spec, &pose))
                .unwrap();
            let ours = numbers(&forces);
            let theirs: Vec<_> = (3..row.as_array().unwrap().len())
                .map(|i| row[i].as_f64())
                .collect();
            assert_eq!(ours.len(), theirs.len());
            let scale = theirs.iter().flatten().fold(0.0_f64, |a, b| a.max(b.abs()));
            for (our, their) in ours.iter().zip(&theirs) {
                assert_eq!(our.is_some(), their.is_some(), "{row}");
                let apart = (our.unwrap_or(0.0) - their.unwrap_or(0.0)).abs() / scale;
                assert!(apart < 1e-10, "{our:?} is not {their:?} in {row}");
                worst = worst.max(apart);
                compared += 1;
            }
        }
    }
    println!("largest difference {worst:e} of the row's largest force");
    assert!(compared > 3000, "{compared}");
}
