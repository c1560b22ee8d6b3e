//! What the conversion of every part of a file shares.

use trammel_build::{BoltAxis, Force};

use crate::{format1, format1_parts};

/// A name of nothing that a build has.
pub(crate) struct OddName {
    /// Path of the value, such as `locked.2`.
    pub at: String,
    /// Path to speak of.
    pub path: String,
    pub found: String,
    pub expected: &'static str,
}

pub(crate) fn bolt(f: format1::BoltAxis) -> BoltAxis {
    match f {
        format1::BoltAxis::ForeAft => BoltAxis::ForeAft,
        format1::BoltAxis::Vertical => BoltAxis::Vertical,
        format1::BoltAxis::Lateral => BoltAxis::Lateral,
        format1::BoltAxis::Direction(x, y, z) => BoltAxis::Direction([x, y, z]),
    }
}

pub(crate) fn force(f: format1_parts::Force) -> Force {
    match f {
        format1_parts::Force::N(v) => Force::Newtons(v),
        format1_parts::Force::Lbf(v) => Force::PoundsForce(v),
    }
}
