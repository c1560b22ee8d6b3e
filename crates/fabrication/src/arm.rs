//! The true shape of an A-arm: its plane laid flat, and its tubes' lengths.
//!
//! The arm's plane goes through both pivots and the ball joint. Laid flat, the rear pivot is at (0, 0), the front one on x, the ball joint above. The tubes run from bushes
//! on the pivot axis to the ball joint's housing; each is coped to its bush, and cut to the housing and to the other tube.

use std::f64::consts::PI;

use nalgebra::Point3;
use trammel_strength::BadNumber;

use crate::coping::Cope;
use crate::end_cut::EndCut;
use crate::mitre::Mitre;
use crate::plane::Point;
use crate::size::positive;

/// An arm laid flat, mm.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ArmPlan {
    /// Distance of the pivots.
    pub pivots: f64,
    /// The ball joint, from the rear pivot along the pivot axis and square to it.
    pub ball_joint: Point,
}

impl ArmPlan {
    /// The plan of an arm from its three points in any frame, mm.
    ///
    /// # Errors
    /// A coordinate that is no number, pivots in one place, a ball joint on the pivot axis.
    pub fn new(
        front: Point3<f64>,
        rear: Point3<f64>,
        ball: Point3<f64>,
    ) -> Result<Self, BadNumber> {
        let pivots = positive("the distance of the arm's pivots", (front - rear).norm())?;
        let axis = (front - rear) / pivots;
        let reach = ball - rear;
        let along = reach.dot(&axis);
        let across = (reach - axis * along).norm();
        positive("the ball joint's distance from the pivot axis", across)?;
        Ok(Self {
            pivots,
            ball_joint: Point::new(along, across),
        })
    }

    /// From the rear and the front pivot to the ball joint, mm.
    #[must_use]
    pub fn legs(&self) -> [f64; 2] {
        [
            self.ball_joint.coords.norm(),
            (self.ball_joint - Point::new(self.pivots, 0.0)).norm(),
        ]
    }

    /// The angle of each leg with the pivot axis, inside the arm, rad: rear, then front.
    #[must_use]
    pub fn angles(&self) -> [f64; 2] {
        let Point { coords } = self.ball_joint;
        [
            coords.y.atan2(coords.x),
            coords.y.atan2(self.pivots - coords.x),
        ]
    }

    /// The angle between the legs at the ball joint, rad.
    #[must_use]
    pub fn angle_at_ball_joint(&self) -> f64 {
        PI - self.angles().iter().sum::<f64>()
    }

    /// One tube: coped to a bush at its pivot; at the ball joint cut to a round housing that stands square to the arm, and to the other tube.
    ///
    /// # Errors
    /// Diameters that don't go together, an angle too flat for a cut, ends that leave no tube.
    pub fn tube(&self, leg: Leg, tube: f64, bush: f64, housing: f64) -> Result<ArmTube, BadNumber> {
        let index = usize::from(leg == Leg::Front);
        let (length, angle) = (self.legs()[index], self.angles()[index]);
        let cope = Cope::new(tube, bush, angle, 0.0)?;
        let mitre = Mitre::new(tube, housing, self.angle_at_ball_joint())?;
        let ([cope_tip, cope_bottom], [mitre_tip, mitre_bottom]) = (cope.range(), mitre.range());
        let left = length - cope_bottom - mitre_bottom;
        BadNumber::unless(
            "what the ends' notches leave of the tube",
            left,
            left > 0.0,
            "a length above zero, in mm",
        )?;
        Ok(ArmTube {
            cut_length: length - cope_tip - mitre_tip,
            shortest: left,
            cope,
            mitre,
        })
    }
}

/// Which tube of an arm.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Leg {
    /// From the rear pivot.
    Rear,
    /// From the front pivot.
    Front,
}

/// A tube of an arm, mm.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ArmTube {
    /// Length to saw square before the ends are made: from tip to tip.
    pub cut_length: f64,
    /// From the bottom of one end's notch to that of the other.
    pub shortest: f64,
    /// The end at the pivot.
    pub cope: Cope,
    /// The end at the ball joint.
    pub mitre: Mitre,
}
