//! A caution: what was found, against which limit, why it matters and what would mend it.

use trammel_build::{AcceptedCaution, AxleName, Build, Edit, PointRef, Side};
use trammel_strength::check::Check;

use crate::ProofPart;

/// How bad it is. Three grades, told by word and shape.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Grade {
    /// Worth knowing.
    Note,
    /// Near or a little past a limit.
    Caution,
    /// Past a limit that people can be hurt by.
    Danger,
}

impl Grade {
    /// The word on screen and in tables.
    #[must_use]
    pub fn word(self) -> &'static str {
        match self {
            Self::Note => "note",
            Self::Caution => "caution",
            Self::Danger => "danger",
        }
    }

    /// The worse, the more: what lists of the worst first go by.
    pub(crate) fn weight(self) -> f64 {
        match self {
            Self::Note => 0.0,
            Self::Caution => 1.0,
            Self::Danger => 2.0,
        }
    }
}

/// What kind of thing was found; with axle, side and point it names a caution from one frame to the next.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum CautionKind {
    /// The rack end is bent past its wanted factor by the hit.
    RackEndBending,
    /// The tie rod stands steep at the rack.
    TieRodAngle,
    /// A tie-rod joint swivels past its limit.
    JointAngle,
    /// Toe changes over the travel.
    ToeChange,
    /// Tie rod and steering arm come near to standing in line.
    LockOver,
    /// The arms come near to toggling.
    ArmsNearToggle,
    /// A travel or rack position is out of reach.
    OutOfReach,
    /// Too little thread engaged.
    ThreadEngagement,
    /// A name in the build that no table knows.
    UnknownName,
    /// A check of the proof does not keep its wanted factor.
    Proof(ProofPart, Check),
}

impl CautionKind {
    /// The word in machine-readable output.
    #[must_use]
    pub fn word(self) -> &'static str {
        match self {
            Self::RackEndBending => "rack_end_bending",
            Self::TieRodAngle => "tie_rod_angle",
            Self::JointAngle => "joint_angle",
            Self::ToeChange => "toe_change",
            Self::LockOver => "lock_over",
            Self::ArmsNearToggle => "arms_near_toggle",
            Self::OutOfReach => "out_of_reach",
            Self::ThreadEngagement => "thread_engagement",
            Self::UnknownName => "unknown_name",
            Self::Proof(..) => "proof",
        }
    }
}

/// The unit of a figure.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum FigureUnit {
    /// A factor.
    Factor,
    /// Degrees.
    Degrees,
    /// Length in the build's own unit.
    BuildLength,
}

/// Which side of its limit a figure should be on.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Bound {
    /// The limit is the greatest that is wanted.
    AtMost,
    /// The limit is the least that is wanted.
    AtLeast,
}

impl Bound {
    /// The word in machine-readable output.
    #[must_use]
    pub fn word(self) -> &'static str {
        match self {
            Self::AtMost => "at_most",
            Self::AtLeast => "at_least",
        }
    }
}

/// A number against its limit.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Figure {
    /// What was found.
    pub value: f64,
    /// What it is held against.
    pub limit: f64,
    /// Which side of the limit is wanted.
    pub bound: Bound,
    /// Unit of both.
    pub unit: FigureUnit,
}

impl Figure {
    /// How far past its limit it is, as a ratio: 1 at the limit, more is worse, whichever side is wanted.
    #[must_use]
    pub fn severity(&self) -> f64 {
        let (over, under) = match self.bound {
            Bound::AtMost => (self.value, self.limit),
            Bound::AtLeast => (self.limit, self.value),
        };
        over.abs() / under.abs().max(1e-9)
    }
}

/// Where it is worst. For a caution that holds for both sides alike it is the left wheel's pose; the right one's has the rack travel
/// the other way round.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct WorstPose {
    /// Wheel travel, mm.
    pub travel: f64,
    /// Rack travel, mm.
    pub rack: f64,
}

/// One thing that would mend it, with what it would do, worked out.
#[derive(Clone, Debug, PartialEq)]
pub struct Remedy {
    /// Such as `1/2-20 instead of 3/8-24: 0.7 becomes 1.7`.
    pub text: String,
    /// What the caution's figure would become, in the figure's unit, where it stays a figure.
    pub value: Option<f64>,
    /// The edit that does it, where the build can express it and nothing it moves is locked.
    pub edit: Option<Edit>,
}

/// Something near or past a limit.
#[derive(Clone, Debug, PartialEq)]
pub struct Caution {
    /// What kind.
    pub kind: CautionKind,
    /// How bad.
    pub grade: Grade,
    /// Axle.
    pub axle: AxleName,
    /// Side; `None` when it holds for both alike.
    pub side: Option<Side>,
    /// One line: what, and the number against its limit.
    pub headline: String,
    /// One line: where, and in which state.
    pub detail: String,
    /// The number against its limit; none where it is not about a number.
    pub figure: Option<Figure>,
    /// The pose where it is worst.
    pub worst: Option<WorstPose>,
    /// Why it matters, one sentence.
    pub reason: String,
    /// What would mend it, the most telling first.
    pub remedies: Vec<Remedy>,
    /// The point to look at.
    pub point: Option<PointRef>,
    /// Where limit and formula come from.
    pub source: String,
}

impl Caution {
    /// What names it from one day to the next, and an acceptance after it: `front/both/joint_angle/tie_rod.inner`.
    #[must_use]
    pub fn key(&self) -> String {
        let (axle, side) = (self.axle.word(), self.side.map_or("both", Side::word));
        if let CautionKind::Proof(part, check) = self.kind {
            return format!("{axle}/{side}/{}/{check}", part.label());
        }
        let point = self
            .point
            .map_or_else(String::new, |at| format!("/{}", at.point));
        format!("{axle}/{side}/{}{point}", self.kind.word())
    }

    /// The builder's reason for leaving it, where it was accepted.
    #[must_use]
    pub fn accepted<'a>(&self, build: &'a Build) -> Option<&'a AcceptedCaution> {
        let key = self.key();
        build.accepted.iter().find(|a| a.caution == key)
    }

    /// Whether its figure is worse than when it was accepted.
    #[must_use]
    pub fn worse_than_accepted(&self, accepted: &AcceptedCaution) -> bool {
        let Some((figure, then)) = self.figure.zip(accepted.figure) else {
            return false;
        };
        let then = Figure {
            value: then,
            ..figure
        };
        figure.severity() > then.severity() * (1.0 + 1e-6)
    }

    /// How far past its limit; 1 where it is not about a number.
    #[must_use]
    pub fn severity(&self) -> f64 {
        self.figure.map_or(1.0, |f| f.severity())
    }
}
