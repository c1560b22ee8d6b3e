//! The best spot of the tie rod's joints.

mod freedom;
mod least_squares;
mod minimax;
mod problem;
mod program;
mod search;
mod snap;

pub(crate) use freedom::Direction;
pub use freedom::{Movable, Ways};
pub(crate) use least_squares::descend;
pub(crate) use problem::{Bounds, Evaluated, Problem};
pub(crate) use search::least_rms_along;
pub use search::{BestSpot, Search, SearchFault, Spot, best_spot};
