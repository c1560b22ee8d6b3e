//! What comes out.

use trammel_geometry::Pose;

use crate::check::{Check, Finding, Keep};
use crate::loads::LoadError;
use crate::number::BadNumber;
use crate::source::{Limit, Source};
use crate::statics::StaticsError;

/// A pose by its two numbers, mm.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PoseAt {
    /// Wheel travel.
    pub travel: f64,
    /// Rack travel.
    pub rack: f64,
}

impl PoseAt {
    pub(super) fn of(pose: &Pose) -> Self {
        Self {
            travel: pose.travel,
            rack: pose.rack,
        }
    }
}

/// One check of one part under one load case, at its worst pose.
#[derive(Clone, Debug, PartialEq)]
pub struct Row {
    /// The part's name.
    pub part: String,
    /// What was looked at.
    pub check: Check,
    /// The load case; `None` for what no load changes.
    pub load_case: Option<String>,
    /// Where it is worst; `None` for what no pose changes.
    pub pose: Option<PoseAt>,
    /// The value found, in the limit's unit.
    pub value: f64,
    /// What it was compared with: number, unit, source.
    pub limit: Limit,
    /// Which side of the limit is wanted.
    pub keep: Keep,
    /// Limit over value, or value over limit where more is better; `None` without anything to divide by.
    pub factor: Option<f64>,
    /// The factor that is wanted.
    pub wanted: f64,
    /// Where the formula comes from.
    pub method: Source,
}

impl Row {
    pub(super) fn new(
        part: &str,
        finding: &Finding,
        load_case: Option<&str>,
        pose: Option<PoseAt>,
        wanted: f64,
    ) -> Self {
        Self {
            part: part.to_owned(),
            check: finding.check,
            load_case: load_case.map(str::to_owned),
            pose,
            value: finding.value,
            limit: finding.limit,
            keep: finding.keep,
            factor: finding.factor(),
            wanted,
            method: finding.method,
        }
    }

    /// Factor over the wanted one: below one calls for a caution. `None` without a factor.
    #[must_use]
    pub fn standing(&self) -> Option<f64> {
        self.factor.map(|factor| factor / self.wanted)
    }
}

/// Why something is missing.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum Why {
    /// The load case can't be put on the wheel.
    #[error(transparent)]
    Load(#[from] LoadError),
    /// The forces are not known.
    #[error(transparent)]
    Statics(#[from] StaticsError),
    /// A part's numbers can't be computed with.
    #[error(transparent)]
    BadNumber(#[from] BadNumber),
    /// The linkage reaches no pose of the case's window.
    #[error(
        "the linkage reaches no pose of the load case's window; expected at least one; the case was left out"
    )]
    NoPose,
}

/// Something that could not be checked, at one pose at least.
#[derive(Clone, Debug, PartialEq)]
pub struct Omission {
    /// The load case, if it is one's.
    pub load_case: Option<String>,
    /// The part, if it is one's.
    pub part: Option<String>,
    /// Why.
    pub why: Why,
    /// At how many poses of the grid.
    pub poses: usize,
}
