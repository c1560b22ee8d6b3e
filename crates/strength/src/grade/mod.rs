//! Bolt grades and bar steels: what a rack end, a bolt or a bar withstands.
//!
//! Figures are kept as their standard prints them (ksi or MPa) and converted on reading. A standard may give another figure for
//! another size, so a strength is always asked for a size: the nominal diameter of thread or bar.

mod lookup;
mod table;

use std::fmt;

pub use lookup::GradeError;

use crate::number::{BadNumber, positive};
use crate::source::Source;
use crate::units::KSI;

/// The unit in which a standard prints a strength.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum StressUnit {
    /// 1000 pounds-force per square inch.
    Ksi,
    /// N/mm^2.
    Mpa,
}

/// A strength as printed.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Printed {
    /// The number in the standard.
    pub value: f64,
    /// Its unit there.
    pub unit: StressUnit,
}

impl Printed {
    /// The strength in MPa.
    pub fn mpa(self) -> f64 {
        match self.unit {
            StressUnit::Ksi => self.value * KSI,
            StressUnit::Mpa => self.value,
        }
    }
}

impl fmt::Display for Printed {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self.unit {
            StressUnit::Ksi => write!(f, "{} ksi", self.value),
            StressUnit::Mpa => write!(f, "{} MPa", self.value),
        }
    }
}

/// What a grade withstands at a size: least values of its standard.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Strength {
    /// Proof stress, where the standard has one.
    pub proof: Option<Printed>,
    /// Yield strength: the limit of every static check here.
    pub yield_strength: Printed,
    /// Tensile strength, where known.
    pub tensile: Option<Printed>,
    /// Where the three come from.
    pub source: Source,
}

/// Strength over a range of sizes.
#[derive(Clone, Copy, Debug, PartialEq)]
struct SizeBand {
    /// Largest nominal diameter, mm, that the band covers.
    up_to: f64,
    strength: Strength,
}

/// The family a listed grade belongs to.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Family {
    /// SAE J429 bolt grades, inch.
    SaeJ429,
    /// ISO 898-1 property classes, metric.
    Iso898,
    /// Bar steel from which a rack end or rod may be turned.
    BarSteel,
}

/// A grade of the closed table.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ListedGrade {
    name: &'static str,
    family: Family,
    /// The number people say: `8`, `8.8`, `1018`.
    number: &'static str,
    /// The condition of a bar steel, as words that may be typed; empty for bolts.
    conditions: &'static [&'static str],
    /// Smallest nominal diameter, mm, that the standard covers.
    from: f64,
    bands: &'static [SizeBand],
}

impl ListedGrade {
    /// Every grade of the table: SAE J429, ISO 898-1, bar steels.
    pub fn all() -> &'static [Self] {
        table::GRADES
    }

    /// The name shown: `SAE J429 grade 8`, `ISO 898-1 class 10.9`, `1018 cold drawn`.
    pub fn name(&self) -> &'static str {
        self.name
    }

    /// Its family.
    pub fn family(&self) -> Family {
        self.family
    }

    fn strength(&self, diameter: f64) -> Option<Strength> {
        // A nominal size that was converted from inches may be a rounding error above its band.
        let reach = diameter * (1.0 - 1e-9);
        let covered = diameter >= self.from * (1.0 - 1e-9);
        self.bands
            .iter()
            .find(|band| covered && reach <= band.up_to)
            .map(|band| band.strength)
    }
}

/// A grade's name without its standard: `grade 8` for `SAE J429 grade 8`, `class 8.8` for `ISO 898-1 class 8.8`.
pub fn short_name(name: &str) -> &str {
    let name = name.strip_prefix("SAE J429 ").unwrap_or(name);
    name.strip_prefix("ISO 898-1 ").unwrap_or(name)
}

/// A material whose yield strength the user gives.
#[derive(Clone, Debug, PartialEq)]
pub struct OwnGrade {
    name: String,
    yield_strength: f64,
}

impl OwnGrade {
    /// The user's own material: any name, yield strength in MPa.
    ///
    /// # Errors
    /// A yield strength that is not finite and above zero.
    pub fn new(name: impl Into<String>, yield_strength: f64) -> Result<Self, BadNumber> {
        positive("the yield strength", yield_strength)?;
        Ok(Self {
            name: name.into(),
            yield_strength,
        })
    }
}

/// What a part is made of.
#[derive(Clone, Debug, PartialEq)]
pub enum Grade {
    /// A grade of the table.
    Listed(ListedGrade),
    /// A material that the user entered.
    Own(OwnGrade),
}

impl Grade {
    /// The grade that somebody means: `grade 8`, `SAE 8`, `G5`, `8.8`, `class 10,9`, `1018 cold drawn`.
    ///
    /// # Errors
    /// Nothing of the table fits, or several do (a bar steel without its condition); both name what is known.
    pub fn find(typed: &str) -> Result<Self, GradeError> {
        lookup::find(typed).map(Self::Listed)
    }

    /// The name shown.
    pub fn name(&self) -> &str {
        match self {
            Self::Listed(listed) => listed.name,
            Self::Own(own) => &own.name,
        }
    }

    /// The strength at this nominal diameter, mm.
    ///
    /// # Errors
    /// A diameter outside the sizes that the standard covers, or not finite and above zero.
    pub fn strength(&self, diameter: f64) -> Result<Strength, GradeError> {
        positive("the nominal diameter", diameter)?;
        match self {
            Self::Listed(listed) => {
                listed
                    .strength(diameter)
                    .ok_or_else(|| GradeError::SizeNotCovered {
                        grade: listed.name,
                        diameter,
                        from: listed.from,
                        up_to: listed.bands.last().map_or(listed.from, |band| band.up_to),
                    })
            }
            Self::Own(own) => Ok(Strength {
                proof: None,
                yield_strength: Printed {
                    value: own.yield_strength,
                    unit: StressUnit::Mpa,
                },
                tensile: None,
                source: Source::USER,
            }),
        }
    }
}

impl fmt::Display for Grade {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.name())
    }
}

#[cfg(test)]
mod tests;
