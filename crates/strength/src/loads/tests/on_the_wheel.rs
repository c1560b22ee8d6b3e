//! Where a force meets the wheel, and the moments that it brings about the steering axis.

use approx::assert_relative_eq;
use nalgebra::{Point3, Rotation3, Unit, Vector3};

use super::*;
use crate::force::UprightLoad;

/// Barton & Fieldhouse, Automotive Chassis Engineering (2018), example E2.1, p. 82 and 90: offset 25 mm, patch 250 mm, 1200 kg, friction 0.58:
/// lever 87 mm, 594 N m; offset 20, patch 200, 400 kg, friction 0.55: lever 69.6 mm, 150.2 N m. Printed figures, with 9.81 m/s^2.
#[test]
fn scrub_moments_as_printed() {
    let first = scrub_moment(0.58, 1200.0 * 9.81, 25.0, 250.0).unwrap();
    assert!((first / 1000.0 - 594.0).abs() < 0.5, "{first}");
    assert!((scrub_moment(1.0, 1.0, 25.0, 250.0).unwrap() - 87.0).abs() < 0.05);
    let second = scrub_moment(0.55, 400.0 * 9.81, 20.0, 200.0).unwrap();
    assert!((second / 1000.0 - 150.2).abs() < 0.1, "{second}");
    assert!((scrub_moment(1.0, 1.0, 20.0, 200.0).unwrap() - 69.6).abs() < 0.05);
}

/// The formula's value for friction 0.7, 1000 N, 70 kPa: 27.8887 N m; it is 0.8862 of what a disc of even pressure with the same load and pressure
/// gives, 2/3 mu W sqrt(W / (pi p)) = 31.4690 N m (both computed).
#[test]
fn stationary_torque_of_a_tyre() {
    let torque = stationary_torque(0.7, 1000.0, 0.070).unwrap();
    assert_relative_eq!(torque, 27_888.7, max_relative = 1e-5);
    let disc = 2.0 / 3.0 * 0.7 * 1000.0 * (1000.0 / (std::f64::consts::PI * 0.070)).sqrt();
    assert_relative_eq!(disc, 31_469.0, max_relative = 1e-5);
    assert_relative_eq!(torque / disc, 0.8862, max_relative = 1e-4);
    assert!(stationary_torque(0.7, 1000.0, 0.0).is_err());
    assert!(stationary_torque(-0.1, 1000.0, 0.1).is_err());
    assert!(scrub_moment(0.7, f64::NAN, 0.0, 100.0).is_err());
}

/// A figure that course designs of steering gears print for friction 0.7, 10902.5 N and 0.179 MPa: 627 826.2 N mm (from memory; printed with its
/// roots rounded). A load of 30 000 N at 0.45 MPa is set as an exercise at toserve.com, article 18813751 (question seen, its answer a picture that was not):
/// 30 000^3 / 0.45 = 6e13 by hand, its root 7.74597e6, times 0.7 / 3.
#[test]
fn stationary_torque_as_printed() {
    let printed = stationary_torque(0.7, 10_902.5, 0.179).unwrap();
    assert_relative_eq!(printed, 627_826.2, max_relative = 2e-6);
    let exercise = stationary_torque(0.7, 30_000.0, 0.45).unwrap();
    assert_relative_eq!(exercise, 0.7 / 3.0 * 7.745_967e6, max_relative = 1e-6);
}

/// The same book's jacking moments, `W d sin k cos k sin(steer)`, with k 12 degrees: 1200 kg and 25 mm give 28 N m at 28 degrees and 42 at 45;
/// 400 kg and 20 mm give 7.5 and 11.3. Here they come out of the moments about the steering axis by themselves.
#[test]
fn jacking_moments_as_printed() {
    let lean = 12.0_f64.to_radians();
    let axis = Unit::new_normalize(Vector3::new(0.0, -lean.sin(), lean.cos()));
    for (mass, offset, steer_deg, printed) in [
        (1200.0, 25.0, 28.0_f64, 28.0),
        (1200.0, 25.0, 45.0, 42.0),
        (400.0, 20.0, 28.0, 7.5),
        (400.0, 20.0, 45.0, 11.3),
    ] {
        let turn = Rotation3::from_axis_angle(&axis, steer_deg.to_radians());
        let contact = Point3::from(turn * Vector3::new(0.0, offset, 0.0));
        let load = UprightLoad::force_at(contact, Vector3::new(0.0, 0.0, mass * 9.81)).unwrap();
        let moment = load.moment_about(Point3::origin()).dot(&axis).abs() / 1000.0;
        assert!((moment - printed).abs() < 0.55, "{moment} {printed}");
        let formula = mass * 9.81 * offset * lean.sin() * lean.cos() * steer_deg.to_radians().sin();
        assert_relative_eq!(moment * 1000.0, formula, max_relative = 1e-12);
    }
}

fn same(a: &UprightLoad, b: &UprightLoad) -> bool {
    let about = Point3::new(0.0, 500.0, 100.0);
    let moment = (a.moment_about(about) - b.moment_about(about)).norm();
    (a.total_force() - b.total_force()).norm() < 1e-9 && moment < 1e-6
}

/// A rolling wheel turns away under a force at its edge, so a rearward force at the contact acts as at the wheel centre, but for the lean of the wheel;
/// a braked one does not.
#[test]
fn a_rolling_wheel_passes_no_moment_about_its_axis() {
    let (linkage, scene, pose) = (linkage(), scene(), pose());
    let load = |at, hold| {
        let case = force_case(at, [-800.0, 0.0, 0.0], ForceUnit::Newtons, hold);
        scene.load(&case, &linkage, &pose, 1.0).unwrap()
    };
    let rolling = load(Place::Contact, WheelHold::Rolling);
    let braked = load(Place::Contact, WheelHold::Braked);
    let turning = |load: &UprightLoad| load.moment_about(pose.wheel_centre).dot(&pose.spin_axis);
    assert!(turning(&rolling).abs() < 1e-6);
    assert!(turning(&braked).abs() > 800.0 * 260.0);
    let front = Place::Rim {
        facing: Facing::Front,
        height: 0.0,
        outboard: 0.0,
    };
    assert!(same(
        &load(front, WheelHold::Braked),
        &load(Place::WheelCentre, WheelHold::Braked)
    ));
}

/// At half a rim radius below the centre the front of a rim of 127 mm is 109.985 mm ahead; sideways on the outer flange.
#[test]
fn where_a_kerb_hits_the_rim() {
    let linkage = linkage();
    let pose = linkage.pose(0.0, 0.0).unwrap();
    let place = Place::Rim {
        facing: Facing::Front,
        height: -0.5,
        outboard: 1.0,
    };
    let case = force_case(
        place,
        [0.0, -500.0, 0.0],
        ForceUnit::Newtons,
        WheelHold::Braked,
    );
    let load = scene().load(&case, &linkage, &pose, 1.0).unwrap();
    // Straight ahead without toe and camber, the wheel's frame is the vehicle's.
    let at = pose.wheel_centre + Vector3::new(127.0 * 0.75_f64.sqrt(), 90.0, -63.5);
    let by_hand = UprightLoad::force_at(at, Vector3::new(0.0, -500.0, 0.0)).unwrap();
    assert!(same(&load, &by_hand));
    let mut acts = vec![];
    scene()
        .each_force(&case, &pose, |at, force| acts.push((at, force)))
        .unwrap();
    let &[(found, force)] = acts.as_slice() else {
        panic!("one force: {acts:?}");
    };
    assert!((found - at).norm() < 1e-9, "{found} {at}");
    assert!(
        (force - Vector3::new(0.0, -500.0, 0.0)).norm() < 1e-9,
        "{force}"
    );
}

/// The rear of the rim is as far behind the wheel centre as its front is ahead; a quarter of the static wheel load, 827.436 N, is 206.859 N.
#[test]
fn where_the_rear_of_a_rim_is_hit() {
    let linkage = linkage();
    let pose = linkage.pose(0.0, 0.0).unwrap();
    let place = Place::Rim {
        facing: Facing::Rear,
        height: 0.6,
        outboard: -1.0,
    };
    let case = force_case(
        place,
        [0.25, 0.0, 0.0],
        ForceUnit::StaticWheelLoad,
        WheelHold::Braked,
    );
    let mut acts = vec![];
    scene()
        .each_force(&case, &pose, |at, force| acts.push((at, force)))
        .unwrap();
    let at = pose.wheel_centre + Vector3::new(-127.0 * 0.8, -90.0, 127.0 * 0.6);
    assert!((acts[0].0 - at).norm() < 1e-9, "{acts:?}");
    assert!(
        (acts[0].1 - Vector3::new(206.859, 0.0, 0.0)).norm() < 1e-3,
        "{acts:?}"
    );
}

/// The patch's moment goes both ways; with a patch length it is about the steering axis, where the printed formula has it.
#[test]
fn turning_on_the_spot_goes_both_ways() {
    let (linkage, scene, pose) = (linkage(), scene(), pose());
    let mut case = default_cases().remove(0);
    case.actions = vec![Action::TurnedOnTheSpot {
        friction: 0.8,
        patch: Patch::Length(150.0),
    }];
    assert_eq!(case.senses(), [1.0, -1.0]);
    let load = |sense| scene.load(&case, &linkage, &pose, sense).unwrap();
    let about = |load: UprightLoad| {
        load.moment_about(pose.lower_ball_joint)
            .dot(&pose.steering_axis)
    };
    let measures = linkage.measures(&pose);
    let offset = measures.scrub_radius.hypot(measures.mechanical_trail);
    let expected = 0.8 * 827.436_09 * offset.hypot(50.0);
    assert_relative_eq!(about(load(1.0)), expected, max_relative = 1e-7);
    assert_relative_eq!(about(load(-1.0)), -expected, max_relative = 1e-7);
    // With a pressure it is about the vertical: 0.8 / 3 x sqrt(827.436^3 / 0.070).
    case.actions = vec![Action::TurnedOnTheSpot {
        friction: 0.8,
        patch: Patch::Pressure(0.070),
    }];
    let turned = scene.load(&case, &linkage, &pose, -1.0).unwrap();
    let upright = turned.moment_about(pose.lower_ball_joint);
    let by_hand = 0.8 / 3.0 * (827.436_09_f64.powi(3) / 0.070).sqrt();
    assert_relative_eq!(upright.z, -by_hand, max_relative = 1e-7);
    assert_eq!((upright.x, upright.y), (0.0, 0.0));
}

/// A wheel that has toed and cambered still has level directions of its own: a newton along each is a newton, square to the other.
#[test]
fn the_wheels_directions_are_level_and_of_one_length() {
    let (linkage, scene) = (linkage(), scene());
    let pose = linkage.pose(-60.0, 30.0).unwrap();
    assert!(pose.spin_axis.z.abs() > 0.01, "a cambered wheel");
    let put = |size| {
        let case = force_case(
            Place::WheelCentre,
            size,
            ForceUnit::Newtons,
            WheelHold::Braked,
        );
        scene
            .load(&case, &linkage, &pose, 1.0)
            .unwrap()
            .total_force()
    };
    let (ahead, outboard) = (put([1.0, 0.0, 0.0]), put([0.0, 1.0, 0.0]));
    for level in [ahead, outboard] {
        assert_relative_eq!(level.norm(), 1.0, max_relative = 1e-12);
        assert_eq!(level.z, 0.0);
    }
    assert!(ahead.dot(&pose.spin_axis).abs() < 1e-12);
    assert!(outboard.dot(&pose.spin_axis) > 0.9 && ahead.x > 0.9);
}

#[test]
fn a_rim_has_half_its_diameter_and_half_its_width() {
    let rim = WheelSize::new(254.0, 180.0).unwrap();
    assert_eq!((rim.rim_radius(), rim.half_width()), (127.0, 90.0));
}
