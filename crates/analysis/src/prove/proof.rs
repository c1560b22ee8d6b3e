//! What a proof finds.

use super::{Note, ProofDepth, ProofRow, SteeringFigures};

/// Everything that was checked, and what was not.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Proof {
    /// Worst first: dangers, cautions, notes, then the rest, each by least factor over the wanted one; rows without a factor last.
    pub rows: Vec<ProofRow>,
    /// What was left out, and what was taken where the build says nothing; sorted, each once.
    pub notes: Vec<Note>,
    /// What the steering asks of the driver.
    pub steering: Option<SteeringFigures>,
    /// How deep it went; `None` before anything was proved.
    pub depth: Option<ProofDepth>,
}
