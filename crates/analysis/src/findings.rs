//! All cautions of a build.

use trammel_build::Build;
use trammel_geometry::in_order;
use trammel_strength::check::Check;

use crate::{
    Caution, CautionKind, Proof, ProofPart, RackEndStudy, Study, checks, prove::caution_of, words,
};

/// How deep the checks go.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Depth {
    /// Cautions without remedies.
    Quick,
    /// Cautions with remedies worked out.
    Full,
}

/// What the checks found in one build.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Findings {
    /// Worst first: dangers, then cautions, then notes, each by how far past its limit it is.
    pub cautions: Vec<Caution>,
    /// The rack ends at their worst poses, left then right; empty where there is no load on them or a name is unknown.
    pub rack_ends: Vec<RackEndStudy>,
}

impl Findings {
    /// Runs every check on a build and its study. Remedies are worked out on the edited build, so this poses a few thousand linkages: see the
    /// bench.
    #[must_use]
    pub fn of(build: &Build, study: &Study) -> Self {
        Self::to_depth(build, study, Depth::Full)
    }

    /// The same as deep as asked for. [`Depth::Quick`] finds the same cautions without working out what would mend them: for the frames of a drag.
    #[must_use]
    pub fn to_depth(build: &Build, study: &Study, depth: Depth) -> Self {
        let mut findings = Self::default();
        for axle in [Some(&study.front), study.rear.as_ref()]
            .into_iter()
            .flatten()
        {
            checks::examine(build, axle, depth, &mut findings);
        }
        findings.sort();
        findings
    }

    /// The same with the cautions of a proof of the same build: one for each check of a part that does not keep its wanted factor, at its worst load
    /// case and pose. What an older check says of the same thing stands alone.
    #[must_use]
    pub fn with_proof(mut self, build: &Build, study: &Study, proof: &Proof) -> Self {
        let unit = build.unit;
        for row in &proof.rows {
            let Some(axle) = study.axle(row.axle) else {
                continue;
            };
            let model = &axle.model;
            let pose = |at: crate::WorstPose| {
                words::pose(at.travel, at.rack, model.travel, model.lock(), unit)
            };
            let Some(caution) = caution_of(row, build, pose) else {
                continue;
            };
            if !self.says(&caution) {
                self.cautions.push(caution);
            }
        }
        self.sort();
        self
    }

    /// Whether the same is said already: by a row of another load case that is worse, or by a check of the layout.
    fn says(&self, caution: &Caution) -> bool {
        let CautionKind::Proof(part, check) = caution.kind else {
            return false;
        };
        let of_layout = match check {
            Check::ThreadEngagement if part == ProofPart::RackEnd => {
                Some(CautionKind::ThreadEngagement)
            }
            Check::OverCentre => Some(CautionKind::LockOver),
            Check::Misalignment => Some(CautionKind::JointAngle),
            _ => None,
        };
        self.cautions.iter().any(|known| {
            let same_place = known.axle == caution.axle && known.side == caution.side;
            let same_point = check != Check::Misalignment || known.point == caution.point;
            same_place
                && (known.kind == caution.kind || (Some(known.kind) == of_layout && same_point))
        })
    }

    fn sort(&mut self) {
        in_order(&mut self.cautions, |c| [-c.grade.weight(), -c.severity()]);
    }
}

/// The cautions of a build, worst first: [`Findings::of`] without the rack ends.
#[must_use]
pub fn cautions(build: &Build, study: &Study) -> Vec<Caution> {
    Findings::of(build, study).cautions
}
