//! Automatic tuning: what may move, what is wanted, and the search on a thread of its own.

mod moves;
mod run;
mod wants;

use trammel_tuning::{Emphasis, Figure};

pub use moves::{Part, Row, label, locked};
pub(crate) use run::{SearchRun, Shown};
pub use wants::{How, Want, factor, long_name, meaning, name, sign};

/// What the search is asked for.
#[derive(Clone, Debug, PartialEq)]
pub struct AutoSettings {
    /// What may move, and how far.
    pub moves: Vec<Row>,
    /// What is wanted besides little toe change.
    pub wants: Vec<Want>,
    /// Which part of the travel counts most.
    pub emphasis: Emphasis,
    /// What the picture of the layouts sets against toe change.
    pub against: Figure,
}

impl Default for AutoSettings {
    fn default() -> Self {
        Self {
            moves: moves::all(),
            wants: Figure::ALL.map(Want::new).to_vec(),
            emphasis: Emphasis::Whole,
            against: Figure::RackEndFactor,
        }
    }
}
