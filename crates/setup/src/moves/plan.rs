//! A set of moves with what it does.

use trammel_tuning::ToeCurves;

use super::AdjusterKind;
use crate::JointShift;

/// One adjuster moved.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Move {
    /// What is adjusted.
    pub kind: AdjusterKind,
    /// Which of the question's adjusters, from 0.
    pub adjuster: usize,
    /// Steps: out, or more washers, is positive. Never 0.
    pub steps: i32,
    /// All of them together, mm, with the same sign.
    pub length: f64,
}

/// A set of moves, with what is to be expected of it.
#[derive(Clone, Debug, PartialEq)]
pub struct Plan {
    /// The moves; none when the curve is left as it is.
    pub moves: Vec<Move>,
    /// Where the joints stand afterwards, counted from as built.
    pub shift: JointShift,
    /// The curves to expect.
    pub after: ToeCurves,
    /// Standard deviation of every change to expect, rad, in the order of [`ToeCurves::changes`].
    pub deviations: Vec<f64>,
    /// Largest toe change to expect, rad.
    pub largest: f64,
    /// Chance that the largest toe change stays within the limit, 0 to 1, as far as tolerances and readings tell.
    pub confidence: f64,
    /// How much longer the tie rod has to be so that static toe stays, mm.
    pub rod_longer: f64,
    /// Whether the tie rod's thread allows that; `None` where its range is not known.
    pub rod_allows: Option<bool>,
}
