//! The best spot of the tie rod's joints.
//!
//! The optimisers are our own, some six hundred lines on nalgebra's factorisations. A general library would have to be
//! fed the toe changes one figure at a time; here whole curves come with exact derivatives, the largest of them is made
//! least (which has a kink just where it is least), the answer must be the same to the last bit for the same build, and
//! a place that can't be built is no number. Tests hold every kind of search against SciPy's answer.

mod clear_of;
mod freedom;
mod least_move;
mod least_squares;
mod minimax;
mod problem;
mod program;
mod search;
mod snap;

pub use clear_of::Block;
pub(crate) use freedom::Direction;
pub use freedom::{Movable, Ways};
pub(crate) use least_squares::descend;
pub(crate) use problem::{Bounds, Evaluated, Problem};
pub(crate) use search::least_rms_along;
pub use search::{BestSpot, Search, SearchFault, Spot, best_spot, best_spot_clear_of};
