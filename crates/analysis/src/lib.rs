//! What a build does, worked out: curves over travel and lock, scores, and cautions with what would mend them.
//!
//! Everything here is derived from a [`Build`](trammel_build::Build) and never saved in it. No colour, no window, no file.
//!
//! | where | what |
//! |---|---|
//! | [`Quantity`] | what can be drawn as a curve or written in a table: name, unit, meaning, sign |
//! | [`TravelCurve`] | a side over its travel at one rack position, with the scores of its toe curve |
//! | [`SteerCurve`] | an axle from lock to lock at the design height |
//! | [`Study`] | all of it for one build, recomputed whole at every change |
//! | [`Caution`], [`cautions`] | what is near or past a limit, worst first, with what would mend it |
//! | [`SweepTable`], [`SweepColumn`] | a table of poses over travel and rack |
//! | [`QuickLook`] | rack end and joints of one corner without remedies, for hundreds of places |
//! | [`BoltStudy`] | what a tie-rod joint sees on its bolt as it stands, and on bolts standing otherwise |
//! | [`bolt_hole`](fn@bolt_hole), [`RackEndStack`], [`rod_per_turn`] | what proof, sheets, cards and setting up take alike for a hole, on a rack end, of a tie rod |
//! | [`raised`], [`ride_heights`] | a build with its frame raised on the same arms, and what that does over a range |
//! | [`rack_end_factor`] | the rack end of a corner with its joints elsewhere, for searches |
//! | [`next_moves`], [`NextMoves`] | what to adjust next on the finished vehicle, from its sessions of readings |
//! | [`prove`](fn@prove), [`Proof`], [`ProofRow`] | every part under every load case at its worst pose, with remedies; may run on another thread |
//! | [`forces_under`], [`forces_under_case`] | every force of a corner over travel and rack |
//! | [`factors_over`] | the factor of one check pose by pose, for a curve over travel or rack |
//! | [`thread_comparison`] | threads and grades side by side for the rack end's own load |
//! | [`effective_load_cases`], [`usual_load_cases`] | what a build is proved against |
//! | [`advice_words`] | the same as it is said in the shop |
//! | [`Findings`], [`RackEndStudy`] | the cautions together with the figures of the rack ends |
#![doc = include_str!("../BENCHMARKS.md")]

mod bolt_hole;
mod bolt_study;
mod build_error;
mod candidate;
mod caution;
mod checks;
mod corner_view;
mod findings;
mod keep_outs;
mod lift_verdict;
mod pose_grid;
mod prove;
mod quantity;
mod quick_look;
mod rack_end;
mod ride_height;
mod ride_height_study;
mod search;
mod set_up;
mod steer_curve;
mod steering_threads;
mod study;
mod sweep;
mod sweep_column;
mod sweep_row;
mod travel_curve;
mod what_if;
mod words;

pub use bolt_hole::{BoltHole, bolt_hole, clearance};
pub use bolt_study::{BoltStudy, Swivel};
pub use build_error::{coordinate_name, point_name, tolerances};
pub use candidate::rack_end_factor;
pub use caution::{Bound, Caution, CautionKind, Figure, FigureUnit, Grade, Remedy, WorstPose};
pub use findings::{Depth, Findings, cautions};
pub use keep_outs::blocks;
pub use lift_verdict::LiftVerdict;
pub use prove::{
    FactorRequest, FactorRow, ForceFault, ForcePoint, ForceRequest, ForceRow, ForceTable, Note,
    NoteKind, Proof, ProofDepth, ProofPart, ProofRow, Shown, SteeringFigures, SteeringForces,
    ThreadRow, USUAL_CAUTIONS, WheelForce, acting_forces, effective_load_cases, factors_over,
    forces_under, forces_under_case, not_in_it, prove, steering_forces, thread_comparison,
    thread_comparison_raised, usual_load_cases,
};
pub use quantity::{Against, Quantity, UnitKind};
pub use quick_look::QuickLook;
pub use rack_end::RackEndStudy;
pub use ride_height::{Raise, RaiseFault, Stops, raised};
pub use ride_height_study::{RideHeightRow, ride_heights, rise_at};
pub use set_up::as_built as surveyed;
pub use set_up::words as advice_words;
pub use set_up::{Doubt, NextFault, NextMoves, SideNext, SideReadings, next_moves};
pub use steer_curve::{SteerCurve, SteerStation};
pub use steering_threads::{RackEndStack, rack_end_thread, rack_end_winding, rod_per_turn};
pub use study::{AxleStudy, Study};
pub use sweep::{DEFAULT_POSITIONS, MOST_ROWS, Span, SweepFault, SweepRequest, SweepTable};
pub use sweep_column::SweepColumn;
pub use travel_curve::{Station, TravelCurve};
pub use what_if::{WhatIf, WhatIfFault, WouldBe};
