//! How much thread has to be screwed in, and the wall left around it.
//!
//! Three answers, from rough to exact: the trade's three threads, about one diameter in steel, and the length at which the bolt
//! breaks before its threads strip (FED-STD-H28/2B, Machinery's Handbook), which wants the limits of size ([`ThreadLimits`]).
//! Lengths are of full threads in mesh; chamfered and run-out threads don't count.

mod limits;

pub use limits::{LimitBasis, ThreadLimits};

use std::f64::consts::PI;

use crate::number::{BadNumber, finite, positive};
use crate::source::{Limit, Source};
use crate::thread::Thread;

/// Least engagement in steel, in major diameters.
pub const DIAMETERS_IN_STEEL: Limit = Limit {
    value: 1.0,
    unit: "diameters",
    source: Source::COMMON_PRACTICE,
};

/// The trade's least count of full threads in mesh.
pub const LEAST_THREADS: Limit = Limit {
    value: 3.0,
    unit: "threads",
    source: Source::COMMON_PRACTICE,
};

/// Least wall around a tapped hole on each side, in major diameters of the thread.
pub const LEAST_WALL: Limit = Limit {
    value: 0.25,
    unit: "diameters",
    source: Source::COMMON_PRACTICE,
};

/// tan 30 degrees as the standard prints it.
const TAN_30: f64 = 0.577_35;

/// The engagement formulas below.
pub const STRIPPING: Source = Source::seen(
    "FED-STD-H28/2B",
    "Table II.B.1, formulas 2a, 4a, 14 and 16; also Machinery's Handbook, length of engagement (formulas seen in quotations)",
);

/// Engagement that the trade asks for in steel, mm: [`DIAMETERS_IN_STEEL`].
pub fn length_in_steel(thread: Thread) -> f64 {
    DIAMETERS_IN_STEEL.value * thread.major_diameter()
}

/// Length of [`LEAST_THREADS`], mm.
pub fn length_of_least_threads(thread: Thread) -> f64 {
    LEAST_THREADS.value * thread.pitch()
}

/// How many threads are in mesh over this length (mm).
pub fn threads_in(thread: Thread, length: f64) -> f64 {
    length / thread.pitch()
}

/// Wall left on each side of a tapped hole in a round bar of this diameter, mm, measured from the thread's major diameter; negative
/// when the thread is larger than the bar.
///
/// # Errors
/// A bar diameter that is not finite and above zero.
pub fn wall_left(bar_diameter: f64, thread: Thread) -> Result<f64, BadNumber> {
    positive("the bar diameter", bar_diameter)?;
    Ok((bar_diameter - thread.major_diameter()) / 2.0)
}

/// The wall that [`LEAST_WALL`] asks for, mm.
pub fn least_wall(thread: Thread) -> f64 {
    LEAST_WALL.value * thread.major_diameter()
}

/// The threads' resistance to stripping against the bolt's to breaking. Shear strength is taken as half the tensile strength.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Stripping {
    stress_area: f64,
    external_area_per_length: f64,
    internal_area_per_length: f64,
}

impl Stripping {
    /// For a thread of the usual tolerance class: [`ThreadLimits::usual`].
    pub fn usual(thread: Thread) -> Self {
        Self::unchecked(thread, &ThreadLimits::usual(thread))
    }

    /// For a thread made to these limits of size.
    ///
    /// # Errors
    /// Limits so loose that the flanks of this pitch no longer overlap.
    pub fn with_limits(thread: Thread, limits: &ThreadLimits) -> Result<Self, BadNumber> {
        let stripping = Self::unchecked(thread, limits);
        positive(
            "the shear area of the external thread per mm",
            stripping.external_area_per_length,
        )?;
        positive(
            "the shear area of the internal thread per mm",
            stripping.internal_area_per_length,
        )?;
        Ok(stripping)
    }

    fn unchecked(thread: Thread, limits: &ThreadLimits) -> Self {
        let pitch = thread.pitch();
        let along =
            |diameter: f64, flank: f64| PI * diameter / pitch * (pitch / 2.0 + TAN_30 * flank);
        let external_flank = limits.external_pitch_min - limits.internal_minor_max;
        let internal_flank = limits.external_major_min - limits.internal_pitch_max;
        Self {
            stress_area: thread.tensile_stress_area(),
            external_area_per_length: along(limits.internal_minor_max, external_flank),
            internal_area_per_length: along(limits.external_major_min, internal_flank),
        }
    }

    /// Shear area of the external threads for each mm of engagement, mm^2 (formula 4a).
    pub fn external_area_per_length(&self) -> f64 {
        self.external_area_per_length
    }

    /// Shear area of the internal threads for each mm of engagement, mm^2 (formula 2a).
    pub fn internal_area_per_length(&self) -> f64 {
        self.internal_area_per_length
    }

    /// Least engagement, mm, at which a bolt as strong as its nut breaks before the bolt's threads strip (formula 14).
    pub fn length(&self) -> f64 {
        2.0 * self.stress_area / self.external_area_per_length
    }

    /// The same where the tapped part is weaker (formula 16): tensile strengths in MPa of the bolt and of what it is screwed into. A
    /// stronger tapped part shortens nothing.
    ///
    /// # Errors
    /// A strength that is not finite and above zero.
    pub fn length_into(
        &self,
        external_tensile: f64,
        internal_tensile: f64,
    ) -> Result<f64, BadNumber> {
        positive("the tensile strength of the bolt", external_tensile)?;
        positive("the tensile strength of the tapped part", internal_tensile)?;
        let weakness = self.external_area_per_length * external_tensile
            / (self.internal_area_per_length * internal_tensile);
        Ok(self.length() * finite("the ratio of the threads' strengths", weakness)?.max(1.0))
    }
}

#[cfg(test)]
mod tests;
