//! Sheets of paper: frame, title block, check bars, caution, sign-off boxes, and the drawing at full size, on one page or in tiles.

mod band;
mod bars;
mod layout;
mod paper;
mod tiles;
mod title_block;

pub use layout::{Content, lay_out};
pub use paper::{Paper, PaperError};
pub use title_block::{MADE_WITH, TitleBlock};

pub(crate) use layout::form;

use trammel_fabrication::plane::{Bounds, Point, Vector};

use crate::model::Drawing;

/// A drawing on a page.
#[derive(Clone, Debug, PartialEq)]
pub struct Placed {
    /// What is drawn.
    pub drawing: Drawing,
    /// Where the drawing's origin lies on the page, mm.
    pub shift: Vector,
    /// The part of the page that it shows in; all of it for `None`.
    pub window: Option<Bounds>,
}

impl Placed {
    /// A drawing made in the page's own coordinates.
    #[must_use]
    pub fn whole(drawing: Drawing) -> Self {
        Self {
            drawing,
            shift: Vector::zeros(),
            window: None,
        }
    }
}

/// A page: drawings from the lowest to the topmost.
#[derive(Clone, Debug, PartialEq)]
pub struct Page {
    /// Its paper.
    pub paper: Paper,
    /// What lies on it.
    pub placed: Vec<Placed>,
}

/// Pages that go into one file.
#[derive(Clone, Debug, PartialEq)]
pub struct SheetSet {
    /// Title of the file.
    pub title: String,
    /// Its pages.
    pub pages: Vec<Page>,
}

/// The room on a page where a drawing may lie.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Room {
    pub(crate) corner: Point,
    pub(crate) width: f64,
    pub(crate) height: f64,
}

impl Room {
    pub(crate) fn window(&self) -> Bounds {
        Bounds {
            min: self.corner,
            max: self.corner + Vector::new(self.width, self.height),
        }
    }
}
