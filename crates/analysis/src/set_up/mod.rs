//! What to do next on the finished vehicle: a build with its sessions of readings, turned into causes, moves and predictions.

mod adjusters;
pub mod as_built;
mod fault;
mod next;
mod rounds;
pub mod words;

pub use fault::NextFault;
pub use next::{NextMoves, SideNext, next_moves};
pub use rounds::{Doubt, SideReadings};
