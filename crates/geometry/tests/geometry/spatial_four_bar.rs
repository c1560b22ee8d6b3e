//! A crank and a rocker on crossed axes joined by a coupler with ball joints: the arms and upright of a corner.
//!
//! E. J. Haug, Computer Aided Kinematics and Dynamics of Mechanical Systems, 1989, spatial four-bar (data from course material): crank 2 about the x axis
//! through the origin, rocker 7.4 about the y axis through (-4, -8.5, 0), coupler 12.2. B = (0, 2 sin t, 2 cos t), C = (-4 + 7.4 cos p, -8.5, 7.4 sin p).
//! The rocker angles were computed from the closure A cos p + B sin p = -K, one method; no printed table was seen.

use trammel_geometry::{Corner, Linkage, Point, TieRod, Vector, Wheel};

use crate::corners::{arm, at_arm_angle, linkage, near};

const SCALE: f64 = 10.0;

/// Crank angle and both rocker angles, deg.
const ROWS: [[f64; 3]; 10] = [
    [30.0, 99.812693, 307.013756],
    [60.0, 77.129495, 310.942992],
    [90.0, 57.083777, 302.916223],
    [120.0, 49.057008, 282.870505],
    [150.0, 52.986244, 260.187307],
    [210.0, 83.557619, 229.615932],
    [240.0, 106.795465, 225.132048],
    [270.0, 127.245861, 232.754139],
    [300.0, 134.867952, 253.204535],
    [330.0, 130.384068, 276.442381],
];

/// The rocker angle near `guess` in closed form: |BC|^2 = 12.2^2.
fn rocker(t: f64, guess: f64) -> f64 {
    let (by, bz) = (2.0 * t.sin(), 2.0 * t.cos());
    let k = 16.0 + 7.4_f64.powi(2) + (8.5 + by).powi(2) + bz * bz - 12.2_f64.powi(2);
    let (a, b) = (-2.0 * 4.0 * 7.4, -2.0 * 7.4 * bz);
    let middle = (-b).atan2(-a);
    let off = (k / a.hypot(b)).acos();
    let full = std::f64::consts::TAU;
    [middle + off, middle - off]
        .map(|p| p + full * ((guess - p) / full).round())
        .into_iter()
        .min_by(|p, q| (p - guess).abs().total_cmp(&(q - guess).abs()))
        .unwrap()
}

/// The corner at crank angle `t`. `up` is -1 to turn the mechanism over about the x axis, so that the rocker's end is above. The wheel
/// centre is at the lower ball joint, so the tie rod has no say in its height; its outer joint stands as far from there as its inner one.
fn corner(t: f64, p: f64, up: f64) -> Corner {
    let place = |x: f64, y: f64, z: f64| Point::new(x, y * up, z * up) * SCALE;
    let b = place(0.0, 2.0 * t.sin(), 2.0 * t.cos());
    let c = place(-4.0 + 7.4 * p.cos(), -8.5, 7.4 * p.sin());
    let axis = (c - b).normalize();
    let aside = Vector::new(1.0, -up, 0.0).normalize();
    let inner = Point::origin() + aside * 20.0 * SCALE;
    let outer = b + axis.cross(&aside).normalize() * 20.0 * SCALE;
    let raw = |p: Point| [p.x, p.y, p.z];
    Corner {
        lower_arm: arm([10.0, 0.0, 0.0], [-10.0, 0.0, 0.0], raw(b)),
        upper_arm: arm(
            raw(place(-4.0, -8.0, 0.0)),
            raw(place(-4.0, -9.0, 0.0)),
            raw(c),
        ),
        tie_rod: TieRod { inner, outer },
        wheel: Wheel {
            centre: b,
            loaded_radius: 100.0,
            toe: 0.0,
            camber: 0.0,
        },
        spring: None,
        rack_axis: None,
    }
}

fn rocker_found(l: &Linkage, crank_turn: f64, up: f64) -> f64 {
    let pose = at_arm_angle(l, crank_turn, 0.0);
    let v = pose.upper_ball_joint - l.corner().upper_arm.front_pivot;
    (v.z * up).atan2(v.x).to_degrees().rem_euclid(360.0)
}

#[test]
fn rocker_angles_over_half_turns_of_the_crank() {
    for (rows, column, up) in [
        (0..5, 1, 1.0),
        (0..5, 2, -1.0),
        (5..10, 1, 1.0),
        (5..10, 2, -1.0),
    ] {
        let design = ROWS[rows.start + 2];
        let t = design[0].to_radians();
        let l = linkage(&corner(t, rocker(t, design[column].to_radians()), up));
        // The crank's angle t grows from z to y; the arm's grows as the wheel rises.
        let sense = -(up * t.sin()).signum();
        for row in &ROWS[rows] {
            let turn = (row[0].to_radians() - t) * sense;
            near(rocker_found(&l, turn, up), row[column], 6e-7);
        }
    }
}
