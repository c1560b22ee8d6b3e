//! Numbers in the words of the screen.

use trammel_analysis::UnitKind;
use trammel_build::{LengthUnit, defaults::NEWTONS_PER_POUND_FORCE, format_length};
pub use trammel_build::{decimal, signed};
use trammel_geometry::{Limit, Unreachable};

/// Which member runs out and where, such as `tie rod runs out at travel +2.31 in`.
#[must_use]
pub fn runs_out(end: &Unreachable, unit: LengthUnit) -> String {
    let (what, mm) = match end.limit {
        Limit::Travel(mm) => ("travel", mm),
        Limit::Rack(mm) => ("rack", mm),
    };
    let places = match unit {
        LengthUnit::Inch => 2,
        LengthUnit::Millimetre => 0,
    };
    let at = signed(unit.from_mm(mm), places);
    format!("{} runs out at {what} {at} {}", end.member, unit.sign())
}

/// A length in mm as the build's unit would show it: a fraction on the tape in inches.
#[must_use]
pub fn length(mm: f64, unit: LengthUnit) -> String {
    format!("{} {}", tape(mm, unit), unit.sign())
}

/// A length of several paces: feet and inches, or metres.
#[must_use]
pub fn long_length(mm: f64, unit: LengthUnit) -> String {
    match unit {
        LengthUnit::Inch => {
            let inches = unit.from_mm(mm).round();
            format!(
                "{}′ {}″",
                decimal((inches / 12.0).floor(), 0),
                decimal(inches % 12.0, 0)
            )
        }
        LengthUnit::Millimetre => format!("{} m", decimal(mm / 1000.0, 2)),
    }
}

/// The same without the unit, to the nearest 1/32 in or 0.1 mm.
#[must_use]
pub fn tape(mm: f64, unit: LengthUnit) -> String {
    match unit {
        LengthUnit::Inch => {
            let nearest = (unit.from_mm(mm) * 32.0).round() / 32.0;
            typeset(&format_length(nearest, unit))
        }
        LengthUnit::Millimetre => decimal(mm, 1),
    }
}

/// What newtons are multiplied by to be shown beside lengths of this unit, and the sign of it.
#[must_use]
pub fn force_unit(unit: LengthUnit) -> (f64, &'static str) {
    match unit {
        LengthUnit::Inch => (1.0 / NEWTONS_PER_POUND_FORCE, "lbf"),
        LengthUnit::Millimetre => (1.0, "N"),
    }
}

/// The same of newton millimetres.
#[must_use]
pub fn moment_unit(unit: LengthUnit) -> (f64, &'static str) {
    match unit {
        LengthUnit::Inch => (1.0 / (NEWTONS_PER_POUND_FORCE * 25.4), "lbf·in"),
        LengthUnit::Millimetre => (1e-3, "N·m"),
    }
}

/// A factor, rounded down: never shown better than it is.
#[must_use]
pub fn factor(value: f64) -> String {
    let decimals = if value < 0.1 { 2 } else { 1 };
    let scale = 10_f64.powi(decimals);
    match value {
        v if v >= 100.0 => "over 100".to_owned(),
        v => decimal((v * scale + 1e-6).floor() / scale, decimals as usize),
    }
}

/// A number with three digits that count.
#[must_use]
pub fn figure(value: f64) -> String {
    decimal(
        value,
        match value.abs() {
            v if v >= 100.0 => 0,
            v if v >= 10.0 => 1,
            v if v >= 1.0 => 2,
            _ => 3,
        },
    )
}

/// The nearest whole number of steps, mm.
#[must_use]
pub fn on_step(mm: f64, step: f64) -> f64 {
    (mm / step).round() * step
}

/// A typed number with a true minus sign.
#[must_use]
pub fn typeset(text: &str) -> String {
    text.replacen('-', "−", usize::from(text.starts_with('-')))
}

/// Factor from kernel units to what an axis shows.
#[must_use]
pub fn axis_factor(kind: UnitKind, unit: LengthUnit) -> f64 {
    match kind {
        UnitKind::Angle => 1f64.to_degrees(),
        UnitKind::Length => 1.0 / unit.mm(),
        UnitKind::Ratio | UnitKind::Percent => 1.0,
    }
}

/// The sign behind a number of this kind.
#[must_use]
pub fn axis_sign(kind: UnitKind, unit: LengthUnit) -> &'static str {
    match kind {
        UnitKind::Angle => "°",
        UnitKind::Length => unit.sign(),
        UnitKind::Ratio => "",
        UnitKind::Percent => "%",
    }
}
