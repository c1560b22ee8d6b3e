//! Reading and writing hardpoints by name.

use trammel_geometry::{Point, Vector};

use crate::{
    AxleName, AxleSpec, Build, LengthUnit, PointName, PointRef, RackSpec, Side, Triple, defaults,
};

impl Build {
    /// The axle with this name, if the build has it.
    #[must_use]
    pub fn axle_spec(&self, axle: AxleName) -> Option<&AxleSpec> {
        match axle {
            AxleName::Front => Some(&self.front),
            AxleName::Rear => self.rear.as_ref(),
        }
    }

    pub(crate) fn axle_spec_mut(&mut self, axle: AxleName) -> Option<&mut AxleSpec> {
        match axle {
            AxleName::Front => Some(&mut self.front),
            AxleName::Rear => self.rear.as_mut(),
        }
    }

    /// Where a point stands, in the build's unit and vehicle axes. Right-hand points are the left's mirror image unless they have
    /// their own place; rack points that were left out stand where their defaults put them. `None` where the build has no such point.
    #[must_use]
    pub fn point(&self, at: PointRef) -> Option<Triple> {
        let spec = self.axle_spec(at.axle)?;
        match at.side {
            Side::Left => spec.left_point(at.point, self.unit, at.axle),
            Side::Right => spec
                .right
                .get(&at.point)
                .copied()
                .or_else(|| spec.mirror_of_left(at, self.unit)),
        }
    }

    /// The same in millimetres.
    #[must_use]
    pub fn point_mm(&self, at: PointRef) -> Option<Point> {
        self.point(at).map(|t| point_mm(t, self.unit))
    }

    /// Whether the right side has this point in a place of its own.
    #[must_use]
    pub fn has_own_right_point(&self, axle: AxleName, point: PointName) -> bool {
        self.axle_spec(axle)
            .is_some_and(|s| s.right.contains_key(&point))
    }
}

impl AxleSpec {
    /// The left point as it was typed, or `None` when it was left out.
    #[must_use]
    pub fn typed_point(&self, point: PointName) -> Option<Triple> {
        let spring = self.spring.as_ref();
        match point {
            PointName::UpperFrontPivot => Some(self.upper_arm.front_pivot),
            PointName::UpperRearPivot => Some(self.upper_arm.rear_pivot),
            PointName::UpperBallJoint => Some(self.upper_arm.ball_joint),
            PointName::LowerFrontPivot => Some(self.lower_arm.front_pivot),
            PointName::LowerRearPivot => Some(self.lower_arm.rear_pivot),
            PointName::LowerBallJoint => Some(self.lower_arm.ball_joint),
            PointName::TieRodInner => Some(self.tie_rod.inner),
            PointName::TieRodOuter => Some(self.tie_rod.outer),
            PointName::WheelCentre => Some(self.wheel.centre),
            PointName::SpringChassisMount => spring.map(|s| s.chassis_mount),
            PointName::SpringArmMount => spring.map(|s| s.arm_mount),
            PointName::RackFace => self.rack.face,
            PointName::RackBoreMouth => self.rack.bore_mouth,
        }
    }

    /// Puts a left point in a place. `false` where there is no such point to move.
    pub(crate) fn set_left_point(&mut self, point: PointName, to: Triple) -> bool {
        match point {
            PointName::UpperFrontPivot => self.upper_arm.front_pivot = to,
            PointName::UpperRearPivot => self.upper_arm.rear_pivot = to,
            PointName::UpperBallJoint => self.upper_arm.ball_joint = to,
            PointName::LowerFrontPivot => self.lower_arm.front_pivot = to,
            PointName::LowerRearPivot => self.lower_arm.rear_pivot = to,
            PointName::LowerBallJoint => self.lower_arm.ball_joint = to,
            PointName::TieRodInner => self.tie_rod.inner = to,
            PointName::TieRodOuter => self.tie_rod.outer = to,
            PointName::WheelCentre => self.wheel.centre = to,
            PointName::SpringChassisMount | PointName::SpringArmMount => {
                match (&mut self.spring, point) {
                    (Some(s), PointName::SpringChassisMount) => s.chassis_mount = to,
                    (Some(s), _) => s.arm_mount = to,
                    (None, _) => return false,
                }
            }
            PointName::RackFace => self.rack.face = Some(to),
            PointName::RackBoreMouth => self.rack.bore_mouth = Some(to),
        }
        true
    }

    fn left_point(&self, point: PointName, unit: LengthUnit, axle: AxleName) -> Option<Triple> {
        let on_rack = matches!(point, PointName::RackFace | PointName::RackBoreMouth);
        if on_rack && axle == AxleName::Rear {
            return None;
        }
        match point {
            PointName::RackFace => Some(self.rack_face(unit)),
            PointName::RackBoreMouth => Some(self.rack_bore_mouth(unit)),
            _ => self.typed_point(point),
        }
    }

    fn mirror_of_left(&self, at: PointRef, unit: LengthUnit) -> Option<Triple> {
        self.left_point(at.point, unit, at.axle).map(mirror)
    }

    /// The left rack face: as typed, or the default free length inboard of the inner joint.
    fn rack_face(&self, unit: LengthUnit) -> Triple {
        self.rack.face.unwrap_or_else(|| {
            step(
                self.tie_rod.inner,
                self.rack.direction(),
                -unit.from_mm(defaults::FREE_LENGTH_MM),
            )
        })
    }

    /// The left bore mouth: as typed, or where the rack face would just come flush at the end of the rack's travel.
    fn rack_bore_mouth(&self, unit: LengthUnit) -> Triple {
        let travel = self
            .rack
            .travel
            .unwrap_or(unit.from_mm(defaults::RACK_TRAVEL_MM));
        self.rack
            .bore_mouth
            .unwrap_or_else(|| step(self.rack_face(unit), self.rack.direction(), -travel))
    }
}

impl RackSpec {
    /// Unit direction of the rack, positive to the left: as typed, or y.
    #[must_use]
    pub fn direction(&self) -> Vector {
        let typed = self
            .axis
            .map_or(Vector::y(), |[x, y, z]| Vector::new(x, y, z));
        typed.try_normalize(1e-12).unwrap_or(Vector::y())
    }
}

/// The triple on the other side of the centre plane.
#[must_use]
pub fn mirror([x, y, z]: Triple) -> Triple {
    // Minus nought would show in a file.
    [x, if y == 0.0 { 0.0 } else { -y }, z]
}

pub(crate) fn point_mm([x, y, z]: Triple, unit: LengthUnit) -> Point {
    Point::new(x * unit.mm(), y * unit.mm(), z * unit.mm())
}

fn step(from: Triple, direction: Vector, by: f64) -> Triple {
    [
        from[0] + direction.x * by,
        from[1] + direction.y * by,
        from[2] + direction.z * by,
    ]
}
