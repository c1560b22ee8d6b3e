//! How exactly the points of a build are made.

use std::collections::BTreeMap;

use crate::{AxleName, Build, PointName, defaults};

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
}

impl Build {
    /// How a point is made: as the build says, or by tape.
    #[must_use]
    pub fn made_by(&self, axle: AxleName, point: PointName) -> MadeBy {
        let own = self.tolerances.points.get(&(axle, point)).copied();
        own.or(self.tolerances.usual).unwrap_or(MadeBy::Tape)
    }

    /// Standard deviation of each coordinate of a point as it comes out of the shop, mm.
    #[must_use]
    pub fn deviation_mm(&self, axle: AxleName, point: PointName) -> f64 {
        let t = &self.tolerances;
        let (typed, default) = match self.made_by(axle, point) {
            MadeBy::JigDrilled => (t.jig_drilled, defaults::JIG_DRILLED_DEVIATION_MM),
            MadeBy::Tape => (t.tape, defaults::TAPE_DEVIATION_MM),
            MadeBy::HandHeld => (t.hand_held, defaults::HAND_HELD_DEVIATION_MM),
            MadeBy::Deviation(v) => (Some(v), 0.0),
        };
        typed.map_or(default, |v| v * self.unit.mm())
    }
}
