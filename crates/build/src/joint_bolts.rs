//! Which way the bolts of the tie-rod joints stand.

use trammel_geometry::Vector;

use crate::Triple;

/// Direction of a joint's bolt at ride height, on the left side; the right side's is its mirror image. The inner joint's bolt keeps its direction,
/// the outer joint's goes with the upright.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum BoltAxis {
    /// Along x.
    ForeAft,
    /// Along z.
    Vertical,
    /// Along y.
    Lateral,
    /// Any, vehicle axes; its length does not matter.
    Direction(Triple),
}

impl BoltAxis {
    /// The three that a square and a level give.
    pub const PLAIN: [Self; 3] = [Self::ForeAft, Self::Vertical, Self::Lateral];

    /// Unit vector along the bolt on the left side; nought where a typed direction has none.
    #[must_use]
    pub fn direction(self) -> Vector {
        match self {
            Self::ForeAft => Vector::x(),
            Self::Vertical => Vector::z(),
            Self::Lateral => Vector::y(),
            Self::Direction([x, y, z]) => Vector::new(x, y, z)
                .try_normalize(0.0)
                .unwrap_or_else(Vector::zeros),
        }
    }

    /// How it is said, such as `fore-and-aft`.
    #[must_use]
    pub fn words(self) -> String {
        match self {
            Self::ForeAft => "fore-and-aft".into(),
            Self::Vertical => "upright".into(),
            Self::Lateral => "crosswise".into(),
            Self::Direction([x, y, z]) => format!("along ({x}, {y}, {z})"),
        }
    }
}

/// Bolts of an axle's tie-rod joints. Where nothing is said no direction is taken: the joint is charged with more then, see the joint-angle caution.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct JointBolts {
    /// On the rack end, or on the chassis.
    pub inner: Option<BoltAxis>,
    /// On the upright.
    pub outer: Option<BoltAxis>,
}
