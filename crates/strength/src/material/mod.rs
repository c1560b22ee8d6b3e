//! Materials of tubes, plates and bars that are welded up: least yield and tensile strength, and stiffness.
//!
//! A strength is asked for a wall thickness, since some standards tell thin from thick. Bolts and turned rack ends have their own table
//! ([`crate::grade`]). Welding lowers the strength of cold-drawn and normalised tube beside the weld; that is not in these figures.

mod table;

use std::fmt;

use crate::grade::{Printed, StressUnit};
use crate::number::{BadNumber, positive};
use crate::source::Source;

/// Modulus of elasticity of carbon and low-alloy steels, MPa.
pub const STEEL_MODULUS: f64 = 207_000.0;
/// Source of [`STEEL_MODULUS`].
pub const STEEL_MODULUS_SOURCE: Source = Source::from_memory(
    "Shigley, Mechanical Engineering Design",
    "Table A-5 (30 Mpsi, 207 GPa)",
);
/// Shear modulus of the same, MPa: the same table's 11.5 Mpsi.
pub const STEEL_SHEAR_MODULUS: f64 = 79_300.0;
/// Yield strength in shear over that in tension, by distortion energy (1/sqrt 3, as printed in Shigley section 5-5).
pub const SHEAR_YIELD_SHARE: f64 = 0.577;

/// Why no material was found.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum MaterialError {
    /// Nothing in the table fits, or more than one.
    #[error(
        "\u{201c}{typed}\u{201d} fits {} materials of the table; expected one of: {}; no material was chosen", candidates_word(.candidates), names(.candidates)
    )]
    NotOne {
        /// What was typed.
        typed: String,
        /// The materials that fit; empty for none.
        candidates: Vec<&'static str>,
    },
    /// The wall is outside what the standard covers.
    #[error(
        "{material} covers walls up to {up_to} mm; the wall here is {wall} mm; its strength is not known"
    )]
    WallNotCovered {
        /// Which material.
        material: &'static str,
        /// Wall asked for, mm.
        wall: f64,
        /// Thickest wall covered, mm.
        up_to: f64,
    },
    /// A number that can't be computed with.
    #[error(transparent)]
    BadNumber(#[from] BadNumber),
}

fn candidates_word(candidates: &[&'static str]) -> String {
    match candidates.len() {
        0 => "no".to_owned(),
        several => several.to_string(),
    }
}

fn names(candidates: &[&'static str]) -> String {
    if candidates.is_empty() {
        let all: Vec<_> = ListedMaterial::all().iter().map(|m| m.name).collect();
        all.join(", ")
    } else {
        candidates.join(", ")
    }
}

/// Strength up to a wall thickness.
#[derive(Clone, Copy, Debug, PartialEq)]
struct WallBand {
    /// Thickest wall, mm.
    up_to: f64,
    yield_strength: Printed,
    tensile: Printed,
}

/// A material of the closed table.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ListedMaterial {
    name: &'static str,
    bands: &'static [WallBand],
    source: Source,
}

impl ListedMaterial {
    /// Every material of the table.
    #[must_use]
    pub fn all() -> &'static [Self] {
        table::MATERIALS
    }

    /// The name shown.
    #[must_use]
    pub fn name(&self) -> &'static str {
        self.name
    }
}

/// What a part is made of.
#[derive(Clone, Debug, PartialEq)]
pub enum Material {
    /// A material of the table; steel.
    Listed(ListedMaterial),
    /// A material that the user entered.
    Own(OwnMaterial),
}

/// The user's own material.
#[derive(Clone, Debug, PartialEq)]
pub struct OwnMaterial {
    name: String,
    strength: MaterialStrength,
}

/// What a material withstands.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct MaterialStrength {
    /// Least yield strength.
    pub yield_strength: Printed,
    /// Least tensile strength, where known.
    pub tensile: Option<Printed>,
    /// Modulus of elasticity, MPa.
    pub modulus: f64,
    /// Where the strengths come from.
    pub source: Source,
}

impl MaterialStrength {
    /// Least yield strength, MPa.
    #[must_use]
    pub fn yield_mpa(&self) -> f64 {
        self.yield_strength.mpa()
    }

    /// Least yield strength in shear, MPa.
    #[must_use]
    pub fn shear_yield_mpa(&self) -> f64 {
        SHEAR_YIELD_SHARE * self.yield_mpa()
    }
}

impl Material {
    /// The material that somebody means: every word typed has to be in its name (`A36`, `4130`, `1020 dom stress relieved`).
    ///
    /// # Errors
    /// Nothing fits, or several do; both name what is known.
    pub fn find(typed: &str) -> Result<Self, MaterialError> {
        let wanted = words(typed);
        let all = ListedMaterial::all();
        if let Some(exact) = all.iter().find(|m| words(m.name) == wanted) {
            return Ok(Self::Listed(*exact));
        }
        let fits: Vec<_> = all
            .iter()
            .filter(|m| {
                let has = words(m.name);
                !wanted.is_empty() && wanted.iter().all(|word| has.contains(word))
            })
            .collect();
        match fits.as_slice() {
            [one] => Ok(Self::Listed(**one)),
            several => Err(MaterialError::NotOne {
                typed: typed.trim().to_owned(),
                candidates: several.iter().map(|m| m.name).collect(),
            }),
        }
    }

    /// The user's own material: any name, yield strength, tensile strength if known, and modulus of elasticity, MPa.
    ///
    /// # Errors
    /// A figure that is not finite and above zero.
    pub fn own(
        name: impl Into<String>,
        yield_strength: f64,
        tensile: Option<f64>,
        modulus: f64,
    ) -> Result<Self, BadNumber> {
        let mpa = |value| Printed {
            value,
            unit: StressUnit::Mpa,
        };
        let strength = MaterialStrength {
            yield_strength: mpa(positive("the yield strength", yield_strength)?),
            tensile: tensile
                .map(|value| positive("the tensile strength", value).map(mpa))
                .transpose()?,
            modulus: positive("the modulus of elasticity", modulus)?,
            source: Source::USER,
        };
        Ok(Self::Own(OwnMaterial {
            name: name.into(),
            strength,
        }))
    }

    /// The name shown.
    #[must_use]
    pub fn name(&self) -> &str {
        match self {
            Self::Listed(listed) => listed.name,
            Self::Own(own) => &own.name,
        }
    }

    /// The strength at this wall or plate thickness, mm.
    ///
    /// # Errors
    /// A thickness that is not finite and above zero, or thicker than the standard covers.
    pub fn strength(&self, wall: f64) -> Result<MaterialStrength, MaterialError> {
        positive("the wall thickness", wall)?;
        match self {
            Self::Own(own) => Ok(own.strength),
            Self::Listed(listed) => {
                // A thickness converted from inches may be a rounding error above its band.
                let fits = |band: &&WallBand| wall * (1.0 - 1e-9) <= band.up_to;
                let band = listed.bands.iter().find(fits).ok_or_else(|| {
                    let up_to = listed.bands.last().map_or(0.0, |band| band.up_to);
                    MaterialError::WallNotCovered {
                        material: listed.name,
                        wall,
                        up_to,
                    }
                })?;
                Ok(MaterialStrength {
                    yield_strength: band.yield_strength,
                    tensile: Some(band.tensile),
                    modulus: STEEL_MODULUS,
                    source: listed.source,
                })
            }
        }
    }
}

impl fmt::Display for Material {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.name())
    }
}

fn words(text: &str) -> Vec<String> {
    text.to_lowercase()
        .split(|c: char| !c.is_alphanumeric())
        .filter(|word| !word.is_empty())
        .map(str::to_owned)
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::KSI;

    fn yield_and_tensile(name: &str, wall: f64) -> (f64, f64) {
        let strength = Material::find(name).unwrap().strength(wall).unwrap();
        (strength.yield_mpa(), strength.tensile.unwrap().mpa())
    }

    /// ASTM A513 table for stress-relieved drawn tube, vendor's copy: 1015 50/60, 1020 55/65, 1026 65/75 ksi.
    #[test]
    fn drawn_tube_as_printed() {
        for (name, yields, tensile) in [
            ("1015 DOM stress relieved", 50.0, 60.0),
            ("1020 dom stress-relieved", 55.0, 65.0),
            ("1026 stress relieved", 65.0, 75.0),
        ] {
            let found = yield_and_tensile(name, 3.0);
            assert!(
                (found.0 - yields * KSI).abs() < 1e-9 && (found.1 - tensile * KSI).abs() < 1e-9
            );
        }
    }

    /// From memory (AMS 6360): 4130 normalised, 75/95 ksi up to a wall of 0.188 in, 70/90 above.
    #[test]
    fn a_thick_wall_is_weaker() {
        let thin = yield_and_tensile("4130", 0.188 * 25.4);
        let thick = yield_and_tensile("4130", 0.19 * 25.4);
        assert!((thin.0 - 75.0 * KSI).abs() < 1e-9);
        assert!((thick.0 - 70.0 * KSI).abs() < 1e-9);
        assert!((thick.1 - 90.0 * KSI).abs() < 1e-9);
    }

    #[test]
    fn names_are_found_or_asked_back() {
        assert!(Material::find("a36").is_ok());
        let several = Material::find("1020").unwrap_err();
        assert!(
            several.to_string().contains("fits 2 materials"),
            "{several}"
        );
        let none = Material::find("cheese").unwrap_err().to_string();
        assert!(
            none.contains("fits no materials") && none.contains("ASTM A36"),
            "{none}"
        );
        assert!(Material::find("  ").is_err());
        for material in ListedMaterial::all() {
            assert_eq!(
                Material::find(material.name()).unwrap().name(),
                material.name()
            );
        }
    }

    #[test]
    fn own_materials_and_bad_numbers() {
        let own = Material::own("6061-T6", 240.0, Some(290.0), 69_000.0).unwrap();
        let strength = own.strength(3.0).unwrap();
        assert_eq!(strength.yield_mpa(), 240.0);
        assert_eq!(strength.source, Source::USER);
        assert!(Material::own("x", 0.0, None, 1.0).is_err());
        assert!(Material::own("x", 1.0, Some(f64::NAN), 1.0).is_err());
        assert!(Material::own("x", 1.0, None, -1.0).is_err());
        let a36 = Material::find("A36").unwrap();
        assert!(a36.strength(f64::NAN).is_err());
        assert!(matches!(
            a36.strength(500.0),
            Err(MaterialError::WallNotCovered { .. })
        ));
    }

    #[test]
    fn a_material_is_shown_by_its_name() {
        assert_eq!(
            Material::own("shop steel", 250.0, None, 207_000.0)
                .unwrap()
                .to_string(),
            "shop steel"
        );
    }
}
