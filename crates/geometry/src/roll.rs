//! An axle at a roll angle of the body.

use crate::{Axle, AxlePose, Unreachable, mirror_point};

/// Ground-line errors within this, mm, are none.
const ON_GROUND: f64 = 1e-9;
/// Rounds of the search; by halving alone they take a travel to rounding.
const ROUNDS: usize = 80;

impl Axle {
    /// The body rolled by `angle` rad about x (positive: its left side rises) against the ground under both wheels, one wheel going down by as
    /// much as the other goes up. The line through both contact points then has the slope of the ground, to 1e-9 mm.
    ///
    /// # Errors
    /// As [`Axle::pose`], for the travel at which the search for this roll angle first left the reach.
    pub fn roll(&self, angle: f64, rack: f64) -> Result<AxlePose, Unreachable> {
        self.roll_in(angle, rack, ROUNDS)
    }

    /// The roll in at most so many rounds of the search.
    fn roll_in(&self, angle: f64, rack: f64, rounds: usize) -> Result<AxlePose, Unreachable> {
        if !(angle.abs() < std::f64::consts::FRAC_PI_2) {
            // Nothing rolls that far. Asking for an endless travel tells where the reach ends.
            let droop = angle * f64::INFINITY;
            return self.pose(-droop, droop, rack);
        }
        let slope = angle.tan();
        let mut pose = self.pose(0.0, 0.0, rack)?;
        // Droop of the left wheel and the error there: the last place found, and the one before.
        let mut last = (0.0, pose.ground_line_error(slope));
        // Turns droops and errors round where the answer is a bump of the left wheel, so that it always lies ahead.
        let falls = last.1.is_sign_negative();
        let towards = |value: f64| if falls { -value } else { value };
        let mut per_droop = -2.0;
        // Droops, so turned, between which the answer lies.
        let (mut near, mut far) = (0.0, f64::INFINITY);
        let mut stopped = None;
        for _ in 0..rounds {
            if last.1.abs() <= ON_GROUND {
                return Ok(pose);
            }
            let droop = towards(within(near, far, towards(last.0 - last.1 / per_droop)));
            match self.pose(-droop, droop, rack) {
                Ok(p) => {
                    let error = p.ground_line_error(slope);
                    if towards(error) > 0.0 {
                        near = towards(droop);
                    } else {
                        far = towards(droop);
                        stopped = None;
                    }
                    if error != last.1 && droop != last.0 {
                        per_droop = (error - last.1) / (droop - last.0);
                    }
                    last = (droop, error);
                    pose = p;
                }
                Err(stop) => {
                    far = towards(droop);
                    stopped.get_or_insert(stop);
                }
            }
        }
        stopped.map_or(Ok(pose), Err)
    }
}

/// The wanted place if it is strictly between, a place that surely is otherwise.
fn within(near: f64, far: f64, wanted: f64) -> f64 {
    if wanted > near && wanted < far {
        wanted
    } else if far.is_finite() {
        0.5 * (near + far)
    } else {
        2.0 * near + 1.0
    }
}

impl AxlePose {
    /// How far the contact points are from a ground line of this slope (rising to the right), mm.
    fn ground_line_error(&self, slope: f64) -> f64 {
        let (left, right) = (self.left.contact, mirror_point(self.right_mirrored.contact));
        (left.z - right.z) + slope * (left.y - right.y)
    }
}

#[cfg(test)]
mod tests {
    use super::{ON_GROUND, within};
    use crate::{
        Axle,
        square::{linkage, square},
    };

    /// Four straight lines through the last two places are enough where nothing is near its end; halving would take some forty.
    #[test]
    fn a_roll_takes_few_rounds() {
        let mut low = square();
        low.lower_arm.ball_joint.z -= 30.0;
        let axle = Axle {
            left: linkage(&square()),
            right_mirrored: linkage(&low),
        };
        for degrees in [-6.0, -1.0, 0.5, 4.0_f64] {
            let angle = degrees.to_radians();
            let pose = axle.roll_in(angle, 0.0, 4);
            let error = pose.map(|p| p.ground_line_error(angle.tan()).abs());
            assert!(
                error.is_ok_and(|e| e <= ON_GROUND),
                "{error:?} at {degrees}"
            );
        }
    }

    #[test]
    fn a_wanted_place_outside_gives_way_to_one_that_is_surely_between() {
        for (near, far, wanted, taken) in [
            (2.0, 6.0, 3.0, 3.0),
            (2.0, 6.0, 2.0, 4.0),
            (2.0, 6.0, 6.0, 4.0),
            (2.0, 6.0, -1.0, 4.0),
            (2.0, 6.0, f64::NAN, 4.0),
            (2.0, f64::INFINITY, 50.0, 50.0),
            (2.0, f64::INFINITY, 1.0, 5.0),
            (0.0, f64::INFINITY, f64::NAN, 1.0),
        ] {
            assert_eq!(within(near, far, wanted), taken, "{near} {far} {wanted}");
        }
    }
}
