//! A load case as plain data.

use nalgebra::Vector3;

use crate::source::Source;

/// What a number of a force is a multiple of.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum ForceUnit {
    /// Plain newtons.
    Newtons,
    /// The weight on this wheel at rest.
    StaticWheelLoad,
    /// The load on this wheel with the case's braking and cornering.
    WheelLoad,
    /// The weight of the whole vehicle.
    VehicleWeight,
}

/// The directions of a force's three numbers; z is up in both.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Frame {
    /// x forward, y outboard on the vehicle.
    Vehicle,
    /// x where the wheel is heading, y outboard across it, both level.
    Wheel,
}

/// The side of a rim that is hit.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Facing {
    /// The half ahead of the wheel centre.
    Front,
    /// The half behind it.
    Rear,
}

/// Where a force acts.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Place {
    /// The tyre's contact point.
    Contact,
    /// The wheel centre.
    WheelCentre,
    /// On the rim.
    Rim {
        /// Front or rear half.
        facing: Facing,
        /// Height over the wheel centre in rim radii: -1 lowest, 0 level with the centre, 1 highest.
        height: f64,
        /// Distance from the wheel's middle plane in half rim widths: 1 outer flange, -1 inner flange.
        outboard: f64,
    },
}

/// What the tyre's resistance to turning on the spot is worked out from.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Patch {
    /// Tyre pressure, MPa: [`super::stationary_torque`].
    Pressure(f64),
    /// Length of the contact patch, mm: [`super::scrub_moment`].
    Length(f64),
}

/// One thing that acts on the wheel.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Action {
    /// A force.
    Force {
        /// Where.
        at: Place,
        /// Its three parts, in `unit`.
        size: Vector3<f64>,
        /// What they are multiples of.
        unit: ForceUnit,
        /// Their directions.
        frame: Frame,
    },
    /// The road resists a wheel that is turned on the spot, either way.
    TurnedOnTheSpot {
        /// Friction between tyre and ground.
        friction: f64,
        /// Contact patch.
        patch: Patch,
    },
    /// The driver pulls the steering further against a stop on this upright with this force at the rim of the steering wheel, N; the stop
    /// holds the upright about its steering axis and one tie rod takes it all.
    AgainstStop {
        /// Hand force, N.
        hand_force: f64,
    },
}

/// Whether the wheel can turn about its spin axis.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum WheelHold {
    /// Rolling free: no force passes a moment about the spin axis to the upright.
    Rolling,
    /// Held by a brake on the upright.
    Braked,
}

/// Where in the travel a case may happen.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Window {
    /// Wheel travel from and to: -1 full droop, 0 design, 1 full bump.
    pub travel: [f64; 2],
    /// Steering from and to: 0 straight ahead, 1 at the end of the rack's travel; both ways are meant.
    pub lock: [f64; 2],
}

/// A load case. Numbers are checked when it is put on a wheel.
#[derive(Clone, Debug, PartialEq)]
pub struct LoadCase {
    /// Its name, unique in a build.
    pub name: String,
    /// What happens, in one sentence.
    pub what: String,
    /// What acts, all together.
    pub actions: Vec<Action>,
    /// Rolling or braked.
    pub hold: WheelHold,
    /// Deceleration in units of gravity, for [`ForceUnit::WheelLoad`].
    pub braking: f64,
    /// Cornering in units of gravity, for [`ForceUnit::WheelLoad`]; positive when this is the outer wheel.
    pub cornering: f64,
    /// Where it may happen.
    pub window: Window,
    /// Where its figures come from.
    pub source: Source,
}

impl LoadCase {
    /// The senses to be tried: both where something may act either way, otherwise one.
    #[must_use]
    pub fn senses(&self) -> &'static [f64] {
        let either = |action: &Action| matches!(action, Action::TurnedOnTheSpot { .. });
        if self.actions.iter().any(either) {
            &[1.0, -1.0]
        } else {
            &[1.0]
        }
    }
}
