//! A checked corner with everything that does not change from pose to pose.

use crate::{Arm, Corner, CornerFault, Point, Vector, circle::Swing};

/// Two joints closer than this, mm, count as one place.
const SAME_PLACE: f64 = 1e-3;
/// Members whose sine is below this at the design position count as in line.
const IN_LINE: f64 = 1e-4;
/// Coordinates beyond this, mm, are no vehicle's; the bound keeps every square far from overflow.
const FARTHEST: f64 = 1e6;

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
    pub(crate) inverse_outer_radius: f64,
    /// Wheel centre from the lower ball joint in the upright's frame (steering axis, steering arm, their normal).
    pub(crate) centre_local: Vector,
    /// Spin axis in the same frame.
    pub(crate) spin_local: Vector,
    /// Unit rack direction; zero where the inner joint is fixed.
    pub(crate) rack_axis: Vector,
    /// Axis against which the tie rod's angle is measured: the rack's, or y for a fixed inner joint.
    pub(crate) rod_reference: Vector,
    pub(crate) design_contact_y: f64,
    /// Spring's arm mount as a swing about its arm's axis.
    pub(crate) spring_swing: Option<Swing>,
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
            rod_sq: (corner.tie_rod.outer - corner.tie_rod.inner).norm_squared(),
            outer_height,
            outer_radius,
            outer_radius_sq: outer_radius * outer_radius,
            inverse_outer_radius: 1.0 / outer_radius,
            centre_local: local(corner.wheel.centre - lower_ball),
            spin_local: local(corner.wheel.spin_axis()),
            rack_axis,
            rod_reference: if corner.rack_axis.is_some() {
                rack_axis
            } else {
                Vector::y()
            },
            design_contact_y: 0.0,
            spring_swing: None,
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
        self.corner.tie_rod.inner + self.rack_axis * rack
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

pub(crate) fn check_numbers(c: &Corner) -> Result<(), CornerFault> {
    let spring = c.spring.map_or([None, None], |s| {
        [
            Some(("spring.chassis_mount", s.chassis_mount)),
            Some(("spring.arm_mount", s.arm_mount)),
        ]
    });
    let points = [
        ("upper_arm.front_pivot", c.upper_arm.front_pivot),
        ("upper_arm.rear_pivot", c.upper_arm.rear_pivot),
        ("upper_arm.ball_joint", c.upper_arm.ball_joint),
        ("lower_arm.front_pivot", c.lower_arm.front_pivot),
        ("lower_arm.rear_pivot", c.lower_arm.rear_pivot),
        ("lower_arm.ball_joint", c.lower_arm.ball_joint),
        ("tie_rod.inner", c.tie_rod.inner),
        ("tie_rod.outer", c.tie_rod.outer),
        ("wheel.centre", c.wheel.centre),
    ];
    for (what, p) in points.into_iter().chain(spring.into_iter().flatten()) {
        if !p.iter().all(|v| v.abs() <= FARTHEST) {
            return Err(CornerFault::NotFinite { what });
        }
    }
    let right_angle = std::f64::consts::FRAC_PI_2;
    if !(c.wheel.toe.abs() < right_angle) {
        return Err(CornerFault::NotFinite {
            what: "wheel.toe_deg",
        });
    }
    if !(c.wheel.camber.abs() < right_angle) {
        return Err(CornerFault::NotFinite {
            what: "wheel.camber_deg",
        });
    }
    if !(c.wheel.loaded_radius <= FARTHEST) {
        return Err(CornerFault::NotFinite {
            what: "wheel.loaded_radius",
        });
    }
    if !(c.wheel.loaded_radius > 0.0) {
        return Err(CornerFault::NoRadius);
    }
    match c.rack_axis {
        Some(v) if !v.iter().all(|x| x.abs() <= FARTHEST) => {
            Err(CornerFault::NotFinite { what: "rack.axis" })
        }
        _ => Ok(()),
    }
}

fn check_distances(c: &Corner) -> Result<(), CornerFault> {
    check_arm_distances(c)?;
    apart(
        "tie_rod.inner",
        c.tie_rod.inner,
        "tie_rod.outer",
        c.tie_rod.outer,
    )
}

/// As [`check_distances`], leaving the tie rod out.
pub(crate) fn check_arm_distances(c: &Corner) -> Result<(), CornerFault> {
    let (upper, lower) = (&c.upper_arm, &c.lower_arm);
    apart(
        "upper_arm.front_pivot",
        upper.front_pivot,
        "upper_arm.rear_pivot",
        upper.rear_pivot,
    )?;
    apart(
        "lower_arm.front_pivot",
        lower.front_pivot,
        "lower_arm.rear_pivot",
        lower.rear_pivot,
    )?;
    apart(
        "upper_arm.ball_joint",
        upper.ball_joint,
        "lower_arm.ball_joint",
        lower.ball_joint,
    )
}

fn apart(first: &'static str, p: Point, second: &'static str, q: Point) -> Result<(), CornerFault> {
    if (p - q).norm() < SAME_PLACE {
        return Err(CornerFault::Coincident { first, second });
    }
    Ok(())
}
