//! The upright on its two arms with no tie rod: where it can be, turned about its steering axis at will.
//!
//! What the arms do does not depend on the tie rod. At a held wheel-centre height the upright has one freedom left,
//! its turn about the
//! steering axis, and every tie rod picks its own turn from that one family. A study of many tie rods works the family
//! out once.

use nalgebra::Matrix3;

use crate::{
    Corner, CornerFault, Point, Vector,
    check::{check_arm_distances, check_numbers},
    circle::Swing,
    linkage::{arm_swing, side_of},
};

/// Longest Newton step, rad.
const LONGEST_STEP: f64 = 0.25;
const STEPS: usize = 20;
/// Height error, mm, after which one more step reaches rounding.
const LAST_STEP: f64 = 1e-5;

/// The two arms and the upright of a corner.
#[derive(Clone, Copy, Debug)]
pub struct Arms {
    lower: Swing,
    upper: Swing,
    upper_side: f64,
    upright_sq: f64,
    inverse_upright: f64,
    axis: Vector,
    lower_ball: Point,
    centre: Point,
    spin: Vector,
    toe: f64,
}

/// A motion of the upright: what a rate of something does to it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Twist {
    /// Angular velocity.
    pub angular: Vector,
    /// Velocity of the lower ball joint.
    pub lower_ball_joint: Vector,
}

/// The upright at one wheel travel and one turn about its steering axis.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Stance {
    /// Lower-arm angle from the design position, rad.
    pub arm_angle: f64,
    /// Turn about the steering axis against the design position carried along by the arms the shortest way, rad.
    pub turn: f64,
    /// Wheel travel, mm.
    pub travel: f64,
    /// Lower ball joint, mm.
    pub lower_ball_joint: Point,
    /// Turns a direction of the upright at the design position into the one now.
    pub now_from_design: Matrix3<f64>,
    /// Spin axis, outboard.
    pub spin_axis: Vector,
    /// Toe less static toe, rad, followed through a whole turn.
    pub toe_change: f64,
    /// Rise of the wheel centre per radian of turn with the arms held, mm.
    pub lift_by_turn: f64,
    /// Motion per radian of turn with the wheel centre held at its height.
    pub per_turn: Twist,
    /// Motion per millimetre of travel with the turn held.
    pub per_travel: Twist,
    design_lower_ball: Point,
}

struct AtAngle {
    lower_ball: Point,
    rotation: Matrix3<f64>,
    axis: Vector,
    centre: Point,
    per_angle: Twist,
    rise: f64,
}

impl Twist {
    /// Velocity of the upright's material at `point`, the lower ball joint being at `lower_ball`.
    #[must_use]
    pub fn at(&self, point: Point, lower_ball: Point) -> Vector {
        self.lower_ball_joint + self.angular.cross(&(point - lower_ball))
    }
}

impl Stance {
    /// Where a point of the upright is, given where it is at the design position.
    #[must_use]
    pub fn place(&self, at_design: Point) -> Point {
        self.lower_ball_joint + self.now_from_design * (at_design - self.design_lower_ball)
    }

    /// Toe per unit of a motion.
    #[must_use]
    pub fn toe_rate(&self, motion: &Twist) -> f64 {
        let n = self.spin_axis;
        let rate = motion.angular.cross(&n);
        (rate.x * n.y - rate.y * n.x) / (n.x * n.x + n.y * n.y).max(1e-24)
    }
}

impl Arms {
    /// The arms of a corner. Its tie rod only has to be made of numbers.
    ///
    /// # Errors
    /// A [`CornerFault`] when arms and upright do not make a linkage that moves.
    pub fn new(corner: &Corner) -> Result<Self, CornerFault> {
        check_numbers(corner)?;
        check_arm_distances(corner)?;
        let lower = arm_swing(
            &corner.lower_arm,
            "lower_arm.ball_joint",
            "the lower arm's pivots",
        )?;
        let upper = arm_swing(
            &corner.upper_arm,
            "upper_arm.ball_joint",
            "the upper arm's pivots",
        )?;
        let lower_ball = corner.lower_arm.ball_joint;
        let along = corner.upper_arm.ball_joint - lower_ball;
        let upper_side = side_of(&upper, lower_ball).ok_or(CornerFault::Locked {
            members: "the upper arm and the upright",
        })?;
        let mut arms = Self {
            lower,
            upper,
            upper_side,
            upright_sq: along.norm_squared(),
            inverse_upright: 1.0 / along.norm(),
            axis: along / along.norm(),
            lower_ball,
            centre: corner.wheel.centre,
            spin: corner.wheel.spin_axis(),
            toe: corner.wheel.toe,
        };
        let rise = arms.at_angle(0.0, 0.0).map_or(0.0, |a| a.rise);
        if !(rise.abs() > 1e-4 * arms.lower.radius) {
            return Err(CornerFault::NoTravel {
                what: "the arms are at the end of their swing at the design position",
            });
        }
        if rise < 0.0 {
            arms.lower = arms.lower.reversed();
        }
        Ok(arms)
    }

    /// The upright at a wheel travel (mm) and turn (rad), looked for from a lower-arm angle near it. `None` when the
    /// arms don't reach, or the
    /// wheel does not rise with the arm there.
    #[must_use]
    pub fn stance(&self, travel: f64, turn: f64, near: f64) -> Option<Stance> {
        let mut angle = near;
        let mut last = false;
        for _ in 0..STEPS {
            let here = self.at_angle(angle, turn)?;
            if !(here.rise > 0.0) {
                return None;
            }
            let error = here.centre.z - self.centre.z - travel;
            if last {
                return Some(self.described(angle, turn, travel, &here));
            }
            let step = error / here.rise;
            last = error.abs() < LAST_STEP;
            angle -= step.clamp(-LONGEST_STEP, LONGEST_STEP);
        }
        None
    }

    fn at_angle(&self, angle: f64, turn: f64) -> Option<AtAngle> {
        let (sin, cos) = angle.sin_cos();
        let lower_ball = self.lower.at(sin, cos);
        let upper = self
            .upper
            .meet(lower_ball, self.upright_sq, self.upper_side)?;
        let axis = (self.upper.at(upper.sin, upper.cos) - lower_ball) * self.inverse_upright;
        let lower_v = self.lower.tangent(sin, cos);
        let upper_t = self.upper.tangent(upper.sin, upper.cos);
        let upper_v = upper_t * (axis.dot(&lower_v) / axis.dot(&upper_t));
        let axis_v = (upper_v - lower_v) * self.inverse_upright;

        // The shortest rotation that takes the design steering axis to this one, and how it goes on.
        let once_plus = 1.0 + self.axis.dot(&axis);
        if !(once_plus > 1e-6) {
            return None;
        }
        let w = self.axis.cross(&axis);
        let cross = w.cross_matrix();
        let carried = Matrix3::identity() + cross + cross * cross / once_plus;
        let swing = axis.cross(&axis_v);
        let angular = swing - axis * (self.axis.dot(&swing) / once_plus);

        let (sin_turn, cos_turn) = turn.sin_cos();
        let k = axis.cross_matrix();
        let turned = Matrix3::identity() + k * sin_turn + k * k * (1.0 - cos_turn);
        let rotation = turned * carried;
        let centre = lower_ball + rotation * (self.centre - self.lower_ball);
        let per_angle = Twist {
            angular,
            lower_ball_joint: lower_v,
        };
        Some(AtAngle {
            lower_ball,
            rotation,
            axis,
            centre,
            rise: per_angle.at(centre, lower_ball).z,
            per_angle,
        })
    }

    fn described(&self, angle: f64, turn: f64, travel: f64, here: &AtAngle) -> Stance {
        let per_travel = Twist {
            angular: here.per_angle.angular / here.rise,
            lower_ball_joint: here.per_angle.lower_ball_joint / here.rise,
        };
        let lift = here.axis.cross(&(here.centre - here.lower_ball)).z;
        let spin = here.rotation * self.spin;
        let toe = spin.x.atan2(spin.y) - self.toe;
        // The wheel's heading turns against the steering angle, about as fast; stay on its turn of the circle.
        let whole = std::f64::consts::TAU;
        let toe_change = toe - whole * ((toe + turn) / whole).round();
        Stance {
            arm_angle: angle,
            turn,
            travel,
            lower_ball_joint: here.lower_ball,
            now_from_design: here.rotation,
            spin_axis: spin,
            toe_change,
            lift_by_turn: lift,
            per_turn: Twist {
                angular: here.axis - per_travel.angular * lift,
                lower_ball_joint: -per_travel.lower_ball_joint * lift,
            },
            per_travel,
            design_lower_ball: self.lower_ball,
        }
    }
}
