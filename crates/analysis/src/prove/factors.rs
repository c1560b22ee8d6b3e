//! The factor of one check pose by pose.

use trammel_build::{AxleName, Build, Side};
use trammel_strength::{check::Check, proof};

use super::{ProofDepth, ProofPart, effort, prepared::Prepared, rows::setup};
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
    /// Load case by its name; of no account for what no load changes.
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
/// nothing to divide by, are left out. A gap, a joint's swivel and room, and the margin before over centre ask for no load case. Empty for what no pose changes, and where the part or the case is
/// not there.
#[must_use]
pub fn factors_over(build: &Build, asked: &FactorRequest, poses: &[WorstPose]) -> Vec<FactorRow> {
    let Ok(model) = build.axle(asked.axle) else {
        return Vec::new();
    };
    if asked.part == ProofPart::Steering {
        let factor = effort::factor_at(build, &model, asked);
        return over(poses, |place| factor.as_ref()?(place));
    }
    let Ok(prepared) = Prepared::of(build, &model, asked.side) else {
        return Vec::new();
    };
    let pose = |place: &WorstPose| prepared.linkage.pose(place.travel, place.rack).ok();
    if let (ProofPart::Gap(pair), Some(clearances)) = (asked.part, prepared.clearances) {
        let corner = prepared.linkage.corner();
        return over(poses, |place| {
            let gap = clearances.gap(pair, corner, &pose(place)?)?;
            Some(gap.distance / clearances.wanted())
        });
    }
    let part = prepared.parts.iter().find(|(id, _)| *id == asked.part);
    let case = prepared.cases.iter().find(|c| c.name == asked.load_case);
    let Some((_, part)) = part else {
        return Vec::new();
    };
    let parts = std::slice::from_ref(part);
    let setup = setup(build, &prepared, parts, &[], ProofDepth::Quick);
    over(poses, |place| {
        let pose = pose(place)?;
        let mut rows = proof::stance_at(&setup, &pose);
        rows.extend(case.map_or_else(Vec::new, |case| proof::prove_at(&setup, case, &pose)));
        rows.iter().find(|row| row.check == asked.check)?.factor
    })
}

fn over(poses: &[WorstPose], factor: impl Fn(&WorstPose) -> Option<f64>) -> Vec<FactorRow> {
    let at = |place: &WorstPose| {
        Some(FactorRow {
            pose: *place,
            factor: factor(place).filter(|f| f.is_finite())?,
        })
    };
    poses.iter().filter_map(at).collect()
}
