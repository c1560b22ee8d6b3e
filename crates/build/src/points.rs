//! Names of hardpoints: the same words in files, on screen and in messages.

use std::fmt;

use trammel_geometry::{Axis, Point, Vector, mirror_point, mirror_vector};

/// Front or rear axle.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum AxleName {
    /// Steered front axle.
    Front,
    /// Rear axle.
    Rear,
}

impl AxleName {
    /// The word used in files and on the command line.
    #[must_use]
    pub fn word(self) -> &'static str {
        match self {
            Self::Front => "front",
            Self::Rear => "rear",
        }
    }
}

/// Left or right side of the vehicle.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Side {
    /// y positive.
    Left,
    /// y negative.
    Right,
}

impl Side {
    /// The word used on screen and on the command line.
    #[must_use]
    pub fn word(self) -> &'static str {
        match self {
            Self::Left => "left",
            Self::Right => "right",
        }
    }

    /// In vehicle axes, of a place in a corner's own frame, and the other way round: a right corner is worked out as its mirror image in the centre plane.
    #[must_use]
    pub fn place_in_vehicle(self, place: Point) -> Point {
        match self {
            Self::Left => place,
            Self::Right => mirror_point(place),
        }
    }

    /// The same of a direction or a movement.
    #[must_use]
    pub fn way_in_vehicle(self, way: Vector) -> Vector {
        match self {
            Self::Left => way,
            Self::Right => mirror_vector(way),
        }
    }
}

/// A hardpoint of a corner.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum PointName {
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
    /// `spring.chassis_mount`
    SpringChassisMount,
    /// `spring.arm_mount`
    SpringArmMount,
    /// `rack.face`
    RackFace,
    /// `rack.bore_mouth`
    RackBoreMouth,
}

impl PointName {
    /// All points, in the order of files and tables.
    pub const ALL: [Self; 13] = [
        Self::UpperFrontPivot,
        Self::UpperRearPivot,
        Self::UpperBallJoint,
        Self::LowerFrontPivot,
        Self::LowerRearPivot,
        Self::LowerBallJoint,
        Self::TieRodInner,
        Self::TieRodOuter,
        Self::WheelCentre,
        Self::SpringChassisMount,
        Self::SpringArmMount,
        Self::RackFace,
        Self::RackBoreMouth,
    ];

    /// The name in files, such as `tie_rod.inner`.
    #[must_use]
    pub fn path(self) -> &'static str {
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
            Self::SpringChassisMount => "spring.chassis_mount",
            Self::SpringArmMount => "spring.arm_mount",
            Self::RackFace => "rack.face",
            Self::RackBoreMouth => "rack.bore_mouth",
        }
    }

    /// The name on screen.
    #[must_use]
    pub fn label(self) -> &'static str {
        match self {
            Self::UpperFrontPivot => "Upper arm, front pivot",
            Self::UpperRearPivot => "Upper arm, rear pivot",
            Self::UpperBallJoint => "Upper arm, ball joint",
            Self::LowerFrontPivot => "Lower arm, front pivot",
            Self::LowerRearPivot => "Lower arm, rear pivot",
            Self::LowerBallJoint => "Lower arm, ball joint",
            Self::TieRodInner => "Tie rod, inner joint",
            Self::TieRodOuter => "Tie rod, outer joint",
            Self::WheelCentre => "Wheel centre",
            Self::SpringChassisMount => "Spring, chassis mount",
            Self::SpringArmMount => "Spring, arm mount",
            Self::RackFace => "Rack, end face",
            Self::RackBoreMouth => "Rack, bore mouth",
        }
    }

    /// The point with this name in files.
    #[must_use]
    pub fn from_path(path: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|p| p.path() == path)
    }
}

impl fmt::Display for PointName {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.path())
    }
}

/// A hardpoint of one side of one axle.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct PointRef {
    /// Which axle.
    pub axle: AxleName,
    /// Which side.
    pub side: Side,
    /// Which point.
    pub point: PointName,
}

impl PointRef {
    /// A left-hand point.
    #[must_use]
    pub fn left(axle: AxleName, point: PointName) -> Self {
        Self {
            axle,
            side: Side::Left,
            point,
        }
    }
}

/// One coordinate of one point of an axle; it stands for both sides.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Coordinate {
    /// Which axle.
    pub axle: AxleName,
    /// Which point.
    pub point: PointName,
    /// Which of its coordinates.
    pub axis: Axis,
}

impl fmt::Display for Coordinate {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(
            f,
            "{}.{}.{}",
            self.axle.word(),
            self.point.path(),
            self.axis.letter()
        )
    }
}

impl Coordinate {
    /// Reads `front.tie_rod.inner.z`.
    #[must_use]
    pub fn from_path(text: &str) -> Option<Self> {
        let (axle, rest) = text.split_once('.')?;
        let (point, axis) = rest.rsplit_once('.')?;
        let axle = [AxleName::Front, AxleName::Rear]
            .into_iter()
            .find(|a| a.word() == axle)?;
        let axis = Axis::ALL.into_iter().find(|a| a.letter() == axis)?;
        Some(Self {
            axle,
            point: PointName::from_path(point)?,
            axis,
        })
    }
}
