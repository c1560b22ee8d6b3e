//! The worst pose of a case.

use trammel_geometry::Pose;

use super::*;

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
