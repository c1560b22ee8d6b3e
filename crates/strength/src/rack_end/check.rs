//! What comes out: loads, stresses and factors at the two sections.

use crate::grade::Strength;
use crate::stress::{RoundSection, SectionLoads, SectionStress};

/// One of the two sections of a rack end.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Section {
    /// Where the threaded end leaves the bar.
    RackFace,
    /// Where the rack leaves its housing.
    BoreMouth,
}

/// A section compared with the yield strength of its material.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SectionCheck {
    /// What it carries.
    pub loads: SectionLoads,
    /// The nominal stresses that this causes.
    pub stress: SectionStress,
    /// What it is compared with, and the source.
    pub strength: Strength,
}

impl SectionCheck {
    pub(super) fn of(section: RoundSection, loads: SectionLoads, strength: Strength) -> Self {
        Self {
            loads,
            stress: section.stress_under(&loads),
            strength,
        }
    }

    /// Combined stress, MPa.
    pub fn von_mises(&self) -> f64 {
        self.stress.von_mises()
    }

    /// Yield strength over combined stress; `None` without any load.
    pub fn factor(&self) -> Option<f64> {
        self.stress
            .factor_against(self.strength.yield_strength.mpa())
    }
}

/// The bore mouth: as far as it is known what is cut there.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum BoreMouthCheck {
    /// The section is not known.
    LoadsOnly(SectionLoads),
    /// The section is known, its material not.
    Stress(SectionLoads, SectionStress),
    /// Both are known.
    Checked(SectionCheck),
}

impl BoreMouthCheck {
    /// What the section carries.
    pub fn loads(&self) -> SectionLoads {
        match self {
            Self::LoadsOnly(loads) | Self::Stress(loads, _) => *loads,
            Self::Checked(check) => check.loads,
        }
    }

    /// The stresses, when the section is known.
    pub fn stress(&self) -> Option<SectionStress> {
        match self {
            Self::LoadsOnly(_) => None,
            Self::Stress(_, stress) => Some(*stress),
            Self::Checked(check) => Some(check.stress),
        }
    }

    /// The factor, when section and material are known and there is a load.
    pub fn factor(&self) -> Option<f64> {
        match self {
            Self::LoadsOnly(_) | Self::Stress(..) => None,
            Self::Checked(check) => check.factor(),
        }
    }
}

/// A rack end under one force.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct RackEndStress {
    /// At the rack face: always through the thread.
    pub rack_face: SectionCheck,
    /// At the bore mouth; `None` when it is not known where that is.
    pub bore_mouth: Option<BoreMouthCheck>,
}

impl RackEndStress {
    /// The smaller factor of those that could be computed, and where it is; `None` without any load.
    pub fn least_factor(&self) -> Option<(f64, Section)> {
        let face = self
            .rack_face
            .factor()
            .map(|factor| (factor, Section::RackFace));
        let mouth = self
            .bore_mouth
            .and_then(|check| check.factor())
            .map(|factor| (factor, Section::BoreMouth));
        match (face, mouth) {
            (Some(face), Some(mouth)) => Some(if mouth.0 < face.0 { mouth } else { face }),
            (face, mouth) => face.or(mouth),
        }
    }
}
