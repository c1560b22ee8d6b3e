//! What keeps a text from being a build.

use std::path::PathBuf;

use trammel_build::BuildFault;

use crate::{Place, in_plain_words};

/// The format that this crate writes, and the newest it reads.
pub const FORMAT: u32 = 1;

/// The largest file that is read, bytes: a build takes a few thousand.
pub const LARGEST_FILE: u64 = 4 * 1024 * 1024;

/// Why a text is not a build: where, and what.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
#[error("{}{kind}", place.map(|p| format!("{p}: ")).unwrap_or_default())]
pub struct ReadFault {
    /// Where, if it is about one place.
    pub place: Option<Place>,
    /// What.
    pub kind: ReadFaultKind,
}

/// What is wrong with a text that should be a build.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum ReadFaultKind {
    /// Bytes that are no text.
    #[error(
        "this is not a text file: byte {byte} is not UTF-8; expected a build file, which is plain text"
    )]
    NotText {
        /// Which byte, from 0.
        byte: usize,
    },
    /// More than a build can need.
    #[error(
        "the file has {bytes} bytes; expected a build file of at most {LARGEST_FILE}, so it was not read"
    )]
    TooLarge {
        /// Its size.
        bytes: u64,
    },
    /// Nothing there.
    #[error(
        "the file is empty; expected a build file, which starts with `(` and `format: {FORMAT}`"
    )]
    Empty,
    /// Not written as such files are.
    #[error("found {found}, expected {expected}")]
    Syntax {
        /// What was found.
        found: String,
        /// What could stand there.
        expected: String,
    },
    /// Something else than fields in brackets.
    #[error(
        "this is not a build file: found `{found}`, expected `(` and fields, the first of them `format: {FORMAT}`"
    )]
    NotBuild {
        /// What the file holds instead.
        found: String,
    },
    /// No version.
    #[error(
        "the file does not say its format; expected `format: {FORMAT}` as its first field, so that it is not misread"
    )]
    NoFormat,
    /// The version is not a number that ever was.
    #[error("the format is {found}; expected `format: {FORMAT}`")]
    OddFormat {
        /// What it says.
        found: String,
    },
    /// A version that does not exist yet here.
    #[error(
        "the file is format {found}, and this version of Trammel reads up to format {FORMAT}; nothing was read, so open it with a newer version"
    )]
    NewerFormat {
        /// What it says.
        found: String,
    },
    /// A name that nothing has.
    #[error("unknown field `{name}` in {parent}; {}", expected_names(nearest.as_deref(), known))]
    UnknownField {
        /// Where it stands.
        parent: String,
        /// The name.
        name: String,
        /// The known name that is most like it, if one is.
        nearest: Option<String>,
        /// All names that can stand there.
        known: Vec<String>,
    },
    /// A field that must be there.
    #[error("{parent} has no {field}; expected `{field}: {expected}`")]
    Missing {
        /// Where it should stand.
        parent: String,
        /// Its name.
        field: String,
        /// What it would hold.
        expected: String,
    },
    /// A field twice.
    #[error("{path} stands here a second time; expected it once")]
    Duplicate {
        /// The field.
        path: String,
    },
    /// A value of the wrong sort.
    #[error("{path} is {found}; expected {expected}")]
    Wrong {
        /// The field.
        path: String,
        /// What stands there.
        found: String,
        /// What could.
        expected: String,
    },
    /// All is well written, but does not make a build.
    #[error("{0}")]
    Unusable(#[from] BuildFault),
    /// Anything else that the reader of values did not like.
    #[error("{0}")]
    Other(String),
}

fn expected_names(nearest: Option<&str>, known: &[String]) -> String {
    match nearest {
        Some(name) => format!("the nearest known name is `{name}`"),
        None => format!("expected one of {}", known.join(", ")),
    }
}

/// Why a file could not be opened as a build.
#[derive(Debug, thiserror::Error)]
pub enum OpenFault {
    /// The file can't be read at all.
    #[error("{} can't be read: {}", path.display(), in_plain_words(source))]
    File {
        /// Which file.
        path: PathBuf,
        /// What the system says.
        source: std::io::Error,
    },
    /// A folder, a pipe, a device: reading one may wait for ever.
    #[error("{} can't be read: it is {found}, expected a file", path.display())]
    NotAFile {
        /// What was given.
        path: PathBuf,
        /// What it is.
        found: &'static str,
    },
    /// It can be read but is not a build.
    #[error("{}: {fault}", path.display())]
    Build {
        /// Which file.
        path: PathBuf,
        /// What is wrong.
        fault: Box<ReadFault>,
    },
}
