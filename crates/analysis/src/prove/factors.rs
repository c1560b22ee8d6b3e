//! The factor of one check pose by pose.

use trammel_build::{AxleName, Build, Side};
use trammel_strength::{check::Check, proof};

use super::{ProofDepth, ProofPart, prepared::Prepared, run::setup};
use crate::WorstPose;

/// Which check of which part, under which load case.
#[derive(Clone, Debug, PartialEq)]
pub struct FactorRequest {
    /// Axle.
    pub axle: AxleName,
    /// Side.
    pub side: Side,
    /// Part.
    pub part: ProofPart,
    /// Check.
    pub check: Check,
    /// Load case by its name.
    pub load_case: String,
}

/// The factor at a pose.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct FactorRow {
    /// The pose.
    pub pose: WorstPose,
    /// Limit over value, or value over limit where more is better.
    pub factor: f64,
}

/// The factor at each of these poses, whether or not the load case would put its load on there; poses out of reach, and poses where the check has
/// nothing to divide by, are left out. Empty for what no load changes, and where the part or the case is not there.
#[must_use]
pub fn factors_over(build: &Build, asked: &FactorRequest, poses: &[WorstPose]) -> Vec<FactorRow> {
    let Ok(model) = build.axle(asked.axle) else {
        return Vec::new();
    };
    let Ok(prepared) = Prepared::of(build, &model, asked.side) else {
        return Vec::new();
    };
    let part = prepared.parts.iter().find(|(id, _)| *id == asked.part);
    let case = prepared.cases.iter().find(|c| c.name == asked.load_case);
    let (Some((_, part)), Some(case)) = (part, case) else {
        return Vec::new();
    };
    let parts = std::slice::from_ref(part);
    let setup = setup(build, &prepared, parts, &[], ProofDepth::Quick);
    let at = |place: &WorstPose| {
        let pose = prepared.linkage.pose(place.travel, place.rack).ok()?;
        let rows = proof::prove_at(&setup, case, &pose);
        let factor = rows.iter().find(|row| row.check == asked.check)?.factor?;
        Some(FactorRow {
            pose: *place,
            factor,
        })
    };
    poses.iter().filter_map(at).collect()
}
