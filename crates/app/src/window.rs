//! The window: a thin shell around the screen.

use std::path::Path;

use crate::fault::Fault;

/// Opens the window, on a build if one is given.
pub(crate) fn open(_build: Option<&Path>) -> Result<(), Fault> {
    Err(Fault::Missing(
        "this version has no window; without one work: sweep, check, demo",
    ))
}
