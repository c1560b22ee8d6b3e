//! The window's content as a picture, without a display.

use std::path::Path;

use trammel_build::Build;

use crate::fault::Fault;

/// Draws the window's content for a build and writes it as a PNG.
pub(crate) fn draw(_build: &Build, _out: &Path) -> Result<(), Fault> {
    Err(Fault::Missing("this version draws no pictures"))
}
