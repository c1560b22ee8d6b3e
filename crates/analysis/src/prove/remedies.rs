//! What would mend a row, each worked out on the edited build.

use trammel_build::{AxleName, Build, Edit, Side};
use trammel_strength::{
    check::Check,
    loads::LoadCase,
    proof::{self, Part, Setup},
};

use super::{
    ProofDepth, ProofPart, ProofRow,
    prepared::Prepared,
    remedy_edits::{self, Offer},
    run::{proof_row, setup},
};
use crate::{Remedy, words::factor};

/// A change that betters the factor by less than this share is no remedy.
const WORTH_IT: f64 = 1.05;
/// Remedies shown at most.
const MOST: usize = 5;

/// Works remedies out for one side of an axle.
pub(super) struct Mender<'a> {
    pub build: &'a Build,
    pub axle: AxleName,
    pub side: Side,
}

impl Mender<'_> {
    /// What betters the row: first what reaches the wanted factor, then the better before the worse.
    pub(super) fn remedies(&self, row: &ProofRow, case: Option<&LoadCase>) -> Vec<Remedy> {
        let Some(now) = row.factor else {
            return Vec::new();
        };
        let mut found: Vec<(f64, Remedy)> = Vec::new();
        for series in remedy_edits::offers(self.build, self.axle, self.side, row) {
            let mut best: Option<(f64, Remedy)> = None;
            // A series grows step by step: the first step that is enough ends it.
            for Offer { what, edit } in series {
                let Some(then) = self.factor_after(row, case, &edit) else {
                    continue;
                };
                if then < WORTH_IT * now.max(0.0) || then <= now {
                    continue;
                }
                let (before, after) = (factor(now), factor(then));
                if before == after {
                    continue;
                }
                let text = format!("{what}: {before} becomes {after}");
                let remedy = Remedy {
                    text,
                    value: Some(then),
                    edit: Some(edit),
                };
                let enough = then >= row.wanted;
                if enough || best.as_ref().is_none_or(|(known, _)| then > *known) {
                    best = Some((then, remedy));
                }
                if enough {
                    break;
                }
            }
            found.extend(best);
        }
        let rank = |then: f64| then.min(row.wanted);
        found.sort_by(|a, b| rank(b.0).total_cmp(&rank(a.0)));
        found.truncate(MOST);
        found.into_iter().map(|(_, remedy)| remedy).collect()
    }

    /// The row's factor on the edited build, at that build's own worst pose.
    fn factor_after(&self, row: &ProofRow, case: Option<&LoadCase>, edit: &Edit) -> Option<f64> {
        let build = edit.apply(self.build).ok()?;
        let model = build.axle(self.axle).ok()?;
        let prepared = Prepared::of(&build, &model, self.side).ok()?;
        let parts: Vec<Part> = prepared
            .parts
            .iter()
            .filter(|(id, _)| *id == row.part)
            .map(|(_, part)| part.clone())
            .collect();
        let cases: Vec<LoadCase> = prepared
            .cases
            .iter()
            .filter(|c| Some(&c.name) == case.map(|c| &c.name))
            .cloned()
            .collect();
        let gaps = matches!(row.part, ProofPart::Gap(_));
        let found = proof::prove(&Setup {
            clearances: prepared.clearances.filter(|_| gaps),
            ..setup(&build, &prepared, &parts, &cases, ProofDepth::Full)
        });
        let label = row.part.label();
        let same = |found: &&proof::Row| found.check == row.check && found.part == label;
        let mut rows = found.rows.iter().filter(same);
        let worst = rows.next()?;
        proof_row(&build, self.axle, row.side, row.part, worst).factor
    }
}

/// Checks that a change of the part itself can't better.
pub(super) fn is_of_the_layout(check: Check) -> bool {
    matches!(
        check,
        Check::HandForce | Check::KickBack | Check::OverCentre | Check::StopMargin
    )
}
