//! How much of the vehicle stands on a wheel.

use crate::number::{BadNumber, finite, not_negative, positive};

/// Standard acceleration of free fall, m/s^2: exact (3rd CGPM, 1901).
const GRAVITY: f64 = 9.806_65;

/// Which axle.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum AxleEnd {
    /// The steered front axle.
    Front,
    /// The rear axle.
    Rear,
}

/// The vehicle's figures.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct VehicleSpec {
    /// All-up mass with driver, kg.
    pub mass: f64,
    /// Part of the weight on the front axle, 0 to 1.
    pub front_share: f64,
    /// Height of the centre of gravity above the ground, mm.
    pub centre_of_gravity_height: f64,
    /// Distance between the axles, mm.
    pub wheelbase: f64,
    /// Distance between the front contact points, mm.
    pub front_track: f64,
    /// Distance between the rear contact points, mm.
    pub rear_track: f64,
}

/// A vehicle with figures that can be computed with.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Vehicle {
    spec: VehicleSpec,
}

impl Vehicle {
    /// Checks the figures.
    ///
    /// # Errors
    /// A figure that is not finite, a length or mass not above zero, a share outside 0 to 1.
    pub fn new(spec: VehicleSpec) -> Result<Self, BadNumber> {
        positive("the vehicle's mass", spec.mass)?;
        positive("the wheelbase", spec.wheelbase)?;
        positive("the front track", spec.front_track)?;
        positive("the rear track", spec.rear_track)?;
        not_negative(
            "the height of the centre of gravity",
            spec.centre_of_gravity_height,
        )?;
        not_negative("the front axle's share", spec.front_share)?;
        if spec.front_share > 1.0 {
            return Err(BadNumber {
                what: "the front axle's share",
                found: spec.front_share,
                expected: "a part of the weight, 0 to 1",
            });
        }
        finite("the vehicle's weight", spec.mass * GRAVITY)?;
        Ok(Self { spec })
    }

    /// The figures.
    #[must_use]
    pub fn spec(&self) -> &VehicleSpec {
        &self.spec
    }

    /// Weight, N.
    #[must_use]
    pub fn weight(&self) -> f64 {
        self.spec.mass * GRAVITY
    }

    /// Weight on one wheel of the axle at rest, N.
    #[must_use]
    pub fn static_wheel_load(&self, axle: AxleEnd) -> f64 {
        self.axle_share(axle) * self.weight() / 2.0
    }

    /// Load on one wheel of the axle, N, while braking and cornering with these decelerations in units of gravity (forward
    /// acceleration is negative braking; cornering positive for the outer wheel, negative for the inner). Not below zero: a wheel that lifts carries nothing.
    ///
    /// Rigid-body transfer: braking moves `weight x braking x height / wheelbase` to the front axle; cornering moves on each axle
    /// `its static load x cornering x height / track` to the outer wheel, which supposes that the axles share the roll as they share the weight.
    ///
    /// # Errors
    /// A deceleration that is not finite, or a load that overflows.
    pub fn wheel_load(
        &self,
        axle: AxleEnd,
        braking: f64,
        cornering: f64,
    ) -> Result<f64, BadNumber> {
        finite("the braking", braking)?;
        finite("the cornering", cornering)?;
        let height = self.spec.centre_of_gravity_height;
        let (sign, track) = match axle {
            AxleEnd::Front => (1.0, self.spec.front_track),
            AxleEnd::Rear => (-1.0, self.spec.rear_track),
        };
        let braked = sign * self.weight() * braking * height / self.spec.wheelbase / 2.0;
        let rolled = 2.0 * self.static_wheel_load(axle) * cornering * height / track;
        let load = finite(
            "the wheel load",
            self.static_wheel_load(axle) + braked + rolled,
        )?;
        Ok(load.max(0.0))
    }

    fn axle_share(&self, axle: AxleEnd) -> f64 {
        match axle {
            AxleEnd::Front => self.spec.front_share,
            AxleEnd::Rear => 1.0 - self.spec.front_share,
        }
    }
}
