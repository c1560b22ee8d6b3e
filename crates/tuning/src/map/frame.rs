//! The rectangle that a map covers.

use trammel_geometry::{Point, Vector};

/// Most columns, and most rows.
pub(crate) const MOST_CELLS_EACH_WAY: usize = 4096;
/// Greatest magnitude of a coordinate, mm.
const FARTHEST: f64 = 1e5;

/// A plane to draw a map in.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Plane {
    /// Columns along y (outboard of a left corner), rows along z.
    Front,
    /// Columns along x, rows along z.
    Side,
    /// Columns along y, rows along x.
    Plan,
}

impl Plane {
    /// Unit vectors along a row of cells and along a column.
    #[must_use]
    pub fn directions(self) -> [Vector; 2] {
        match self {
            Self::Front => [Vector::y(), Vector::z()],
            Self::Side => [Vector::x(), Vector::z()],
            Self::Plan => [Vector::y(), Vector::x()],
        }
    }
}

/// A grid of places for a joint, cell centres, mm.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct MapFrame {
    first: Point,
    across: Vector,
    up: Vector,
    columns: usize,
    rows: usize,
}

/// Why a rectangle can't be mapped.
#[derive(Clone, Copy, Debug, PartialEq, thiserror::Error)]
pub enum FrameFault {
    /// Too few or too many cells.
    #[error(
        "a map of {columns} by {rows} cells can't be made; expected 2 to {MOST_CELLS_EACH_WAY} each way"
    )]
    Cells {
        /// Columns asked for.
        columns: usize,
        /// Rows asked for.
        rows: usize,
    },
    /// Its place or size is not a usable number.
    #[error("the map's place or size is not a usable number; expected a rectangle of some mm")]
    NotUsable,
}

impl MapFrame {
    /// A rectangle in `plane` about `centre`, `width` by `height` mm from the first to the last cell's centre.
    ///
    /// # Errors
    /// [`FrameFault`] when it has too few or too many cells, or is no rectangle.
    pub fn new(
        plane: Plane,
        centre: Point,
        [width, height]: [f64; 2],
        [columns, rows]: [usize; 2],
    ) -> Result<Self, FrameFault> {
        let cells = 2..=MOST_CELLS_EACH_WAY;
        if !(cells.contains(&columns) && cells.contains(&rows)) {
            return Err(FrameFault::Cells { columns, rows });
        }
        let usable = |v: f64| v > 0.0 && v <= FARTHEST;
        if !(usable(width) && usable(height) && centre.coords.amax() <= FARTHEST)
            || centre.iter().any(|v| v.is_nan())
        {
            return Err(FrameFault::NotUsable);
        }
        let [u, v] = plane.directions();
        Ok(Self {
            first: centre - u * (0.5 * width) - v * (0.5 * height),
            across: u * (width / (columns - 1) as f64),
            up: v * (height / (rows - 1) as f64),
            columns,
            rows,
        })
    }

    /// Number of columns.
    #[must_use]
    pub fn columns(&self) -> usize {
        self.columns
    }

    /// Number of rows.
    #[must_use]
    pub fn rows(&self) -> usize {
        self.rows
    }

    /// From a cell to the next in its row, mm.
    #[must_use]
    pub fn across(&self) -> Vector {
        self.across
    }

    /// From a cell to the next in its column, mm.
    #[must_use]
    pub fn up(&self) -> Vector {
        self.up
    }

    /// The place of a cell's centre, or between cells.
    #[must_use]
    pub fn place(&self, column: f64, row: f64) -> Point {
        self.first + self.across * column + self.up * row
    }
}
