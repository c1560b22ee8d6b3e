//! The commands that work without a window.

pub(crate) mod check;
pub(crate) mod demo;
mod findings_json;
mod findings_text;
pub(crate) mod picture;
pub(crate) mod sweep;
