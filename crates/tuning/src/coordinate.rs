//! A corner's hardpoints and their coordinates by name.

use trammel_geometry::{Axis, Corner, Point};

/// A hardpoint that takes part in the toe curve.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Hardpoint {
    /// `upper_arm.front_pivot`
    UpperFrontPivot,
    /// `upper_arm.rear_pivot`
    UpperRearPivot,
    /// `upper_arm.ball_joint`
    UpperBallJoint,
    /// `lower_arm.front_pivot`
    LowerFrontPivot,
    /// `lower_arm.rear_pivot`
    LowerRearPivot,
    /// `lower_arm.ball_joint`
    LowerBallJoint,
    /// `tie_rod.inner`
    TieRodInner,
    /// `tie_rod.outer`
    TieRodOuter,
    /// `wheel.centre`
    WheelCentre,
}

/// One coordinate of one hardpoint.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct Coordinate {
    /// The hardpoint.
    pub point: Hardpoint,
    /// Along which axis.
    pub axis: Axis,
}

impl Hardpoint {
    /// All of them.
    pub const ALL: [Self; 9] = [
        Self::UpperFrontPivot,
        Self::UpperRearPivot,
        Self::UpperBallJoint,
        Self::LowerFrontPivot,
        Self::LowerRearPivot,
        Self::LowerBallJoint,
        Self::TieRodInner,
        Self::TieRodOuter,
        Self::WheelCentre,
    ];

    /// The name it has in a build file.
    #[must_use]
    pub fn name(self) -> &'static str {
        match self {
            Self::UpperFrontPivot => "upper_arm.front_pivot",
            Self::UpperRearPivot => "upper_arm.rear_pivot",
            Self::UpperBallJoint => "upper_arm.ball_joint",
            Self::LowerFrontPivot => "lower_arm.front_pivot",
            Self::LowerRearPivot => "lower_arm.rear_pivot",
            Self::LowerBallJoint => "lower_arm.ball_joint",
            Self::TieRodInner => "tie_rod.inner",
            Self::TieRodOuter => "tie_rod.outer",
            Self::WheelCentre => "wheel.centre",
        }
    }

    /// The point in a corner.
    #[must_use]
    pub fn of(self, corner: &mut Corner) -> &mut Point {
        match self {
            Self::UpperFrontPivot => &mut corner.upper_arm.front_pivot,
            Self::UpperRearPivot => &mut corner.upper_arm.rear_pivot,
            Self::UpperBallJoint => &mut corner.upper_arm.ball_joint,
            Self::LowerFrontPivot => &mut corner.lower_arm.front_pivot,
            Self::LowerRearPivot => &mut corner.lower_arm.rear_pivot,
            Self::LowerBallJoint => &mut corner.lower_arm.ball_joint,
            Self::TieRodInner => &mut corner.tie_rod.inner,
            Self::TieRodOuter => &mut corner.tie_rod.outer,
            Self::WheelCentre => &mut corner.wheel.centre,
        }
    }
}

impl Coordinate {
    /// The coordinate in a corner, mm.
    #[must_use]
    pub fn of(self, corner: &mut Corner) -> &mut f64 {
        let point = self.point.of(corner);
        match self.axis {
            Axis::X => &mut point.x,
            Axis::Y => &mut point.y,
            Axis::Z => &mut point.z,
        }
    }

    /// All coordinates of all hardpoints.
    pub fn all() -> impl Iterator<Item = Self> {
        Hardpoint::ALL
            .into_iter()
            .flat_map(|point| Axis::ALL.map(|axis| Self { point, axis }))
    }
}
