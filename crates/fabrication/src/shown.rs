//! Lengths as the shop prints them, and what rounding to its step leaves over.

/// Millimetres in an inch, exact.
const INCH: f64 = trammel_strength::units::INCH;

/// The unit that leads, with the step that the shop works to.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ShopUnit {
    /// Inches, as a fraction with this many marks to the inch, and a decimal of three places.
    Inch {
        /// 16, 32 or 64.
        marks: u32,
    },
    /// Millimetres, in steps of this many tenths.
    Millimetre {
        /// 1, 5 or 10.
        tenths: u32,
    },
}

/// How lengths are printed.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct LengthStyle {
    /// The unit that leads.
    pub unit: ShopUnit,
    /// Whether the other unit follows in brackets.
    pub both: bool,
}

impl LengthStyle {
    /// Thirty-seconds of an inch, alone.
    pub const INCH: Self = Self {
        unit: ShopUnit::Inch { marks: 32 },
        both: false,
    };
    /// Half millimetres, alone.
    pub const MILLIMETRE: Self = Self {
        unit: ShopUnit::Millimetre { tenths: 5 },
        both: false,
    };

    /// The shop's step, mm.
    #[must_use]
    pub fn step(&self) -> f64 {
        match self.unit {
            ShopUnit::Inch { marks } => INCH / f64::from(marks.max(1)),
            ShopUnit::Millimetre { tenths } => f64::from(tenths.max(1)) / 10.0,
        }
    }

    /// A length (mm) at the nearest step of the shop, mm.
    #[must_use]
    pub fn rounded(&self, length: f64) -> f64 {
        let step = self.step();
        (length / step).round() * step
    }

    /// A length (mm) as printed: `1 17/32 (1.531)`, `38.9`, with the other unit in square brackets if wanted. A fraction that is rounded by more than half a
    /// thousandth has a sign for which way the length goes beyond it, `1 1/2+` or `1 1/2-`. No number shows as a dash.
    #[must_use]
    pub fn text(&self, length: f64) -> String {
        if !length.is_finite() {
            return "-".to_owned();
        }
        let (inches, mm) = (
            |marks: u32| {
                format!(
                    "{} ({:.3})",
                    fraction(length / INCH, marks),
                    plain_zero(length / INCH, 1000.0)
                )
            },
            format!("{:.1}", plain_zero(length, 10.0)),
        );
        match (self.unit, self.both) {
            (ShopUnit::Inch { marks }, false) => inches(marks),
            (ShopUnit::Inch { marks }, true) => format!("{} [{mm} mm]", inches(marks)),
            (ShopUnit::Millimetre { .. }, false) => mm,
            (ShopUnit::Millimetre { .. }, true) => {
                format!("{mm} [{}]", fraction(length / INCH, 64))
            }
        }
    }

    /// The unit's name on a sheet.
    #[must_use]
    pub fn unit_word(&self) -> &'static str {
        match (self.unit, self.both) {
            (ShopUnit::Inch { .. }, false) => "inches, fraction (decimal)",
            (ShopUnit::Inch { .. }, true) => "inches, fraction (decimal) [mm]",
            (ShopUnit::Millimetre { .. }, false) => "mm",
            (ShopUnit::Millimetre { .. }, true) => "mm [inches]",
        }
    }
}

/// Nought has no sign.
fn plain_zero(value: f64, per_unit: f64) -> f64 {
    if (value * per_unit).round() == 0.0 {
        0.0
    } else {
        value
    }
}

/// What is off the fraction by less than this, inches, is not worth a sign.
const UNSIGNED: f64 = 0.0005;

/// Inches as a whole number and a fraction in lowest terms.
fn fraction(inches: f64, marks: u32) -> String {
    let per_inch = f64::from(marks.max(1));
    let parts = (inches.abs() * per_inch).round();
    let over = inches.abs() - parts / per_inch;
    let whole = (parts / per_inch).floor();
    let (mut top, mut bottom) = (parts - whole * per_inch, per_inch);
    while top > 0.0 && top % 2.0 == 0.0 && bottom % 2.0 == 0.0 {
        top /= 2.0;
        bottom /= 2.0;
    }
    let sign = if inches < 0.0 && parts > 0.0 { "-" } else { "" };
    let beyond = match over {
        over if over > UNSIGNED => "+",
        over if over < -UNSIGNED => "-",
        _ => "",
    };
    match (whole > 0.0, top > 0.0) {
        (_, false) => format!("{sign}{whole}{beyond}"),
        (false, true) => format!("{sign}{top}/{bottom}{beyond}"),
        (true, true) => format!("{sign}{whole} {top}/{bottom}{beyond}"),
    }
}
