use super::*;
use approx::assert_relative_eq;
use nalgebra::{Point3, Vector3};
use proptest::prelude::*;

use crate::loads::tests::linkage;

fn bar(a: [f64; 3], b: [f64; 3], radius: f64) -> Capsule {
    Capsule {
        ends: [Point3::from(a), Point3::from(b)],
        radius,
    }
}

#[test]
fn bars_by_hand() {
    let first = bar([0.0; 3], [100.0, 0.0, 0.0], 5.0);
    // Crossing at right angles 30 mm above.
    let crossing = first.to_capsule(&bar([50.0, -50.0, 30.0], [50.0, 50.0, 30.0], 10.0));
    assert_relative_eq!(crossing.distance, 15.0);
    assert_eq!(crossing.between[0], Point3::new(50.0, 0.0, 0.0));
    // Parallel, end to end, past each other, through each other.
    assert_relative_eq!(
        first
            .to_capsule(&bar([20.0, 40.0, 0.0], [80.0, 40.0, 0.0], 1.0))
            .distance,
        34.0
    );
    assert_relative_eq!(
        first
            .to_capsule(&bar([103.0, 4.0, 0.0], [200.0, 4.0, 0.0], 0.0))
            .distance,
        0.0
    );
    assert_relative_eq!(
        first
            .to_capsule(&bar([50.0, -10.0, 0.0], [50.0, 10.0, 0.0], 2.0))
            .distance,
        -7.0
    );
    // A ball.
    assert_relative_eq!(
        first
            .to_capsule(&bar([-30.0, 40.0, 0.0], [-30.0, 40.0, 0.0], 5.0))
            .distance,
        40.0
    );
}

/// A torus of 200 and 50 mm about the y axis.
fn torus() -> Ring {
    Ring {
        centre: Point3::new(0.0, 600.0, 250.0),
        axis: Vector3::y(),
        profile: [[200.0, 0.0]; 2],
        radius: 50.0,
    }
}

#[test]
fn bars_and_rings_by_hand() {
    let ring = torus();
    // Along the axis: 200 from the middle circle, less both radii.
    let axle = bar([0.0, 0.0, 250.0], [0.0, 900.0, 250.0], 10.0).to_ring(&ring);
    assert!((axle.distance - 140.0).abs() < 2e-3, "{axle:?}");
    // Beside it, level with the top: 100 from the middle plane.
    let beside = bar([-300.0, 500.0, 450.0], [300.0, 500.0, 450.0], 10.0).to_ring(&ring);
    assert!((beside.distance - 40.0).abs() < 2e-3, "{beside:?}");
    assert!(
        (beside.between[1] - Point3::new(0.0, 600.0, 450.0)).norm() < 1.0,
        "{beside:?}"
    );
    // Through the section.
    let through = bar([0.0, 500.0, 450.0], [0.0, 700.0, 450.0], 10.0).to_ring(&ring);
    assert!((through.distance + 60.0).abs() < 2e-3, "{through:?}");
    // Past its middle circle by 3 mm at a third of the bar, where no halving falls.
    let at_a_third = bar([0.0, 597.0, 400.0], [0.0, 597.0, 550.0], 10.0).to_ring(&ring);
    assert!((at_a_third.distance + 57.0).abs() < 1e-3, "{at_a_third:?}");
    // A barrel of 120 mm, 160 wide, from inside: a bar 30 mm under the axis is 90 from its lowest line.
    let barrel = Ring {
        profile: [[120.0, -80.0], [120.0, 80.0]],
        radius: 2.0,
        ..ring
    };
    let inside = bar([0.0, 560.0, 220.0], [0.0, 640.0, 220.0], 10.0).to_ring(&barrel);
    assert!((inside.distance - 78.0).abs() < 2e-3, "{inside:?}");
    // Past its open end: 40 beyond the edge and 30 inside it.
    let beyond = bar([0.0, 480.0, 160.0], [0.0, 400.0, 160.0], 10.0).to_ring(&barrel);
    assert!((beyond.distance - (50.0 - 12.0)).abs() < 2e-3, "{beyond:?}");
}

/// From the axis all of the ring is as near, whichever way the axis points; some point of it is named.
#[test]
fn the_nearest_point_from_the_axis_is_one_of_the_ring() {
    for axis in [Vector3::x(), Vector3::y(), Vector3::z()] {
        let ring = Ring { axis, ..torus() };
        let ends = [0.0, 40.0].map(|along| ring.centre + axis * along);
        let gap = Capsule { ends, radius: 1.0 }.to_ring(&ring);
        assert_relative_eq!(gap.distance, 149.0, epsilon = 1e-9);
        let out = gap.between[1] - ring.centre;
        assert_relative_eq!(out.norm(), 200.0, epsilon = 1e-9);
        assert!(out.dot(&axis).abs() < 1e-9, "{out}");
    }
}

fn sizes() -> Thicknesses {
    Thicknesses {
        tie_rod: 19.05,
        upper_arm: 25.4,
        lower_arm: 25.4,
        spring: 70.0,
        tyre_diameter: 545.0,
        tyre_width: 175.0,
        rim_diameter: 254.0,
        rim_width: 150.0,
        rim_thickness: 4.0,
    }
}

#[test]
fn every_pair_has_a_gap_and_steering_changes_it() {
    let linkage = linkage();
    let clearances = Clearances::new(sizes(), 10.0).unwrap();
    let at = |pair, rack| {
        let pose = linkage.pose(0.0, rack).unwrap();
        clearances.gap(pair, linkage.corner(), &pose).unwrap()
    };
    for pair in Pair::ALL {
        assert!(at(pair, 0.0).distance.is_finite(), "{pair}");
    }
    // Steering moves the tyre against what stays on the chassis.
    let [left, right] = [-35.0, 35.0].map(|rack| at(Pair::SpringAndTyre, rack).distance);
    assert!((left - right).abs() > 1.0, "{left} {right}");
    let mut corner = *linkage.corner();
    corner.spring = None;
    let pose = linkage.pose(0.0, 0.0).unwrap();
    assert_eq!(clearances.gap(Pair::SpringAndTyre, &corner, &pose), None);
}

#[test]
fn thicknesses_that_are_none_are_refused() {
    for bad in [
        Thicknesses {
            tie_rod: 0.0,
            ..sizes()
        },
        Thicknesses {
            spring: f64::NAN,
            ..sizes()
        },
        Thicknesses {
            tyre_diameter: 250.0,
            ..sizes()
        },
        Thicknesses {
            tyre_width: 600.0,
            ..sizes()
        },
        Thicknesses {
            rim_thickness: -1.0,
            ..sizes()
        },
    ] {
        assert!(Clearances::new(bad, 10.0).is_err(), "{bad:?}");
    }
    assert!(Clearances::new(sizes(), 0.0).is_err());
}

fn anywhere() -> impl Strategy<Value = Point3<f64>> {
    prop::array::uniform3(-300.0..300.0_f64).prop_map(Point3::from)
}

proptest! {
    /// No pair of points on the two bars is nearer than what was found; it is the same seen from the other bar.
    #[test]
    fn nothing_is_nearer_than_the_gap(a in anywhere(), b in anywhere(), c in anywhere(), d in anywhere()) {
        let (first, second) = (Capsule { ends: [a, b], radius: 3.0 }, Capsule { ends: [c, d], radius: 4.0 });
        let gap = first.to_capsule(&second);
        prop_assert!((gap.distance - second.to_capsule(&first).distance).abs() < 1e-9);
        for i in 0..=20 {
            for j in 0..=20 {
                let (p, q) = (a + (b - a) * f64::from(i) / 20.0, c + (d - c) * f64::from(j) / 20.0);
                prop_assert!((p - q).norm() - 7.0 > gap.distance - 1e-9);
            }
        }
    }

    /// The same for a ring, within the search's thousandth.
    #[test]
    fn nothing_is_nearer_than_the_ring(a in anywhere(), b in anywhere(), axis in anywhere(), r in 20.0..200.0_f64, w in 0.0..100.0_f64) {
        prop_assume!(axis.coords.norm() > 1.0);
        let ring = Ring { centre: Point3::new(10.0, 20.0, -30.0), axis: axis.coords.normalize(), profile: [[r, -w], [r + w, w]], radius: 5.0 };
        let bar = Capsule { ends: [a, b], radius: 3.0 };
        let gap = bar.to_ring(&ring);
        for i in 0..=200 {
            let point = Capsule { ends: [a + (b - a) * f64::from(i) / 200.0; 2], radius: 3.0 };
            prop_assert!(point.to_ring(&ring).distance > gap.distance - 1.1e-3);
        }
        let reached = (gap.between[0] - gap.between[1]).norm() - 8.0;
        prop_assert!((reached - gap.distance).abs() < 1e-9);
    }
}

/// The tyre's section fills its height and width, whichever is larger, and no more: a thin bar across just outside of it touches nothing.
#[test]
fn the_tyre_is_as_large_as_it_is_said_to_be() {
    let linkage = linkage();
    let pose = linkage.pose(0.0, 0.0).unwrap();
    for (width, rim_diameter) in [(175.0, 254.0), (80.0, 254.0)] {
        let fitted = Thicknesses {
            tyre_width: width,
            rim_diameter,
            ..sizes()
        };
        let tyre = Clearances::new(fitted, 10.0).unwrap().tyre(&pose);
        let point = |distance: f64, across: f64| {
            let p = pose.wheel_centre + pose.spin_axis * across + Vector3::z() * distance;
            Capsule {
                ends: [p; 2],
                radius: 0.0,
            }
            .to_ring(&tyre)
            .distance
        };
        let middle = (272.5 + rim_diameter / 2.0) / 2.0;
        assert_relative_eq!(point(272.5, 0.0), 0.0, epsilon = 1e-9);
        assert_relative_eq!(point(rim_diameter / 2.0, 0.0), 0.0, epsilon = 1e-9);
        assert_relative_eq!(point(middle, width / 2.0), 0.0, epsilon = 1e-9);
        assert_relative_eq!(point(middle, -width / 2.0 - 3.0), 3.0, epsilon = 1e-9);
    }
}

/// 254 mm and 150 mm wide, 4 mm thick, both flanges as far from the wheel's plane.
#[test]
fn the_rim_is_as_large_as_it_is_said_to_be() {
    let pose = linkage().pose(20.0, 10.0).unwrap();
    let rim = Clearances::new(sizes(), 10.0).unwrap().rim(&pose);
    assert_eq!(rim.profile, [[127.0, -75.0], [127.0, 75.0]]);
    assert_eq!(
        (rim.radius, rim.centre, rim.axis),
        (2.0, pose.wheel_centre, pose.spin_axis)
    );
}

#[test]
fn the_nearer_of_two_tubes_counts() {
    let tubes = [0.0, 70.0].map(|height| bar([0.0, 0.0, height], [100.0, 0.0, height], 5.0));
    let other = bar([50.0, -50.0, 100.0], [50.0, 50.0, 100.0], 5.0);
    for pair in [tubes, [tubes[1], tubes[0]]] {
        assert_relative_eq!(nearest(pair, |tube| tube.to_capsule(&other)).distance, 20.0);
    }
}

/// A bar that is 10 mm thicker comes 5 mm nearer to whatever it is near to, and to nothing else.
#[test]
fn a_thicker_bar_comes_nearer_by_half_of_it() {
    let linkage = linkage();
    let pose = linkage.pose(15.0, -10.0).unwrap();
    let gap = |sizes, pair| {
        let clearances = Clearances::new(sizes, 10.0).unwrap();
        clearances
            .gap(pair, linkage.corner(), &pose)
            .unwrap()
            .distance
    };
    type Which = fn(&mut Thicknesses) -> &mut f64;
    let thicker: [(Which, &[Pair]); 4] = [
        (
            |s| &mut s.tie_rod,
            &[
                Pair::TieRodAndArm(ArmName::Upper),
                Pair::TieRodAndArm(ArmName::Lower),
                Pair::TieRodAndTyre,
                Pair::TieRodAndRim,
                Pair::SpringAndTieRod,
            ],
        ),
        (
            |s| &mut s.upper_arm,
            &[
                Pair::TieRodAndArm(ArmName::Upper),
                Pair::ArmAndTyre(ArmName::Upper),
                Pair::ArmAndRim(ArmName::Upper),
                Pair::SpringAndOtherArm,
            ],
        ),
        (
            |s| &mut s.lower_arm,
            &[
                Pair::TieRodAndArm(ArmName::Lower),
                Pair::ArmAndTyre(ArmName::Lower),
                Pair::ArmAndRim(ArmName::Lower),
            ],
        ),
        (
            |s| &mut s.spring,
            &[
                Pair::SpringAndOtherArm,
                Pair::SpringAndTieRod,
                Pair::SpringAndTyre,
            ],
        ),
    ];
    for (which, nearer) in thicker {
        let mut stout = sizes();
        *which(&mut stout) += 10.0;
        for pair in Pair::ALL {
            let by = if nearer.contains(&pair) { 5.0 } else { 0.0 };
            assert_relative_eq!(gap(sizes(), pair) - gap(stout, pair), by, epsilon = 1e-9);
        }
    }
}

#[test]
fn every_pair_has_a_name_of_its_own() {
    let names = Pair::ALL.map(|pair| pair.to_string());
    for (i, name) in names.iter().enumerate() {
        assert!(name.contains(" to "), "{name}");
        assert!(!names.iter().skip(i + 1).any(|other| other == name));
    }
    assert_eq!(names[0], "tie rod to upper arm");
}
