//! What is wanted, and of what.

use trammel_geometry::{Corner, CornerFault, Unreachable};

use super::{figure::Figure, variable::Variable};
use crate::{StationFault, Stations};

/// Most variables.
const MOST_VARIABLES: usize = 24;
/// Most wishes.
const MOST_WISHES: usize = 64;
/// Farthest that a variable may move anything, mm.
const FARTHEST: f64 = 1000.0;

/// How a figure is wanted, in its own unit (see [`Figure`]).
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Aim {
    /// As near as can be.
    Near(f64),
    /// Not above.
    AtMost(f64),
    /// Not below.
    AtLeast(f64),
}

/// One thing that is wanted.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Wish {
    /// Which figure.
    pub figure: Figure,
    /// How it is wanted.
    pub aim: Aim,
    /// How far off counts as one, in the figure's unit.
    pub scale: f64,
    /// Weight among the wishes.
    pub weight: f64,
}

/// Gives the rack end's factor against its allowed stress for a corner; `None` where it can't.
pub type RackEndFactor = Box<dyn Fn(&Corner) -> Option<f64> + Send>;

/// A search.
#[derive(Clone, Debug, PartialEq)]
pub struct TuneRequest {
    /// The corner as it is; the car is taken as symmetrical.
    pub corner: Corner,
    /// What may move.
    pub variables: Vec<Variable>,
    /// What is wanted.
    pub wishes: Vec<Wish>,
    /// Wheel travels judged, mm.
    pub travels: Vec<f64>,
    /// What the toe change at each of them counts against the others; none where all count alike.
    pub weights: Vec<f64>,
    /// Rack travel each way, mm; nought where there is no rack.
    pub lock: f64,
    /// Wheelbase, mm.
    pub wheelbase: f64,
    /// Same seed, same answer.
    pub seed: u64,
    /// Generations of the global search; 0 for a number that fits the variables.
    pub generations: usize,
}

/// Why a search can't be started.
#[derive(Clone, Copy, Debug, PartialEq, thiserror::Error)]
pub enum TuneFault {
    /// Too few or too many of something.
    #[error("{count} {what} were given; expected 1 to {most}")]
    Count {
        /// Variables or wishes.
        what: &'static str,
        /// How many there are.
        count: usize,
        /// How many there may be.
        most: usize,
    },
    /// Travels are to be weighed, but not each of them.
    #[error("{count} weights were given for {wanted} travels; expected one for each, or none")]
    Weights {
        /// Weights given.
        count: usize,
        /// Travels.
        wanted: usize,
    },
    /// A number makes no sense.
    #[error("{what} is {value}; expected {expected}")]
    NotUsable {
        /// Which number.
        what: &'static str,
        /// What was given.
        value: f64,
        /// What would do.
        expected: &'static str,
    },
    /// The rack end's factor is wanted, and nothing is there to work it out.
    #[error("the rack end's factor is wanted, but the rack end's check was not given")]
    NoRackEnd,
    /// The travels make no sense.
    #[error(transparent)]
    Travels(#[from] StationFault),
    /// A wished-for figure is none that any candidate has.
    #[error(
        "something is wanted that no place tried has: a lock's figure without a rack or lock, an Ackermann percentage without steering, or a rack end's factor that can't be worked out"
    )]
    NoFigure,
    /// Neither the corner nor any other place tried is a linkage.
    #[error("no place tried makes a linkage: {0}")]
    NotBuilt(CornerFault),
    /// Neither the corner nor any other place tried reaches the travel and lock.
    #[error("no place tried reaches the travel and lock wanted: {0}")]
    OutOfReach(Unreachable),
}

impl TuneRequest {
    pub(crate) fn stations(&self) -> Result<Stations, TuneFault> {
        Ok(Stations::new(self.travels.clone(), vec![0.0])?)
    }

    pub(crate) fn check(&self, has_rack_end: bool) -> Result<(), TuneFault> {
        count("variables", self.variables.len(), MOST_VARIABLES)?;
        count("wishes", self.wishes.len(), MOST_WISHES)?;
        let positive = "a positive number";
        usable("the wheelbase", self.wheelbase, positive, |v| v > 0.0)?;
        usable(
            "the rack travel",
            self.lock,
            "a number of mm that is not negative",
            |v| v >= 0.0,
        )?;
        self.check_weights()?;
        self.variables.iter().try_for_each(check_variable)?;
        self.wishes
            .iter()
            .try_for_each(|w| check_wish(w, has_rack_end))
    }
}

impl TuneRequest {
    fn check_weights(&self) -> Result<(), TuneFault> {
        let (count, wanted) = (self.weights.len(), self.travels.len());
        if count == 0 {
            return Ok(());
        }
        if count != wanted {
            return Err(TuneFault::Weights { count, wanted });
        }
        let expected = "a number that is not negative, and one at least above nought";
        let sum: f64 = self.weights.iter().sum();
        usable("the travels' weights together", sum, expected, |s| s > 0.0)?;
        let mut all = self.weights.iter();
        all.try_for_each(|&w| usable("a travel's weight", w, expected, |w| w >= 0.0))
    }

    /// What each travel counts, their mean one.
    pub(crate) fn even_weights(&self) -> Vec<f64> {
        let sum: f64 = self.weights.iter().sum();
        if self.weights.is_empty() {
            return vec![1.0; self.travels.len()];
        }
        let mean = sum / self.weights.len() as f64;
        self.weights.iter().map(|w| w / mean).collect()
    }
}

fn check_variable(v: &Variable) -> Result<(), TuneFault> {
    let positive = "a positive number";
    let end = v.low.abs().max(v.high.abs());
    usable("a variable's range", v.high - v.low, positive, |r| r > 0.0)?;
    usable("a variable's end", end, "at most 1000 mm", |r| {
        r <= FARTHEST
    })?;
    usable("a variable's step", v.step.unwrap_or(1.0), positive, |s| {
        s > 0.0
    })?;
    v.moves.iter().try_for_each(|(_, along)| {
        let length = along.norm();
        usable("a variable's direction", length, "a direction", |n| {
            n > 0.0 && n < 100.0
        })
    })
}

fn check_wish(w: &Wish, has_rack_end: bool) -> Result<(), TuneFault> {
    let (Aim::Near(aim) | Aim::AtMost(aim) | Aim::AtLeast(aim)) = w.aim;
    usable("a wish's figure", aim, "a number", |_| true)?;
    usable("a wish's scale", w.scale, "a positive number", |s| s > 0.0)?;
    usable(
        "a wish's weight",
        w.weight,
        "a number that is not negative",
        |s| s >= 0.0,
    )?;
    if w.figure == Figure::RackEndFactor && !has_rack_end {
        return Err(TuneFault::NoRackEnd);
    }
    Ok(())
}

fn count(what: &'static str, count: usize, most: usize) -> Result<(), TuneFault> {
    if (1..=most).contains(&count) {
        Ok(())
    } else {
        Err(TuneFault::Count { what, count, most })
    }
}

fn usable(
    what: &'static str,
    value: f64,
    expected: &'static str,
    good: impl Fn(f64) -> bool,
) -> Result<(), TuneFault> {
    if value.abs() < 1e9 && good(value) {
        Ok(())
    } else {
        Err(TuneFault::NotUsable {
            what,
            value,
            expected,
        })
    }
}
