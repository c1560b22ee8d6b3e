//! A hardpoint that stands elsewhere than another, in a line.

use egui::{RichText, Ui};
use trammel_build::{LengthUnit, PointName};
use trammel_setup::Moved;

use super::plain;

/// Which point of what, by how much forward, outboard and up, and what it alone does to toe.
pub(super) fn show(ui: &mut Ui, unit: LengthUnit, of: &str, moved: &Moved) {
    let digits = match unit {
        LengthUnit::Inch => 3,
        LengthUnit::Millimetre => 1,
    };
    let by = [moved.by.x, moved.by.y, moved.by.z]
        .map(|v| format!("{:+.digits$}", unit.from_mm(v)))
        .join(", ");
    let name = moved.point.name();
    let label = PointName::from_path(name).map_or(name, |p| p.label());
    let toe = moved.toe_change.map_or_else(String::new, |t| {
        format!("; {:+.2}° of toe change", t.to_degrees())
    });
    let text = format!("{of}: {label}: {by} {}{toe}", unit.sign());
    plain(ui, RichText::new(text).small());
}
