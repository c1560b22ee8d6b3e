//! The solution itself.

use nalgebra::{Point3, Unit, Vector3};
use trammel_geometry::{ArmName, Linkage, Pose};

use super::StaticsError;
use super::forces::{ArmForces, CornerForces};
use super::joints::{ArmJoints, Joints, SpringMounts};
use crate::force::{TieRod, UprightLoad};
use crate::number::{direction, finite_point};

/// Smallest sine that is divided by. It only guards the division; a design rule it is not.
const LEAST_SINE: f64 = 1e-9;

/// An arm's hinge.
#[derive(Clone, Copy, Debug, PartialEq)]
struct Hinge {
    rear: Point3<f64>,
    /// From the rearward to the forward pivot.
    axis: Unit<Vector3<f64>>,
    inverse_length: f64,
    ball: Point3<f64>,
    /// Path of the ball joint per radian of swing.
    ball_path: Vector3<f64>,
}

/// The spring on its arm.
#[derive(Clone, Copy, Debug, PartialEq)]
struct Strut {
    arm_mount: Point3<f64>,
    /// From chassis to arm: a compressed spring pushes the arm this way.
    outward: Unit<Vector3<f64>>,
    /// Moment about the arm's hinge per newton of compression, mm.
    lever: f64,
}

/// A corner at a pose, ready to be loaded: many load cases can be put on it one after another. Allocates nothing.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Equilibrium {
    rod: TieRod,
    outer: Point3<f64>,
    rack_axis: Option<Unit<Vector3<f64>>>,
    sprung_name: ArmName,
    sprung: Hinge,
    plain: Hinge,
    /// From the sprung arm's ball joint to the other.
    steering_axis: Unit<Vector3<f64>>,
    inverse_upright: f64,
    /// Rise of the plain arm's ball path along the steering axis.
    plain_along: f64,
    strut: Strut,
}

impl Hinge {
    fn new(arm: &ArmJoints, name: ArmName) -> Result<Self, StaticsError> {
        let (what_axis, what_ball) = match name {
            ArmName::Upper => (
                "the upper arm's pivot axis, rear to front,",
                "the upper ball joint",
            ),
            ArmName::Lower => (
                "the lower arm's pivot axis, rear to front,",
                "the lower ball joint",
            ),
        };
        let between = arm.front_pivot - arm.rear_pivot;
        let axis = direction(what_axis, between)?;
        let ball = finite_point(what_ball, arm.ball_joint)?;
        Ok(Self {
            rear: arm.rear_pivot,
            axis,
            inverse_length: 1.0 / between.norm(),
            ball,
            ball_path: axis.cross(&(ball - arm.rear_pivot)),
        })
    }

    /// Forces of the chassis on the arm, front and rear, that hold these forces on it: each a force with the point where it acts. What is
    /// left of their moment about the hinge is nil by the choice of the spring's force.
    fn reactions(&self, on_arm: [(Point3<f64>, Vector3<f64>); 2]) -> [Vector3<f64>; 3] {
        let [(a, first), (b, second)] = on_arm;
        let total = first + second;
        let moment = (a - self.rear).cross(&first) + (b - self.rear).cross(&second);
        let axis = self.axis.into_inner();
        let axial_total = axis * -total.dot(&axis);
        let front = axis.cross(&moment) * self.inverse_length + axial_total * 0.5;
        [front, -total - front, axial_total]
    }
}

impl Strut {
    fn new(spring: &SpringMounts, sprung: &Hinge) -> Result<Self, StaticsError> {
        let outward = direction(
            "the spring, chassis to arm mount,",
            spring.arm_mount - spring.chassis_mount,
        )?;
        let from_pivot = spring.arm_mount - sprung.rear;
        let lever = sprung.axis.cross(&from_pivot).dot(&outward);
        let sine = lever.abs() / from_pivot.norm();
        if sine.is_nan() || sine <= LEAST_SINE {
            let arm = spring.arm;
            return Err(StaticsError::SpringInLine { arm, sine });
        }
        Ok(Self {
            arm_mount: spring.arm_mount,
            outward,
            lever,
        })
    }
}

impl Equilibrium {
    /// The joints of a linkage at one of its poses, ready to be loaded.
    ///
    /// # Errors
    /// As [`new`](Self::new).
    #[inline]
    pub fn at(linkage: &Linkage, pose: &Pose) -> Result<Self, StaticsError> {
        Self::new(&Joints::at(linkage, pose))
    }

    /// These joints, ready to be loaded.
    ///
    /// # Errors
    /// A coordinate that is not finite, joints in one place, no spring, or members that stand in line so that a force has no bound.
    pub fn new(joints: &Joints) -> Result<Self, StaticsError> {
        let spring = joints.spring.ok_or(StaticsError::NoSpring)?;
        let rod = TieRod::new(
            joints.lower.ball_joint,
            joints.upper.ball_joint,
            joints.tie_rod_inner,
            joints.tie_rod_outer,
        )?;
        let sprung_name = spring.arm;
        let plain_name = other(sprung_name);
        let sprung = Hinge::new(joints.arm(sprung_name), sprung_name)?;
        let plain = Hinge::new(joints.arm(plain_name), plain_name)?;
        let upright = plain.ball - sprung.ball;
        let steering_axis = direction("the steering axis", upright)?;
        let plain_along = plain.ball_path.dot(&steering_axis);
        let sine = plain_along.abs() / plain.ball_path.norm();
        if sine.is_nan() || sine <= LEAST_SINE {
            let arm = plain_name;
            return Err(StaticsError::ArmInLine { arm, sine });
        }
        let rack_axis = joints
            .rack_axis
            .map(|axis| direction("the rack axis", axis))
            .transpose()?;
        Ok(Self {
            rod,
            outer: joints.tie_rod_outer,
            rack_axis,
            sprung_name,
            sprung,
            plain,
            steering_axis,
            inverse_upright: 1.0 / upright.norm(),
            plain_along,
            strut: Strut::new(&spring, &sprung)?,
        })
    }

    /// The tie rod at this pose.
    #[must_use]
    pub fn tie_rod(&self) -> &TieRod {
        &self.rod
    }

    /// The arm that carries the spring.
    #[must_use]
    pub fn sprung_arm(&self) -> ArmName {
        self.sprung_name
    }

    /// Every force under this load on the upright.
    ///
    /// # Errors
    /// A force that overflows.
    pub fn under(&self, load: &UprightLoad) -> Result<CornerForces, StaticsError> {
        let tension = self.rod.tension_under(load);
        let on_outer = self.rod.force_on_outer_joint(tension);
        // Moment about the sprung ball joint of everything but the other ball joint; it has no part along the steering axis.
        let moment =
            load.moment_about(self.sprung.ball) + (self.outer - self.sprung.ball).cross(&on_outer);
        let axis = self.steering_axis.into_inner();
        let across = axis.cross(&moment) * self.inverse_upright;
        let along = -across.dot(&self.plain.ball_path) / self.plain_along;
        let plain_ball = across + axis * along;
        let sprung_ball = -load.total_force() - on_outer - plain_ball;
        let spring_force = sprung_ball.dot(&self.sprung.ball_path) / self.strut.lever;
        let spring_on_arm = self.strut.outward.into_inner() * spring_force;

        let plain = arm_forces(&self.plain, plain_ball, (self.plain.ball, Vector3::zeros()));
        let sprung = arm_forces(
            &self.sprung,
            sprung_ball,
            (self.strut.arm_mount, spring_on_arm),
        );
        let (upper, lower) = match self.sprung_name {
            ArmName::Upper => (sprung, plain),
            ArmName::Lower => (plain, sprung),
        };
        let force_on_inner_joint = self.rod.force_on_inner_joint(tension);
        let forces = CornerForces {
            tie_rod_tension: tension,
            force_on_inner_joint,
            rack_force: self.rack_axis.map(|axis| force_on_inner_joint.dot(&axis)),
            spring_force,
            spring_on_chassis: -spring_on_arm,
            upper,
            lower,
        };
        Ok(forces.finite()?)
    }
}

fn arm_forces(
    hinge: &Hinge,
    ball_on_upright: Vector3<f64>,
    other: (Point3<f64>, Vector3<f64>),
) -> ArmForces {
    let [front_pivot, rear_pivot, axial_total] =
        hinge.reactions([(hinge.ball, -ball_on_upright), other]);
    ArmForces {
        ball_joint_on_upright: ball_on_upright,
        front_pivot,
        rear_pivot,
        axial_total,
    }
}

fn other(arm: ArmName) -> ArmName {
    match arm {
        ArmName::Upper => ArmName::Lower,
        ArmName::Lower => ArmName::Upper,
    }
}
