//! The text of a build file as a tree with places: where each field stands, and its comments.
//!
//! The values themselves are read by `ron` and `serde`; this tree gives their faults a place and a path, and lets an edited number be
//! replaced where it stands, so that a builder's comments and layout survive.

mod lex;
mod tree;

pub(crate) use tree::{Node, Outline, Value, leading_format, shown, starts_with_bracket};

/// What keeps a text from being a tree.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) struct SyntaxFault {
    /// Byte offset.
    pub at: usize,
    /// What was found there.
    pub found: String,
    /// What could have stood there.
    pub expected: String,
}
