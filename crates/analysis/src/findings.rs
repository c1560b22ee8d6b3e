//! All cautions of a build.

use trammel_build::Build;

use crate::{Caution, RackEndStudy, Study, checks};

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
        findings.cautions.sort_by(|a, b| {
            let by_severity = b.severity().total_cmp(&a.severity());
            b.grade.cmp(&a.grade).then(by_severity)
        });
        findings
    }
}

/// The cautions of a build, worst first: [`Findings::of`] without the rack ends.
#[must_use]
pub fn cautions(build: &Build, study: &Study) -> Vec<Caution> {
    Findings::of(build, study).cautions
}
