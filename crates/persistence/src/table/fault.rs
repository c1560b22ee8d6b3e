//! Why a table can't be taken.

use trammel_build::LengthFault;

/// Why a table of points can't be taken, and where. Nothing of it is used.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
#[error("{}{kind}", place(*row, column.as_deref()))]
pub struct TableFault {
    /// Row from 1, the heading being the first.
    pub row: Option<u64>,
    /// Heading of the column.
    pub column: Option<String>,
    /// What.
    pub kind: TableFaultKind,
}

/// What is wrong with a table of points.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum TableFaultKind {
    /// No heading.
    #[error(
        "found `{found}`, expected the heading `point, x (in), y (in), z (in)`, or with `(mm)`"
    )]
    NoHeading {
        /// What the first row holds.
        found: String,
    },
    /// A column is not there.
    #[error(
        "there is no column `{missing}`; expected the heading `point, x (in), y (in), z (in)`, or with `(mm)`"
    )]
    NoColumn {
        /// Which.
        missing: &'static str,
    },
    /// A heading stands twice.
    #[error("the heading stands here a second time; expected it once")]
    ColumnTwice,
    /// A heading does not say its unit.
    #[error("the heading has no unit; expected `{axis} (in)` or `{axis} (mm)`")]
    NoUnit {
        /// Which axis.
        axis: &'static str,
    },
    /// A heading has another unit.
    #[error("the heading has the unit `{found}`; expected `in` or `mm`")]
    OddUnit {
        /// What it says.
        found: String,
    },
    /// The columns do not have one unit.
    #[error("the unit is not that of the other columns; expected one unit for x, y and z")]
    MixedUnits,
    /// A row ends too soon.
    #[error("the row has {found} cells; expected {expected}")]
    ShortRow {
        /// Cells it has.
        found: usize,
        /// Cells it should have.
        expected: usize,
    },
    /// No such point.
    #[error("`{name}` is no point; {}", hint(nearest.as_deref()))]
    UnknownPoint {
        /// What it says.
        name: String,
        /// The known name most like it.
        nearest: Option<String>,
    },
    /// A point twice.
    #[error("{name} stands in row {first} already; expected it once")]
    PointTwice {
        /// Its name.
        name: String,
        /// Where it stood first.
        first: u64,
    },
    /// Not a length.
    #[error("{0}")]
    Length(#[from] LengthFault),
    /// Only a heading.
    #[error("the table holds no points")]
    NoPoints,
    /// More than a table of points can need.
    #[error(
        "the table has {bytes} bytes; expected a table of points of at most {}",
        crate::LARGEST_FILE
    )]
    TooLarge {
        /// Its size.
        bytes: usize,
    },
    /// Anything else.
    #[error("{0}")]
    Other(String),
}

fn place(row: Option<u64>, column: Option<&str>) -> String {
    match (row, column) {
        (Some(row), Some(column)) => format!("row {row}, column {column}: "),
        (Some(row), None) => format!("row {row}: "),
        _ => String::new(),
    }
}

fn hint(nearest: Option<&str>) -> String {
    match nearest {
        Some(name) => format!("the nearest known name is `{name}`"),
        None => "expected a name such as `front.tie_rod.inner`".to_owned(),
    }
}
