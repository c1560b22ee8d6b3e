//! One position of the linkage.

use crate::{Linkage, Point, Vector, linkage::contact_point, solve::Solved};

/// Joints, velocities and margins at one wheel travel and rack position. Plain data; vehicle axes of the left corner, mm.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Pose {
    /// Wheel travel, mm, bump positive.
    pub travel: f64,
    /// Rack travel, mm, to the left positive.
    pub rack: f64,
    /// Lower-arm angle from its design position, rad, growing as the wheel rises.
    pub arm_angle: f64,
    /// Upper ball joint.
    pub upper_ball_joint: Point,
    /// Lower ball joint.
    pub lower_ball_joint: Point,
    /// Tie-rod joint on the upright.
    pub tie_rod_outer: Point,
    /// Tie-rod joint on the rack end or chassis.
    pub tie_rod_inner: Point,
    /// Wheel centre.
    pub wheel_centre: Point,
    /// Outboard unit vector of the spin axis.
    pub spin_axis: Vector,
    /// Unit vector from the lower to the upper ball joint.
    pub steering_axis: Vector,
    /// Lowest point of the loaded tyre.
    pub contact: Point,
    /// Spring mount on its arm.
    pub spring_arm_mount: Option<Point>,
    /// Velocities in wheel travel with the rack held.
    pub rates: Rates,
    /// How far the linkage is from locking.
    pub margins: Margins,
}

/// Velocities per millimetre of wheel travel, the rack held.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Rates {
    /// Lower-arm angle, rad/mm.
    pub arm_angle: f64,
    /// Lower ball joint, mm/mm.
    pub lower_ball_joint: Vector,
    /// Upper ball joint, mm/mm.
    pub upper_ball_joint: Vector,
    /// Angular velocity of the upright, rad/mm.
    pub upright: Vector,
    /// Wheel centre, mm/mm; its z part is 1.
    pub wheel_centre: Vector,
    /// Spring mount on its arm, mm/mm.
    pub spring_arm_mount: Option<Vector>,
}

/// How far members are from standing in line: sines, 0 = locked.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Margins {
    /// Between upper arm and upright, seen along the arm's pivot axis.
    pub upper_arm: f64,
    /// Between tie rod and steering arm, seen along the steering axis. Near zero the steering can go over centre.
    pub steering: f64,
    /// Rise of the wheel centre per distance the lower ball joint travels. Near zero the arms are about to toggle.
    pub lift: f64,
}

impl Margins {
    /// The smallest of the three.
    #[must_use]
    pub fn least(&self) -> f64 {
        self.upper_arm.min(self.steering).min(self.lift)
    }
}

impl Linkage {
    #[inline]
    pub(crate) fn finish(&self, travel: f64, rack: f64, solved: &Solved) -> Pose {
        let c = &solved.configuration;
        let per_travel = 1.0 / c.centre_velocity.z;
        let spin = c.steering_axis * self.spin_local.x
            + c.arm_direction * self.spin_local.y
            + c.arm_normal * self.spin_local.z;
        let corner = self.corner();
        let spring = self
            .spring_swing
            .as_ref()
            .zip(corner.spring)
            .map(|(swing, spring)| {
                let (s, c_, rate) = match spring.arm {
                    crate::ArmName::Lower => (solved.sin, solved.cos, 1.0),
                    crate::ArmName::Upper => {
                        let tangent = self.upper.tangent(c.upper_sin, c.upper_cos);
                        (
                            c.upper_sin,
                            c.upper_cos,
                            c.upper_ball_velocity.dot(&tangent) / tangent.norm_squared(),
                        )
                    }
                };
                (swing.at(s, c_), swing.tangent(s, c_) * (rate * per_travel))
            });
        Pose {
            travel,
            rack,
            arm_angle: solved.known.angle,
            upper_ball_joint: c.upper_ball,
            lower_ball_joint: c.lower_ball,
            tie_rod_outer: c.outer,
            tie_rod_inner: c.inner,
            wheel_centre: c.centre,
            spin_axis: spin,
            steering_axis: c.steering_axis,
            contact: contact_point(c.centre, spin, corner.wheel.loaded_radius),
            spring_arm_mount: spring.map(|(p, _)| p),
            rates: Rates {
                arm_angle: per_travel,
                lower_ball_joint: c.lower_ball_velocity * per_travel,
                upper_ball_joint: c.upper_ball_velocity * per_travel,
                upright: c.angular_velocity * per_travel,
                wheel_centre: c.centre_velocity * per_travel,
                spring_arm_mount: spring.map(|(_, v)| v),
            },
            margins: Margins {
                upper_arm: c.upper_margin_sq.sqrt(),
                steering: c.steering_margin_sq.sqrt(),
                lift: c.centre_velocity.z / self.lower.radius,
            },
        }
    }
}
