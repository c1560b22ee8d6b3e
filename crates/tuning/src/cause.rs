//! Why toe changes: a height error (a slope) and a length error (a bowl), in mm of either joint, and which way it is to
//! be moved.

use std::fmt;

use trammel_geometry::{Corner, Vector};

use crate::{
    Score, Stations, TieRodJoint,
    best::{Direction, Problem, least_rms_along},
    score::Scoring,
};

/// On which side of the steering axis the tie rod's outer joint stands. What a reading means depends on it.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum RodSide {
    /// Ahead of the steering axis.
    Ahead,
    /// Behind it.
    Behind,
}

/// A toe curve taken apart by its two readings at equal bump and droop. Common practice, no source.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Split {
    /// The travel that bump and droop reach equally, mm.
    pub reach: f64,
    /// Half the difference of the two readings, rad: the height error's part. Positive: toe-in in bump.
    pub slope: f64,
    /// Half their sum, rad: the length error's part. Positive: toe-in both ways.
    pub bowl: f64,
}

/// What is wrong with a joint's place, the other one held.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Cause {
    /// The joint that is spoken of.
    pub joint: TieRodJoint,
    /// Ahead or behind.
    pub side: RodSide,
    /// How much too high the joint is, mm, square to the tie rod.
    pub height_error: f64,
    /// How much too long the tie rod is, mm: the joint's way along it to where it belongs.
    pub length_error: f64,
    /// Score now.
    pub now: Score,
    /// Score with both errors taken out.
    pub cured: Score,
    up: Vector,
    lengthwise: Vector,
}

/// Which way the height is off.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum HeightError {
    /// Inner joint too high, or outer too low.
    InnerTooHigh,
    /// Inner joint too low, or outer too high.
    InnerTooLow,
}

/// Which way the length is off.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum LengthError {
    /// The tie rod is too long.
    TooLong,
    /// The tie rod is too short.
    TooShort,
}

impl RodSide {
    /// Of a corner, at the outer joint's height.
    #[must_use]
    pub fn of(corner: &Corner) -> Self {
        let lower = corner.lower_arm.ball_joint;
        let axis = corner.upper_arm.ball_joint - lower;
        let arm = corner.tie_rod.outer - lower;
        let on_axis = lower + axis * (arm.z / axis.z);
        if corner.tie_rod.outer.x >= on_axis.x {
            Self::Ahead
        } else {
            Self::Behind
        }
    }

    /// How readings are to be understood with the tie rod on this side. From this kernel's own sums (tests), for a rod
    /// about level.
    #[must_use]
    pub fn rule(self) -> &'static str {
        match self {
            Self::Behind => {
                "With the tie rod behind the steering axis: toe-in in bump and toe-out in droop means the inner joint is too high or the outer too low; \
                 toe-in both ways means the tie rod is too long, toe-out both ways too short."
            }
            Self::Ahead => {
                "With the tie rod ahead of the steering axis: toe-in in bump and toe-out in droop means the inner joint is too low or the outer too high; \
                 toe-in both ways means the tie rod is too short, toe-out both ways too long."
            }
        }
    }

    /// What half the difference of two readings says about height; `None` when it says nothing.
    #[must_use]
    pub fn height_error(self, split: &Split) -> Option<HeightError> {
        let high = match self {
            Self::Behind => split.slope,
            Self::Ahead => -split.slope,
        };
        (high != 0.0).then_some(if high > 0.0 {
            HeightError::InnerTooHigh
        } else {
            HeightError::InnerTooLow
        })
    }

    /// What half the sum of two readings says about length; `None` when it says nothing.
    #[must_use]
    pub fn length_error(self, split: &Split) -> Option<LengthError> {
        let long = match self {
            Self::Behind => split.bowl,
            Self::Ahead => -split.bowl,
        };
        (long != 0.0).then_some(if long > 0.0 {
            LengthError::TooLong
        } else {
            LengthError::TooShort
        })
    }
}

impl Split {
    /// Of a curve of `(travel in mm, toe change in rad)` in order of travel; straight lines between its points. `None`
    /// when it does not go both ways.
    #[must_use]
    pub fn of(curve: &[(f64, f64)]) -> Option<Self> {
        let (first, last) = (curve.first()?, curve.last()?);
        let reach = (-first.0).min(last.0);
        if !(reach > 0.0) {
            return None;
        }
        let (up, down) = (at(curve, reach)?, at(curve, -reach)?);
        Some(Self {
            reach,
            slope: 0.5 * (up - down),
            bowl: 0.5 * (up + down),
        })
    }
}

fn at(curve: &[(f64, f64)], travel: f64) -> Option<f64> {
    let after = curve.partition_point(|p| p.0 < travel).max(1);
    let (a, b) = (curve.get(after - 1)?, curve.get(after)?);
    Some(a.1 + (b.1 - a.1) * (travel - a.0) / (b.0 - a.0))
}

impl Cause {
    /// Of a corner over the stations' travels: the two moves of a joint, square to the tie rod and along it, that leave
    /// the least RMS toe change, taken
    /// backwards. Not the half sums of two readings, which mix the two a little, but solved for. `None` when the
    /// corner can't be judged, or its tie rod points
    /// straight up.
    #[must_use]
    pub fn of(corner: &Corner, joint: TieRodJoint, stations: &Stations) -> Option<Self> {
        let (here, there) = (joint.place(corner), joint.other().place(corner));
        let lengthwise = (here - there).try_normalize(1e-6)?;
        let up = (Vector::z() - lengthwise * lengthwise.z).try_normalize(1e-3)?;
        let directions = [up, lengthwise].map(|along| Direction {
            outer: joint == TieRodJoint::Outer,
            along,
        });
        let problem = Problem {
            corner,
            directions: &directions,
            stations,
            scoring: Scoring::Rms,
            pull: 0.0,
        };
        let now = problem.score(&[0.0, 0.0])?;
        let moved = least_rms_along(&problem)?;
        let cured = problem.score(&moved)?;
        let (&height, &length) = (moved.first()?, moved.get(1)?);
        Some(Self {
            joint,
            side: RodSide::of(corner),
            height_error: -height,
            length_error: -length,
            now,
            cured,
            up,
            lengthwise,
        })
    }

    /// The move of the joint that takes both errors out, mm.
    #[must_use]
    pub fn cure(&self) -> Vector {
        -(self.up * self.height_error + self.lengthwise * self.length_error)
    }

    /// Which way the height is off, if by more than `least` mm.
    #[must_use]
    pub fn height(&self, least: f64) -> Option<HeightError> {
        // The outer joint too low tilts the curve as the inner too high does.
        let inner_is_high = (self.height_error > 0.0) == (self.joint == TieRodJoint::Inner);
        (self.height_error.abs() > least).then_some(if inner_is_high {
            HeightError::InnerTooHigh
        } else {
            HeightError::InnerTooLow
        })
    }

    /// Which way the length is off, if by more than `least` mm.
    #[must_use]
    pub fn length(&self, least: f64) -> Option<LengthError> {
        (self.length_error.abs() > least).then_some(if self.length_error > 0.0 {
            LengthError::TooLong
        } else {
            LengthError::TooShort
        })
    }
}

impl fmt::Display for RodSide {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Self::Ahead => "tie rod ahead of the steering axis",
            Self::Behind => "tie rod behind the steering axis",
        })
    }
}

impl fmt::Display for HeightError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Self::InnerTooHigh => "inner joint too high or outer too low",
            Self::InnerTooLow => "inner joint too low or outer too high",
        })
    }
}

impl fmt::Display for LengthError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Self::TooLong => "tie rod too long",
            Self::TooShort => "tie rod too short",
        })
    }
}

impl HeightError {
    /// What to do about it at a joint.
    #[must_use]
    pub fn cure(self, joint: TieRodJoint) -> &'static str {
        match (self, joint) {
            (Self::InnerTooHigh, TieRodJoint::Inner) => "lower the inner joint",
            (Self::InnerTooHigh, TieRodJoint::Outer) => "raise the outer joint",
            (Self::InnerTooLow, TieRodJoint::Inner) => "raise the inner joint",
            (Self::InnerTooLow, TieRodJoint::Outer) => "lower the outer joint",
        }
    }
}

impl LengthError {
    /// What to do about it at a joint.
    #[must_use]
    pub fn cure(self, joint: TieRodJoint) -> &'static str {
        match (self, joint) {
            (Self::TooLong, TieRodJoint::Inner) => {
                "move the inner joint outboard and shorten the rod as much"
            }
            (Self::TooLong, TieRodJoint::Outer) => {
                "move the outer joint inboard and shorten the rod as much"
            }
            (Self::TooShort, TieRodJoint::Inner) => {
                "move the inner joint inboard and lengthen the rod as much"
            }
            (Self::TooShort, TieRodJoint::Outer) => {
                "move the outer joint outboard and lengthen the rod as much"
            }
        }
    }
}
