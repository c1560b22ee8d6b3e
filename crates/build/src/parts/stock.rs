//! Stock and the units it is told in.

use crate::defaults::NEWTONS_PER_POUND_FORCE;

/// MPa in 1000 lbf/in^2.
const MPA_PER_KSI: f64 = 1000.0 * NEWTONS_PER_POUND_FORCE / (25.4 * 25.4);
/// kPa in 1 lbf/in^2.
const KPA_PER_PSI: f64 = MPA_PER_KSI;

/// A force in the unit it was typed in.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Force {
    /// Newtons.
    Newtons(f64),
    /// Pounds-force.
    PoundsForce(f64),
}

impl Force {
    /// N.
    #[must_use]
    pub fn n(self) -> f64 {
        match self {
            Self::Newtons(v) => v,
            Self::PoundsForce(v) => v * NEWTONS_PER_POUND_FORCE,
        }
    }
}

/// A stress in the unit it was typed in.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Stress {
    /// N/mm^2.
    Megapascals(f64),
    /// 1000 lbf/in^2.
    Ksi(f64),
}

impl Stress {
    /// MPa.
    #[must_use]
    pub fn mpa(self) -> f64 {
        match self {
            Self::Megapascals(v) => v,
            Self::Ksi(v) => v * MPA_PER_KSI,
        }
    }
}

/// A tyre pressure in the unit it was typed in.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Pressure {
    /// Kilopascals.
    Kilopascals(f64),
    /// lbf/in^2.
    Psi(f64),
}

impl Pressure {
    /// kPa.
    #[must_use]
    pub fn kpa(self) -> f64 {
        match self {
            Self::Kilopascals(v) => v,
            Self::Psi(v) => v * KPA_PER_PSI,
        }
    }
}

/// A cross-section, the build's unit.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Section {
    /// Round tube: outer diameter and wall.
    Round(f64, f64),
    /// Square tube: side and wall.
    Square(f64, f64),
    /// Round bar: diameter.
    Bar(f64),
}

impl Section {
    /// What it measures across, the build's unit.
    #[must_use]
    pub fn across(self) -> f64 {
        match self {
            Self::Round(across, _) | Self::Square(across, _) | Self::Bar(across) => across,
        }
    }

    /// Thickness of the wall; a bar's diameter.
    #[must_use]
    pub fn wall(self) -> f64 {
        match self {
            Self::Round(_, wall) | Self::Square(_, wall) | Self::Bar(wall) => wall,
        }
    }
}

/// A length of stock.
#[derive(Clone, Debug, PartialEq)]
pub struct Tube {
    /// Its section.
    pub section: Section,
    /// Its material by name, the build's own or one of the table; [`crate::defaults::TUBE_MATERIAL`] where it is left out.
    pub material: Option<String>,
}

/// A material that the builder enters. It goes before one of the same name in the table.
#[derive(Clone, Debug, PartialEq)]
pub struct MaterialSpec {
    /// Its name.
    pub name: String,
    /// Least yield strength.
    pub yield_strength: Stress,
    /// Least tensile strength.
    pub tensile: Option<Stress>,
    /// Modulus of elasticity; steel's where it is left out.
    pub modulus: Option<Stress>,
    /// Where the figures come from: a certificate, a supplier's sheet.
    pub source: String,
}
