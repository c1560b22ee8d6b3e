//! How exactly the points of a build are made.

use std::collections::BTreeMap;

use crate::{AxleName, Build, Coordinate, PointName, defaults};

/// How a point is made.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum MadeBy {
    /// Drilled through a jig, or set by one while it is welded.
    JigDrilled,
    /// Marked out by tape and square.
    Tape,
    /// Held by hand while it is tacked.
    HandHeld,
    /// In some other way, with this standard deviation of each coordinate, the build's unit.
    Deviation(f64),
}

/// Standard deviations by the way a point is made, the build's unit, and how each point is made.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Tolerances {
    /// Of points drilled through a jig.
    pub jig_drilled: Option<f64>,
    /// Of points marked out by tape.
    pub tape: Option<f64>,
    /// Of points held by hand.
    pub hand_held: Option<f64>,
    /// How points are made that are not named below.
    pub usual: Option<MadeBy>,
    /// Points made in a way of their own. Both sides alike.
    pub points: BTreeMap<(AxleName, PointName), MadeBy>,
    /// Coordinates made in another way than their point's others.
    pub coordinates: BTreeMap<Coordinate, MadeBy>,
}

impl Tolerances {
    /// Whether something is said of this coordinate, by itself or with its point.
    #[must_use]
    pub fn names(&self, at: Coordinate) -> bool {
        self.coordinates.contains_key(&at) || self.points.contains_key(&(at.axle, at.point))
    }
}

impl Build {
    /// How points are made of which nothing is said: as the build says, or by tape.
    #[must_use]
    pub fn usually_made_by(&self) -> MadeBy {
        self.tolerances.usual.unwrap_or(MadeBy::Tape)
    }

    /// How a point is made, coordinates that are said apart left aside.
    #[must_use]
    pub fn made_by(&self, axle: AxleName, point: PointName) -> MadeBy {
        let own = self.tolerances.points.get(&(axle, point)).copied();
        own.unwrap_or_else(|| self.usually_made_by())
    }

    /// Standard deviation of a coordinate as it comes out of the shop, mm.
    #[must_use]
    pub fn deviation_mm(&self, at: Coordinate) -> f64 {
        let own = self.tolerances.coordinates.get(&at).copied();
        self.deviation_of_mm(own.unwrap_or_else(|| self.made_by(at.axle, at.point)))
    }

    /// Standard deviation of what is made in a way, mm.
    #[must_use]
    pub fn deviation_of_mm(&self, made: MadeBy) -> f64 {
        let t = &self.tolerances;
        let (typed, default) = match made {
            MadeBy::JigDrilled => (t.jig_drilled, defaults::JIG_DRILLED_DEVIATION_MM),
            MadeBy::Tape => (t.tape, defaults::TAPE_DEVIATION_MM),
            MadeBy::HandHeld => (t.hand_held, defaults::HAND_HELD_DEVIATION_MM),
            MadeBy::Deviation(v) => (Some(v), 0.0),
        };
        typed.map_or(default, |v| v * self.unit.mm())
    }
}
