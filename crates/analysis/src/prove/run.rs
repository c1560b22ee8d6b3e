//! The proof of a whole build.

use trammel_build::{AxleModel, AxleName, Build, Side};
use trammel_geometry::in_order;
use trammel_strength::proof::{self, Omission, Part, Row, Setup};

use super::{
    Note, ProofDepth, ProofPart, ProofRow, effort,
    prepared::Prepared,
    proof::Proof,
    remedies::Mender,
    rows::{proof_row, setup},
};
use crate::{Grade, checks::sides_alike};

/// Proves a build. `cancelled` is asked between load cases and remedies; `None` once it says so.
#[must_use]
pub fn prove(build: &Build, depth: ProofDepth, cancelled: &dyn Fn() -> bool) -> Option<Proof> {
    let mut proof = Proof {
        depth: Some(depth),
        ..Proof::default()
    };
    for axle in [AxleName::Front, AxleName::Rear] {
        if build.axle_spec(axle).is_none() {
            continue;
        }
        match build.axle(axle) {
            Ok(model) => prove_axle(build, &model, depth, cancelled, &mut proof)?,
            Err(fault) => proof.notes.push(Note::left_out(
                format!("{} axle", axle.word()),
                fault.to_string(),
            )),
        }
    }
    for row in &mut proof.rows {
        let key = row.key();
        row.accepted = build.accepted.iter().find(|a| a.caution == key).cloned();
    }
    in_order(&mut proof.rows, |row| {
        let standing = row.standing().unwrap_or(f64::INFINITY);
        let weight = row.grade().map_or(-1.0, Grade::weight);
        [-weight, standing]
    });
    proof.notes.sort();
    proof.notes.dedup();
    Some(proof)
}

fn prove_axle(
    build: &Build,
    model: &AxleModel,
    depth: ProofDepth,
    cancelled: &dyn Fn() -> bool,
    proof: &mut Proof,
) -> Option<()> {
    let alike = sides_alike(build, model);
    let sides: &[Side] = if alike {
        &[Side::Left]
    } else {
        &[Side::Left, Side::Right]
    };
    for &side in sides {
        match Prepared::of(build, model, side) {
            Ok(prepared) => {
                let corner = Corner {
                    build,
                    axle: model.name,
                    side: (!alike).then_some(side),
                    depth,
                };
                corner.prove(&prepared, cancelled, proof)?;
                proof
                    .notes
                    .extend(prepared.notes.into_iter().map(|n| n.of(model.name)));
            }
            Err(note) => proof.notes.push(note),
        }
    }
    if model.rack.is_some() {
        effort::prove(build, model, depth, alike, proof);
        if depth == ProofDepth::Full {
            mend_steering(build, model.name, cancelled, proof)?;
        }
    }
    if cancelled() { None } else { Some(()) }
}

struct Corner<'a> {
    build: &'a Build,
    axle: AxleName,
    side: Option<Side>,
    depth: ProofDepth,
}

impl Corner<'_> {
    fn prove(
        &self,
        prepared: &Prepared,
        cancelled: &dyn Fn() -> bool,
        proof: &mut Proof,
    ) -> Option<()> {
        let parts: Vec<Part> = prepared
            .parts
            .iter()
            .map(|(_, part)| part.clone())
            .collect();
        let setup = setup(self.build, prepared, &parts, &[], self.depth);
        let unloaded = proof::prove(&Setup {
            clearances: prepared.clearances,
            ..setup
        });
        self.take(prepared, unloaded.rows, proof);
        self.omit(&unloaded.omissions, proof);
        for case in &prepared.cases {
            if cancelled() {
                return None;
            }
            let loaded = proof::prove(&Setup {
                cases: std::slice::from_ref(case),
                ..setup
            });
            let rows = loaded
                .rows
                .into_iter()
                .filter(|row| row.load_case.is_some());
            self.take(prepared, rows.collect(), proof);
            let omitted: Vec<Omission> = loaded
                .omissions
                .into_iter()
                .filter(|o| o.load_case.is_some())
                .collect();
            self.omit(&omitted, proof);
        }
        if self.depth == ProofDepth::Full {
            self.mend(prepared, cancelled, proof)?;
        }
        Some(())
    }

    fn take(&self, prepared: &Prepared, rows: Vec<Row>, proof: &mut Proof) {
        let known = rows.into_iter().filter_map(|row| {
            let part = prepared
                .parts
                .iter()
                .find(|(_, part)| part.name == row.part);
            let part = part.map(|(id, _)| *id).or_else(|| gap(&row.part))?;
            Some(proof_row(self.build, self.axle, self.side, part, &row))
        });
        proof.rows.extend(known);
    }

    fn omit(&self, omissions: &[Omission], proof: &mut Proof) {
        for omission in omissions {
            let about = omission.part.clone().or_else(|| omission.load_case.clone());
            let about = about.unwrap_or_else(|| format!("{} axle", self.axle.word()));
            proof
                .notes
                .push(Note::left_out(about, omission.why.to_string()).of(self.axle));
        }
    }

    /// Remedies of the worst case of every check that does not keep its factor.
    fn mend(
        &self,
        prepared: &Prepared,
        cancelled: &dyn Fn() -> bool,
        proof: &mut Proof,
    ) -> Option<()> {
        let mine = |row: &ProofRow| {
            row.axle == self.axle && row.side == self.side && row.part != ProofPart::Steering
        };
        let mender = Mender {
            build: self.build,
            axle: self.axle,
            side: self.side.unwrap_or(Side::Left),
        };
        mender.mend(mine, &prepared.cases, cancelled, proof)
    }
}

/// Remedies of the steering's rows, side by side.
fn mend_steering(
    build: &Build,
    axle: AxleName,
    cancelled: &dyn Fn() -> bool,
    proof: &mut Proof,
) -> Option<()> {
    for side in [None, Some(Side::Left), Some(Side::Right)] {
        let mine = |row: &ProofRow| {
            row.axle == axle && row.side == side && row.part == ProofPart::Steering
        };
        let mender = Mender {
            build,
            axle,
            side: side.unwrap_or(Side::Left),
        };
        mender.mend(mine, &[], cancelled, proof)?;
    }
    Some(())
}

fn gap(name: &str) -> Option<ProofPart> {
    let mut pairs = trammel_strength::clearance::Pair::ALL.into_iter();
    pairs
        .find(|pair| pair.to_string() == name)
        .map(ProofPart::Gap)
}
