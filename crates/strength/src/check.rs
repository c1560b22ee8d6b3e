//! One check: a value against a limit, and where both come from.
//!
//! A factor above one says that the value keeps this limit under this load, nothing more: no check here knows fatigue (but for the one named so),
//! impact speed, weld quality, heat, wear or bent parts.

use std::fmt;

use crate::source::{Limit, Source};

/// What was looked at.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum Check {
    /// Combined stress through the thread at the rack face.
    RackFaceYield,
    /// Combined stress where the rack leaves its housing.
    BoreMouthYield,
    /// Fully reversed bending of the thread against its endurance limit.
    RackEndFatigue,
    /// Toe that the rack end's bending costs.
    RackEndToe,
    /// Thread screwed into the rack bar.
    ThreadEngagement,
    /// Wall left around a tapped hole.
    WallLeft,
    /// Axial stress of a tube or bar.
    AxialYield,
    /// Compression against buckling.
    Buckling,
    /// A hit across the middle of the tie rod.
    SideHit,
    /// Axial stress in the thread of a rod end's shank or adapter.
    ShankYield,
    /// Load against the joint's rating.
    JointRating,
    /// Swivel against what the joint can turn.
    Misalignment,
    /// Shear of a bolt.
    BoltShear,
    /// Bending and shear of a bolt.
    BoltBending,
    /// Bearing of a bolt on its tab.
    TabBearing,
    /// Tension across the hole of a tab.
    TabNetSection,
    /// The bolt shearing out of the tab's end.
    TabShearOut,
    /// Bearing and tear-out at rupture by the building code.
    TabTearOut,
    /// Bending of a tab at its base.
    TabBending,
    /// Stress in the throat of the fillet weld around the tab.
    WeldThroat,
    /// Compression and bending of an arm's tube together.
    StrutAndBeam,
    /// Stress in an arm's tube.
    ArmTubeYield,
    /// Gap between two parts.
    Clearance,
    /// Gap between a joint's body and its ears.
    BodyRoom,
    /// Gap between a rod end's jam nut and the ears.
    NutRoom,
    /// Gap between the head of the bolt that holds a bracket on the rack end and the joint between its ears.
    EndHeadRoom,
    /// Gap beside the jam nut between the rack's face and that bracket.
    EndNutRoom,
    /// Height of that bracket against what the rack end leaves for it.
    StandOff,
    /// Force asked of the driver at the rim of the steering wheel.
    HandForce,
    /// Force with which a hit tears at the rim of the steering wheel.
    KickBack,
    /// Angle left before tie rod and steering arm come into line.
    OverCentre,
    /// Rack travel left between the stop and that line.
    StopMargin,
}

impl fmt::Display for Check {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Self::RackFaceYield => "yield of the thread at the rack face",
            Self::BoreMouthYield => "yield at the bore mouth",
            Self::RackEndFatigue => "fatigue of the thread, fully reversed",
            Self::RackEndToe => "toe lost to bending of the rack end",
            Self::ThreadEngagement => "thread engagement",
            Self::WallLeft => "wall left around the thread",
            Self::AxialYield => "axial stress",
            Self::Buckling => "buckling",
            Self::SideHit => "side hit at mid-span",
            Self::ShankYield => "axial stress in the shank's thread",
            Self::JointRating => "load on the joint",
            Self::Misalignment => "misalignment",
            Self::BoltShear => "shear of the bolt",
            Self::BoltBending => "bending and shear of the bolt",
            Self::TabBearing => "bearing in the tab",
            Self::TabNetSection => "net section of the tab",
            Self::TabShearOut => "shear-out of the tab",
            Self::TabTearOut => "bearing and tear-out at rupture",
            Self::TabBending => "bending of the tab at its base",
            Self::WeldThroat => "throat of the fillet weld",
            Self::StrutAndBeam => "compression and bending together",
            Self::ArmTubeYield => "yield of the arm's tube",
            Self::Clearance => "clearance",
            Self::BodyRoom => "joint body to ears",
            Self::NutRoom => "jam nut to ears over the adjustment",
            Self::EndHeadRoom => "bolt head to joint over the adjustment",
            Self::EndNutRoom => "jam nut to rack or bracket over the adjustment",
            Self::StandOff => "bracket's height against the room on the rack end",
            Self::HandForce => "hand force",
            Self::KickBack => "kick-back at the steering wheel",
            Self::OverCentre => "margin before over centre",
            Self::StopMargin => "stop ahead of over centre",
        })
    }
}

/// Which side of its limit a value has to keep to.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Keep {
    /// At or below.
    Below,
    /// At or above.
    Above,
}

/// A value found at a pose, against its limit.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Finding {
    /// What was looked at.
    pub check: Check,
    /// The value, in the limit's unit.
    pub value: f64,
    /// The limit, with its unit and source.
    pub limit: Limit,
    /// Which side of it is wanted.
    pub keep: Keep,
    /// Where the formula for the value comes from.
    pub method: Source,
}

impl Finding {
    /// A value that has to stay below its limit.
    #[must_use]
    pub fn below(check: Check, value: f64, limit: Limit, method: Source) -> Self {
        Self {
            check,
            value,
            limit,
            keep: Keep::Below,
            method,
        }
    }

    /// A value that has to stay above its limit.
    #[must_use]
    pub fn above(check: Check, value: f64, limit: Limit, method: Source) -> Self {
        Self {
            keep: Keep::Above,
            ..Self::below(check, value, limit, method)
        }
    }

    /// Limit over value, or value over limit where more is better; one is just at the limit. `None` where there is nothing to divide by, such as no
    /// load at all.
    #[must_use]
    pub fn factor(&self) -> Option<f64> {
        let factor = match self.keep {
            Keep::Below => self.limit.value / self.value.abs(),
            Keep::Above => self.value / self.limit.value,
        };
        factor.is_finite().then_some(factor)
    }
}

/// A limit in MPa.
pub(crate) fn mpa(value: f64, source: Source) -> Limit {
    Limit {
        value,
        unit: "MPa",
        source,
    }
}

/// A limit in N.
pub(crate) fn newtons(value: f64, source: Source) -> Limit {
    Limit {
        value,
        unit: "N",
        source,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn factors_go_the_way_that_is_wanted() {
        let limit = mpa(400.0, Source::USER);
        let stress = |value| Finding::below(Check::AxialYield, value, limit, Source::USER);
        assert_eq!(stress(200.0).factor(), Some(2.0));
        assert_eq!(stress(-200.0).factor(), Some(2.0));
        assert_eq!(stress(0.0).factor(), None);
        let gap = Finding::above(
            Check::Clearance,
            -2.0,
            Limit {
                unit: "mm",
                ..limit
            },
            Source::USER,
        );
        assert_eq!(gap.factor(), Some(-0.005));
    }
}

#[cfg(test)]
mod words {
    use super::Check;

    #[test]
    fn checks_are_named_in_plain_words() {
        assert_eq!(Check::Buckling.to_string(), "buckling");
        assert_eq!(
            Check::RackFaceYield.to_string(),
            "yield of the thread at the rack face"
        );
    }
}
