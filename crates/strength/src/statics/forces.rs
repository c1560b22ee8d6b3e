//! The forces of a corner, as they come out.

use nalgebra::Vector3;
use trammel_geometry::{ArmName, mirror_vector};

use crate::number::{BadNumber, finite};

/// The forces on one arm, N.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ArmForces {
    /// Arm on upright, at the ball joint.
    pub ball_joint_on_upright: Vector3<f64>,
    /// Chassis on arm at the forward pivot, with half of the force along the pivots' axis.
    pub front_pivot: Vector3<f64>,
    /// Chassis on arm at the rearward pivot, with the other half.
    pub rear_pivot: Vector3<f64>,
    /// Chassis on arm along the pivots' axis, both pivots together.
    pub axial_total: Vector3<f64>,
}

/// Every force of a corner under one load, N. Plain numbers, all finite.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct CornerForces {
    /// In the tie rod; tension positive.
    pub tie_rod_tension: f64,
    /// Tie rod on the rack end (or the chassis), at the inner joint.
    pub force_on_inner_joint: Vector3<f64>,
    /// Tie rod on the rack along its axis, to the vehicle's left positive; `None` for a link to the chassis.
    pub rack_force: Option<f64>,
    /// In the spring unit; compression positive.
    pub spring_force: f64,
    /// Spring unit on the chassis.
    pub spring_on_chassis: Vector3<f64>,
    /// Upper arm.
    pub upper: ArmForces,
    /// Lower arm.
    pub lower: ArmForces,
}

impl ArmForces {
    fn map(self, vector: impl Fn(Vector3<f64>) -> Vector3<f64>) -> Self {
        Self {
            ball_joint_on_upright: vector(self.ball_joint_on_upright),
            front_pivot: vector(self.front_pivot),
            rear_pivot: vector(self.rear_pivot),
            axial_total: vector(self.axial_total),
        }
    }

    fn sum(&self) -> f64 {
        self.ball_joint_on_upright.abs().sum()
            + self.front_pivot.abs().sum()
            + self.rear_pivot.abs().sum()
    }
}

impl CornerForces {
    /// The arm of that name.
    #[must_use]
    pub fn arm(&self, name: ArmName) -> &ArmForces {
        match name {
            ArmName::Upper => &self.upper,
            ArmName::Lower => &self.lower,
        }
    }

    /// The forces of a right corner that was worked out as its mirror image, in vehicle axes. Signed forces of members stay; the
    /// rack's stays too, since a mirrored rack axis goes with a mirrored force.
    #[must_use]
    pub fn mirrored(&self) -> Self {
        Self {
            force_on_inner_joint: mirror_vector(self.force_on_inner_joint),
            spring_on_chassis: mirror_vector(self.spring_on_chassis),
            upper: self.upper.map(mirror_vector),
            lower: self.lower.map(mirror_vector),
            ..*self
        }
    }

    /// The forces, if none of them overflowed.
    pub(super) fn finite(self) -> Result<Self, BadNumber> {
        let sum = self.tie_rod_tension.abs()
            + self.spring_force.abs()
            + self.spring_on_chassis.abs().sum()
            + self.upper.sum()
            + self.lower.sum();
        finite("the sum of the corner's forces", sum)?;
        Ok(self)
    }
}
