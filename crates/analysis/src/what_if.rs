//! What would be if rack, frame or arms stood otherwise: the edits that would make it so, and a look without making them.

use trammel_build::{
    AxleModel, AxleName, Build, BuildFault, Edit, EditFault, PointName, PointRef, Side, Triple,
};
use trammel_geometry::{Point, Vector};

use crate::{AxleStudy, Raise, RaiseFault, TravelCurve, ride_height::raised};

/// Less than this is nothing, mm.
const NOTHING: f64 = 1e-6;

/// Changes tried out together, mm.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct WhatIf {
    /// Rack and inner joints higher; without a rack the inner joint alone.
    pub rack_height: f64,
    /// The frame higher over the ground.
    pub lift: f64,
    /// Upper arm longer: upright and wheel stay, the pivots go back along the arm.
    pub upper_arm: f64,
    /// Lower arm longer, in the same way.
    pub lower_arm: f64,
}

/// Why it can't be so.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum WhatIfFault {
    /// What would come of it is no usable build.
    #[error(transparent)]
    Edit(#[from] EditFault),
    /// The frame does not get there.
    #[error(transparent)]
    Raise(#[from] RaiseFault),
    /// It can't be posed.
    #[error(transparent)]
    Build(#[from] BuildFault),
    /// The pivots of an arm and its ball joint lie in one line.
    #[error(
        "the {0} arm has no length that could be changed: its ball joint is on the line through its pivots"
    )]
    NoArm(&'static str),
}

/// What would be.
#[derive(Clone, Debug)]
pub struct WouldBe {
    /// The axle.
    pub model: AxleModel,
    /// The looked-at side over its travel, rack at centre.
    pub curve: TravelCurve,
}

impl WhatIf {
    /// Whether nothing is changed.
    #[must_use]
    pub fn is_nothing(&self) -> bool {
        let all = [self.rack_height, self.lift, self.upper_arm, self.lower_arm];
        all.iter().all(|v| v.abs() < NOTHING)
    }

    /// The edits that make it so on an axle, in their order; `how` says what becomes of camber and stops when the frame is raised.
    ///
    /// # Errors
    /// [`WhatIfFault`] when it can't be.
    pub fn edits(
        &self,
        build: &Build,
        axle: AxleName,
        how: &Raise,
    ) -> Result<Vec<Edit>, WhatIfFault> {
        let mut edits = Vec::new();
        if self.upper_arm.abs() > NOTHING {
            edits.push(longer(build, axle, &UPPER, self.upper_arm)?);
        }
        if self.lower_arm.abs() > NOTHING {
            edits.push(longer(build, axle, &LOWER, self.lower_arm)?);
        }
        if self.rack_height.abs() > NOTHING {
            edits.extend(higher(build, axle, self.rack_height));
        }
        if self.lift.abs() > NOTHING {
            let there = applied(build, &edits)?;
            edits.push(raised(
                &there,
                &Raise {
                    by: self.lift,
                    ..*how
                },
            )?);
        }
        Ok(edits)
    }

    /// A side of an axle as it would be. Locks hold the user's hand, not a look.
    ///
    /// # Errors
    /// [`WhatIfFault`] when it can't be.
    pub fn look(
        &self,
        build: &Build,
        axle: AxleName,
        side: Side,
        how: &Raise,
    ) -> Result<WouldBe, WhatIfFault> {
        let there = applied(build, &self.edits(build, axle, how)?)?;
        let model = there.axle(axle)?;
        Ok(WouldBe {
            curve: AxleStudy::travel_curve(&model, side),
            model,
        })
    }
}

fn applied(build: &Build, edits: &[Edit]) -> Result<Build, EditFault> {
    let free = build.unlocked();
    edits.iter().try_fold(free, |b, edit| edit.apply(&b))
}

/// The points of an arm, and its word.
struct Arm {
    word: &'static str,
    pivots: [PointName; 2],
    ball_joint: PointName,
}

const UPPER: Arm = Arm {
    word: "upper",
    pivots: [PointName::UpperFrontPivot, PointName::UpperRearPivot],
    ball_joint: PointName::UpperBallJoint,
};
const LOWER: Arm = Arm {
    word: "lower",
    pivots: [PointName::LowerFrontPivot, PointName::LowerRearPivot],
    ball_joint: PointName::LowerBallJoint,
};

/// The pivots set back from the ball joint along the arm, on each side that has pivots of its own.
fn longer(build: &Build, axle: AxleName, arm: &Arm, by: f64) -> Result<Edit, WhatIfFault> {
    let mut moves = Vec::new();
    for side in [Side::Left, Side::Right] {
        let own = |point: &PointName| side == Side::Left || build.has_own_right_point(axle, *point);
        let at = |point| PointRef { axle, side, point };
        let pivots: Vec<_> = arm.pivots.into_iter().filter(own).collect();
        if pivots.is_empty() {
            continue;
        }
        let place = |point| build.point_mm(at(point));
        let ends = arm.pivots.map(place);
        let back = match (ends, place(arm.ball_joint)) {
            ([Some(a), Some(b)], Some(ball)) => back(a, b, ball),
            _ => None,
        };
        let shift = back.ok_or(WhatIfFault::NoArm(arm.word))? * by;
        for point in pivots {
            moves.extend(shifted(build, at(point), shift).map(|to| (at(point), to)));
        }
    }
    Ok(Edit::MovePoints(moves))
}

/// Unit vector from a ball joint square to the line through two pivots.
fn back(front: Point, rear: Point, ball: Point) -> Option<Vector> {
    let along = (front - rear).try_normalize(NOTHING)?;
    let way = front - ball;
    (way - along * along.dot(&way)).try_normalize(NOTHING)
}

/// The inner joint higher, with the rack where there is one; a right one in a place of its own too.
fn higher(build: &Build, axle: AxleName, by: f64) -> Vec<Edit> {
    let at = |side| PointRef {
        axle,
        side,
        point: PointName::TieRodInner,
    };
    let up = Vector::new(0.0, 0.0, by);
    let mut edits = Vec::new();
    if let Some(to) = shifted(build, at(Side::Left), up) {
        let point = at(Side::Left);
        edits.push(match axle {
            AxleName::Front => Edit::MoveRack { point, to },
            AxleName::Rear => Edit::MovePoint { point, to },
        });
    }
    if build.has_own_right_point(axle, PointName::TieRodInner)
        && let Some(to) = shifted(build, at(Side::Right), up)
    {
        let point = at(Side::Right);
        edits.push(Edit::MovePoint { point, to });
    }
    edits
}

fn shifted(build: &Build, at: PointRef, by: Vector) -> Option<Triple> {
    let mut place = build.point(at)?;
    for (slot, by) in place.iter_mut().zip(by.iter()) {
        // A coordinate that stays keeps what was typed.
        if by.abs() > NOTHING {
            *slot = ((*slot + build.unit.from_mm(*by)) * 1e7).round() / 1e7;
        }
    }
    Some(place)
}
