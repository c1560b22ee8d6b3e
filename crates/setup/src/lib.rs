//! Setting up the finished vehicle: from a page of readings to coordinates, to a cause, to the next turn of the thread.
//!
//! On top of the kernel: millimetres and radians, ISO 8855 axes, a left corner (a right one in the mirror). Pure functions and plain data:
//! no file, no window, no clock. What can't be worked out is a typed error that says what was found and what was expected, never a panic
//! and never a number that is not one.
//!
//! | where | what |
//! |---|---|
//! | [`Survey`], [`Survey::adjust`], [`Surveyed`] | coordinates from tape distances, heights, offsets and angles, with error ellipses, the wrong reading, weak places |
//! | [`suggest`] | which further reading helps most |
//! | [`Method`], [`Sheet`], [`Reduced`] | toe readings by any method, reduced to toe changes with their uncertainty |
//! | [`Shape`], [`ReadCause`] | slope and bowl, and what is wrong with the inner joint |
//! | [`learn`], [`Learned`] | the most likely hardpoints, and what the readings can't tell apart |
//! | [`Question`], [`advise`], [`advise_axle`] | the smallest set of real moves, alternatives, or where to weld |
//! | [`CastorSweep`], [`turns_for_toe`], [`CornerWeights`] | static set-up |
//!
//! A vehicle is learned as hardpoints that differ from the drawing within their build error, so each round of readings makes the next
//! prediction better; readings of all rounds count together, each with where the adjusters stood.
#![doc = include_str!("../ROUNDS.md")]
#![allow(
    clippy::neg_cmp_op_on_partial_ord,
    reason = "!(a > b) refuses what is not a number as well, and that is meant wherever it stands"
)]

mod learn;
mod least_squares;
mod moves;
mod shift;
mod statics;
mod survey;
mod toe;

pub use learn::{
    Flip, LearnFault, Learned, LearnedError, Prediction, Round, Told, flip_doubt, learn, tell_apart,
};
pub use moves::{
    Adjuster, AdjusterFault, AdjusterKind, Advice, AxleAdvice, Move, Plan, Question, ReadCause,
    Reweld, RodThread, Shared, TurnsAndFlats, advise, advise_axle, turns_and_flats,
};
pub use shift::JointShift;
pub use statics::{
    CastorFault, CastorSweep, CornerWeights, Shares, TurnEffect, TurnsFault, WantedTurns,
    castor_factor, difference_of_toe, toe_of_difference, turn_effect, turns_for_toe,
};
pub use survey::{
    Blunder, Checked, Correction, Edge, Ellipse, Hint, Moved, Place, Placed, PointId, Reach,
    Reading, ReadingId, Side, Slip, Suggestion, Survey, SurveyFault, Surveyed, TapeClass, View,
    Weak, What, moved, suggest, tape_deviation,
};
pub use toe::{
    Board, Curve, Method, MethodFault, Raw, ReadingsFault, Reduced, Row, Run, RunCheck, Shape,
    Sheet, SheetFault, SignDoubt, SpotWay, ToePoint, ToeReadings, TravelBy, TravelFault, Uncertain,
    Way, sign_doubts, travel,
};
