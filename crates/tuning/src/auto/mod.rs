//! Automatic tuning: a global search over chosen coordinates for what is wanted, then an exact finish.
//!
//! The global search is a differential evolution (Storn and Price, Journal of Global Optimization 11, 1997) with
//! crowding (Thomsen, CEC 2004; both from memory)
//! of our own, two hundred lines. The optimisation crates that were looked at drive the search themselves; here the
//! caller owns the clock and must be able to stop
//! between any two evaluations, candidates that can't be built have no value at all, and several distinct solutions
//! are wanted, not one. The finish is the same damped
//! least squares that finds the best spot.

mod dimension;
mod emphasis;
mod evolution;
mod figure;
mod figures;
mod finish;
mod random;
mod request;
mod tuner;
mod variable;

pub use dimension::Dimension;
pub use emphasis::Emphasis;
pub use figure::{Figure, FigureUnit};
pub use figures::Figures;
pub use request::{Aim, RackEndFactor, TuneFault, TuneRequest, Wish};
pub use tuner::{Progress, Solution, Tuned, Tuner};
pub use variable::Variable;
