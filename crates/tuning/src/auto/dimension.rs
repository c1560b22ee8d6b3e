//! Points that move together, by the names a builder has for them.

use super::variable::Variable;
use crate::{Axis, Coordinate, Hardpoint};

/// A dimension of a car that may be left to the search: one coordinate, or several that move together.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Dimension {
    /// The rack with its joints, up and down.
    RackHeight,
    /// The inner joints in and out, half of it on each side.
    RackWidth,
    /// The rack with its joints, fore and aft.
    RackSetBack,
    /// Both pivots of the upper arm up and down.
    UpperPivotsHeight,
    /// Both pivots of the upper arm in and out.
    UpperPivotsWidth,
    /// Both pivots of the lower arm up and down.
    LowerPivotsHeight,
    /// Both pivots of the lower arm in and out.
    LowerPivotsWidth,
    /// One coordinate of one point.
    One(Coordinate),
}

impl Dimension {
    /// Those with a name of their own.
    pub const NAMED: [Self; 7] = [
        Self::RackHeight,
        Self::RackWidth,
        Self::RackSetBack,
        Self::UpperPivotsHeight,
        Self::UpperPivotsWidth,
        Self::LowerPivotsHeight,
        Self::LowerPivotsWidth,
    ];

    /// Its name in a command; a single coordinate has none but its point's and axis's.
    #[must_use]
    pub fn name(self) -> Option<&'static str> {
        Some(match self {
            Self::RackHeight => "rack_height",
            Self::RackWidth => "rack_width",
            Self::RackSetBack => "rack_set_back",
            Self::UpperPivotsHeight => "upper_pivots_height",
            Self::UpperPivotsWidth => "upper_pivots_width",
            Self::LowerPivotsHeight => "lower_pivots_height",
            Self::LowerPivotsWidth => "lower_pivots_width",
            Self::One(_) => return None,
        })
    }

    /// The coordinates that move, all by the same.
    #[must_use]
    pub fn coordinates(self) -> Vec<Coordinate> {
        use Hardpoint as H;
        let (points, axis): (&[Hardpoint], Axis) = match self {
            Self::RackHeight => (&[H::TieRodInner], Axis::Z),
            Self::RackWidth => (&[H::TieRodInner], Axis::Y),
            Self::RackSetBack => (&[H::TieRodInner], Axis::X),
            Self::UpperPivotsHeight => (&[H::UpperFrontPivot, H::UpperRearPivot], Axis::Z),
            Self::UpperPivotsWidth => (&[H::UpperFrontPivot, H::UpperRearPivot], Axis::Y),
            Self::LowerPivotsHeight => (&[H::LowerFrontPivot, H::LowerRearPivot], Axis::Z),
            Self::LowerPivotsWidth => (&[H::LowerFrontPivot, H::LowerRearPivot], Axis::Y),
            Self::One(c) => return vec![c],
        };
        let of = |&point: &Hardpoint| Coordinate { point, axis };
        points.iter().map(of).collect()
    }

    /// The variable that moves it, between `low` and `high` mm from where it is now.
    #[must_use]
    pub fn variable(self, low: f64, high: f64) -> Variable {
        let coordinates = self.coordinates();
        let moves = coordinates.iter().map(|c| (c.point, c.axis.unit()));
        Variable {
            moves: moves.collect(),
            low,
            high,
            step: None,
        }
    }
}
