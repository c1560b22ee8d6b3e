//! A hardpoint that stands elsewhere than another, in a line.

use egui::{RichText, Ui};
use trammel_analysis::surveyed;
use trammel_build::LengthUnit;
use trammel_setup::Moved;

use super::plain;

/// Which point of what, by how much forward, outboard and up, and what it alone does to toe.
pub(super) fn show(ui: &mut Ui, unit: LengthUnit, of: &str, moved: &Moved) {
    plain(ui, RichText::new(surveyed::words(of, unit, moved)).small());
}
