//! Showing lengths as the shop reads them.

use crate::LengthUnit;

/// Finest parts of an inch that are shown as a fraction.
const FINEST: f64 = 64.0;
/// A length this close to such a part, inches, is shown as one.
const AS_GOOD_AS: f64 = 1e-6;
/// Beyond this many inches a fraction is no longer exact enough to look for.
const LONGEST_IN_PARTS: f64 = 1e6;

/// A length without its unit, in the style of the trade, so that [`crate::parse_length`] reads it back in the same unit.
///
/// Inches stand as a whole number and a fraction in lowest terms when they are within a millionth of an inch of a sixty-fourth, else as a
/// decimal of up to four digits. Millimetres stand as a decimal of up to two digits. What is shown as a fraction, and any length that the
/// digits hold in full, reads back as the same number; anything else is rounded, so a shown text that was not edited must not be read
/// back. What is no number shows as a dash.
///
/// ```
/// use trammel_build::{LengthUnit, format_length};
/// assert_eq!(format_length(-3.75, LengthUnit::Inch), "-3 3/4");
/// assert_eq!(format_length(12.6, LengthUnit::Inch), "12.6");
/// assert_eq!(format_length(320.675, LengthUnit::Millimetre), "320.68");
/// ```
#[must_use]
pub fn format_length(value: f64, unit: LengthUnit) -> String {
    if !value.is_finite() {
        return "-".to_owned();
    }
    match unit {
        LengthUnit::Inch => fraction(value).unwrap_or_else(|| decimal(value, 4)),
        LengthUnit::Millimetre => decimal(value, 2),
    }
}

fn fraction(value: f64) -> Option<String> {
    let parts = (value.abs() * FINEST).round();
    let close = (value.abs() - parts / FINEST).abs() <= AS_GOOD_AS;
    if !close || value.abs() > LONGEST_IN_PARTS {
        return None;
    }
    let whole = (parts / FINEST).floor();
    let (mut over, mut under) = (parts - whole * FINEST, FINEST);
    while over > 0.0 && over % 2.0 == 0.0 {
        over /= 2.0;
        under /= 2.0;
    }
    let sign = if value < 0.0 && parts > 0.0 { "-" } else { "" };
    Some(match (whole > 0.0, over > 0.0) {
        (_, false) => format!("{sign}{whole}"),
        (false, true) => format!("{sign}{over}/{under}"),
        (true, true) => format!("{sign}{whole} {over}/{under}"),
    })
}

fn decimal(value: f64, digits: usize) -> String {
    let text = format!("{value:.digits$}");
    let text = match text.contains('.') {
        true => text.trim_end_matches('0').trim_end_matches('.'),
        false => &text,
    };
    // Nought has no sign.
    if text == "-0" {
        "0".to_owned()
    } else {
        text.to_owned()
    }
}

/// What a tape with so many marks to the inch reads, and what is left over.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct TapeReading {
    /// The nearest mark, inches; exact.
    pub reading: f64,
    /// The length less the reading, inches.
    pub left_over: f64,
}

impl TapeReading {
    /// The nearest thirty-second.
    #[must_use]
    pub fn thirty_seconds(inches: f64) -> Self {
        Self::of(inches, 32)
    }

    /// The nearest of `marks` to the inch; the inch itself for nought marks.
    #[must_use]
    pub fn of(inches: f64, marks: u32) -> Self {
        let marks = f64::from(marks.max(1));
        let reading = (inches * marks).round() / marks;
        Self {
            reading,
            left_over: inches - reading,
        }
    }
}
