//! A checked corner with everything that does not change from pose to pose.

use crate::{
    Arm, Corner, CornerFault, Point, Vector,
    check::{SAME_PLACE, check_distances, check_numbers, size},
    circle::Swing,
    solve::Known,
};

/// Members whose sine is below this at the design position count as in line.
const IN_LINE: f64 = 1e-4;
/// Height error that rounding may leave, per largest coordinate.
const NOISE: f64 = 1e-12;

/// A corner that has been checked and can be posed. The right side is posed as the mirror of a left one.
#[derive(Clone, Copy, Debug)]
pub struct Linkage {
    corner: Corner,
    pub(crate) lower: Swing,
    pub(crate) upper: Swing,
    pub(crate) upper_side: f64,
    pub(crate) steering_side: f64,
    pub(crate) upright_sq: f64,
    pub(crate) inverse_upright: f64,
    pub(crate) rod_sq: f64,
    pub(crate) outer_height: f64,
    pub(crate) outer_radius: f64,
    pub(crate) outer_radius_sq: f64,
    pub(crate) half_inverse_outer_radius: f64,
    /// Wheel centre from the lower ball joint in the upright's frame (steering axis, steering arm, their normal).
    pub(crate) centre_local: Vector,
    /// Spin axis in the same frame.
    pub(crate) spin_local: Vector,
    /// Unit rack direction; zero where the inner joint is fixed.
    pub(crate) rack_axis: Vector,
    /// Axis against which the tie rod's angle is measured: the rack's, on the side where the tie rod stands at the design position, or y
    /// for a fixed inner joint.
    pub(crate) rod_reference: Vector,
    pub(crate) design_contact_y: f64,
    /// Spring's arm mount as a swing about its arm's axis.
    pub(crate) spring_swing: Option<Swing>,
    /// The design position on the way.
    pub(crate) design: Known,
    /// See [`Linkage::rack_stride`], at the design position.
    pub(crate) design_rack_stride: f64,
    /// Height errors below this, mm, may be rounding.
    pub(crate) noise: f64,
}

impl Linkage {
    /// Checks the corner and prepares it.
    ///
    /// # Errors
    /// A [`CornerFault`] when the points do not make a linkage that moves.
    pub fn new(corner: &Corner) -> Result<Self, CornerFault> {
        check_numbers(corner)?;
        check_distances(corner)?;
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
        let (lower_ball, upper_ball) = (corner.lower_arm.ball_joint, corner.upper_arm.ball_joint);
        let upright = (upper_ball - lower_ball).norm();
        let axis = (upper_ball - lower_ball) / upright;
        if axis.z < 0.05 {
            return Err(CornerFault::NoTravel {
                what: "the upper ball joint must stand well above the lower one: the steering axis lies nearly flat",
            });
        }
        let upper_side = side_of(&upper, lower_ball).ok_or(CornerFault::Locked {
            members: "the upper arm and the upright",
        })?;

        let arm = corner.tie_rod.outer - lower_ball;
        let outer_height = arm.dot(&axis);
        let perpendicular = arm - axis * outer_height;
        let outer_radius = perpendicular.norm();
        if outer_radius < SAME_PLACE {
            return Err(CornerFault::OnAxis {
                joint: "tie_rod.outer",
                axis: "the ball joints",
            });
        }
        let g1 = perpendicular / outer_radius;
        let g2 = axis.cross(&g1);
        let local = |v: Vector| Vector::new(v.dot(&axis), v.dot(&g1), v.dot(&g2));
        let steering_side = steering_side(corner, axis, g1).ok_or(CornerFault::Locked {
            members: "the tie rod and the steering arm",
        })?;
        let rod = corner.tie_rod.outer - corner.tie_rod.inner;
        let rack_axis = match corner.rack_axis {
            Some(v) => v.try_normalize(1e-9).ok_or(CornerFault::NoRackAxis)?,
            None => Vector::zeros(),
        };
        let mut linkage = Self {
            corner: *corner,
            lower,
            upper,
            upper_side,
            steering_side,
            upright_sq: upright * upright,
            inverse_upright: 1.0 / upright,
            rod_sq: rod.norm_squared(),
            outer_height,
            outer_radius,
            outer_radius_sq: outer_radius * outer_radius,
            half_inverse_outer_radius: 0.5 / outer_radius,
            centre_local: local(corner.wheel.centre - lower_ball),
            spin_local: local(corner.wheel.spin_axis()),
            rack_axis,
            rod_reference: if corner.rack_axis.is_some() {
                rack_axis * 1.0_f64.copysign(rack_axis.dot(&rod))
            } else {
                Vector::y()
            },
            design_contact_y: 0.0,
            spring_swing: None,
            design: Known {
                angle: 0.0,
                travel: 0.0,
                rise: 0.0,
            },
            design_rack_stride: 0.0,
            noise: NOISE * size(corner),
        };
        linkage.orient_upwards()?;
        linkage.spring_swing = linkage.spring_mount_swing()?;
        linkage.design_contact_y = contact_point(
            corner.wheel.centre,
            corner.wheel.spin_axis(),
            corner.wheel.loaded_radius,
        )
        .y;
        Ok(linkage)
    }

    /// The corner this was made from.
    #[must_use]
    pub fn corner(&self) -> &Corner {
        &self.corner
    }

    /// The inner tie-rod joint with the rack moved by `rack` mm along its axis (positive to the vehicle's left); it stays where it is when
    /// there is no rack.
    #[inline]
    #[must_use]
    pub fn inner_joint(&self, rack: f64) -> Point {
        if self.has_rack() {
            self.corner.tie_rod.inner + self.rack_axis * rack
        } else {
            self.corner.tie_rod.inner
        }
    }

    #[inline]
    pub(crate) fn has_rack(&self) -> bool {
        self.corner.rack_axis.is_some()
    }

    /// Turns the lower arm's angle so that it grows as the wheel rises.
    fn orient_upwards(&mut self) -> Result<(), CornerFault> {
        let here = self
            .configuration(0.0, 1.0, self.corner.tie_rod.inner)
            .map_err(|_| CornerFault::Locked {
                members: "the arms and the tie rod",
            })?;
        let rise = here.centre_velocity.z;
        if !(rise.abs() > IN_LINE * self.lower.radius) {
            return Err(CornerFault::NoTravel {
                what: "the arms are at the end of their swing at the design position",
            });
        }
        if rise < 0.0 {
            self.lower = self.lower.reversed();
        }
        self.design.rise = rise.abs();
        self.design_rack_stride = self.rack_stride(&here);
        Ok(())
    }

    fn spring_mount_swing(&self) -> Result<Option<Swing>, CornerFault> {
        let Some(spring) = self.corner.spring else {
            return Ok(None);
        };
        if (spring.arm_mount - spring.chassis_mount).norm() < SAME_PLACE {
            return Err(CornerFault::Coincident {
                first: "spring.chassis_mount",
                second: "spring.arm_mount",
            });
        }
        let arm = match spring.arm {
            crate::ArmName::Lower => &self.lower,
            crate::ArmName::Upper => &self.upper,
        };
        Ok(Some(Swing::new(arm.centre, arm.axis, spring.arm_mount)))
    }
}

/// The lowest point of the loaded tyre's circle.
#[inline]
pub(crate) fn contact_point(centre: Point, spin: Vector, radius: f64) -> Point {
    let flat = (1.0 - spin.z * spin.z).max(1e-12);
    let down = (spin * spin.z - Vector::z()) / flat.sqrt();
    centre + down * radius
}

pub(crate) fn arm_swing(
    arm: &Arm,
    joint: &'static str,
    axis_name: &'static str,
) -> Result<Swing, CornerFault> {
    let along = arm.front_pivot - arm.rear_pivot;
    let swing = Swing::new(arm.front_pivot, along / along.norm(), arm.ball_joint);
    if swing.radius < SAME_PLACE {
        return Err(CornerFault::OnAxis {
            joint,
            axis: axis_name,
        });
    }
    Ok(swing)
}

/// The side on which the upper ball joint stands of the two places that the upright allows.
pub(crate) fn side_of(upper: &Swing, lower_ball: Point) -> Option<f64> {
    let d = lower_ball - upper.centre;
    let (a, b) = (upper.start.dot(&d), upper.quarter.dot(&d));
    (b.abs() > IN_LINE * a.hypot(b)).then(|| -b.signum())
}

/// The side of the line from steering axis to inner joint on which the steering arm stands.
fn steering_side(corner: &Corner, axis: Vector, g1: Vector) -> Option<f64> {
    let to_inner = corner.tie_rod.inner - corner.lower_arm.ball_joint;
    let across = to_inner - axis * to_inner.dot(&axis);
    let sine = axis.cross(&across).dot(&g1) / across.norm().max(f64::MIN_POSITIVE);
    (sine.abs() > IN_LINE).then(|| sine.signum())
}
