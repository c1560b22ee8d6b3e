//! Load cases of a build: those that it changes or adds, and those that it leaves out.

use std::collections::BTreeSet;

use crate::{Force, Pressure, Triple};

/// What a build does to the usual load cases.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct LoadCases {
    /// Cases of its own; one with the name of a usual case takes its place.
    pub own: Vec<LoadCaseSpec>,
    /// Names of cases that are not put on.
    pub off: BTreeSet<String>,
}

/// A load case, told for the left wheel: x forward, y outboard, z up.
#[derive(Clone, Debug, PartialEq)]
pub struct LoadCaseSpec {
    /// Its name, unique in a build.
    pub name: String,
    /// What happens, in a sentence.
    pub what: String,
    /// What acts, all together.
    pub actions: Vec<LoadAction>,
    /// Whether the wheel is held by its brake.
    pub hold: Hold,
    /// Deceleration in units of gravity, for loads that are multiples of [`LoadUnit::WheelLoad`].
    pub braking: f64,
    /// The same for cornering; positive when this is the outer wheel.
    pub cornering: f64,
    /// Wheel travel from and to: -1 full droop, 0 design, 1 full bump.
    pub travel: [f64; 2],
    /// Lock from and to: 0 straight ahead, 1 at the end of the rack's travel; both ways are meant.
    pub lock: [f64; 2],
}

/// Whether a wheel can turn about its spin axis.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Hold {
    /// Rolling free.
    Rolling,
    /// Held by a brake on the upright.
    Braked,
}

/// What the numbers of a force are multiples of.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum LoadUnit {
    /// Plain newtons.
    Newtons,
    /// The weight on this wheel at rest.
    StaticWheelLoad,
    /// The load on this wheel with the case's braking and cornering.
    WheelLoad,
    /// The weight of the whole vehicle.
    VehicleWeight,
}

/// The directions of a force's numbers; z is up in both.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum LoadAxes {
    /// x forward, y outboard on the vehicle.
    Vehicle,
    /// x where the wheel is heading, y outboard across it.
    Wheel,
}

/// The half of a rim.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum RimHalf {
    /// Ahead of the wheel centre.
    Front,
    /// Behind it.
    Rear,
}

/// Where a force acts.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum LoadPlace {
    /// The tyre's contact point.
    Contact,
    /// The wheel centre.
    WheelCentre,
    /// The rim: which half, height over the wheel centre in rim radii (-1 lowest, 1 highest), distance from the middle plane in half rim widths (1 the
    /// outer flange).
    Rim(RimHalf, f64, f64),
}

/// What the resistance of a tyre turned on the spot is worked out from.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum TyrePatch {
    /// Tyre pressure.
    Pressure(Pressure),
    /// Length of the contact patch, the build's unit.
    Length(f64),
}

/// One thing that acts.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum LoadAction {
    /// A force: its numbers, what they are multiples of, where, in which directions.
    Force(Triple, LoadUnit, LoadPlace, LoadAxes),
    /// The ground resists a wheel that is turned on the spot: friction and contact patch.
    TurnedOnTheSpot(f64, TyrePatch),
    /// The driver pulls the steering against a stop with this force at the rim of the steering wheel.
    AgainstStop(Force),
}

impl LoadCases {
    /// The build's own case of that name.
    #[must_use]
    pub fn find(&self, name: &str) -> Option<&LoadCaseSpec> {
        self.own.iter().find(|case| case.name == name)
    }

    pub(crate) fn each_length(&mut self, length: &impl Fn(&mut f64)) {
        for action in self.own.iter_mut().flat_map(|case| &mut case.actions) {
            if let LoadAction::TurnedOnTheSpot(_, TyrePatch::Length(v)) = action {
                length(v);
            }
        }
    }
}
