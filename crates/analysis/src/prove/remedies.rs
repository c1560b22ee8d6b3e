//! What would mend a row, each worked out on the edited build.

use trammel_build::{AxleName, Build, Edit, Side};
use trammel_geometry::{greatest_first, least_first};
use trammel_strength::{
    check::Check,
    loads::LoadCase,
    proof::{self, Part, Setup},
};

use super::{
    Proof, ProofDepth, ProofPart, ProofRow, cures, effort,
    prepared::Prepared,
    remedy_edits::{self, Offer},
    rows::{proof_row, setup},
};
use crate::{Remedy, words::factor};

/// A change that betters the factor by less than this share is no remedy.
const WORTH_IT: f64 = 1.05;
/// Remedies shown at most.
const MOST: usize = 5;

/// Checks of a side for which remedies are worked out, worst first: where more than these fall short, a build is mended one after another.
const MENDED: usize = 12;
/// What the others say.
const LATER: &str =
    "Remedies are worked out for the worst checks first: mend those, then look here again";

/// Works remedies out for one side of an axle.
pub(super) struct Mender<'a> {
    pub build: &'a Build,
    pub axle: AxleName,
    pub side: Side,
}

fn in_words(text: String) -> Remedy {
    Remedy {
        text,
        value: None,
        edit: None,
    }
}

impl Mender<'_> {
    /// Remedies of the worst case of every check that does not keep its factor, among the rows that are `mine`; `None` once it is called off.
    pub(super) fn mend(
        &self,
        mine: impl Fn(&ProofRow) -> bool,
        cases: &[LoadCase],
        cancelled: &dyn Fn() -> bool,
        proof: &mut Proof,
    ) -> Option<()> {
        let asked = |row: &ProofRow| mine(row) && row.grade().is_some();
        let rows = proof.rows.iter().enumerate();
        let mut order: Vec<(usize, f64)> = rows
            .filter(|(_, row)| asked(row))
            .map(|(i, row)| (i, row.standing().unwrap_or(f64::INFINITY)))
            .collect();
        least_first(&mut order, |o| o.1);
        let mut seen: Vec<(ProofPart, Check)> = Vec::new();
        for (i, _) in order {
            let Some(row) = proof.rows.get_mut(i) else {
                continue;
            };
            if seen.contains(&(row.part, row.check)) {
                continue;
            }
            if cancelled() {
                return None;
            }
            seen.push((row.part, row.check));
            if seen.len() > MENDED {
                row.remedies = vec![in_words(LATER.to_owned())];
                continue;
            }
            let case = cases
                .iter()
                .find(|case| Some(&case.name) == row.load_case.as_ref());
            row.remedies = self.remedies(row, case);
        }
        Some(())
    }

    /// What betters the row: first what reaches the wanted factor, then the better before the worse; last, where none reaches it, what would in plain words.
    fn remedies(&self, row: &ProofRow, case: Option<&LoadCase>) -> Vec<Remedy> {
        let Some(now) = row.factor else {
            return Vec::new();
        };
        let mut found: Vec<(f64, Remedy)> = Vec::new();
        for series in remedy_edits::offers(self.build, self.axle, self.side, row) {
            found.extend(self.best_of(series, row, now, case));
        }
        let rank = |then: f64| then.min(row.wanted);
        greatest_first(&mut found, |f| rank(f.0));
        found.truncate(MOST);
        let enough = found.first().is_some_and(|(then, _)| *then >= row.wanted);
        let mut remedies: Vec<Remedy> = found.into_iter().map(|(_, remedy)| remedy).collect();
        if !enough {
            remedies.push(in_words(cures::cure(row, self.build.unit)));
        }
        remedies
    }

    /// A series grows step by step: the first step that is enough ends it.
    fn best_of(
        &self,
        series: Vec<Offer>,
        row: &ProofRow,
        now: f64,
        case: Option<&LoadCase>,
    ) -> Option<(f64, Remedy)> {
        let mut best: Option<(f64, Remedy)> = None;
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
            let remedy = Remedy {
                text: format!("{what}: {before} becomes {after}"),
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
        best
    }

    /// The row's factor on the edited build, at that build's own worst pose.
    fn factor_after(&self, row: &ProofRow, case: Option<&LoadCase>, edit: &Edit) -> Option<f64> {
        let build = edit.apply(self.build).ok()?;
        if row.part == ProofPart::Steering {
            return effort::anew(&build, row)?.factor;
        }
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
        let setup = Setup {
            clearances: prepared.clearances,
            ..setup(&build, &prepared, &parts, &cases, ProofDepth::Full)
        };
        let known = |found: &proof::Row| proof_row(&build, self.axle, row.side, row.part, found);
        if let ProofPart::Gap(pair) = row.part {
            return known(&proof::least_gap(&setup, pair)?).factor;
        }
        let found = proof::prove(&Setup {
            clearances: None,
            ..setup
        });
        let label = row.part.label();
        let same = |found: &&proof::Row| found.check == row.check && found.part == label;
        match found.rows.iter().find(same) {
            Some(worst) => known(worst).factor,
            // A height that agrees has no row of its own any more.
            None => (row.check == Check::StandOff).then_some(row.wanted),
        }
    }
}
