//! Lettering.

use trammel_fabrication::plane::Point;

/// Which end of the text its point is at.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Anchor {
    /// It starts there.
    Start,
    /// Its middle is there.
    Middle,
    /// It ends there.
    End,
}

/// One line of lettering.
#[derive(Clone, Debug, PartialEq)]
pub struct Text {
    /// A point of its base line.
    pub at: Point,
    /// What it says.
    pub content: String,
    /// Height of a capital letter, mm.
    pub height: f64,
    /// Direction of reading, rad; 0 is to the right.
    pub turn: f64,
    /// Which end is at the point.
    pub anchor: Anchor,
    /// In bold.
    pub bold: bool,
}

impl Text {
    /// Upright lettering that starts at a point.
    #[must_use]
    pub fn new(x: f64, y: f64, height: f64, content: impl Into<String>) -> Self {
        Self {
            at: Point::new(x, y),
            content: content.into(),
            height,
            turn: 0.0,
            anchor: Anchor::Start,
            bold: false,
        }
    }

    /// The same with another end at its point.
    #[must_use]
    pub fn anchored(self, anchor: Anchor) -> Self {
        Self { anchor, ..self }
    }

    /// The same in bold.
    #[must_use]
    pub fn bold(self) -> Self {
        Self { bold: true, ..self }
    }

    /// The same read in another direction, rad.
    #[must_use]
    pub fn turned(self, turn: f64) -> Self {
        Self { turn, ..self }
    }
}
