//! What comes out of a proof.

use trammel_build::{AcceptedCaution, AxleName, Build, LengthUnit, PointName, PointRef, Side};
use trammel_geometry::ArmName;
use trammel_strength::{
    check::{Check, Keep},
    clearance::Pair,
    source::Source,
};

use super::words;
use crate::{
    Bound, Caution, CautionKind, Figure, FigureUnit, Grade, Remedy, WorstPose, words as figures,
};

/// Share of the endurance limit's factor above which the fatigue row is a note (a judgement, no source).
const FATIGUE_NOTE: f64 = 0.5;

/// What is checked.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum ProofPart {
    /// The threaded end of the rack.
    RackEnd,
    /// The tie rod.
    TieRod,
    /// The tubes of an arm.
    ArmTubes(ArmName),
    /// The bolt at a joint.
    Bolt(PointName),
    /// The tabs at a joint.
    Bracket(PointName),
    /// The rod end or ball joint.
    Joint(PointName),
    /// The gap of a pair.
    Gap(Pair),
    /// Steering wheel, pinion, stops.
    Steering,
}

impl ProofPart {
    /// What it is called.
    #[must_use]
    pub fn label(self) -> String {
        match self {
            Self::RackEnd => "rack end".into(),
            Self::TieRod => "tie rod".into(),
            Self::ArmTubes(arm) => format!("{} arm tubes", words::arm(arm)),
            Self::Bolt(point) => format!("bolt at {}", words::point(point)),
            Self::Bracket(point) => format!("bracket at {}", words::point(point)),
            Self::Joint(point) => format!("joint at {}", words::point(point)),
            Self::Gap(pair) => pair.to_string(),
            Self::Steering => "steering".into(),
        }
    }

    /// The hardpoint to look at.
    #[must_use]
    pub fn point(self) -> Option<PointName> {
        match self {
            Self::RackEnd | Self::TieRod | Self::Steering => Some(PointName::TieRodInner),
            Self::ArmTubes(ArmName::Upper) => Some(PointName::UpperBallJoint),
            Self::ArmTubes(ArmName::Lower) => Some(PointName::LowerBallJoint),
            Self::Bolt(point) | Self::Bracket(point) | Self::Joint(point) => Some(point),
            Self::Gap(_) => None,
        }
    }
}

/// One check of one part under one load case at its worst pose. Values are in the kernel's units: see [`ProofRow::shown`].
#[derive(Clone, Debug, PartialEq)]
pub struct ProofRow {
    /// Axle.
    pub axle: AxleName,
    /// Side; `None` when it holds for both alike.
    pub side: Option<Side>,
    /// What is checked.
    pub part: ProofPart,
    /// What was looked at.
    pub check: Check,
    /// The load case; `None` for what no load changes.
    pub load_case: Option<String>,
    /// Where it is worst; `None` for what no pose changes.
    pub pose: Option<WorstPose>,
    /// The value found, in `unit`.
    pub value: f64,
    /// What it was compared with.
    pub limit: f64,
    /// Unit of both, as the kernel has it: `MPa`, `N`, `mm`, `rad`.
    pub unit: &'static str,
    /// Which side of the limit is wanted.
    pub keep: Keep,
    /// Limit over value, or value over limit where more is better; `None` without anything to divide by.
    pub factor: Option<f64>,
    /// The factor that is wanted.
    pub wanted: f64,
    /// Where the limit comes from.
    pub source: Source,
    /// Where the formula comes from.
    pub method: Source,
    /// Why it matters, one sentence.
    pub reason: &'static str,
    /// What was assumed, and at which adjustment, where that is not told by the pose: whole sentences.
    pub remark: Option<String>,
    /// What would mend it, worked out; empty where the wanted factor is kept, and in a quick proof.
    pub remedies: Vec<Remedy>,
    /// The builder's reason, where it was accepted.
    pub accepted: Option<AcceptedCaution>,
}

/// A row's figures beside lengths of a unit.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Shown {
    /// The value.
    pub value: f64,
    /// The limit.
    pub limit: f64,
    /// Unit of both; empty for a share.
    pub unit: &'static str,
}

impl Shown {
    /// A figure with its unit behind it, as it is written: `87.4 ksi`, `0.14°`, a share alone.
    #[must_use]
    pub fn with_unit(&self, figure: &str) -> String {
        match self.unit {
            "" => figure.to_owned(),
            "deg" => format!("{figure}°"),
            unit => format!("{figure} {unit}"),
        }
    }
}

impl ProofRow {
    /// Factor over the wanted one: below one calls for a caution. `None` without a factor.
    #[must_use]
    pub fn standing(&self) -> Option<f64> {
        self.factor.map(|factor| factor / self.wanted)
    }

    /// Whether its factor changes from pose to pose, so that a curve of it can be drawn.
    #[must_use]
    pub fn has_a_curve(&self) -> bool {
        self.check != Check::StopMargin && (self.load_case.is_some() || self.pose.is_some())
    }

    /// How bad it is; `None` while the wanted factor is kept.
    #[must_use]
    pub fn grade(&self) -> Option<Grade> {
        let standing = self.standing()?;
        if standing >= 1.0 {
            return None;
        }
        let broken = self.factor.is_some_and(|factor| factor < 1.0);
        Some(match self.check {
            Check::RackEndToe
            | Check::Clearance
            | Check::BodyRoom
            | Check::NutRoom
            | Check::EndHeadRoom
                if self.value > 0.0 =>
            {
                Grade::Caution
            }
            // A case happens a few times, not a million: that it would not be borne for ever is worth knowing, far past it more than that.
            Check::RackEndFatigue if standing > FATIGUE_NOTE => Grade::Note,
            Check::RackEndFatigue
            | Check::ThreadEngagement
            | Check::EndNutRoom
            | Check::StandOff
            | Check::HandForce
            | Check::KickBack
            | Check::WallLeft
            | Check::SideHit => Grade::Caution,
            _ if broken => Grade::Danger,
            _ => Grade::Caution,
        })
    }

    /// Value and limit in degrees and lengths of this unit.
    #[must_use]
    pub fn shown(&self, unit: LengthUnit) -> Shown {
        let (by, unit) = words::shown_unit(self.unit, unit);
        Shown {
            value: self.value * by,
            limit: self.limit * by,
            unit,
        }
    }

    /// What an acceptance goes by: the same as its caution's key, whatever the load case.
    #[must_use]
    pub fn key(&self) -> String {
        let side = self.side.map_or("both", Side::word);
        format!(
            "{}/{side}/{}/{}",
            self.axle.word(),
            self.part.label(),
            self.check
        )
    }

    /// Whether it has worsened since it was accepted.
    #[must_use]
    pub fn worse_than_accepted(&self) -> bool {
        let then = self.accepted.as_ref().and_then(|a| a.figure);
        then.zip(self.factor)
            .is_some_and(|(then, now)| now < then * (1.0 - 1e-6))
    }
}

/// The caution of a row that does not keep its wanted factor.
pub(crate) fn caution_of(
    row: &ProofRow,
    build: &Build,
    pose: impl Fn(WorstPose) -> String,
) -> Option<Caution> {
    let grade = row.grade()?;
    let factor = row.factor?;
    let shown = row.shown(build.unit);
    let part = match row.axle {
        AxleName::Front => figures::sided(row.side, &row.part.label()),
        AxleName::Rear => figures::sided(row.side, &format!("rear {}", row.part.label())),
    };
    let point = row.part.point().map(|point| PointRef {
        axle: row.axle,
        side: row.side.unwrap_or(Side::Left),
        point,
    });
    let case = row.load_case.as_deref();
    let place = [case.map(str::to_owned), row.pose.map(pose)];
    let place: Vec<String> = place.into_iter().flatten().collect();
    Some(Caution {
        kind: CautionKind::Proof(row.part, row.check),
        grade,
        axle: row.axle,
        side: row.side,
        headline: format!(
            "{part}, {}: factor {}, wanted {}",
            row.check,
            figures::factor(factor),
            figures::factor(row.wanted)
        ),
        detail: format!(
            "{} against {}{}{}.",
            shown.with_unit(&figures::figure(shown.value)),
            shown.with_unit(&figures::figure(shown.limit)),
            if place.is_empty() { "" } else { "; " },
            place.join(", ")
        ),
        figure: Some(Figure {
            value: factor,
            limit: row.wanted,
            bound: Bound::AtLeast,
            unit: FigureUnit::Factor,
        }),
        worst: row.pose,
        reason: row.reason.to_owned(),
        remedies: row.remedies.clone(),
        point,
        source: match &row.remark {
            // Who shows a source ends its sentence.
            Some(remark) => format!(
                "limit: {}; formula: {}. {}",
                row.source,
                row.method,
                remark.trim_end_matches('.')
            ),
            None => format!("limit: {}; formula: {}", row.source, row.method),
        },
    })
}
