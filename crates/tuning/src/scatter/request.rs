//! How well each coordinate is built, and what to do with it.

use trammel_geometry::{Corner, CornerFault, Unreachable};

use crate::{Coordinate, Hardpoint, Stations};

/// Most builds: the quasi-random sequence is that long.
pub(crate) const MOST_BUILDS: usize = 1 << 16;
/// Most tolerances.
const MOST_TOLERANCES: usize = 200;

/// How far a coordinate may land from where it was drawn.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Spread {
    /// Normally, with this standard deviation, mm.
    Normal(f64),
    /// Evenly, within this much either way, mm.
    Even(f64),
}

impl Spread {
    /// Its standard deviation, mm.
    #[must_use]
    pub fn deviation(self) -> f64 {
        match self {
            Self::Normal(sigma) => sigma,
            Self::Even(half) => half / 3.0_f64.sqrt(),
        }
    }

    pub(crate) fn size(self) -> f64 {
        match self {
            Self::Normal(v) | Self::Even(v) => v,
        }
    }
}

/// A coordinate with its spread.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Tolerance {
    /// Which coordinate.
    pub coordinate: Coordinate,
    /// How well it is built.
    pub spread: Spread,
}

/// All coordinates but the wheel centre's with one spread.
#[must_use]
pub fn default_tolerances(spread: Spread) -> Vec<Tolerance> {
    Coordinate::all()
        .filter(|c| c.point != Hardpoint::WheelCentre)
        .map(|coordinate| Tolerance { coordinate, spread })
        .collect()
}

/// Builds to be made up and swept.
#[derive(Clone, Debug, PartialEq)]
pub struct ScatterRequest {
    /// The corner as drawn.
    pub corner: Corner,
    /// How well it is built. A coordinate that is not named lands where it was drawn.
    pub tolerances: Vec<Tolerance>,
    /// Poses judged.
    pub stations: Stations,
    /// How many builds.
    pub builds: usize,
    /// Same seed, same builds.
    pub seed: u32,
    /// Largest toe change that the user allows, rad.
    pub limit: f64,
    /// Threads to use; the result does not depend on it.
    pub threads: usize,
}

/// Why there is no scatter.
#[derive(Clone, Copy, Debug, PartialEq, thiserror::Error)]
pub enum ScatterFault {
    /// Too few or too many builds.
    #[error("{0} builds were asked for; expected 10 to {MOST_BUILDS}")]
    Builds(usize),
    /// Too many tolerances, or none.
    #[error("{0} tolerances were given; expected 1 to {MOST_TOLERANCES}")]
    Tolerances(usize),
    /// A tolerance or the limit is not a usable number.
    #[error("{what} is {value}; expected a number that is not negative")]
    NotUsable {
        /// Which.
        what: &'static str,
        /// What was given, in mm or rad.
        value: f64,
    },
    /// The corner as drawn can't be built.
    #[error(transparent)]
    NotBuilt(#[from] CornerFault),
    /// The corner as drawn doesn't reach the travel.
    #[error(transparent)]
    OutOfReach(#[from] Unreachable),
}

impl ScatterRequest {
    pub(crate) fn check(&self) -> Result<(), ScatterFault> {
        if !(10..=MOST_BUILDS).contains(&self.builds) {
            return Err(ScatterFault::Builds(self.builds));
        }
        let count = self.tolerances.len();
        if !(1..=MOST_TOLERANCES).contains(&count) {
            return Err(ScatterFault::Tolerances(count));
        }
        let sizes = self
            .tolerances
            .iter()
            .map(|t| ("a tolerance", t.spread.size()));
        for (what, value) in sizes.chain([("the limit", self.limit)]) {
            if !(0.0..=1e4).contains(&value) {
                return Err(ScatterFault::NotUsable { what, value });
            }
        }
        Ok(())
    }
}
