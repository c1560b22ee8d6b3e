//! Screw threads of the closed table: dimensions from their standards, found by what is stamped or said.
//!
//! All threads here have the 60-degree profile whose fundamental triangle is `H = P sqrt(3)/2` high
//! (ASME B1.1 section 2 and ISO 68-1, clause numbers from memory). From it, with major diameter D and pitch P:
//!
//! | dimension | formula | where |
//! |---|---|---|
//! | pitch diameter | D - 3H/4 = D - 0.649519 P | ISO 724 clause 4; ASME B1.1 |
//! | minor diameter of the internal thread | D - 5H/4 = D - 1.082532 P | ISO 724 clause 4; ASME B1.1 |
//! | minor diameter of the external thread | D - 17H/12 = D - 1.226869 P | ISO 898-1 clause 9.1.6.1 (d3 = d1 - H/6) |
//! | tensile stress area, metric | pi/4 (D - 0.938194 P)^2 | ISO 898-1 clause 9.1.6.1, the mean of pitch and minor diameter |
//! | tensile stress area, Unified | pi/4 (D - 0.974279 P)^2 | ASME B1.1; FED-STD-H28/2B formula 1b (printed 0.9743/n) |
//!
//! Clause numbers are from memory; the formulas were seen in copies of the standards' tables and reproduce the printed values.
//! ASME B1.1 also has the rounded UNR root, D - 1.190630 P: 0.3 % larger in diameter at 3/8-24. The smaller one is used for both
//! systems, so the stress in a Unified thread comes out at most 2 % high, never low, on that account.

mod lookup;
mod table;

use std::f64::consts::PI;
use std::fmt;

pub use lookup::ThreadError;

use crate::source::Source;
use crate::units::INCH;

/// D minus the pitch diameter, in pitches: 3 sqrt(3) / 8.
const PITCH_DIAMETER_DEPTH: f64 = 0.649_519;
/// D minus the minor diameter of the internal thread, in pitches: 5 sqrt(3) / 8.
const INTERNAL_MINOR_DEPTH: f64 = 1.082_532;
/// D minus the minor diameter of the external thread, in pitches: 17 sqrt(3) / 24.
const EXTERNAL_MINOR_DEPTH: f64 = 1.226_869;
/// Pitches off D in the tensile stress area of ISO 898-1: 13 sqrt(3) / 24.
const METRIC_STRESS_AREA_DEPTH: f64 = 0.938_194;
/// Pitches off D in the tensile stress area of ASME B1.1: 9 sqrt(3) / 16.
const UNIFIED_STRESS_AREA_DEPTH: f64 = 0.974_279;
/// Pitches off D that count as 100 % of thread when drilling for a tap: 3 sqrt(3) / 4 (Machinery's Handbook, tapping; from memory).
const FULL_THREAD_DEPTH: f64 = 1.299_038;

/// Inch or metric.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum System {
    /// Unified inch threads, ASME B1.1.
    Unified,
    /// ISO metric threads, ISO 261 and ISO 262.
    Metric,
}

/// Coarse or fine pitch.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Series {
    /// UNC, or the metric coarse pitch that needs no mention.
    Coarse,
    /// UNF, or one of the metric fine pitches.
    Fine,
}

/// The size as the standard defines it, exactly.
#[derive(Clone, Copy, Debug, PartialEq)]
enum Size {
    Unified {
        sixteenths: u8,
        threads_per_inch: u8,
    },
    Metric {
        major: f64,
        pitch: f64,
    },
}

/// The drill for tapping a thread.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct TapDrill {
    /// What is stamped on the drill: a letter, a number, a fraction, or mm.
    pub name: &'static str,
    /// Its diameter, mm.
    pub diameter: f64,
    /// Where the choice comes from.
    pub source: Source,
}

/// One thread of the closed table; it can only be had by [`Thread::find`] or [`Thread::all`].
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Thread {
    designation: &'static str,
    series: Series,
    size: Size,
    tap_drill: TapDrill,
}

impl Thread {
    /// Every thread of the table: Unified coarse and fine, then metric coarse and fine, each by size.
    pub fn all() -> &'static [Self] {
        table::THREADS
    }

    /// The thread that somebody means: `3/8-24`, `1/2-20 UNF`, `1/2 fine`, `M12x1.75`, `M12` (coarse), `M10 x 1,25`.
    ///
    /// Case, spaces, inch marks, the kind of dash or multiplication sign, a hand (LH, RH) and a tolerance class (2A, 6g)
    /// make no difference.
    ///
    /// # Errors
    /// What was typed isn't a thread, fits none of the table, or fits several (an inch size without its pitch); the
    /// last two name the threads nearby.
    pub fn find(typed: &str) -> Result<Self, ThreadError> {
        lookup::find(typed)
    }

    /// The designation of the standard: `3/8-24 UNF`, `M12x1.75`.
    pub fn designation(&self) -> &'static str {
        self.designation
    }

    /// The size alone: `1/2-20` for `1/2-20 UNF`.
    pub fn short_name(&self) -> &'static str {
        self.designation
            .split_once(' ')
            .map_or(self.designation, |(size, _)| size)
    }

    /// Inch or metric.
    pub fn system(&self) -> System {
        match self.size {
            Size::Unified { .. } => System::Unified,
            Size::Metric { .. } => System::Metric,
        }
    }

    /// Coarse or fine.
    pub fn series(&self) -> Series {
        self.series
    }

    /// The standard that defines the size.
    pub fn source(&self) -> Source {
        match (self.system(), self.series) {
            (System::Unified, Series::Coarse) => table::UNC,
            (System::Unified, Series::Fine) => table::UNF,
            (System::Metric, _) => table::ISO_METRIC,
        }
    }

    /// Basic major diameter D, mm.
    pub fn major_diameter(&self) -> f64 {
        match self.size {
            Size::Unified { sixteenths, .. } => f64::from(sixteenths) / 16.0 * INCH,
            Size::Metric { major, .. } => major,
        }
    }

    /// Pitch P, mm.
    pub fn pitch(&self) -> f64 {
        match self.size {
            Size::Unified {
                threads_per_inch, ..
            } => INCH / f64::from(threads_per_inch),
            Size::Metric { pitch, .. } => pitch,
        }
    }

    /// Basic pitch diameter, mm.
    pub fn pitch_diameter(&self) -> f64 {
        self.major_diameter() - PITCH_DIAMETER_DEPTH * self.pitch()
    }

    /// Minor diameter of the external thread, mm: where a bent rod breaks.
    pub fn minor_diameter(&self) -> f64 {
        self.major_diameter() - EXTERNAL_MINOR_DEPTH * self.pitch()
    }

    /// Basic minor diameter of the internal thread, mm.
    pub fn internal_minor_diameter(&self) -> f64 {
        self.major_diameter() - INTERNAL_MINOR_DEPTH * self.pitch()
    }

    /// Tensile stress area, mm^2, by the formula of the thread's own standard.
    pub fn tensile_stress_area(&self) -> f64 {
        let depth = match self.system() {
            System::Unified => UNIFIED_STRESS_AREA_DEPTH,
            System::Metric => METRIC_STRESS_AREA_DEPTH,
        };
        PI / 4.0 * (self.major_diameter() - depth * self.pitch()).powi(2)
    }

    /// The tap drill usually sold for it.
    pub fn tap_drill(&self) -> TapDrill {
        self.tap_drill
    }

    /// How much of a full thread a hole of this diameter (mm) leaves, as a fraction: 0.75 is the usual aim. Above 1 when the
    /// hole is smaller than the tap's core, below 0 when the tap falls through.
    pub fn fraction_of_thread(&self, hole_diameter: f64) -> f64 {
        (self.major_diameter() - hole_diameter) / (FULL_THREAD_DEPTH * self.pitch())
    }
}

impl fmt::Display for Thread {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.designation)
    }
}

#[cfg(test)]
mod tests;
