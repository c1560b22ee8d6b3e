//! The true geometry behind readings: the hardpoints that fit them best and are likely by the way they were made.

mod alike;
mod flip;
mod learned;
mod model;

pub use alike::{Told, tell_apart};
pub use flip::{Flip, flip_doubt};
pub use learned::{LearnFault, Learned, LearnedError, Prediction, Round, learn};
