//! Many poses along wheel travel at one rack position, each started from what the last ones tell.

use crate::{Linkage, Pose, Unreachable};

/// A walk along travel with the rack held. Ask for neighbouring travels in turn: each pose starts from a guess that follows
/// the last two. Any order gives the same poses; order only decides how fast.
#[derive(Clone, Copy, Debug)]
pub struct Walk<'a> {
    linkage: &'a Linkage,
    rack: f64,
    design_angle: f64,
    last: Known,
    before: Option<Known>,
}

/// Arm angle and its rate at a travel already solved.
#[derive(Clone, Copy, Debug)]
struct Known {
    travel: f64,
    angle: f64,
    rate: f64,
}

impl<'a> Walk<'a> {
    /// Starts at the design height with the rack at `rack` mm.
    ///
    /// # Errors
    /// [`Unreachable`] when the rack can't be moved there.
    pub fn new(linkage: &'a Linkage, rack: f64) -> Result<Self, Unreachable> {
        let design_angle = linkage.steer(0.0, rack)?;
        let start = linkage.pose_from(0.0, rack, design_angle, design_angle)?;
        Ok(Self {
            linkage,
            rack,
            design_angle,
            last: Known::of(&start),
            before: None,
        })
    }

    /// The pose at a wheel travel, mm.
    ///
    /// # Errors
    /// [`Unreachable`] names the member that runs out between the design height and this travel.
    #[inline]
    pub fn pose(&mut self, travel: f64) -> Result<Pose, Unreachable> {
        let guess = self.guess(travel);
        let pose = self
            .linkage
            .pose_from(travel, self.rack, guess, self.design_angle)?;
        if self.last.travel != travel {
            self.before = Some(self.last);
        }
        self.last = Known::of(&pose);
        Ok(pose)
    }

    /// A cubic through the last two angles and their rates, carried on; straight on when there is one only.
    #[inline]
    fn guess(&self, travel: f64) -> f64 {
        let step = travel - self.last.travel;
        let straight = self.last.angle + self.last.rate * step;
        let Some(before) = self.before else {
            return straight;
        };
        let span = self.last.travel - before.travel;
        if step.abs() > 2.0 * span.abs() {
            return straight;
        }
        // Newton form on (last, last, before, before).
        let slope = (self.last.angle - before.angle) / span;
        let c2 = (self.last.rate - slope) / span;
        let c3 = (self.last.rate - 2.0 * slope + before.rate) / (span * span);
        straight + step * step * (c2 + c3 * (step + span))
    }
}

impl Known {
    fn of(pose: &Pose) -> Self {
        Self {
            travel: pose.travel,
            angle: pose.arm_angle,
            rate: pose.rates.arm_angle,
        }
    }
}
