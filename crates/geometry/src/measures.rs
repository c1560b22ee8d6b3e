//! What the wheel does at a pose, as the project's conventions define it.

use crate::{Linkage, Point, Pose, Vector};

/// Below this, 1/mm, the front-view swing arm counts as endless.
const ENDLESS_SWING_ARM: f64 = 1e-9;

/// Every measure at a pose. Lengths in mm, angles in rad, of the left wheel (or of a right one seen in the mirror, for which `steer` is
/// positive when it turns to the mirror's left: see [`crate::AxlePose`]).
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Measures {
    /// Toe, toe-in positive.
    pub toe: f64,
    /// Camber, top outboard positive.
    pub camber: f64,
    /// Castor angle, top of the steering axis leaning back positive.
    pub castor: f64,
    /// Steering-axis inclination, top leaning inboard positive.
    pub steering_axis_inclination: f64,
    /// Scrub radius in the wheel's own frame: positive with the steering axis inboard of the contact point.
    pub scrub_radius: f64,
    /// Mechanical trail in the wheel's own frame: positive with the steering axis ahead of the contact point.
    pub mechanical_trail: f64,
    /// Where the steering axis meets this pose's ground.
    pub axis_at_ground: Point,
    /// Contact point's lateral move from the design position, outward positive.
    pub half_track_change: f64,
    /// Roll-centre height above this pose's ground.
    pub roll_centre_height: f64,
    /// Front-view instant centre by velocity, if it is not endlessly far away.
    pub instant_centre: Option<InstantCentre>,
    /// Steer angle of the left wheel, to the left positive: the negative of toe.
    pub steer: f64,
    /// Toe change per mm of travel, rad/mm.
    pub toe_rate: f64,
    /// Camber change per mm of travel, rad/mm.
    pub camber_rate: f64,
    /// Angle between tie rod and rack axis.
    pub tie_rod_angle: f64,
    /// Its part seen from the front: outer joint higher than the rack axis would have it is positive.
    pub tie_rod_angle_front: f64,
    /// Its part seen from above: outer joint further forward is positive.
    pub tie_rod_angle_plan: f64,
    /// Spring length and motion ratio, where there is a spring.
    pub spring: Option<SpringMeasures>,
}

/// Front-view instant centre of the upright against the chassis, by velocity in wheel travel.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct InstantCentre {
    /// Lateral position, mm, vehicle axes.
    pub y: f64,
    /// Height, mm, vehicle axes.
    pub z: f64,
    /// Front-view swing-arm length, mm: positive with the centre inboard of the contact point.
    pub swing_arm_length: f64,
}

/// The spring unit at a pose.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SpringMeasures {
    /// Distance between its mounts, mm.
    pub length: f64,
    /// Shortening per wheel travel, positive when bump shortens it.
    pub motion_ratio: f64,
}

impl SpringMeasures {
    /// Wheel rate, N/mm, of a spring of `spring_rate` N/mm: spring rate times motion ratio squared. The part that a preloaded spring adds as the
    /// motion ratio changes is not in it.
    #[must_use]
    pub fn wheel_rate(&self, spring_rate: f64) -> f64 {
        spring_rate * self.motion_ratio * self.motion_ratio
    }
}

impl Linkage {
    /// Every measure at a pose of this linkage.
    #[inline]
    #[must_use]
    pub fn measures(&self, pose: &Pose) -> Measures {
        let n = pose.spin_axis;
        let k = pose.steering_axis;
        let toe = direction(n.x, n.y);
        // sin and cos of toe without calling them: the heading of the wheel in plan.
        let flat_sq = (n.x * n.x + n.y * n.y).max(1e-24);
        let inverse_flat = 1.0 / flat_sq.sqrt();
        let (sin_toe, cos_toe) = (n.x * inverse_flat, n.y * inverse_flat);

        let upright = k.z.abs().max(1e-6).copysign(k.z);
        let drop = (pose.contact.z - pose.lower_ball_joint.z) / upright;
        let axis_at_ground = pose.lower_ball_joint + k * drop;
        let offset = axis_at_ground - pose.contact;
        let (roll_centre_height, instant_centre) = front_view(pose);
        let w = pose.rates.upright;
        let n_rate = w.cross(&n);
        Measures {
            toe,
            camber: -n.z.clamp(-1.0, 1.0).asin(),
            castor: direction(-k.x, k.z),
            steering_axis_inclination: direction(-k.y, k.z),
            scrub_radius: -(offset.x * sin_toe + offset.y * cos_toe),
            mechanical_trail: offset.x * cos_toe - offset.y * sin_toe,
            axis_at_ground,
            half_track_change: pose.contact.y - self.design_contact_y,
            roll_centre_height,
            instant_centre,
            steer: -toe,
            toe_rate: (n_rate.x * n.y - n_rate.y * n.x) * inverse_flat * inverse_flat,
            camber_rate: -n_rate.z * inverse_flat,
            ..self.rod_and_spring(pose)
        }
    }

    /// The tie rod's angles and the spring; the rest is filled by the caller.
    #[inline]
    fn rod_and_spring(&self, pose: &Pose) -> Measures {
        let rod = pose.tie_rod_outer - pose.tie_rod_inner;
        let e = self.rod_reference;
        let spring = self
            .corner()
            .spring
            .zip(pose.spring_arm_mount)
            .zip(pose.rates.spring_arm_mount)
            .map(|((spring, mount), velocity)| {
                let unit = mount - spring.chassis_mount;
                let length = unit.norm();
                SpringMeasures {
                    length,
                    motion_ratio: -unit.dot(&velocity) / length.max(1e-9),
                }
            });
        Measures {
            tie_rod_angle: direction(e.cross(&rod).norm(), e.dot(&rod)),
            tie_rod_angle_front: direction(e.y * rod.z - e.z * rod.y, e.y * rod.y + e.z * rod.z),
            tie_rod_angle_plan: direction(e.y * rod.x - e.x * rod.y, e.y * rod.y + e.x * rod.x),
            spring,
            ..NOTHING
        }
    }
}

/// `atan2`, sooner done ahead; nothing where there is no direction, whatever the signs of its noughts.
#[inline]
fn direction(aside: f64, ahead: f64) -> f64 {
    if ahead > 0.0 {
        (aside / ahead).atan()
    } else {
        aside.atan2(ahead + 0.0)
    }
}

/// Roll-centre height above the pose's ground and the instant centre, both from the velocity of the upright's own material.
#[inline]
fn front_view(pose: &Pose) -> (f64, Option<InstantCentre>) {
    let w = pose.rates.upright;
    let contact = pose.contact;
    let v: Vector = pose.rates.wheel_centre + w.cross(&(contact - pose.wheel_centre));
    let vz = if v.z.abs() < 1e-9 {
        1e-9_f64.copysign(v.z)
    } else {
        v.z
    };
    let roll_centre_height = contact.y * v.y / vz;
    // In the plane x = contact: v.y - w.x dz = 0 and v.z + w.x dy = 0, so dy = -v.z / w.x and dz = v.y / w.x.
    let centre = (w.x.abs() > ENDLESS_SWING_ARM * vz.abs()).then(|| InstantCentre {
        y: contact.y - v.z / w.x,
        z: contact.z + v.y / w.x,
        swing_arm_length: v.z / w.x,
    });
    (roll_centre_height, centre)
}

const NOTHING: Measures = Measures {
    toe: 0.0,
    camber: 0.0,
    castor: 0.0,
    steering_axis_inclination: 0.0,
    scrub_radius: 0.0,
    mechanical_trail: 0.0,
    axis_at_ground: Point::new(0.0, 0.0, 0.0),
    half_track_change: 0.0,
    roll_centre_height: 0.0,
    instant_centre: None,
    steer: 0.0,
    toe_rate: 0.0,
    camber_rate: 0.0,
    tie_rod_angle: 0.0,
    tie_rod_angle_front: 0.0,
    tie_rod_angle_plan: 0.0,
    spring: None,
};

#[cfg(test)]
mod tests {
    use std::f64::consts::PI;

    use super::{direction, front_view};
    use crate::{
        Pose, Vector,
        square::{linkage, square},
    };

    #[test]
    fn directions_all_round() {
        for (aside, ahead, angle) in [
            (1.0, 1.0, PI / 4.0),
            (1.0, 0.0, PI / 2.0),
            (2.0, -2.0, 0.75 * PI),
            (-3.0, -3.0, -0.75 * PI),
            (-1.0, 0.0, -PI / 2.0),
            // Nothing to measure is no angle.
            (0.0, 0.0, 0.0),
            (0.0, -0.0, 0.0),
        ] {
            assert_eq!(direction(aside, ahead), angle, "{aside} {ahead}");
        }
    }

    /// The upright's angular velocity about x and its contact's rise, both times any rate: an arm of 2e9 mm is endless, one of 5e8 is not.
    #[test]
    fn a_swing_arm_is_as_long_at_any_rate() {
        let pose = linkage(&square()).pose(0.0, 0.0);
        let arm = |rise: f64, length: f64| {
            let moving = pose.map(|at| {
                let mut at = at;
                at.rates.wheel_centre = Vector::new(0.0, 0.0, rise);
                at.rates.upright = Vector::new(rise / length, 0.0, 0.0);
                at.wheel_centre = at.contact;
                front_view(&at).1.map(|centre| centre.swing_arm_length)
            });
            moving.ok().flatten()
        };
        for rise in [1e-3, 1.0, 1e3] {
            let near = arm(rise, 5e8);
            assert!(
                near.is_some_and(|l| (l / 5e8 - 1.0).abs() < 1e-12),
                "{near:?} at {rise}"
            );
            assert_eq!(arm(rise, 2e9), None, "at {rise}");
        }
    }

    /// A contact that moves level has its roll centre endlessly high, which is told as a number all the same.
    #[test]
    fn a_contact_that_does_not_rise_has_a_finite_roll_centre() {
        let still = linkage(&square()).pose(0.0, 0.0).map(|pose| {
            let mut pose: Pose = pose;
            pose.rates.wheel_centre = Vector::y();
            pose.rates.upright = Vector::zeros();
            front_view(&pose)
        });
        assert!(
            still
                .as_ref()
                .is_ok_and(|(height, centre)| height.is_finite()
                    && height.abs() > 1e9
                    && centre.is_none()),
            "{still:?}"
        );
    }
}
