//! The one scalar solve: which lower-arm angle gives the wanted wheel travel.

use crate::{Linkage, Point, Pose, Unreachable, configuration::Configuration, fault::Limit, reach};

/// Longest Newton step, rad: short enough not to jump to another branch.
const LONGEST_STEP: f64 = 0.25;
/// Once the wheel centre is this close to the wanted height, mm, one more Newton step leaves less than 1e-10 mm
/// (its error is about the square of this over the arm's length).
const LAST_STEP: f64 = 1e-4;
/// Newton steps before the slow, certain way is taken.
const STEPS: usize = 12;

/// An arm angle with its sine and cosine and the joints there.
pub(crate) struct Solved {
    pub angle: f64,
    pub sin: f64,
    pub cos: f64,
    pub configuration: Configuration,
}

impl Linkage {
    /// The pose at a wheel travel (mm, bump positive) and rack travel (mm, left positive), reached from the design position.
    ///
    /// The lengths of all members hold to rounding; the wheel centre's height to 1e-9 mm.
    ///
    /// # Errors
    /// [`Unreachable`] names the member that runs out on the way, and where.
    pub fn pose(&self, travel: f64, rack: f64) -> Result<Pose, Unreachable> {
        let steered = self.steer(travel, rack)?;
        self.pose_from(travel, rack, steered, steered)
    }

    /// As [`Linkage::pose`]: `within_reach` is an arm angle that this rack position allows, from which the slow way would start;
    /// `guess` is where Newton's method starts.
    #[inline]
    pub(crate) fn pose_from(
        &self,
        travel: f64,
        rack: f64,
        guess: f64,
        within_reach: f64,
    ) -> Result<Pose, Unreachable> {
        let inner = self.inner_joint(rack);
        let target = self.corner().wheel.centre.z + travel;
        let solved = match self.newton(target, inner, guess) {
            Some(s) => s,
            None => {
                reach::walk_to(self, target, inner, within_reach).map_err(|stop| Unreachable {
                    member: stop.member,
                    travel,
                    rack,
                    limit: Limit::Travel(stop.travel),
                })?
            }
        };
        Ok(self.finish(
            travel,
            rack,
            solved.angle,
            solved.sin,
            solved.cos,
            &solved.configuration,
        ))
    }

    /// The arm angle at the design height with the rack at `rack`, having moved the rack there from its centre in steps short
    /// against the steering arm, so that no dead point is jumped. `travel` only goes into the error.
    pub(crate) fn steer(&self, travel: f64, rack: f64) -> Result<f64, Unreachable> {
        if rack == 0.0 || self.rack_axis == crate::Vector::zeros() {
            return Ok(0.0);
        }
        let short = rack.abs() <= 0.5 * self.outer_radius;
        if let Some(angle) = short
            .then(|| self.at_design_height(self.inner_joint(rack), 0.0))
            .flatten()
        {
            return Ok(angle);
        }
        reach::walk_rack(self, rack).map_err(|(member, at)| Unreachable {
            member,
            travel,
            rack,
            limit: Limit::Rack(at),
        })
    }

    #[inline]
    fn newton(&self, target: f64, inner: Point, guess: f64) -> Option<Solved> {
        let mut angle = guess;
        let mut last = false;
        for _ in 0..STEPS {
            let (sin, cos) = angle.sin_cos();
            let configuration = self.configuration(sin, cos, inner).ok()?;
            let rise = configuration.centre_velocity.z;
            // Downhill means past a turning point: leave it to the slow way. A NaN is refused too.
            if !(rise > 0.0) {
                return None;
            }
            let error = configuration.centre.z - target;
            if last || error == 0.0 {
                return Some(Solved {
                    angle,
                    sin,
                    cos,
                    configuration,
                });
            }
            let step = error / rise;
            last = error.abs() < LAST_STEP && step.abs() < 1e-5;
            angle -= step.clamp(-LONGEST_STEP, LONGEST_STEP);
        }
        None
    }

    /// The arm angle at the design height with the inner joint at `inner`, looked for from a `guess` within reach.
    pub(crate) fn at_design_height(&self, inner: Point, guess: f64) -> Option<f64> {
        let target = self.corner().wheel.centre.z;
        let solved = self
            .newton(target, inner, guess)
            .or_else(|| reach::walk_to(self, target, inner, guess).ok());
        solved.map(|s| s.angle)
    }
}
