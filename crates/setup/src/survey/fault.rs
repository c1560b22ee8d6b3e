//! Why a survey gives no coordinates.

use trammel_geometry::Point;

use super::Side;

/// What keeps readings from giving coordinates. Points are named as the user named them.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum SurveyFault {
    /// A figure is not usable.
    #[error("{what} is {value}; expected {expected}; the reading was not taken")]
    NotUsable {
        /// What it is.
        what: String,
        /// What was given.
        value: f64,
        /// What can stand there.
        expected: &'static str,
    },
    /// A name is given to two points.
    #[error("there are two points named {0}; give one of them another name")]
    SameName(String),
    /// A reading names a point that this survey doesn't have.
    #[error("a reading names a point that this survey doesn't have")]
    UnknownPoint,
    /// A reading goes from a point to itself.
    #[error("the reading goes from {0} to itself; it needs two points")]
    ToItself(String),
    /// Nothing is sought.
    #[error("every point of this survey is given; there is nothing to find")]
    NothingSought,
    /// A point has too few readings.
    #[error("{point} has {has} of the {needs} readings that fix a point; take {} more", needs - has)]
    TooFew {
        /// Which point.
        point: String,
        /// Readings it has.
        has: usize,
        /// Fewest it needs.
        needs: usize,
    },
    /// Two places fit the readings of a point equally well.
    #[error(
        "{point} can be at ({:.1}, {:.1}, {:.1}) or at ({:.1}, {:.1}, {:.1}) mm by its readings; say whether it is {} or {} (the first is {})",
        first.x, first.y, first.z, second.x, second.y, second.z, sides[0].word(), sides[1].word(), sides[0].word()
    )]
    WhichSide {
        /// Which point.
        point: String,
        /// One place.
        first: Point,
        /// The other.
        second: Point,
        /// What to call the first and the second.
        sides: [Side; 2],
    },
    /// The readings leave something open.
    #[error("the readings leave {} open; {more} more readings are needed there", points.join(", "))]
    Open {
        /// Points and directions that can still move, such as `outer joint (up and down)`.
        points: Vec<String>,
        /// How many more readings are needed at least.
        more: usize,
    },
    /// The readings contradict each other so much that no place was found.
    #[error("no places fit the readings; look for a slip in one of them")]
    NoFit,
}
