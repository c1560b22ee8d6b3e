//! The best spot of the tie rod's joints.

mod freedom;
mod least_squares;
mod minimax;
mod problem;
mod program;
mod search;
mod snap;

pub(crate) use freedom::Direction;
pub(crate) use problem::Problem;
pub(crate) use search::least_rms_along;
pub use freedom::{Movable, Ways};
pub use search::{BestSpot, Search, SearchFault, Spot, best_spot};
