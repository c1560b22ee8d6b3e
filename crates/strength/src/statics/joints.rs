//! Where the joints of a corner are at a pose.

use nalgebra::{Point3, Vector3};
use trammel_geometry::{Arm, ArmName, Corner, Linkage, Pose};

/// An arm at a pose, mm.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ArmJoints {
    /// Forward chassis pivot.
    pub front_pivot: Point3<f64>,
    /// Rearward chassis pivot.
    pub rear_pivot: Point3<f64>,
    /// Ball joint on the upright.
    pub ball_joint: Point3<f64>,
}

impl ArmJoints {
    /// The arm with its ball joint here.
    fn at(arm: &Arm, ball_joint: Point3<f64>) -> Self {
        Self {
            front_pivot: arm.front_pivot,
            rear_pivot: arm.rear_pivot,
            ball_joint,
        }
    }

    fn map(self, point: impl Fn(Point3<f64>) -> Point3<f64>) -> Self {
        Self {
            front_pivot: point(self.front_pivot),
            rear_pivot: point(self.rear_pivot),
            ball_joint: point(self.ball_joint),
        }
    }
}

/// The spring unit at a pose, mm.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SpringMounts {
    /// The arm that it stands on.
    pub arm: ArmName,
    /// Mount on the chassis.
    pub chassis_mount: Point3<f64>,
    /// Mount on the arm.
    pub arm_mount: Point3<f64>,
}

/// All joints that pass a force, at one pose, mm. Any right-handed frame will do, as long as the loads share it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Joints {
    /// Upper arm.
    pub upper: ArmJoints,
    /// Lower arm.
    pub lower: ArmJoints,
    /// Tie-rod joint on the rack end or chassis.
    pub tie_rod_inner: Point3<f64>,
    /// Tie-rod joint on the upright.
    pub tie_rod_outer: Point3<f64>,
    /// Spring unit.
    pub spring: Option<SpringMounts>,
    /// Direction of the rack, to the vehicle's left, any length; `None` for a link to the chassis.
    pub rack_axis: Option<Vector3<f64>>,
}

impl Joints {
    /// The joints of a linkage at one of its poses.
    #[inline]
    #[must_use]
    pub fn at(linkage: &Linkage, pose: &Pose) -> Self {
        Self::of(linkage.corner(), pose)
    }

    /// The joints of a corner at a pose of its linkage.
    #[inline]
    #[must_use]
    pub fn of(corner: &Corner, pose: &Pose) -> Self {
        let spring = corner
            .spring
            .zip(pose.spring_arm_mount)
            .map(|(spring, arm_mount)| SpringMounts {
                arm: spring.arm,
                chassis_mount: spring.chassis_mount,
                arm_mount,
            });
        Self {
            upper: ArmJoints::at(&corner.upper_arm, pose.upper_ball_joint),
            lower: ArmJoints::at(&corner.lower_arm, pose.lower_ball_joint),
            tie_rod_inner: pose.tie_rod_inner,
            tie_rod_outer: pose.tie_rod_outer,
            spring,
            rack_axis: corner.rack_axis,
        }
    }

    /// The arm of that name.
    #[must_use]
    pub fn arm(&self, name: ArmName) -> &ArmJoints {
        match name {
            ArmName::Upper => &self.upper,
            ArmName::Lower => &self.lower,
        }
    }

    /// The joints with every point and direction mapped.
    #[must_use]
    pub fn map(
        &self,
        point: impl Fn(Point3<f64>) -> Point3<f64>,
        vector: impl Fn(Vector3<f64>) -> Vector3<f64>,
    ) -> Self {
        Self {
            upper: self.upper.map(&point),
            lower: self.lower.map(&point),
            tie_rod_inner: point(self.tie_rod_inner),
            tie_rod_outer: point(self.tie_rod_outer),
            spring: self.spring.map(|spring| SpringMounts {
                arm: spring.arm,
                chassis_mount: point(spring.chassis_mount),
                arm_mount: point(spring.arm_mount),
            }),
            rack_axis: self.rack_axis.map(vector),
        }
    }
}
