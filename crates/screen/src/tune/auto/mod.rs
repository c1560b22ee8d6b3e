//! Automatic tuning: what may move, what is wanted, and the search on a thread of its own.

mod moves;
mod run;
mod wants;

use trammel_geometry::Corner;
use trammel_tuning::{Emphasis, Figure, Solution};

pub use moves::{Part, Row, label, locked};
pub(crate) use run::{SearchRun, Shown};
pub use wants::{How, Want, factor, long_name, name, sign, taken, term};

/// What the search is asked for.
#[derive(Clone, Debug, PartialEq)]
pub struct AutoSettings {
    /// What may move, and how far.
    pub moves: Vec<Row>,
    /// What is wanted besides little toe change.
    pub wants: Vec<Want>,
    /// What little toe change over the travel, rack at centre, counts against that.
    pub toe_weight: f64,
    /// Which part of the travel counts most.
    pub emphasis: Emphasis,
    /// What the picture of the layouts sets against toe change.
    pub against: Figure,
}

/// Which of a layout's two forms is shown and applied.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Form {
    /// In whole steps of the shop.
    InSteps,
    /// As the search found it.
    Exact,
}

impl Form {
    /// Its words, on buttons and in the undo list.
    #[must_use]
    pub fn words(self) -> &'static str {
        match self {
            Self::InSteps => "in steps",
            Self::Exact => "exactly",
        }
    }

    /// The form that there is of a layout: one without steps has the exact one only.
    pub(crate) fn of(self, layout: &Solution) -> Self {
        match &layout.in_steps {
            Some(_) => self,
            None => Self::Exact,
        }
    }

    /// The corner of a layout in this form.
    pub(crate) fn corner(self, layout: &Solution) -> &Corner {
        match (self, &layout.in_steps) {
            (Self::InSteps, Some(rounded)) => &rounded.corner,
            _ => &layout.exact.corner,
        }
    }
}

impl Default for AutoSettings {
    fn default() -> Self {
        Self {
            moves: moves::all(),
            wants: Figure::ALL.map(Want::new).to_vec(),
            toe_weight: 1.0,
            emphasis: Emphasis::Whole,
            against: Figure::RackEndFactor,
        }
    }
}
