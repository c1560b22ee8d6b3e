//! Which forces reach a part at a pose.

use super::*;
use crate::{
    arm_tubes::SpringOnArm, bracket::BracketForce, proof::part::Situation, statics::Joints,
};

/// Looks at a corner at a wheel and rack travel, under one of the usual cases.
fn under(
    linkage: &Linkage,
    [travel, rack]: [f64; 2],
    case: usize,
    look: impl FnOnce(&Situation<'_>),
) {
    let pose = linkage.pose(travel, rack).unwrap();
    let case = &default_cases()[case];
    let load = scene().load(case, linkage, &pose, 1.0).unwrap();
    let equilibrium = Equilibrium::at(linkage, &pose).unwrap();
    look(&Situation {
        linkage,
        pose: &pose,
        rod: equilibrium.tie_rod(),
        forces: &equilibrium.under(&load).unwrap(),
        turned: &Turned::at(linkage, &pose),
    });
}

fn told(kind: &PartKind, situation: &Situation<'_>) -> Vec<(Check, f64)> {
    let mut found = vec![];
    kind.check(situation, |f| found.push((f.check, f.value)))
        .unwrap();
    found
}

fn assert_same(found: &[(Check, f64)], wanted: &[(Check, f64)]) {
    assert_eq!(found.len(), wanted.len());
    for ((check, value), (same, by_hand)) in found.iter().zip(wanted) {
        assert_eq!(check, same);
        assert_relative_eq!(value, by_hand, max_relative = 1e-9);
    }
}

/// A bolt needs a direction, and a bracket one that is not along its bolt.
#[test]
fn mounts_that_are_none_are_refused() {
    let at = JointPlace::Spring;
    assert!(Mounted::new(at, Body::Chassis, Vector3::zeros()).is_err());
    let mounted = Mounted::new(at, Body::Chassis, Vector3::x()).unwrap();
    assert!(mounted.standing(Vector3::x()).is_err());
    assert!(mounted.standing(Vector3::new(f64::NAN, 1.0, 0.0)).is_err());
    assert!(mounted.standing(Vector3::new(5.0, 1.0, 0.0)).is_ok());
}

/// The spring's force on the arm is what keeps it in balance with its pivots and its ball joint.
#[test]
fn an_arms_tubes_carry_its_spring() {
    let all = parts();
    let PartKind::ArmTubes(arm, tubes) = &all[2].kind else {
        unreachable!()
    };
    under(&linkage(), [25.0, -10.0], 0, |situation| {
        let joints = Joints::at(situation.linkage, situation.pose);
        let on = situation.forces.arm(*arm);
        let spring = SpringOnArm {
            mount: joints.spring.unwrap().arm_mount,
            force: on.ball_joint_on_upright - on.front_pivot - on.rear_pivot,
        };
        let mut wanted = vec![];
        tubes.check(joints.arm(*arm), on, Some(spring), |f| {
            wanted.push((f.check, f.value));
        });
        assert!(!wanted.is_empty());
        assert_same(&told(&all[2].kind, situation), &wanted);
    });
}

/// A bracket on the chassis takes the joint's force in its own directions: bolt along x, standing along y, so its width is along z. A bolt takes what is across it.
#[test]
fn a_mount_splits_its_force_by_its_own_directions() {
    let pivot = Mounted::new(
        JointPlace::FrontPivot(ArmName::Lower),
        Body::Chassis,
        Vector3::x() * 3.0,
    )
    .unwrap()
    .standing(Vector3::new(0.7, 2.0, 0.0))
    .unwrap();
    let parts = parts();
    let PartKind::Bolt(_, bolt) = &parts[4].kind else {
        unreachable!()
    };
    under(&linkage(), [30.0, 20.0], 1, |situation| {
        let at = situation.forces.lower.front_pivot;
        assert!(at.iter().all(|part| part.abs() > 10.0), "{at}");
        let force = BracketForce {
            pull: at.y,
            along: at.z,
            across: at.x,
        };
        let mut wanted = vec![];
        bracket().check(&force, |f| wanted.push((f.check, f.value)));
        assert!(!wanted.is_empty());
        assert_same(
            &told(&PartKind::Bracket(pivot, bracket()), situation),
            &wanted,
        );
        let mut wanted = vec![];
        bolt.check(at.y.hypot(at.z), |f| wanted.push((f.check, f.value)));
        assert!(!wanted.is_empty());
        assert_same(&told(&PartKind::Bolt(pivot, *bolt), situation), &wanted);
    });
}

/// The rack end goes out with the rack, whichever way the rack's axis was drawn.
#[test]
fn the_bore_mouth_knows_how_far_the_rack_is_out() {
    let PartKind::RackEnd(part) = rack_end("1/2-20") else {
        unreachable!()
    };
    // 62 mm with the rack at its centre and 20 more: the same as a rack at its centre with a mouth 82 mm off.
    let geometry = part.end.geometry().with_bore_mouth(82.0).unwrap();
    let grade = Grade::find("grade 5").unwrap();
    let thread = Thread::find("1/2-20").unwrap();
    let end = RackEnd::new(geometry, thread, &grade, &BoreMouth::ThreadThrough).unwrap();
    let corner = *linkage().corner();
    for (axis, rack) in [(1.0, 20.0), (-1.0, -20.0)] {
        let turned = Linkage::new(&Corner {
            rack_axis: corner.rack_axis.map(|v| v * axis),
            ..corner
        })
        .unwrap();
        under(&turned, [10.0, rack], 2, |situation| {
            let found = told(&PartKind::RackEnd(part), situation);
            let mouth = found.iter().find(|(c, _)| *c == Check::BoreMouthYield);
            let still = end
                .under(situation.forces.force_on_inner_joint, 0.0)
                .unwrap();
            assert_relative_eq!(
                mouth.unwrap().1,
                still.bore_mouth.unwrap().stress().unwrap().von_mises(),
                max_relative = 1e-9
            );
        });
    }
}
