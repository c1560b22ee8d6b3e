//! Everything worked out for one build.

use trammel_build::{AxleModel, AxleName, Build, BuildFault, Side, TravelRange};
use trammel_geometry::Linkage;

use crate::{SteerCurve, TravelCurve};

/// Steps of a travel curve, the design height apart.
const TRAVEL_STEPS: usize = 40;
/// Steps each way of a steer curve.
const STEER_STEPS: usize = 20;

/// All results for one build. Cheap enough to be made anew at every move of the mouse.
#[derive(Clone, Debug)]
pub struct Study {
    /// Front axle.
    pub front: AxleStudy,
    /// Rear axle, where there is one.
    pub rear: Option<AxleStudy>,
}

/// Results of one axle.
#[derive(Clone, Debug)]
pub struct AxleStudy {
    /// The axle in the kernel's units.
    pub model: AxleModel,
    /// Left wheel over its travel, rack at centre.
    pub left: TravelCurve,
    /// Right wheel.
    pub right: TravelCurve,
    /// Lock to lock, for a steered axle.
    pub steer: Option<SteerCurve>,
}

impl Study {
    /// Works a build out.
    ///
    /// # Errors
    /// The first [`BuildFault`] that keeps an axle from being posed.
    pub fn of(build: &Build) -> Result<Self, BuildFault> {
        let rear = build
            .rear
            .as_ref()
            .map(|_| AxleStudy::of(build, AxleName::Rear))
            .transpose()?;
        Ok(Self {
            front: AxleStudy::of(build, AxleName::Front)?,
            rear,
        })
    }

    /// The results of an axle.
    #[must_use]
    pub fn axle(&self, name: AxleName) -> Option<&AxleStudy> {
        match name {
            AxleName::Front => Some(&self.front),
            AxleName::Rear => self.rear.as_ref(),
        }
    }
}

impl AxleStudy {
    /// Works one axle out.
    ///
    /// # Errors
    /// The [`BuildFault`] that keeps it from being posed.
    pub fn of(build: &Build, name: AxleName) -> Result<Self, BuildFault> {
        let model = build.axle(name)?;
        let steer = model
            .rack
            .map(|_| SteerCurve::of(&model, build.wheelbase_mm(), STEER_STEPS));
        Ok(Self {
            left: Self::travel_curve(&model, Side::Left),
            right: Self::travel_curve(&model, Side::Right),
            steer,
            model,
        })
    }

    /// A side of an axle over its travel, rack at centre.
    pub(crate) fn travel_curve(model: &AxleModel, side: Side) -> TravelCurve {
        Self::curve_between(model.linkage(side), model.travel)
    }

    /// A corner between its stops, rack at centre.
    pub(crate) fn curve_between(linkage: &Linkage, travel: TravelRange) -> TravelCurve {
        TravelCurve::of(linkage, travel.droop, travel.bump, 0.0, TRAVEL_STEPS)
    }

    /// The curve of a side.
    #[must_use]
    pub fn curve(&self, side: Side) -> &TravelCurve {
        match side {
            Side::Left => &self.left,
            Side::Right => &self.right,
        }
    }
}
