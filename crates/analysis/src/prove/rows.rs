//! What a corner is proved with, and its rows as the build knows them.

use trammel_build::{AxleName, Build, Side, defaults};
use trammel_strength::{
    check::Check,
    loads::LoadCase,
    proof::{Part, Row, Setup},
};

use super::{
    ProofDepth, ProofPart, ProofRow, parts::typed, prepared::Prepared, reasons::reason,
    remarks::remark,
};
use crate::WorstPose;

/// The strength crate's setup of a corner.
pub(super) fn setup<'a>(
    build: &Build,
    prepared: &'a Prepared,
    parts: &'a [Part],
    cases: &'a [LoadCase],
    depth: ProofDepth,
) -> Setup<'a> {
    Setup {
        linkage: &prepared.linkage,
        scene: prepared.scene,
        reach: prepared.reach,
        fineness: depth.fineness(),
        parts,
        cases,
        clearances: None,
        wanted_factor: build
            .limits
            .strength_factor
            .unwrap_or(defaults::STRENGTH_FACTOR),
    }
}

/// A row of the strength crate as one of the build's.
pub(super) fn proof_row(
    build: &Build,
    axle: AxleName,
    side: Option<Side>,
    part: ProofPart,
    row: &Row,
) -> ProofRow {
    let wanted = match row.check {
        Check::RackFaceYield | Check::BoreMouthYield => build
            .limits
            .rack_end_factor
            .unwrap_or(defaults::RACK_END_FACTOR),
        _ => row.wanted,
    };
    ProofRow {
        axle,
        side,
        part,
        check: row.check,
        load_case: row.load_case.clone(),
        pose: row.pose.map(|pose| WorstPose {
            travel: pose.travel,
            rack: pose.rack,
        }),
        value: row.value,
        limit: row.limit.value,
        unit: row.limit.unit,
        keep: row.keep,
        factor: row.factor,
        wanted,
        source: match row.check {
            // The kernel takes every wanted gap for the user's.
            Check::Clearance => typed(build.limits.clearance.is_some()),
            _ => row.limit.source,
        },
        method: row.method,
        reason: reason(row.check),
        remark: remark(build, axle, part, row.check),
        remedies: Vec::new(),
        accepted: None,
    }
}
