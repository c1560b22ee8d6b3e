//! A build proved: every part under every load case at its worst pose.
//!
//! Plain data in, plain data out: [`prove`] may run on another thread and be called off. Rows say which value was compared with which limit, and
//! where both come from; none says that a part is good enough. What could not be checked, and what was taken where the build says nothing, is said in
//! [`Proof::notes`].

mod cases;
mod clearances;
mod cures;
mod depth;
mod effort;
mod end_bracket;
mod factors;
mod forces;
mod joints;
mod materials;
mod notes;
mod parts;
mod prepared;
mod proof;
mod reasons;
mod remarks;
mod remedies;
mod remedy_edits;
mod row;
mod rows;
mod run;
mod steering_forces;
mod threads;
mod words;

pub use cases::{effective_load_cases, usual_load_cases};
pub use depth::ProofDepth;
pub use effort::SteeringFigures;
pub use factors::{FactorRequest, FactorRow, factors_over};
pub use forces::{
    ForceFault, ForcePoint, ForceRequest, ForceRow, ForceTable, WheelForce, acting_forces,
    forces_under, forces_under_case,
};
pub use notes::{Note, NoteKind, USUAL_CAUTIONS, not_in_it};
pub use proof::Proof;
pub use row::{ProofPart, ProofRow, Shown};
pub use run::prove;
pub use steering_forces::{SteeringForces, steering_forces};
pub use threads::{ThreadRow, thread_comparison, thread_comparison_raised};

pub(crate) use row::caution_of;
