//! Both sides of an axle.

use crate::{Linkage, Measures, Pose, Unreachable};

/// Two corners that share a rack. The right one is kept as its mirror image, a left corner.
#[derive(Clone, Copy, Debug)]
pub struct Axle {
    /// Left corner.
    pub left: Linkage,
    /// Right corner, seen in the mirror of the centre plane.
    pub right_mirrored: Linkage,
}

/// Both sides at one moment.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct AxlePose {
    /// Left pose.
    pub left: Pose,
    /// Left measures.
    pub left_measures: Measures,
    /// Right pose, seen in the mirror.
    pub right_mirrored: Pose,
    /// Right measures; [`Measures::steer`] is in vehicle sense here, to the left positive, that is +toe.
    pub right_measures: Measures,
}

impl Axle {
    /// Both sides with their own wheel travels (mm) and one rack travel (mm).
    ///
    /// # Errors
    /// [`Unreachable`] of the side that can't get there.
    pub fn pose(
        &self,
        left_travel: f64,
        right_travel: f64,
        rack: f64,
    ) -> Result<AxlePose, Unreachable> {
        let left = self.left.pose(left_travel, rack)?;
        let right = self.right_mirrored.pose(right_travel, rack)?;
        let right_measures = self.right_mirrored.measures(&right);
        Ok(AxlePose {
            left,
            left_measures: self.left.measures(&left),
            right_mirrored: right,
            right_measures: Measures {
                steer: right_measures.toe,
                ..right_measures
            },
        })
    }

    /// Both wheels up or down together by `travel` mm.
    ///
    /// # Errors
    /// As [`Axle::pose`].
    pub fn heave(&self, travel: f64, rack: f64) -> Result<AxlePose, Unreachable> {
        self.pose(travel, travel, rack)
    }
}

impl AxlePose {
    /// Ackermann percentage at this pose, when the wheels are steered; see [`ackermann_percentage`]. `wheelbase` in mm.
    #[must_use]
    pub fn ackermann(&self, wheelbase: f64) -> Option<f64> {
        let apart = self.left_measures.axis_at_ground.y + self.right_measures.axis_at_ground.y;
        ackermann_percentage(
            self.left_measures.steer,
            self.right_measures.steer,
            wheelbase,
            apart,
        )
    }

    /// Kerb-to-kerb turning circle, mm, at this pose; see [`turning_circle_diameter`].
    #[must_use]
    pub fn turning_circle(&self, wheelbase: f64) -> Option<f64> {
        let (left, right) = (self.left_measures.steer, self.right_measures.steer);
        // Turning left, the right wheel is the outer one.
        let (outer, contact) = if left + right > 0.0 {
            (right, self.right_mirrored.contact)
        } else {
            (-left, self.left.contact)
        };
        turning_circle_diameter(outer, wheelbase, contact.x)
    }
}

/// (cot outer - cot inner) x wheelbase / distance between the steering axes at the ground x 100: 100 when all wheels turn about one centre. Steer
/// angles in rad, to the left positive; lengths in mm. `None` when the wheels are nearly straight, or turned against each other.
#[must_use]
pub fn ackermann_percentage(
    left_steer: f64,
    right_steer: f64,
    wheelbase: f64,
    axes_apart: f64,
) -> Option<f64> {
    let (outer, inner) = if left_steer + right_steer > 0.0 {
        (right_steer, left_steer)
    } else {
        (-left_steer, -right_steer)
    };
    let smallest = 1e-4;
    if outer < smallest || inner < smallest || axes_apart.abs() < smallest {
        return None;
    }
    let percentage = (1.0 / outer.tan() - 1.0 / inner.tan()) * wheelbase / axes_apart * 100.0;
    percentage.is_finite().then_some(percentage)
}

/// Diameter, mm, of the circle that the outer front contact point describes when that wheel rolls without slip about a centre on the rear
/// axle's line: `outer_steer` rad (positive), `wheelbase` mm, `contact_x` mm the contact point's station ahead of the front axle. `None` when the
/// wheel is nearly straight.
#[must_use]
pub fn turning_circle_diameter(outer_steer: f64, wheelbase: f64, contact_x: f64) -> Option<f64> {
    let diameter = 2.0 * (wheelbase + contact_x) / outer_steer.sin();
    (outer_steer > 1e-4 && diameter.is_finite() && diameter > 0.0).then_some(diameter)
}

/// Turns of the steering wheel from lock to lock: the rack goes `rack_travel` mm each way from its centre and `travel_per_turn` mm per turn of
/// the pinion. `None` when there is no such figure.
#[must_use]
pub fn turns_lock_to_lock(rack_travel: f64, travel_per_turn: f64) -> Option<f64> {
    let turns = 2.0 * rack_travel / travel_per_turn;
    (rack_travel >= 0.0 && travel_per_turn > 0.0 && turns.is_finite()).then_some(turns)
}
