//! The part of the build file that belongs to setting up: its fields, and how they become a build's.

pub(crate) mod file;
pub(crate) mod read;
