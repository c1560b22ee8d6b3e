//! Planar corners are four-bar linkages: published tables of those.

use nalgebra::Vector2;
use trammel_geometry::{Corner, Linkage, Point, TieRod, Vector, Wheel};

use crate::corners::{arm, at_arm_angle, linkage, near};

type Plane = Vector2<f64>;

/// A four-bar in the front view. Lower arm from the origin, upper arm from `ground`.
struct FourBar {
    ground: Plane,
    lower: f64,
    upper: f64,
    upright: f64,
}

fn turned(length: f64, angle: f64) -> Plane {
    Plane::new(length * angle.cos(), length * angle.sin())
}

impl FourBar {
    /// Upper-arm angle by the law of cosines in the triangle of upper pivot and both ball joints; of the two, the one near `near`.
    fn upper_angle(&self, lower_angle: f64, near: f64) -> f64 {
        let d = turned(self.lower, lower_angle) - self.ground;
        let cosine = (d.norm_squared() + self.upper * self.upper - self.upright * self.upright)
            / (2.0 * d.norm() * self.upper);
        let middle = d.y.atan2(d.x);
        let full = std::f64::consts::TAU;
        [middle + cosine.acos(), middle - cosine.acos()]
            .map(|b| b + full * ((near - b) / full).round())
            .into_iter()
            .min_by(|p, q| (p - near).abs().total_cmp(&(q - near).abs()))
            .unwrap()
    }

    /// A corner that moves in the front view only: all pivot axes along x, the tie rod a copy of the lower arm behind it. The wheel centre stands
    /// `wheel` along the upright from the lower ball joint.
    fn corner(&self, lower_angle: f64, upper_angle: f64, wheel: f64) -> Corner {
        let at = |x: f64, p: Plane| [x, p.x, p.y];
        let lower_ball = turned(self.lower, lower_angle);
        let upper_ball = self.ground + turned(self.upper, upper_angle);
        let centre = lower_ball + (upper_ball - lower_ball) * (wheel / self.upright);
        let origin = Plane::zeros();
        Corner {
            upper_arm: arm(
                at(40.0, self.ground),
                at(-40.0, self.ground),
                at(0.0, upper_ball),
            ),
            lower_arm: arm(at(40.0, origin), at(-40.0, origin), at(0.0, lower_ball)),
            tie_rod: TieRod {
                inner: Point::from(at(-50.0, origin)),
                outer: Point::from(at(-50.0, lower_ball)),
            },
            wheel: Wheel {
                centre: Point::from(at(0.0, centre)),
                loaded_radius: 100.0,
                toe: 0.0,
                camber: 0.0,
            },
            spring: None,
            rack_axis: Some(Vector::y()),
        }
    }
}

fn upper_angle_found(l: &Linkage, turn: f64) -> f64 {
    let pose = at_arm_angle(l, turn, 0.0);
    let v = pose.upper_ball_joint - l.corner().upper_arm.front_pivot;
    v.z.atan2(v.y).to_degrees()
}

fn same_direction(found: f64, wanted: f64, within: f64) {
    let off = (found - wanted + 180.0).rem_euclid(360.0) - 180.0;
    near(off, 0.0, within);
}

/// Lower-arm angle and both upper-arm angles, degrees, as printed: a double wishbone, MathGroup archive, 17 February 2006. Fixed
/// pivots (0, 0) and (5, 7), arms 13 and 8, upright 7. The columns are sorted roots: from 60 degrees on they hold each other's branch.
const PRINTED: [[f64; 3]; 19] = [
    [0.0, 0.0, 277.628],
    [5.0, 8.14157, 279.009],
    [10.0, 16.3816, 281.034],
    [15.0, 24.8218, 283.798],
    [20.0, 33.5778, 287.445],
    [25.0, 42.7897, 292.171],
    [30.0, 52.6316, 298.233],
    [35.0, 63.3125, 305.928],
    [40.0, 75.0545, 315.54],
    [45.0, 88.0132, 327.201],
    [50.0, 102.111, 340.683],
    [55.0, 116.839, 355.264],
    [60.0, 9.92425, 131.266],
    [65.0, 23.8027, 144.4],
    [70.0, 36.4951, 155.625],
    [75.0, 47.9915, 164.805],
    [80.0, 58.473, 172.123],
    [85.0, 68.1628, 177.873],
    [90.0, 77.2632, 182.348],
];
/// Half a unit of the last of six digits.
const PRINTED_TO: f64 = 5.1e-4;

fn wishbones() -> FourBar {
    FourBar {
        ground: Plane::new(50.0, 70.0),
        lower: 130.0,
        upper: 80.0,
        upright: 70.0,
    }
}

#[test]
fn printed_table_from_its_first_row() {
    let l = linkage(&wishbones().corner(0.0, 0.0, -80.0));
    for [a, b1, b2] in PRINTED {
        let wanted = if a < 57.0 { b1 } else { b2 };
        same_direction(upper_angle_found(&l, a.to_radians()), wanted, PRINTED_TO);
    }
}

#[test]
fn printed_table_on_the_other_branch() {
    let start = 85_f64.to_radians();
    let four_bar = wishbones();
    let b = four_bar.upper_angle(start, 68_f64.to_radians());
    let l = linkage(&four_bar.corner(start, b, 40.0));
    for [a, b1, b2] in PRINTED {
        let wanted = if a < 57.0 { b2 } else { b1 };
        let found = upper_angle_found(&l, a.to_radians() - start);
        same_direction(found, wanted, PRINTED_TO);
    }
}

/// R. L. Norton, Design of Machinery, example 4-1 (number from memory): ground 100, crank 40, coupler 120, rocker 80, crank at 40 degrees: coupler 20.2979 and
/// rocker 57.3249 degrees (open), -60.9780 and -98.0050 (crossed). By Freudenstein's equation with K1 = 2.5, K2 = 1.25, K3 = 0.5625.
#[test]
fn freudenstein() {
    let crank = 40_f64.to_radians();
    // The plane is turned so that the upright stands up.
    for (turn, coupler, rocker) in [(100.0, 20.2979, 57.3249), (150.0, -60.9780, -98.0050)] {
        let (turn, rocker_near) = (f64::to_radians(turn), f64::to_radians(rocker));
        let f = FourBar {
            ground: turned(100.0, turn),
            lower: 40.0,
            upper: 80.0,
            upright: 120.0,
        };
        // Designed elsewhere and moved to the example's crank angle.
        let start = crank - 0.2;
        let b = f.upper_angle(start + turn, rocker_near + turn);
        let l = linkage(&f.corner(start + turn, b, 0.0));
        let sign = at_arm_angle(&l, 0.01, 0.0).lower_ball_joint - l.corner().lower_arm.ball_joint;
        let across = turned(1.0, start + turn);
        let sense = (across.x * sign.z - across.y * sign.y).signum();
        let pose = at_arm_angle(&l, 0.2 * sense, 0.0);
        let rod = pose.upper_ball_joint - l.corner().upper_arm.front_pivot;
        let k = pose.steering_axis;
        let (th3, th4) = (k.z.atan2(k.y) - turn, rod.z.atan2(rod.y) - turn);
        same_direction(th3.to_degrees(), coupler, 6e-5);
        same_direction(th4.to_degrees(), rocker, 6e-5);
        // Freudenstein's equation itself, with the printed constants.
        let equation = 2.5 * th4.cos() - 1.25 * crank.cos() + 0.5625 - (crank - th4).cos();
        near(equation, 0.0, 1e-12);
    }
}
