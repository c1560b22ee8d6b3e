//! Trammel's files: the build file and what is kept beside it.
//!
//! | where | what |
//! |---|---|
//! | [`read`], [`read_bytes`], [`read_text`] | a build out of text, or a [`ReadFault`] with line, column and what was expected |
//! | [`demos`] | the builds that come with the program |

mod convert;
mod demos;
mod explain;
mod fault;
mod format1;
mod nearest;
mod place;
mod read;
mod ron_text;

pub use demos::{Demo, demos};
pub use fault::{FORMAT, LARGEST_FILE, OpenFault, ReadFault, ReadFaultKind};
pub use place::Place;
pub use read::{read, read_bytes, read_text};
