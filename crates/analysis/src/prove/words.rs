//! How rows are named and written.

use trammel_build::{LengthUnit, PointName};
use trammel_geometry::ArmName;
use trammel_strength::units::{KSI, POUND_FORCE};

/// The word of an arm.
pub(super) fn arm(arm: ArmName) -> &'static str {
    match arm {
        ArmName::Upper => "upper",
        ArmName::Lower => "lower",
    }
}

/// `tie rod, inner joint` from `Tie rod, inner joint`.
pub(super) fn point(point: PointName) -> String {
    let mut letters = point.label().chars();
    letters.next().map_or_else(String::new, |first| {
        first.to_lowercase().chain(letters).collect()
    })
}

/// A kernel unit as it is shown beside lengths of this unit, with what a value has to be multiplied by.
pub(super) fn shown_unit(kernel: &'static str, unit: LengthUnit) -> (f64, &'static str) {
    match (kernel, unit) {
        ("mm", unit) => (unit.from_mm(1.0), unit.sign()),
        ("rad", _) => (1.0_f64.to_degrees(), "deg"),
        ("of what it bears", _) => (1.0, ""),
        ("MPa", LengthUnit::Inch) => (1.0 / KSI, "ksi"),
        ("N", LengthUnit::Inch) => (1.0 / POUND_FORCE, "lbf"),
        (other, _) => (1.0, other),
    }
}
