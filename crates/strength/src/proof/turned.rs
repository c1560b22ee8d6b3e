//! Where a direction that was given at the design position points at a pose.

use nalgebra::{Point3, Rotation3, Unit, Vector3};
use trammel_geometry::{Arm, ArmName, Linkage, Pose};

/// What a bolt or bracket is fixed to.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Body {
    /// Chassis, rack or rack end: they don't turn.
    Chassis,
    /// The upright.
    Upright,
    /// An arm.
    Arm(ArmName),
}

/// How far the bodies of a corner have turned at a pose.
#[derive(Clone, Copy, Debug)]
pub struct Turned {
    upright: Rotation3<f64>,
    upper: Rotation3<f64>,
    lower: Rotation3<f64>,
}

impl Turned {
    /// At this pose of the linkage.
    #[must_use]
    pub fn at(linkage: &Linkage, pose: &Pose) -> Self {
        let corner = linkage.corner();
        let design = upright_frame(
            corner.lower_arm.ball_joint,
            corner.upper_arm.ball_joint,
            corner.tie_rod.outer,
        );
        let here = upright_frame(
            pose.lower_ball_joint,
            pose.upper_ball_joint,
            pose.tie_rod_outer,
        );
        Self {
            upright: here * design.inverse(),
            upper: arm_turn(&corner.upper_arm, pose.upper_ball_joint),
            lower: arm_turn(&corner.lower_arm, pose.lower_ball_joint),
        }
    }

    /// A direction fixed to that body, given at the design position.
    #[must_use]
    pub fn direction(&self, body: Body, at_design: Unit<Vector3<f64>>) -> Unit<Vector3<f64>> {
        match body {
            Body::Chassis => at_design,
            Body::Upright => self.upright * at_design,
            Body::Arm(ArmName::Upper) => self.upper * at_design,
            Body::Arm(ArmName::Lower) => self.lower * at_design,
        }
    }
}

/// Columns: steering axis, steering arm across it, and their normal. A linkage keeps the three points apart.
fn upright_frame(lower: Point3<f64>, upper: Point3<f64>, outer: Point3<f64>) -> Rotation3<f64> {
    Rotation3::face_towards(&(upper - lower), &(outer - lower))
}

fn arm_turn(arm: &Arm, ball_joint: Point3<f64>) -> Rotation3<f64> {
    let axis = arm.front_pivot - arm.rear_pivot;
    let across = |point: Point3<f64>| (point - arm.rear_pivot).cross(&axis);
    let (before, after) = (across(arm.ball_joint), across(ball_joint));
    let axis = Unit::new_normalize(axis);
    let angle = before.cross(&after).dot(&axis).atan2(before.dot(&after));
    Rotation3::from_axis_angle(&axis, angle)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::loads::tests::linkage;

    /// The directions between joints of a body turn with it.
    #[test]
    fn joints_turn_with_their_bodies() {
        let linkage = linkage();
        let corner = linkage.corner();
        for (travel, rack) in [(0.0, 0.0), (50.0, 20.0), (-40.0, -30.0)] {
            let pose = linkage.pose(travel, rack).unwrap();
            let turned = Turned::at(&linkage, &pose);
            let close = |body, before: Vector3<f64>, after: Vector3<f64>| {
                let found = turned.direction(body, Unit::new_normalize(before));
                assert!(
                    (found.into_inner() - after.normalize()).norm() < 1e-9,
                    "{body:?}"
                );
            };
            close(
                Body::Upright,
                corner.tie_rod.outer - corner.upper_arm.ball_joint,
                pose.tie_rod_outer - pose.upper_ball_joint,
            );
            close(Body::Upright, corner.wheel.spin_axis(), pose.spin_axis);
            for (name, arm, ball) in [
                (ArmName::Upper, corner.upper_arm, pose.upper_ball_joint),
                (ArmName::Lower, corner.lower_arm, pose.lower_ball_joint),
            ] {
                close(
                    Body::Arm(name),
                    arm.ball_joint - arm.front_pivot,
                    ball - arm.front_pivot,
                );
            }
            close(Body::Chassis, Vector3::x(), Vector3::x());
        }
    }
}
