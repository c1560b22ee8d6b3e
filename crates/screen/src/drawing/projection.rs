//! The three views and which vehicle axes they show.

use trammel_build::Axis;
use trammel_geometry::{Point, Vector};

/// Which way the drawing is looked at.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Projection {
    /// From ahead: the vehicle's left is on the right of the picture.
    Front,
    /// From above: forward is down, next to the front view.
    Plan,
    /// From the vehicle's left: forward is to the left.
    Side,
}

/// A vehicle axis along a screen direction: the axis, and +1 where it grows that way or -1.
pub(crate) type Along = (Axis, f64);

impl Projection {
    /// All three.
    pub const ALL: [Self; 3] = [Self::Front, Self::Plan, Self::Side];

    /// The title on the table.
    #[must_use]
    pub fn title(self) -> &'static str {
        match self {
            Self::Front => "FRONT",
            Self::Plan => "PLAN",
            Self::Side => "LEFT SIDE",
        }
    }

    /// The word in the names of points and controls.
    #[must_use]
    pub fn word(self) -> &'static str {
        match self {
            Self::Front => "front",
            Self::Plan => "plan",
            Self::Side => "side",
        }
    }

    /// What runs to the right on the screen.
    pub(crate) fn right(self) -> Along {
        match self {
            Self::Front | Self::Plan => (Axis::Y, 1.0),
            Self::Side => (Axis::X, -1.0),
        }
    }

    /// What runs down the screen.
    pub(crate) fn down(self) -> Along {
        match self {
            Self::Front | Self::Side => (Axis::Z, -1.0),
            Self::Plan => (Axis::X, 1.0),
        }
    }

    /// The axis that points at the viewer.
    pub(crate) fn towards(self) -> Axis {
        match self {
            Self::Front => Axis::X,
            Self::Plan => Axis::Z,
            Self::Side => Axis::Y,
        }
    }

    /// How near the viewer a point is, mm.
    pub(crate) fn depth(self, p: Point) -> f64 {
        p[self.towards().index()]
    }

    /// Unit vectors, in vehicle axes, of screen right and screen down.
    pub(crate) fn frame(self) -> (Vector, Vector) {
        let unit = |(axis, sign): Along| {
            let mut v = Vector::zeros();
            v[axis.index()] = sign;
            v
        };
        (unit(self.right()), unit(self.down()))
    }
}
