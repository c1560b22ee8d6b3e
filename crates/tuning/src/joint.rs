//! Which joint of the tie rod is meant, and a corner with it elsewhere.

use trammel_geometry::{Corner, Point, TieRod};

/// A joint of the tie rod.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum TieRodJoint {
    /// On the rack end or the chassis.
    Inner,
    /// On the upright.
    Outer,
}

impl TieRodJoint {
    /// Where it is at the design position, mm.
    #[must_use]
    pub fn place(self, corner: &Corner) -> Point {
        match self {
            Self::Inner => corner.tie_rod.inner,
            Self::Outer => corner.tie_rod.outer,
        }
    }

    /// The joint at the other end.
    #[must_use]
    pub fn other(self) -> Self {
        match self {
            Self::Inner => Self::Outer,
            Self::Outer => Self::Inner,
        }
    }

    /// The corner with this joint at `place` and the tie rod's length reset, so that the static toe stays what it is.
    #[must_use]
    pub fn moved_to(self, corner: &Corner, place: Point) -> Corner {
        let tie_rod = match self {
            Self::Inner => TieRod {
                inner: place,
                ..corner.tie_rod
            },
            Self::Outer => TieRod {
                outer: place,
                ..corner.tie_rod
            },
        };
        Corner { tie_rod, ..*corner }
    }
}
