//! Hardpoints of one corner as plain data, millimetres, vehicle axes.

use crate::{Point, Vector};

/// Which of the two arms.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum ArmName {
    /// The upper A-arm.
    Upper,
    /// The lower A-arm.
    Lower,
}

/// An A-arm: hinged on the chassis at two pivots, carrying the upright at a ball joint.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Arm {
    /// Forward chassis pivot.
    pub front_pivot: Point,
    /// Rearward chassis pivot.
    pub rear_pivot: Point,
    /// Ball joint on the upright.
    pub ball_joint: Point,
}

/// A tie rod, or a toe link at a rear corner.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct TieRod {
    /// Joint on the rack end, or on the chassis for a toe link.
    pub inner: Point,
    /// Joint on the upright.
    pub outer: Point,
}

/// The wheel at the design position.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Wheel {
    /// Wheel centre, mm.
    pub centre: Point,
    /// Radius of the tyre under load, mm.
    pub loaded_radius: f64,
    /// Static toe, rad, toe-in positive.
    pub toe: f64,
    /// Static camber, rad, top outboard positive.
    pub camber: f64,
}

impl Wheel {
    /// Unit vector of the spin axis pointing outboard from the left wheel (see the project's conventions).
    #[must_use]
    pub fn spin_axis(&self) -> Vector {
        let (sin_toe, cos_toe) = self.toe.sin_cos();
        let (sin_camber, cos_camber) = self.camber.sin_cos();
        Vector::new(cos_camber * sin_toe, cos_camber * cos_toe, -sin_camber)
    }
}

/// A spring unit between the chassis and one arm.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Spring {
    /// The arm that the unit stands on.
    pub arm: ArmName,
    /// Mount on the chassis.
    pub chassis_mount: Point,
    /// Mount on the arm, at the design position.
    pub arm_mount: Point,
}

/// All hardpoints of a left corner at the design position.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Corner {
    /// Upper A-arm.
    pub upper_arm: Arm,
    /// Lower A-arm.
    pub lower_arm: Arm,
    /// Tie rod or toe link.
    pub tie_rod: TieRod,
    /// Wheel.
    pub wheel: Wheel,
    /// Spring unit, if it is known.
    pub spring: Option<Spring>,
    /// Direction in which the rack moves the inner joint, positive to the vehicle's left; `None` where the inner
    /// joint is on the chassis. Its length does not matter.
    pub rack_axis: Option<Vector>,
}

/// The point on the other side of the vehicle's centre plane.
#[must_use]
pub fn mirror_point(p: Point) -> Point {
    Point::new(p.x, -p.y, p.z)
}

/// The direction seen in the mirror of the vehicle's centre plane.
#[must_use]
pub fn mirror_vector(v: Vector) -> Vector {
    Vector::new(v.x, -v.y, v.z)
}

impl Corner {
    /// This corner seen in the mirror of the centre plane: a right corner becomes a left one with the same measures,
    /// and the rack still moves by its own signed travel.
    #[must_use]
    pub fn mirrored(&self) -> Self {
        self.map(mirror_point, mirror_vector)
    }

    /// The corner with every point and direction mapped. The wheel's toe and camber stay as they are, since they are
    /// measured in the wheel's own outboard frame.
    #[must_use]
    pub fn map(&self, point: impl Fn(Point) -> Point, vector: impl Fn(Vector) -> Vector) -> Self {
        let arm = |a: Arm| Arm {
            front_pivot: point(a.front_pivot),
            rear_pivot: point(a.rear_pivot),
            ball_joint: point(a.ball_joint),
        };
        Self {
            upper_arm: arm(self.upper_arm),
            lower_arm: arm(self.lower_arm),
            tie_rod: TieRod {
                inner: point(self.tie_rod.inner),
                outer: point(self.tie_rod.outer),
            },
            wheel: Wheel {
                centre: point(self.wheel.centre),
                ..self.wheel
            },
            spring: self.spring.map(|s| Spring {
                arm: s.arm,
                chassis_mount: point(s.chassis_mount),
                arm_mount: point(s.arm_mount),
            }),
            rack_axis: self.rack_axis.map(vector),
        }
    }
}
