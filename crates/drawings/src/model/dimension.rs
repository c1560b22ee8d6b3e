//! Dimensions as ISO 129-1 draws them.

use trammel_fabrication::plane::Point;

/// Along which a dimension runs.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Axis {
    /// Across; its line lies below or above.
    X,
    /// Up; its line lies beside.
    Y,
}

/// A point that a running dimension stops at.
#[derive(Clone, Debug, PartialEq)]
pub struct Stop {
    /// The point measured to.
    pub at: Point,
    /// The measure, written out.
    pub text: String,
}

/// A dimension with its text written out.
#[derive(Clone, Debug, PartialEq)]
pub enum Dimension {
    /// Between two points along an axis, the line at this y (for x) or x (for y), mm.
    Linear {
        /// First point.
        from: Point,
        /// Second point.
        to: Point,
        /// Along which.
        axis: Axis,
        /// Where its line lies.
        line_at: f64,
        /// The measure.
        text: String,
    },
    /// Running dimensions: every measure from one datum edge, on one line.
    Running {
        /// A point of the datum edge.
        datum: Point,
        /// Along which.
        axis: Axis,
        /// Where the line lies.
        line_at: f64,
        /// What is measured to, in any order.
        stops: Vec<Stop>,
    },
    /// A note at the end of a line with an arrow: a diameter, a radius, a bend.
    Leader {
        /// What the arrow touches.
        tip: Point,
        /// Where the line bends into the text's base.
        knee: Point,
        /// What it says.
        text: String,
    },
}
