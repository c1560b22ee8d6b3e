//! A drawing as plain data.

mod dimension;
mod line;
mod text;

pub use dimension::{Axis, Dimension, Stop};
pub use line::{Line, LineKind, Weight};
pub use text::{Anchor, Text};

use trammel_fabrication::plane::{Arc, Contour, Point};

/// What a line is for.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum Layer {
    /// Cut through.
    Cut,
    /// Marked or engraved.
    Mark,
    /// Bent.
    Bend,
    /// On paper only: dimensions, notes, frame.
    Sheet,
}

impl Layer {
    /// The layers that a cutter gets.
    pub const FOR_THE_CUTTER: [Self; 3] = [Self::Cut, Self::Mark, Self::Bend];

    /// Its name in a file.
    #[must_use]
    pub fn name(self) -> &'static str {
        match self {
            Self::Cut => "CUT",
            Self::Mark => "MARK",
            Self::Bend => "BEND",
            Self::Sheet => "SHEET",
        }
    }
}

/// What is drawn.
#[derive(Clone, Debug, PartialEq)]
pub enum Shape {
    /// A closed contour.
    Contour(Contour),
    /// Straight lines from point to point, open.
    Polyline(Vec<Point>),
    /// Part of a circle.
    Arc(Arc),
    /// A circle.
    Circle {
        /// Its centre.
        centre: Point,
        /// Its radius, mm.
        radius: f64,
    },
    /// A filled polygon.
    Fill(Vec<Point>),
    /// Lettering.
    Text(Text),
    /// Parallel lines inside a contour.
    Hatch {
        /// What is hatched.
        contour: Contour,
        /// Direction of the lines, rad.
        angle: f64,
        /// Distance of the lines, mm.
        spacing: f64,
    },
    /// A dimension.
    Dimension(Dimension),
}

/// Something on a layer, with its line.
#[derive(Clone, Debug, PartialEq)]
pub struct Item {
    /// What it is for.
    pub layer: Layer,
    /// How its line looks on paper.
    pub line: Line,
    /// What is drawn.
    pub shape: Shape,
}

/// A drawing: its items in the order they are drawn.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Drawing {
    /// What it shows.
    pub title: String,
    /// Its items.
    pub items: Vec<Item>,
}

impl Drawing {
    /// An empty drawing.
    #[must_use]
    pub fn new(title: impl Into<String>) -> Self {
        Self {
            title: title.into(),
            items: Vec::new(),
        }
    }

    /// Adds something.
    pub fn add(&mut self, layer: Layer, line: Line, shape: Shape) {
        self.items.push(Item { layer, line, shape });
    }

    /// Adds a straight line on paper.
    pub fn stroke(&mut self, line: Line, from: Point, to: Point) {
        self.add(Layer::Sheet, line, Shape::Polyline(vec![from, to]));
    }

    /// Adds an upright rectangle on paper.
    pub fn frame(&mut self, line: Line, corner: Point, size: [f64; 2]) {
        let (x, y) = (corner.x, corner.y);
        let (right, top) = (x + size[0], y + size[1]);
        let corners = [(x, y), (right, y), (right, top), (x, top), (x, y)];
        let points = corners.map(|(x, y)| Point::new(x, y)).to_vec();
        self.add(Layer::Sheet, line, Shape::Polyline(points));
    }

    /// Adds lettering on paper.
    pub fn letter(&mut self, text: Text) {
        self.add(Layer::Sheet, Line::NARROW, Shape::Text(text));
    }
}
