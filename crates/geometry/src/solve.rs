//! The one scalar solve: which lower-arm angle gives the wanted wheel travel.

use crate::{Linkage, Point, Pose, Unreachable, configuration::Configuration, fault::Limit, reach};

/// Longest Newton step, rad.
const LONGEST_STEP: f64 = 0.25;
/// Heights that differ by no more than this, mm, are the same height.
pub(crate) const SAME_HEIGHT: f64 = 1e-12;
/// Newton steps before the slow, certain way is taken.
const STEPS: usize = 12;
/// Shorter ways than this, rad, are not asked whether they lead to each other.
const NO_WAY: f64 = 1.1e-6;
/// Largest part of the smaller rise by which a chord may differ from the mean of the rises at its ends.
const STRAIGHT: f64 = 0.1;

/// A place on the way: arm angle, wheel travel there, and the wheel centre's rise per radian of arm angle.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Known {
    pub angle: f64,
    pub travel: f64,
    pub rise: f64,
}

impl Known {
    /// Whether the way from here to `there` looks unbroken: the chord between them agrees with the slopes at both ends. Behind a gap in
    /// the reach, or over a turning point, they disagree.
    #[inline]
    pub(crate) fn leads_to(&self, there: &Self) -> bool {
        let way = there.angle - self.angle;
        let off = (there.travel - self.travel) - 0.5 * way * (self.rise + there.rise);
        let way = way.abs();
        way < NO_WAY || off.abs() <= STRAIGHT * way * self.rise.min(there.rise)
    }
}

/// An arm angle with its sine and cosine and the joints there.
pub(crate) struct Solved {
    pub known: Known,
    pub sin: f64,
    pub cos: f64,
    pub configuration: Configuration,
}

impl Linkage {
    /// The pose at a wheel travel (mm, bump positive) and rack travel (mm, left positive), reached from the design position: first the rack
    /// is moved with the wheel held at its design height, then the wheel.
    ///
    /// The lengths of all members hold to rounding; the wheel centre's height to 1e-9 mm, except within micrometres of a dead point, where the
    /// wheel rises so fast that the rounding of the arm angle shows.
    ///
    /// # Errors
    /// [`Unreachable`] names the member that runs out on the way, and where. What is not a number can't be reached either.
    pub fn pose(&self, travel: f64, rack: f64) -> Result<Pose, Unreachable> {
        let steered = self.steer(travel, rack)?;
        let guess = steered.angle + (travel - steered.travel) / steered.rise;
        let (pose, _) = self.pose_from(travel, rack, guess, steered, steered.angle)?;
        Ok(pose)
    }

    /// As [`Linkage::pose`]: `near` is a place at this rack position, `guess` an arm angle near it to try first, and `within_reach` the arm
    /// angle at the design height, from which the slow way starts.
    #[inline]
    pub(crate) fn pose_from(
        &self,
        travel: f64,
        rack: f64,
        guess: f64,
        near: Known,
        within_reach: f64,
    ) -> Result<(Pose, Known), Unreachable> {
        let inner = self.inner_joint(rack);
        let solved = match self.newton(travel, inner, guess, near) {
            Some(s) => s,
            None => {
                reach::walk_to(self, travel, inner, within_reach).map_err(|stop| Unreachable {
                    member: stop.member,
                    travel,
                    rack,
                    limit: Limit::Travel(stop.travel),
                })?
            }
        };
        Ok((self.finish(travel, rack, &solved), solved.known))
    }

    /// The place at the design height with the rack at `rack`, having moved it there from its centre. `travel` only goes into the error.
    pub(crate) fn steer(&self, travel: f64, rack: f64) -> Result<Known, Unreachable> {
        if rack == 0.0 || (!self.has_rack() && rack.is_finite()) {
            return Ok(self.design);
        }
        reach::walk_rack(self, rack).map_err(|(member, at)| Unreachable {
            member,
            travel,
            rack,
            limit: Limit::Rack(at),
        })
    }

    /// The joints at an arm angle, if the wheel can rise from there; the member that runs out otherwise.
    #[inline]
    pub(crate) fn at(&self, angle: f64, inner: Point) -> Result<Solved, reach::Outside> {
        let (sin, cos) = angle.sin_cos();
        let configuration = self
            .configuration(sin, cos, inner)
            .map_err(reach::Outside::Apart)?;
        let rise = configuration.centre_velocity.z;
        // Written so that what is not a number is refused too.
        if !(rise > 0.0 && rise <= f64::MAX) {
            return Err(reach::Outside::Turned(configuration.who_turned_back()));
        }
        let travel = configuration.centre.z - self.corner().wheel.centre.z;
        Ok(Solved {
            known: Known {
                angle,
                travel,
                rise,
            },
            sin,
            cos,
            configuration,
        })
    }

    /// Newton's method in the arm angle. `None` when it meets anything but a smooth way, which is for the slow way to sort out.
    #[inline]
    pub(crate) fn newton(
        &self,
        travel: f64,
        inner: Point,
        guess: f64,
        near: Known,
    ) -> Option<Solved> {
        let mut from = near;
        let mut step = guess - near.angle;
        let mut before = f64::MAX;
        for _ in 0..STEPS {
            let angle = from.angle + step.clamp(-LONGEST_STEP, LONGEST_STEP);
            let here = self.at(angle, inner).ok()?;
            if !from.leads_to(&here.known) {
                return None;
            }
            let error = here.known.travel - travel;
            let size = error.abs();
            if size <= SAME_HEIGHT || (size <= self.noise && size >= 0.5 * before) {
                return Some(here);
            }
            before = size;
            step = -error / here.known.rise;
            from = here.known;
        }
        None
    }
}

#[cfg(test)]
mod tests {
    use super::Known;
    use crate::square::{linkage, square};

    fn known(angle: f64, travel: f64, rise: f64) -> Known {
        Known {
            angle,
            travel,
            rise,
        }
    }

    /// The arm's sine is travel over length. The slow way is for what is not smooth.
    #[test]
    fn newtons_method_settles_what_is_smooth() {
        let mut corner = square();
        corner.rack_axis = None;
        let linkage = linkage(&corner);
        let inner = corner.tie_rod.inner;
        for travel in [-180.0, -60.0, -1e-3, 0.0, 35.0, 90.0, 180.0] {
            for guess in [-0.2, 0.0, 0.1, 0.4] {
                let found = linkage.newton(travel, inner, guess, linkage.design);
                let angle = found.map(|f| f.known.angle);
                let off = angle.map(|a| (a - f64::asin(travel / 360.0)).abs());
                assert!(
                    off.is_some_and(|off| off < 1e-12),
                    "{travel} from {guess}: {angle:?}"
                );
            }
        }
    }

    #[test]
    fn a_way_is_unbroken_when_its_chord_agrees_with_the_slopes_at_its_ends() {
        let here = known(0.2, 3.0, 100.0);
        // A chord of 0.1 rad rises 10 mm between rises of 100 mm/rad, give or take a tenth.
        for (travel, leads) in [
            (13.0, true),
            (13.9, true),
            (12.1, true),
            (14.1, false),
            (11.9, false),
        ] {
            let there = known(0.3, travel, 100.0);
            assert_eq!(
                (here.leads_to(&there), there.leads_to(&here)),
                (leads, leads),
                "{travel}"
            );
        }
        // Between 100 and 50 it rises 7.5 mm, give or take a tenth of the lesser rise.
        for (travel, leads) in [
            (10.5, true),
            (10.9, true),
            (10.1, true),
            (11.1, false),
            (9.9, false),
        ] {
            let there = known(0.3, travel, 50.0);
            assert_eq!(
                (here.leads_to(&there), there.leads_to(&here)),
                (leads, leads),
                "{travel}"
            );
        }
        // So near that rounding decides, nothing is asked.
        assert!(here.leads_to(&known(0.2 + 1e-6, 90.0, 1.0)));
        assert!(!here.leads_to(&known(0.2 + 2e-6, 90.0, 1.0)));
    }
}
