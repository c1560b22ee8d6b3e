//! What the conversion of every part of a file shares.

use trammel_build::{BoltAxis, Force};

use crate::{format1_parts, format1_pieces};

/// A name of nothing that a build has.
pub(crate) struct OddName {
    /// Path of the value, such as `locked.2`.
    pub at: String,
    /// Path to speak of.
    pub path: String,
    pub found: String,
    pub expected: &'static str,
}

pub(crate) fn bolt(f: format1_pieces::BoltAxis) -> BoltAxis {
    match f {
        format1_pieces::BoltAxis::ForeAft => BoltAxis::ForeAft,
        format1_pieces::BoltAxis::Vertical => BoltAxis::Vertical,
        format1_pieces::BoltAxis::Lateral => BoltAxis::Lateral,
        format1_pieces::BoltAxis::Direction(x, y, z) => BoltAxis::Direction([x, y, z]),
    }
}

pub(crate) fn force(f: format1_parts::Force) -> Force {
    match f {
        format1_parts::Force::N(v) => Force::Newtons(v),
        format1_parts::Force::Lbf(v) => Force::PoundsForce(v),
    }
}
