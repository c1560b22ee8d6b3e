//! All cautions of a build.

use trammel_build::Build;

use crate::{Caution, RackEndStudy, Study, checks};

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
        let mut findings = Self::default();
        for axle in [Some(&study.front), study.rear.as_ref()]
            .into_iter()
            .flatten()
        {
            checks::examine(build, axle, &mut findings);
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
