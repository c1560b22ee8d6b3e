//! How deep a proof goes.

use trammel_strength::loads::Fineness;

/// How deep a proof goes.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ProofDepth {
    /// A coarse grid without refinement and remedies: for the frames of a drag.
    Quick,
    /// The worst pose of every check refined, remedies worked out.
    Full,
}

impl ProofDepth {
    pub(super) fn fineness(self) -> Fineness {
        match self {
            Self::Quick => Fineness {
                travels: 5,
                racks: 3,
                refined: false,
            },
            Self::Full => Fineness::default(),
        }
    }
}
