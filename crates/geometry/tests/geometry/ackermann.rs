//! Ackermann percentage and turning circle against published cases.

use trammel_geometry::{
    Axle, Corner, Linkage, Point, TieRod, Vector, Wheel, ackermann_percentage, mirror_point,
    turning_circle_diameter, turns_lock_to_lock,
};

use crate::corners::{arm, kart, linkage, near};

/// Kirpal Singh, Automobile Engineering vol. 1, worked example (source from memory, figures recomputed): wheelbase 2.743 m, pivots 1.065 m, track 1.217 m,
/// inner wheel 40 degrees: outer 32.32995 degrees, outer front wheel on a circle of radius L / sin + (track - pivots) / 2 = 5.20508 m.
#[test]
fn singh_example() {
    let (inner, outer) = (40_f64.to_radians(), 32.32995_f64.to_radians());
    let p = ackermann_percentage(inner, outer, 2743.0, 1065.0).unwrap();
    near(p, 100.0, 1e-4);
    let to_the_right = ackermann_percentage(-outer, -inner, 2743.0, 1065.0).unwrap();
    near(to_the_right, p, 1e-12);
    // The contact point swings forward with the outer wheel.
    let ahead = 0.5 * (1217.0 - 1065.0) * outer.sin();
    let circle = turning_circle_diameter(outer, 2743.0, ahead).unwrap();
    near(circle, 2.0 * 5205.08, 0.02);
}

/// cot(outer) - cot(inner) = pivots / wheelbase, for pivots 1.25 and wheelbase 2.8 (computed from the formula).
#[test]
fn pure_condition() {
    let rows = [
        (10.0, 9.283458),
        (20.0, 17.385143),
        (30.0, 24.656817),
        (40.0, 31.401257),
    ];
    for (inner, outer) in rows {
        let (inner, outer) = (f64::to_radians(inner), f64::to_radians(outer));
        let p = ackermann_percentage(inner, outer, 2800.0, 1250.0).unwrap();
        near(p, 100.0, 1e-4);
    }
}

#[test]
fn equal_angles_are_nothing_and_reversed_ones_less() {
    let (small, large) = (0.2, 0.3);
    near(
        ackermann_percentage(0.3, 0.3, 1500.0, 1000.0).unwrap(),
        0.0,
        1e-12,
    );
    assert!(ackermann_percentage(small, large, 1500.0, 1000.0).unwrap() < 0.0);
    assert!(ackermann_percentage(large, small, 1500.0, 1000.0).unwrap() > 0.0);
}

#[test]
fn no_figure_where_there_is_none() {
    assert_eq!(ackermann_percentage(0.0, 0.0, 1500.0, 1000.0), None);
    assert_eq!(ackermann_percentage(0.1, -0.05, 1500.0, 1000.0), None);
    assert_eq!(ackermann_percentage(0.1, 0.1, 1500.0, 0.0), None);
    for nearly_straight in [1e-5, -0.03] {
        assert_eq!(
            ackermann_percentage(nearly_straight, 0.1, 1500.0, 1000.0),
            None
        );
        assert_eq!(
            ackermann_percentage(0.1, nearly_straight, 1500.0, 1000.0),
            None
        );
        assert_eq!(
            ackermann_percentage(-0.1, -nearly_straight, 1500.0, 1000.0),
            None
        );
    }
    for bad in [f64::NAN, f64::INFINITY] {
        assert_eq!(ackermann_percentage(bad, 0.1, 1500.0, 1000.0), None);
        assert_eq!(ackermann_percentage(0.1, 0.1, bad, 1000.0), None);
        assert_eq!(turning_circle_diameter(bad, 1500.0, 0.0), None);
        assert_eq!(turning_circle_diameter(0.3, bad, 0.0), None);
        assert_eq!(turns_lock_to_lock(bad, 40.0), None);
    }
    assert_eq!(turning_circle_diameter(0.0, 1500.0, 0.0), None);
    assert_eq!(turns_lock_to_lock(50.0, 0.0), None);
}

#[test]
fn turns_of_the_steering_wheel() {
    assert_eq!(turns_lock_to_lock(60.0, 40.0), Some(3.0));
}

/// One side of a planar steering trapezoid with upright steering axes: pivots 1250 apart, steering arms 150 rearward and drawn in by 25, one rod of 1200
/// between their ends. The other arm's end takes the rack end's place; the rack's axis is the chord that it moves along when it turns by `inner`.
fn trapezoid(inner: f64) -> (Linkage, f64) {
    let arm_angle = (25.0_f64 / 150.0).asin();
    let end = |steer: f64| {
        // The right arm's end, for a right wheel turned to the right by `steer`.
        let heading = std::f64::consts::PI - arm_angle - steer;
        let (x, y) = (150.0 * heading.cos(), 150.0 * heading.sin());
        Point::new(x, y - 625.0, 200.0)
    };
    let (rest, moved) = (end(0.0), end(inner));
    let corner = Corner {
        upper_arm: arm(
            [100.0, 300.0, 400.0],
            [-100.0, 300.0, 400.0],
            [0.0, 625.0, 400.0],
        ),
        lower_arm: arm(
            [100.0, 300.0, 200.0],
            [-100.0, 300.0, 200.0],
            [0.0, 625.0, 200.0],
        ),
        tie_rod: TieRod {
            inner: rest,
            outer: Point::new(rest.x, 600.0, 200.0),
        },
        wheel: Wheel {
            centre: Point::new(0.0, 625.0, 300.0),
            loaded_radius: 300.0,
            toe: 0.0,
            camber: 0.0,
        },
        spring: None,
        rack_axis: Some(moved - rest),
    };
    (linkage(&corner), (moved - rest).norm())
}

/// Data as set in a steering exercise (gyansagar.co.in, MEG-10); results computed by one method.
#[test]
fn steering_trapezoid() {
    let rows = [
        (10.0, 9.697838),
        (20.0, 18.780865),
        (30.0, 27.167219),
        (40.0, 34.681055),
    ];
    for (inner, outer) in rows {
        let (l, rack) = trapezoid(f64::to_radians(inner));
        let m = l.measures(&l.pose(0.0, rack).unwrap());
        near(-m.steer.to_degrees(), outer, 6e-7);
    }
}

#[test]
fn axle_measures_its_own_steering() {
    let left = linkage(&kart());
    let axle = Axle {
        left,
        right_mirrored: linkage(&kart().mirrored().mirrored()),
    };
    // A right side given as a left corner needs the rack mirrored: seen in the mirror it moves the other way.
    let mut right = kart();
    right.rack_axis = Some(-Vector::y());
    let axle = Axle {
        right_mirrored: linkage(&right),
        ..axle
    };
    let to_right = axle.heave(0.0, 40.0).unwrap();
    let to_left = axle.heave(0.0, -40.0).unwrap();
    assert!(to_right.left_measures.steer < -0.1 && to_right.right_measures.steer < -0.1);
    near(
        to_right.ackermann(1700.0).unwrap(),
        to_left.ackermann(1700.0).unwrap(),
        1e-9,
    );
    // Wheels whose axes meet the ground twice as far apart need half the difference of cotangents.
    let apart = to_right.left_measures.axis_at_ground
        - mirror_point(to_right.right_measures.axis_at_ground);
    let cot = |steer: f64| 1.0 / steer.abs().tan();
    let difference = cot(to_right.left_measures.steer) - cot(to_right.right_measures.steer);
    near(
        to_right.ackermann(1700.0).unwrap() / 100.0,
        difference * 1700.0 / apart.y,
        1e-9,
    );
    // Turning right the left wheel is the outer one: its radius to the centre on the rear axle's line reaches as far back as the rear axle lies.
    let radius = to_right.turning_circle(1700.0).unwrap() / 2.0;
    let (contact, steer) = (to_right.left.contact, to_right.left_measures.steer);
    near(contact.x - radius * steer.sin().abs(), -1700.0, 1e-9);
    near(
        to_right.turning_circle(1700.0).unwrap(),
        to_left.turning_circle(1700.0).unwrap(),
        1e-9,
    );
    near(
        to_right.left_measures.steer,
        -to_left.right_measures.steer,
        1e-12,
    );
}
