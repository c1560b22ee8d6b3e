use super::*;
use approx::assert_relative_eq;
use nalgebra::{Point3, Rotation3, Unit, Vector3};
use proptest::prelude::*;
use trammel_geometry::{
    Arm, ArmName, Corner, Linkage, Point, Pose, Spring, TieRod as RodPoints, Vector, Wheel,
};

use crate::force::UprightLoad;
use crate::statics::{Equilibrium, Steering};

/// A light kart's front left corner, invented.
pub(crate) fn linkage() -> Linkage {
    Linkage::new(&Corner {
        upper_arm: Arm {
            front_pivot: Point::new(96.0, 262.0, 334.0),
            rear_pivot: Point::new(-104.0, 258.0, 328.0),
            ball_joint: Point::new(-16.0, 548.0, 324.0),
        },
        lower_arm: Arm {
            front_pivot: Point::new(132.0, 214.0, 176.0),
            rear_pivot: Point::new(-118.0, 216.0, 170.0),
            ball_joint: Point::new(5.0, 574.0, 158.0),
        },
        tie_rod: RodPoints {
            inner: Point::new(-87.0, 236.0, 203.0),
            outer: Point::new(-83.0, 557.0, 194.0),
        },
        wheel: Wheel {
            centre: Point::new(0.0, 642.0, 266.0),
            loaded_radius: 266.0,
            toe: 0.0,
            camber: 0.0,
        },
        spring: Some(Spring {
            arm: ArmName::Lower,
            chassis_mount: Point::new(6.0, 328.0, 512.0),
            arm_mount: Point::new(12.0, 436.0, 171.0),
        }),
        rack_axis: Some(Vector::new(0.02, 1.0, 0.0)),
    })
    .unwrap()
}

fn vehicle() -> Vehicle {
    Vehicle::new(VehicleSpec {
        mass: 375.0,
        front_share: 0.45,
        centre_of_gravity_height: 480.0,
        wheelbase: 1600.0,
        front_track: 1200.0,
        rear_track: 1250.0,
    })
    .unwrap()
}

pub(crate) fn scene() -> Scene {
    Scene {
        vehicle: vehicle(),
        axle: AxleEnd::Front,
        wheel: WheelSize::new(254.0, 180.0).unwrap(),
        steering: Some(Steering::new(80.0, 140.0).unwrap()),
    }
}

fn force_case(at: Place, size: [f64; 3], unit: ForceUnit, hold: WheelHold) -> LoadCase {
    let mut case = default_cases().remove(0);
    case.hold = hold;
    case.actions = vec![Action::Force {
        at,
        size: Vector3::from(size),
        unit,
        frame: Frame::Wheel,
    }];
    case
}

/// By hand: 375 kg x 9.80665 = 3677.494 N, 45 % of it on two wheels 827.436 N; 1 g of braking over 480/1600 puts 551.624 N more on each front
/// wheel; 0.5 g in a corner over 480/1200 moves 330.974 N.
#[test]
fn wheel_loads_by_hand() {
    let vehicle = vehicle();
    let load = |axle, braking, cornering| vehicle.wheel_load(axle, braking, cornering).unwrap();
    assert_relative_eq!(vehicle.weight(), 3_677.493_75, max_relative = 1e-12);
    assert_relative_eq!(
        load(AxleEnd::Front, 0.0, 0.0),
        827.436_09,
        max_relative = 1e-8
    );
    let braked = load(AxleEnd::Front, 1.0, 0.0) - load(AxleEnd::Front, 0.0, 0.0);
    assert_relative_eq!(braked, 551.624_06, max_relative = 1e-8);
    let rolled = load(AxleEnd::Front, 0.0, 0.5) - load(AxleEnd::Front, 0.0, 0.0);
    assert_relative_eq!(rolled, 330.974_44, max_relative = 1e-8);
    // A wheel in the air carries nothing.
    assert_eq!(load(AxleEnd::Front, 0.0, -3.0), 0.0);
}

#[test]
fn vehicles_that_are_none_are_refused() {
    let spec = *vehicle().spec();
    for bad in [
        VehicleSpec { mass: 0.0, ..spec },
        VehicleSpec {
            front_share: 1.2,
            ..spec
        },
        VehicleSpec {
            front_share: -0.1,
            ..spec
        },
        VehicleSpec {
            wheelbase: f64::NAN,
            ..spec
        },
        VehicleSpec {
            rear_track: -5.0,
            ..spec
        },
        VehicleSpec {
            centre_of_gravity_height: f64::INFINITY,
            ..spec
        },
    ] {
        assert!(Vehicle::new(bad).is_err(), "{bad:?}");
    }
    assert!(vehicle().wheel_load(AxleEnd::Front, f64::NAN, 0.0).is_err());
    assert!(WheelSize::new(0.0, 100.0).is_err());
}

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

fn pose() -> Pose {
    linkage().pose(20.0, -15.0).unwrap()
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

#[test]
fn the_worst_pose_is_found_between_the_grid() {
    let linkage = linkage();
    let reach = Reach::new(60.0, 60.0, 30.0).unwrap();
    let window = Window {
        travel: [-1.0, 1.0],
        lock: [0.0, 1.0],
    };
    let hill = |pose: &Pose| {
        Some(-(pose.travel - 31.7).powi(2) - (pose.rack + 12.3 - pose.travel / 40.0).powi(2))
    };
    let found = worst(&linkage, &window, &reach, Fineness::default(), hill)
        .unwrap()
        .unwrap();
    assert!((found.pose.travel - 31.7).abs() < 0.1, "{found:?}");
    assert!((found.pose.rack + 11.51).abs() < 0.1, "{found:?}");
    // Whatever the grid: here its poses are 10 mm apart both ways.
    let even = Fineness {
        travels: 13,
        racks: 7,
        refined: true,
    };
    let found = worst(&linkage, &window, &reach, even, hill)
        .unwrap()
        .unwrap();
    assert!((found.pose.travel - 31.7).abs() < 0.1, "{found:?}");
    assert!((found.pose.rack + 11.51).abs() < 0.1, "{found:?}");
    // At the locks only: the far one is worse, and neither is left.
    let locked = Window {
        lock: [0.9, 1.0],
        ..window
    };
    let found = worst(&linkage, &locked, &reach, Fineness::default(), hill)
        .unwrap()
        .unwrap();
    assert!((found.pose.rack + 27.0).abs() < 1e-9, "{found:?}");
    // Nothing to be found, nothing reached, no number.
    let nothing = worst(&linkage, &window, &reach, Fineness::default(), |_| None);
    assert_eq!(nothing, Ok(None));
    let far = Reach::new(5000.0, 0.0, 0.0).unwrap();
    let beyond = Window {
        travel: [0.9, 1.0],
        lock: [0.0, 0.0],
    };
    assert_eq!(
        worst(&linkage, &beyond, &far, Fineness::default(), hill),
        Ok(None)
    );
    let nan = Window {
        lock: [f64::NAN, 1.0],
        ..window
    };
    assert!(worst(&linkage, &nan, &reach, Fineness::default(), hill).is_err());
    assert!(Reach::new(-1.0, 0.0, 0.0).is_err());
}

/// The rack of the specimen runs out of tie rod long before 400 mm: what lies beyond is cut off, and what is left is reached.
#[test]
fn rack_travels_out_of_reach_are_cut_off() {
    let linkage = linkage();
    let reach = Reach::new(10.0, 10.0, 400.0).unwrap();
    let everywhere = Window {
        travel: [-1.0, 1.0],
        lock: [0.0, 1.0],
    };
    let [Some(region), None] = regions(&linkage, &everywhere, &reach).unwrap() else {
        unreachable!("one region about straight ahead");
    };
    assert!(
        region.rack[0] < -30.0 && region.rack[1] > 30.0,
        "{region:?}"
    );
    for (end, beyond) in [(region.rack[0], -1.0), (region.rack[1], 1.0)] {
        assert!(linkage.pose(0.0, end).is_ok(), "{end}");
        assert!(linkage.pose(0.0, end + beyond).is_err(), "{end}");
    }
    // At the locks alone nothing is reached, and that is for the poses to say.
    let locked = Window {
        lock: [1.0, 1.0],
        ..everywhere
    };
    for region in regions(&linkage, &locked, &reach)
        .unwrap()
        .into_iter()
        .flatten()
    {
        assert!(region.rack[0].abs() >= 399.0, "{region:?}");
        assert_eq!(region.poses(&linkage, Fineness::default()).count(), 0);
    }
}

proptest! {
    /// Transfer moves load about; it makes none.
    #[test]
    fn the_wheels_carry_the_vehicle(braking in -0.4..0.4_f64, cornering in -0.3..0.3_f64, share in 0.35..0.65_f64) {
        let vehicle = Vehicle::new(VehicleSpec { front_share: share, ..*vehicle().spec() }).unwrap();
        let sum: f64 = [AxleEnd::Front, AxleEnd::Rear]
            .into_iter()
            .flat_map(|axle| [cornering, -cornering].map(|side| vehicle.wheel_load(axle, braking, side).unwrap()))
            .sum();
        prop_assert!((sum - vehicle.weight()).abs() < 1e-9 * vehicle.weight());
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
