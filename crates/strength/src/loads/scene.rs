//! From a load case to a load on the upright.

use nalgebra::{Point3, Vector3};
use trammel_geometry::{Linkage, Pose};

use super::LoadError;
use super::case::{Action, Facing, ForceUnit, Frame, LoadCase, Patch, Place, WheelHold};
use super::parking::{scrub_moment, stationary_torque};
use super::vehicle::{AxleEnd, Vehicle};
use crate::force::{TieRod, UprightLoad};
use crate::number::{BadNumber, finite, positive};
use crate::statics::Steering;

/// Smallest cosine between rod and rack that a push is divided by.
const LEAST_COSINE: f64 = 1e-6;

/// The rim, mm.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct WheelSize {
    rim_radius: f64,
    half_width: f64,
}

impl WheelSize {
    /// A rim of this diameter and width, mm.
    ///
    /// # Errors
    /// A length that is not finite and above zero.
    pub fn new(rim_diameter: f64, rim_width: f64) -> Result<Self, BadNumber> {
        Ok(Self {
            rim_radius: positive("the rim's diameter", rim_diameter)? / 2.0,
            half_width: positive("the rim's width", rim_width)? / 2.0,
        })
    }

    /// Radius, mm.
    #[must_use]
    pub fn rim_radius(&self) -> f64 {
        self.rim_radius
    }

    /// Half the width, mm.
    #[must_use]
    pub fn half_width(&self) -> f64 {
        self.half_width
    }
}

/// What a load case needs to know besides the pose.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Scene {
    /// The vehicle.
    pub vehicle: Vehicle,
    /// Which axle the corner belongs to.
    pub axle: AxleEnd,
    /// Its rim.
    pub wheel: WheelSize,
    /// Rack and steering wheel, where the axle is steered.
    pub steering: Option<Steering>,
}

impl Scene {
    /// The load of a case on the upright at a pose of a left corner (or a right one in the mirror). `sense` is one of
    /// [`LoadCase::senses`].
    ///
    /// # Errors
    /// A number of the case that can't be computed with, or a push on a rack that isn't there or can't push.
    pub fn load(
        &self,
        case: &LoadCase,
        linkage: &Linkage,
        pose: &Pose,
        sense: f64,
    ) -> Result<UprightLoad, LoadError> {
        let mut sum = UprightLoad::default();
        for action in &case.actions {
            let part = match *action {
                Action::Force {
                    at,
                    size,
                    unit,
                    frame,
                } => self.force(
                    case,
                    pose,
                    at,
                    in_frame(size, frame, pose) * self.unit(case, unit)?,
                )?,
                Action::TurnedOnTheSpot { friction, patch } => {
                    self.turned(case, pose, friction, patch, sense)?
                }
                Action::AgainstStop { hand_force } => {
                    self.against_stop(linkage, pose, hand_force)?
                }
            };
            sum = sum + part;
        }
        Ok(sum)
    }

    /// Every force of a case at a pose with the point where it acts, N and mm, left-corner terms; moments are not among them.
    ///
    /// # Errors
    /// A number of the case that can't be computed with.
    pub fn each_force(
        &self,
        case: &LoadCase,
        pose: &Pose,
        mut acts: impl FnMut(Point3<f64>, Vector3<f64>),
    ) -> Result<(), LoadError> {
        for action in &case.actions {
            if let Action::Force {
                at,
                size,
                unit,
                frame,
            } = *action
            {
                let force = in_frame(size, frame, pose) * self.unit(case, unit)?;
                acts(self.place(pose, at)?, force);
            }
        }
        Ok(())
    }

    /// N for one of these.
    fn unit(&self, case: &LoadCase, unit: ForceUnit) -> Result<f64, BadNumber> {
        match unit {
            ForceUnit::Newtons => Ok(1.0),
            ForceUnit::StaticWheelLoad => Ok(self.vehicle.static_wheel_load(self.axle)),
            ForceUnit::WheelLoad => {
                self.vehicle
                    .wheel_load(self.axle, case.braking, case.cornering)
            }
            ForceUnit::VehicleWeight => Ok(self.vehicle.weight()),
        }
    }

    fn force(
        &self,
        case: &LoadCase,
        pose: &Pose,
        place: Place,
        force: Vector3<f64>,
    ) -> Result<UprightLoad, BadNumber> {
        let load = UprightLoad::force_at(self.place(pose, place)?, force)?;
        match case.hold {
            WheelHold::Braked => Ok(load),
            WheelHold::Rolling => {
                let spin = pose.spin_axis;
                let turning = load.moment_about(pose.wheel_centre).dot(&spin);
                Ok(load + UprightLoad::moment(spin * -turning)?)
            }
        }
    }

    fn place(&self, pose: &Pose, place: Place) -> Result<Point3<f64>, BadNumber> {
        let Place::Rim {
            facing,
            height,
            outboard,
        } = place
        else {
            return Ok(match place {
                Place::Contact => pose.contact,
                _ => pose.wheel_centre,
            });
        };
        finite("the distance of the hit from the wheel's plane", outboard)?;
        if !(-1.0..=1.0).contains(&height) {
            return Err(BadNumber {
                what: "the height of the hit on the rim",
                found: height,
                expected: "-1 (lowest) to 1 (highest)",
            });
        }
        let [ahead, _] = headings(pose);
        let up = ahead.cross(&pose.spin_axis);
        let along = (1.0 - height * height).sqrt()
            * match facing {
                Facing::Front => 1.0,
                Facing::Rear => -1.0,
            };
        Ok(pose.wheel_centre
            + (ahead * along + up * height) * self.wheel.rim_radius
            + pose.spin_axis * (outboard * self.wheel.half_width))
    }

    fn turned(
        &self,
        case: &LoadCase,
        pose: &Pose,
        friction: f64,
        patch: Patch,
        sense: f64,
    ) -> Result<UprightLoad, BadNumber> {
        let load = self.unit(case, ForceUnit::WheelLoad)?;
        let moment = match patch {
            Patch::Pressure(pressure) => {
                Vector3::z() * stationary_torque(friction, load, pressure)?
            }
            Patch::Length(length) => {
                let drop = (pose.contact.z - pose.lower_ball_joint.z) / pose.steering_axis.z;
                let at_ground = pose.lower_ball_joint + pose.steering_axis * drop;
                let offset = (pose.contact - at_ground).norm();
                pose.steering_axis * scrub_moment(friction, load, offset, length)?
            }
        };
        UprightLoad::moment(moment * sense)
    }

    /// A moment of the stop about the steering axis, so large that the rod carries the driver's push.
    fn against_stop(
        &self,
        linkage: &Linkage,
        pose: &Pose,
        hand_force: f64,
    ) -> Result<UprightLoad, LoadError> {
        let (Some(steering), Some(axis)) = (self.steering, linkage.corner().rack_axis) else {
            return Err(LoadError::NoSteering);
        };
        finite("the hand force", hand_force)?;
        let rod = TieRod::new(
            pose.lower_ball_joint,
            pose.upper_ball_joint,
            pose.tie_rod_inner,
            pose.tie_rod_outer,
        )?;
        let cosine = rod.outward().dot(&axis.normalize());
        if cosine.is_nan() || cosine.abs() < LEAST_COSINE {
            return Err(LoadError::RodAcrossRack { cosine });
        }
        // The driver pushes on in the direction in which the rack went; the rod pushes back.
        let on_rack = -steering.rack_force_by_hand(hand_force) * 1.0_f64.copysign(pose.rack);
        let tension = on_rack / cosine;
        Ok(UprightLoad::moment(
            pose.steering_axis * (-tension * rod.lever()),
        )?)
    }
}

/// Level unit vectors along the wheel's heading and outboard across it.
fn headings(pose: &Pose) -> [Vector3<f64>; 2] {
    let spin = pose.spin_axis;
    let flat = spin.x.hypot(spin.y).max(f64::MIN_POSITIVE);
    let outboard = Vector3::new(spin.x / flat, spin.y / flat, 0.0);
    [Vector3::new(outboard.y, -outboard.x, 0.0), outboard]
}

fn in_frame(size: Vector3<f64>, frame: Frame, pose: &Pose) -> Vector3<f64> {
    match frame {
        Frame::Vehicle => size,
        Frame::Wheel => {
            let [ahead, outboard] = headings(pose);
            ahead * size.x + outboard * size.y + Vector3::z() * size.z
        }
    }
}
