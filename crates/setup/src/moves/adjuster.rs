//! What a vehicle can adjust, each with its step and range.

use trammel_geometry::{Corner, Vector};

use crate::JointShift;

/// Flats of a hexagon.
pub(crate) const FLATS: u32 = 6;

/// What is adjusted.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum AdjusterKind {
    /// The rack end, turned on its thread of this pitch, mm: out is towards the wheel.
    RackEnd {
        /// Pitch, mm.
        pitch: f64,
    },
    /// Washers under the outer joint, which move it along this direction (axes of the left corner).
    OuterWasher {
        /// Direction; its length does not matter.
        along: Vector,
    },
    /// Shims under the rack, which raise the inner joint. They raise both sides unless the rack is tilted.
    RackShim,
}

/// An adjuster in whole steps.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Adjuster {
    kind: AdjusterKind,
    step: f64,
    low: i32,
    high: i32,
}

/// The tie rod's own adjuster, which puts static toe back after every move.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct RodThread {
    /// How much one turn changes the rod, mm: the pitch, or the sum of both pitches of a tube with a left-hand and a right-hand end.
    pub per_turn: f64,
    /// How much it can be made shorter and longer from where it is, mm, both positive; `None` where that is not known.
    pub range: Option<(f64, f64)>,
}

/// Why an adjuster can't be.
#[derive(Clone, Copy, Debug, PartialEq, thiserror::Error)]
#[error("{what} is {value}; expected {expected}")]
pub struct AdjusterFault {
    /// Which figure.
    pub what: &'static str,
    /// What was given.
    pub value: f64,
    /// What can stand there.
    pub expected: &'static str,
}

/// Most steps either way.
const MOST_STEPS: i32 = 120;

impl Adjuster {
    /// The rack end by flats of its thread, so many turns out and in from where it is.
    ///
    /// # Errors
    /// [`AdjusterFault`].
    pub fn rack_end(pitch: f64, turns_out: f64, turns_in: f64) -> Result<Self, AdjusterFault> {
        let step = pitch / f64::from(FLATS);
        let flats = |turns: f64| turns * f64::from(FLATS);
        Self::new(
            AdjusterKind::RackEnd { pitch },
            step,
            -flats(turns_in),
            flats(turns_out),
        )
    }

    /// Washers of one thickness under the outer joint: so many more, and so many fewer, than there are.
    ///
    /// # Errors
    /// [`AdjusterFault`].
    pub fn outer_washer(
        thickness: f64,
        along: Vector,
        more: u32,
        fewer: u32,
    ) -> Result<Self, AdjusterFault> {
        let along = along.try_normalize(1e-9).ok_or(AdjusterFault {
            what: "the direction of the outer joint's bolt",
            value: 0.0,
            expected: "a direction",
        })?;
        let kind = AdjusterKind::OuterWasher { along };
        Self::new(kind, thickness, -f64::from(fewer), f64::from(more))
    }

    /// Shims of one thickness under the rack.
    ///
    /// # Errors
    /// [`AdjusterFault`].
    pub fn rack_shim(thickness: f64, more: u32, fewer: u32) -> Result<Self, AdjusterFault> {
        Self::new(
            AdjusterKind::RackShim,
            thickness,
            -f64::from(fewer),
            f64::from(more),
        )
    }

    fn new(kind: AdjusterKind, step: f64, low: f64, high: f64) -> Result<Self, AdjusterFault> {
        let fault = |what, value, expected| {
            Err(AdjusterFault {
                what,
                value,
                expected,
            })
        };
        if !(step > 0.0 && step <= 50.0) {
            return fault(
                "the step of an adjuster, mm,",
                step,
                "more than nothing, at most 50",
            );
        }
        let most = f64::from(MOST_STEPS);
        for v in [-low, high] {
            if !(0.0..=most).contains(&v) {
                return fault(
                    "the range of an adjuster, in steps,",
                    v,
                    "nought to 120 either way",
                );
            }
        }
        // Both are within 120 steps.
        Ok(Self {
            kind,
            step,
            low: low.trunc() as i32,
            high: high.trunc() as i32,
        })
    }

    /// What is adjusted.
    #[must_use]
    pub fn kind(&self) -> AdjusterKind {
        self.kind
    }

    /// One step, mm.
    #[must_use]
    pub fn step(&self) -> f64 {
        self.step
    }

    /// Fewest and most steps from where it is.
    #[must_use]
    pub fn range(&self) -> std::ops::RangeInclusive<i32> {
        self.low..=self.high
    }

    /// What one step does to a corner's joints.
    #[must_use]
    pub fn one_step(&self, corner: &Corner) -> JointShift {
        match self.kind {
            AdjusterKind::RackEnd { .. } => {
                let axis = corner.rack_axis.unwrap_or_else(Vector::zeros);
                let unit = axis.try_normalize(1e-9).unwrap_or_else(Vector::zeros);
                let outwards = unit
                    .dot(&(corner.tie_rod.outer - corner.tie_rod.inner))
                    .signum();
                JointShift {
                    inner: unit * (outwards * self.step),
                    ..JointShift::NONE
                }
            }
            AdjusterKind::OuterWasher { along } => JointShift {
                outer: along * self.step,
                ..JointShift::NONE
            },
            AdjusterKind::RackShim => JointShift {
                inner: Vector::z() * self.step,
                ..JointShift::NONE
            },
        }
    }

    /// The same adjuster after so many steps were taken: its range is counted from there.
    #[must_use]
    pub fn after(&self, steps: i32) -> Self {
        Self {
            low: self.low.saturating_sub(steps).min(0),
            high: self.high.saturating_sub(steps).max(0),
            ..*self
        }
    }
}

impl AdjusterKind {
    /// What it is called.
    #[must_use]
    pub fn name(&self) -> &'static str {
        match self {
            Self::RackEnd { .. } => "rack end",
            Self::OuterWasher { .. } => "washers under the outer joint",
            Self::RackShim => "shims under the rack",
        }
    }
}
