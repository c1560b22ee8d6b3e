//! The cases that are there from the start, and those that can't stand.

use approx::assert_relative_eq;
use nalgebra::Vector3;

use super::*;
use crate::statics::Equilibrium;

/// By hand: braking at 0.7 of gravity brings 0.7 x 551.624 N to each front wheel's 827.436 N, a corner at 0.7 of it 1.4 x 330.974 N to the outer one's. The
/// tyre's grip is 0.7 of the load.
#[test]
fn default_cases_brake_and_corner_at_what_they_say() {
    let (linkage, scene) = (linkage(), scene());
    let pose = linkage.pose(0.0, 0.0).unwrap();
    for (name, load, grip) in [
        ("braking", 1213.573, Vector3::new(-0.7, 0.0, 1.0)),
        ("cornering", 1290.800, Vector3::new(0.0, -0.7, 1.0)),
    ] {
        let cases = default_cases();
        let case = cases.iter().find(|case| case.name == name).unwrap();
        let mut acts = vec![];
        scene
            .each_force(case, &pose, |_, force| acts.push(force))
            .unwrap();
        assert!(
            (acts[0] - grip * load).norm() < 2e-3,
            "{name}: {acts:?} {load}"
        );
    }
}

#[test]
fn every_default_case_can_be_put_on_a_wheel() {
    let (linkage, scene) = (linkage(), scene());
    let reach = Reach::new(60.0, 60.0, 30.0).unwrap();
    let cases = default_cases();
    for (i, case) in cases.iter().enumerate() {
        assert!(
            cases
                .iter()
                .skip(i + 1)
                .all(|other| other.name != case.name)
        );
        let mut poses = 0;
        for region in regions(&linkage, &case.window, &reach)
            .unwrap()
            .into_iter()
            .flatten()
        {
            for pose in region.poses(&linkage, Fineness::default()) {
                for &sense in case.senses() {
                    let load = scene.load(case, &linkage, &pose, sense).unwrap();
                    assert!(load.total_force().z > 0.0, "{}", case.name);
                }
                poses += 1;
            }
        }
        assert!(poses >= 11, "{} {poses}", case.name);
    }
}

/// A hit needs no bump or droop to happen.
#[test]
fn hits_happen_at_the_design_height_too() {
    for case in default_cases() {
        if [
            "rock, rearward",
            "kerb, sideways",
            "pushed by another vehicle",
        ]
        .contains(&case.name.as_str())
        {
            let [from, to] = case.window.travel;
            assert!(from < 0.0 && to > 0.0, "{}", case.name);
        }
    }
}

#[test]
fn bad_numbers_in_a_case_are_refused() {
    let (linkage, scene, pose) = (linkage(), scene(), pose());
    let too_high = Place::Rim {
        facing: Facing::Rear,
        height: 1.5,
        outboard: 0.0,
    };
    for case in [
        force_case(too_high, [1.0; 3], ForceUnit::Newtons, WheelHold::Rolling),
        force_case(
            Place::Contact,
            [f64::NAN; 3],
            ForceUnit::Newtons,
            WheelHold::Rolling,
        ),
        force_case(
            Place::Contact,
            [f64::MAX; 3],
            ForceUnit::VehicleWeight,
            WheelHold::Rolling,
        ),
    ] {
        assert!(scene.load(&case, &linkage, &pose, 1.0).is_err(), "{case:?}");
    }
}

/// What the rod puts on the rack is what the driver pulls, whichever lock.
#[test]
fn a_push_against_the_stop_comes_back_along_the_rack() {
    let (linkage, scene) = (linkage(), scene());
    let mut case = default_cases().remove(0);
    case.actions = vec![Action::AgainstStop { hand_force: 250.0 }];
    // 250 N at 140 mm over 80 mm a turn: 250 x 140 x 2 pi / 80 = 2748.89 N.
    for (rack, expected) in [(38.0, -2748.894), (-38.0, 2748.894)] {
        let pose = linkage.pose(10.0, rack).unwrap();
        let load = scene.load(&case, &linkage, &pose, 1.0).unwrap();
        let forces = Equilibrium::at(&linkage, &pose)
            .unwrap()
            .under(&load)
            .unwrap();
        assert_relative_eq!(forces.rack_force.unwrap(), expected, max_relative = 1e-6);
    }
    let unsteered = Scene {
        steering: None,
        ..scene
    };
    assert_eq!(
        unsteered.load(&case, &linkage, &pose(), 1.0),
        Err(LoadError::NoSteering)
    );
}

/// A push on a rack that stands square to the rod does nothing to the rod, however hard; the case says so.
#[test]
fn a_rack_square_to_the_rod_cannot_push_it() {
    let corner = *linkage().corner();
    let rod = corner.tie_rod.outer - corner.tie_rod.inner;
    let across = Linkage::new(&Corner {
        rack_axis: Some(rod.cross(&Vector3::z())),
        ..corner
    })
    .unwrap();
    let mut case = default_cases().remove(0);
    case.actions = vec![Action::AgainstStop { hand_force: 250.0 }];
    let pose = across.pose(0.0, 0.0).unwrap();
    let refused = scene().load(&case, &across, &pose, 1.0);
    assert!(
        matches!(refused, Err(LoadError::RodAcrossRack { cosine }) if cosine.abs() < 1e-12),
        "{refused:?}"
    );
}
