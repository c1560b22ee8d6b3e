//! Why a sheet of readings can't be taken.

use trammel_build::LengthFault;
use trammel_setup::SurveyFault;

/// Why a sheet can't be taken, and where. Nothing of it is used.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
#[error("{}{kind}", place(*line, column.as_deref()))]
pub struct SheetFileFault {
    /// Line from 1.
    pub line: Option<u64>,
    /// Heading of the column, or what the cell is.
    pub column: Option<String>,
    /// What.
    pub kind: SheetFileFaultKind,
}

/// What is wrong with a sheet.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum SheetFileFaultKind {
    /// Too large.
    #[error("the table has {bytes} bytes, more than any sheet of readings")]
    TooLarge {
        /// Its size.
        bytes: usize,
    },
    /// Not a table.
    #[error("the table can't be taken apart: {0}")]
    NotTable(String),
    /// No readings.
    #[error("there are no readings; {expected}")]
    Nothing {
        /// What should be there.
        expected: &'static str,
    },
    /// A line above the table starts with an unknown word.
    #[error("`{found}` is not known here; expected one of {known}")]
    UnknownWord {
        /// What stands there.
        found: String,
        /// What could.
        known: &'static str,
    },
    /// A setting is not there.
    #[error("there is no line `{missing}`; write one such as `{example}` above the table")]
    NoSetting {
        /// Which.
        missing: &'static str,
        /// How it looks.
        example: &'static str,
    },
    /// A setting or heading stands twice.
    #[error("`{0}` stands here a second time; expected it once")]
    Twice(String),
    /// A word is not one of those that can stand there.
    #[error("found `{found}`, expected {expected}")]
    OddWord {
        /// What stands there.
        found: String,
        /// What could.
        expected: &'static str,
    },
    /// A column is not there.
    #[error("there is no column `{missing}`; {why}")]
    NoColumn {
        /// Which.
        missing: &'static str,
        /// What needs it.
        why: &'static str,
    },
    /// A cell is empty in a line that has others.
    #[error("the cell is empty; {why}. Fill it in or take the line out")]
    EmptyCell {
        /// What needs it.
        why: &'static str,
    },
    /// A line is longer than the heading.
    #[error(
        "the line has {found} cells, the heading {expected}; is a comma meant as a decimal point? Write a point"
    )]
    TooManyCells {
        /// Cells it has.
        found: usize,
        /// Cells the heading has.
        expected: usize,
    },
    /// A sign where a word is wanted.
    #[error(
        "`{found}` has a sign; write the size alone and {words} beside it, so that nobody has to remember which way the sign goes"
    )]
    Sign {
        /// What was typed.
        found: String,
        /// The words.
        words: &'static str,
    },
    /// No number.
    #[error("`{found}` is no number; expected {expected}")]
    NoNumber {
        /// What was typed.
        found: String,
        /// What is expected.
        expected: &'static str,
    },
    /// No length.
    #[error(transparent)]
    Length(#[from] LengthFault),
    /// A survey doesn't take it.
    #[error(transparent)]
    Survey(#[from] SurveyFault),
    /// A point is named that no line gives.
    #[error(
        "there is no mark or point `{0}`; give it a line `mark, {0}, x, y, z` or `point, {0}` above this one"
    )]
    NoPoint(String),
}

fn place(line: Option<u64>, column: Option<&str>) -> String {
    match (line, column) {
        (Some(line), Some(column)) => format!("line {line}, {column}: "),
        (Some(line), None) => format!("line {line}: "),
        (None, _) => String::new(),
    }
}

impl SheetFileFaultKind {
    pub(super) fn at(self, line: u64, column: Option<&str>) -> SheetFileFault {
        SheetFileFault {
            line: Some(line),
            column: column.map(str::to_owned),
            kind: self,
        }
    }

    pub(super) fn nowhere(self) -> SheetFileFault {
        SheetFileFault {
            line: None,
            column: None,
            kind: self,
        }
    }
}
