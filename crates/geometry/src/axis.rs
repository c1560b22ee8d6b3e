//! The axes of the vehicle by name.

use crate::Vector;

/// An axis of the vehicle: forward, left or up.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Axis {
    /// Forward.
    X,
    /// Left.
    Y,
    /// Up.
    Z,
}

impl Axis {
    /// All three.
    pub const ALL: [Self; 3] = [Self::X, Self::Y, Self::Z];

    /// The letter.
    #[must_use]
    pub fn letter(self) -> &'static str {
        match self {
            Self::X => "x",
            Self::Y => "y",
            Self::Z => "z",
        }
    }

    /// Place in a triple.
    #[must_use]
    pub fn index(self) -> usize {
        match self {
            Self::X => 0,
            Self::Y => 1,
            Self::Z => 2,
        }
    }

    /// The direction, of length 1.
    #[must_use]
    pub fn unit(self) -> Vector {
        Vector::ith(self.index(), 1.0)
    }
}

#[cfg(test)]
mod tests {
    use super::Axis;
    use crate::Vector;

    #[test]
    fn forward_left_and_up_are_x_y_and_z() {
        assert_eq!(Axis::ALL.map(Axis::letter), ["x", "y", "z"]);
        assert_eq!(Axis::ALL.map(Axis::index), [0, 1, 2]);
        assert_eq!(
            Axis::ALL.map(Axis::unit),
            [Vector::x(), Vector::y(), Vector::z()]
        );
    }
}
