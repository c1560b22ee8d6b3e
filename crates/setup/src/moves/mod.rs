//! What to do now: the smallest set of real moves that brings the toe curve within its limit.

mod adjuster;
mod advice;
mod axle;
mod cause;
mod plan;
mod search;
mod words;

pub use adjuster::{Adjuster, AdjusterFault, AdjusterKind, RodThread};
pub use advice::{Advice, Question, Reweld, advise};
pub use axle::{AxleAdvice, Shared, advise_axle};
pub use cause::ReadCause;
pub use plan::{Move, Plan};
pub use words::{TurnsAndFlats, turns_and_flats};
