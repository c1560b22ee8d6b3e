//! All joints at one lower-arm angle and inner-joint position, in closed form, with their velocities.

use crate::{Linkage, Point, Vector, circle::IN_LINE_SQ, fault::Member};

/// The linkage at one lower-arm angle. Velocities are per radian of lower-arm angle, with the inner tie-rod joint held.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Configuration {
    pub lower_ball: Point,
    pub upper_ball: Point,
    pub upper_sin: f64,
    pub upper_cos: f64,
    pub outer: Point,
    pub inner: Point,
    pub steering_axis: Vector,
    /// Unit, square to the steering axis, towards the outer tie-rod joint.
    pub arm_direction: Vector,
    /// `steering_axis x arm_direction`.
    pub arm_normal: Vector,
    pub centre: Point,
    pub lower_ball_velocity: Vector,
    pub upper_ball_velocity: Vector,
    pub angular_velocity: Vector,
    pub centre_velocity: Vector,
    /// Square of the sine between upper arm and upright, seen along the arm's pivot axis.
    pub upper_margin_sq: f64,
    /// Square of the sine between tie rod and steering arm, seen along the steering axis.
    pub steering_margin_sq: f64,
}

impl Linkage {
    /// The joints at lower-arm angle `sin`, `cos` with the inner joint at `inner`; the member that doesn't reach otherwise.
    #[inline]
    pub(crate) fn configuration(
        &self,
        sin: f64,
        cos: f64,
        inner: Point,
    ) -> Result<Configuration, Member> {
        let lower_ball = self.lower.at(sin, cos);
        let upper = self
            .upper
            .meet(lower_ball, self.upright_sq, self.upper_side)
            .ok_or(Member::UpperArm)?;
        let upper_ball = self.upper.at(upper.sin, upper.cos);
        let axis = (upper_ball - lower_ball) * self.inverse_upright;

        // The outer joint turns about the steering axis at a fixed height and radius on it; the tie rod's length picks the angle.
        let to_inner = inner - lower_ball;
        let along = to_inner.dot(&axis);
        let across = to_inner - axis * along;
        let h_sq = across.norm_squared();
        if !(h_sq > f64::MIN_POSITIVE) {
            return Err(Member::TieRod);
        }
        let inverse_h_sq = 1.0 / h_sq;
        let height = self.outer_height - along;
        // The inner joint's distance h from the steering axis times the cosine and sine between it and the steering arm.
        let h_cos = (height * height + self.outer_radius_sq + h_sq - self.rod_sq)
            * self.half_inverse_outer_radius;
        let h_sin_sq = h_sq - h_cos * h_cos;
        if !(h_sin_sq > IN_LINE_SQ * h_sq) {
            return Err(Member::TieRod);
        }
        let h_sin = self.steering_side * h_sin_sq.sqrt();
        let beside = axis.cross(&to_inner);
        let g1 = (across * h_cos + beside * h_sin) * inverse_h_sq;
        let g2 = (beside * h_cos - across * h_sin) * inverse_h_sq;
        let arm = axis * self.outer_height + g1 * self.outer_radius;
        let to_centre =
            axis * self.centre_local.x + g1 * self.centre_local.y + g2 * self.centre_local.z;

        // Velocities: the ball joints from their arms, the turn about the steering axis from the rod's fixed length. Of the divisors, the upright
        // times the upper joint's tangent is upper.sine, the rod times g2 is h_sin.
        let lower_v = self.lower.tangent(sin, cos);
        let upper_t = self.upper.tangent(upper.sin, upper.cos);
        let upper_v = upper_t * ((upper_ball - lower_ball).dot(&lower_v) / upper.sine);
        let swing = axis.cross(&(upper_v - lower_v)) * self.inverse_upright;
        let rod = arm - to_inner;
        let turn = -rod.dot(&(lower_v + swing.cross(&arm))) / (h_sin * self.outer_radius);
        let omega = swing + axis * turn;
        Ok(Configuration {
            lower_ball,
            upper_ball,
            upper_sin: upper.sin,
            upper_cos: upper.cos,
            outer: lower_ball + arm,
            inner,
            steering_axis: axis,
            arm_direction: g1,
            arm_normal: g2,
            centre: lower_ball + to_centre,
            lower_ball_velocity: lower_v,
            upper_ball_velocity: upper_v,
            angular_velocity: omega,
            centre_velocity: lower_v + omega.cross(&to_centre),
            upper_margin_sq: upper.margin_sq,
            steering_margin_sq: h_sin_sq * inverse_h_sq,
        })
    }
}

impl Configuration {
    /// The member that is nearest to its dead point, where the wheel falls as the arm rises.
    pub(crate) fn who_turned_back(&self) -> Member {
        let slope = self.lower_ball_velocity.z / self.lower_ball_velocity.norm();
        let (upper, steering) = (self.upper_margin_sq, self.steering_margin_sq);
        if slope * slope < upper.min(steering) {
            Member::LowerArm
        } else if upper < steering {
            Member::UpperArm
        } else {
            Member::TieRod
        }
    }
}

#[cfg(test)]
#[allow(clippy::panic, reason = "a test stops where it fails")]
mod tests {
    use super::Configuration;
    use crate::{
        Point, Vector,
        fault::Member,
        square::{linkage, square},
    };

    #[test]
    fn who_is_nearest_to_its_dead_point_turned_back() {
        let corner = square();
        let Ok(design) = linkage(&corner).configuration(0.0, 1.0, corner.tie_rod.inner) else {
            panic!("the design position");
        };
        // The sine of the lower ball joint's way against level, and the squares of the other two members' sines.
        for (slope, upper, steering, member) in [
            (0.1, 0.02, 0.03, Member::LowerArm),
            (-0.1, 0.03, 0.02, Member::LowerArm),
            (0.2, 0.03, 0.05, Member::UpperArm),
            (0.2, 0.03, 0.02, Member::TieRod),
            (0.2, 0.05, 0.03, Member::TieRod),
        ] {
            let at = Configuration {
                lower_ball_velocity: Vector::new(0.0, f64::sqrt(1.0 - slope * slope), slope)
                    * 360.0,
                upper_margin_sq: upper,
                steering_margin_sq: steering,
                ..design
            };
            assert_eq!(at.who_turned_back(), member, "{slope} {upper} {steering}");
        }
    }

    /// A steering arm of 100 mm and a rod of 400 reach an inner joint 500 mm from the steering axis less `short`, at a sine of
    /// `sqrt(0.016 short)` between arm and that joint.
    #[test]
    fn a_rod_in_line_within_a_hundred_thousandth_does_not_count_as_reaching() {
        let linkage = linkage(&square());
        let margin_sq = |short: f64| {
            let inner = Point::new(0.0, 560.0 - 500.0 + short, 240.0);
            linkage
                .configuration(0.0, 1.0, inner)
                .map(|c| c.steering_margin_sq)
        };
        assert_eq!(margin_sq(3e-9), Err(Member::TieRod));
        let found = margin_sq(12e-9);
        assert!(
            found.is_ok_and(|m| (m / (0.016 * 12e-9) - 1.0).abs() < 1e-3),
            "{found:?}"
        );
    }
}
