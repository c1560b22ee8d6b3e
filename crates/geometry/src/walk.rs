//! Many poses along wheel travel at one rack position, each started from what the last ones tell.

use crate::{Linkage, Pose, Unreachable, solve::Known};

/// A walk along travel with the rack held. Ask for neighbouring travels in turn: each pose starts from a guess that follows
/// the last two. Any order gives the same poses, to rounding; order only decides how fast.
#[derive(Clone, Copy, Debug)]
pub struct Walk<'a> {
    linkage: &'a Linkage,
    rack: f64,
    design_angle: f64,
    last: Past,
    before: Option<Past>,
}

/// A pose of the past: the travel asked for, the rate of the arm angle there, and the place found.
#[derive(Clone, Copy, Debug)]
struct Past {
    travel: f64,
    rate: f64,
    known: Known,
}

impl<'a> Walk<'a> {
    /// Starts at the design height with the rack at `rack` mm.
    ///
    /// # Errors
    /// [`Unreachable`] when the rack can't be moved there.
    pub fn new(linkage: &'a Linkage, rack: f64) -> Result<Self, Unreachable> {
        let design = linkage.steer(0.0, rack)?;
        Ok(Self {
            linkage,
            rack,
            design_angle: design.angle,
            last: Past {
                travel: 0.0,
                rate: 1.0 / design.rise,
                known: design,
            },
            before: None,
        })
    }

    /// The linkage that walks.
    #[must_use]
    pub fn linkage(&self) -> &'a Linkage {
        self.linkage
    }

    /// The pose at a wheel travel, mm.
    ///
    /// # Errors
    /// [`Unreachable`] names the member that runs out between the design height and this travel.
    #[inline]
    pub fn pose(&mut self, travel: f64) -> Result<Pose, Unreachable> {
        let guess = self.guess(travel);
        let near = self.last.known;
        let (pose, known) =
            self.linkage
                .pose_from(travel, self.rack, guess, near, self.design_angle)?;
        if self.last.travel != travel {
            self.before = Some(self.last);
        }
        self.last = Past {
            travel,
            rate: pose.rates.arm_angle,
            known,
        };
        Ok(pose)
    }

    /// A cubic through the last two angles and their rates, carried on; straight on when there is one only.
    #[inline]
    fn guess(&self, travel: f64) -> f64 {
        let step = travel - self.last.travel;
        let (angle, rate) = (self.last.known.angle, self.last.rate);
        let straight = angle + rate * step;
        let Some(before) = self.before else {
            return straight;
        };
        let span = self.last.travel - before.travel;
        if step.abs() > 2.0 * span.abs() {
            return straight;
        }
        // Newton form on (last, last, before, before).
        let per_span = 1.0 / span;
        let slope = (angle - before.known.angle) * per_span;
        let c2 = (rate - slope) * per_span;
        let c3 = (rate - 2.0 * slope + before.rate) * (per_span * per_span);
        straight + step * step * (c2 + c3 * (step + span))
    }
}

#[cfg(test)]
mod tests {
    use super::{Past, Walk};
    use crate::{
        solve::Known,
        square::{linkage, square},
    };

    fn angle(travel: f64) -> f64 {
        0.1 + travel * (0.02 + travel * (3e-4 - 2e-6 * travel))
    }

    fn past(travel: f64) -> Past {
        let rate = 0.02 + travel * (6e-4 - 6e-6 * travel);
        let known = Known {
            angle: angle(travel),
            travel,
            rise: 1.0 / rate,
        };
        Past {
            travel,
            rate,
            known,
        }
    }

    #[test]
    fn a_cubic_is_carried_on_exactly() {
        let linkage = linkage(&square());
        let walk = Walk {
            linkage: &linkage,
            rack: 0.0,
            design_angle: 0.0,
            last: past(20.0),
            before: Some(past(12.0)),
        };
        for travel in [4.5, 12.0, 15.0, 20.0, 28.0, 35.5] {
            let guess = walk.guess(travel);
            assert!((guess - angle(travel)).abs() < 1e-14, "{guess} at {travel}");
        }
    }

    #[test]
    fn a_walk_remembers_the_last_two_travels() -> Result<(), crate::Unreachable> {
        let linkage = linkage(&square());
        let mut walk = Walk::new(&linkage, 0.0)?;
        for travel in [10.0, 25.0, 25.0] {
            walk.pose(travel)?;
        }
        assert_eq!(walk.last.travel, 25.0);
        assert_eq!(walk.before.map(|b| b.travel), Some(10.0));
        Ok(())
    }

    #[test]
    fn far_ahead_or_from_one_place_the_way_is_taken_as_straight() {
        let linkage = linkage(&square());
        let last = past(20.0);
        for (before, travel) in [
            (Some(past(12.0)), 36.5),
            (Some(past(12.0)), 3.5),
            (None, 24.0),
        ] {
            let walk = Walk {
                linkage: &linkage,
                rack: 0.0,
                design_angle: 0.0,
                last,
                before,
            };
            let straight = last.known.angle + last.rate * (travel - 20.0);
            assert!((walk.guess(travel) - straight).abs() < 1e-14);
        }
    }
}
