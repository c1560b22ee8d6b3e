//! Limits of size of the usual tolerance classes: 2A/2B for Unified, 6g/6H for metric threads.

use crate::number::{BadNumber, positive};
use crate::source::Source;
use crate::thread::{System, Thread};
use crate::units::INCH;

/// Where limits of size come from.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum LimitBasis {
    /// Read from the standard's table.
    Printed(Source),
    /// Worked out by the standard's tolerance formulas; the printed tables differ by their rounding.
    Formula(Source),
    /// Measured or given by the user.
    Given,
}

/// The four limits that decide how much of a thread can strip: the thinnest bolt in the widest hole (mm).
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ThreadLimits {
    /// Smallest major diameter of the external thread.
    pub(super) external_major_min: f64,
    /// Smallest pitch diameter of the external thread.
    pub(super) external_pitch_min: f64,
    /// Largest minor diameter of the internal thread.
    pub(super) internal_minor_max: f64,
    /// Largest pitch diameter of the internal thread.
    pub(super) internal_pitch_max: f64,
    basis: LimitBasis,
}

/// Classes 2A and 2B, inches: external major and pitch diameter, least; internal minor and pitch diameter, greatest.
const CLASS_2: &[(&str, [f64; 4])] = &[
    ("1/4-20 UNC", [0.2408, 0.2127, 0.207, 0.2224]),
    ("1/4-28 UNF", [0.2425, 0.2225, 0.220, 0.2311]),
    ("1/2-13 UNC", [0.4876, 0.4435, 0.434, 0.4565]),
    ("1/2-20 UNF", [0.4906, 0.4619, 0.457, 0.4731]),
    ("3/4-10 UNC", [0.7353, 0.6773, 0.663, 0.6927]),
    ("3/4-16 UNF", [0.7391, 0.7029, 0.696, 0.7159]),
];

/// The table above, seen as the data of an open thread library that follows the standard.
const CLASS_2_SOURCE: Source = Source::seen(
    "ASME B1.1",
    "Table 2, limits of size, classes 2A and 2B (table number from memory)",
);
/// The formulas below; they give all 24 figures of the table within 0.0001 in.
const UNIFIED_FORMULAS: Source = Source::from_memory(
    "ASME B1.1",
    "section 5, tolerance and allowance formulas, classes 2A and 2B",
);
/// The formulas below; the standard rounds their results to a series of preferred numbers.
const METRIC_FORMULAS: Source =
    Source::from_memory("ISO 965-1", "clause 13, formulas for 6g and 6H");

impl ThreadLimits {
    /// Limits of the usual class, 2A/2B or 6g/6H: printed where the table has the size, else by formula.
    pub fn usual(thread: Thread) -> Self {
        let printed = CLASS_2
            .iter()
            .find(|(designation, _)| *designation == thread.designation());
        match (printed, thread.system()) {
            (Some((_, inches)), _) => Self::from_array(
                inches.map(|size| size * INCH),
                LimitBasis::Printed(CLASS_2_SOURCE),
            ),
            (None, System::Unified) => Self::class_2_by_formula(thread),
            (None, System::Metric) => Self::class_6_by_formula(thread),
        }
    }

    /// Limits measured on the parts, or of another class, mm.
    ///
    /// # Errors
    /// A diameter that is not finite and above zero, or threads that would not touch.
    pub fn given(
        external_major_min: f64,
        external_pitch_min: f64,
        internal_minor_max: f64,
        internal_pitch_max: f64,
    ) -> Result<Self, BadNumber> {
        positive("the external major diameter", external_major_min)?;
        positive("the external pitch diameter", external_pitch_min)?;
        positive("the internal pitch diameter", internal_pitch_max)?;
        positive("the internal minor diameter", internal_minor_max)?;
        if internal_minor_max >= external_major_min {
            let (what, expected) = (
                "the internal minor diameter",
                "less than the external major diameter",
            );
            return Err(BadNumber {
                what,
                found: internal_minor_max,
                expected,
            });
        }
        let sizes = [
            external_major_min,
            external_pitch_min,
            internal_minor_max,
            internal_pitch_max,
        ];
        Ok(Self::from_array(sizes, LimitBasis::Given))
    }

    /// Where the limits come from.
    pub fn basis(&self) -> LimitBasis {
        self.basis
    }

    fn from_array(sizes: [f64; 4], basis: LimitBasis) -> Self {
        let [
            external_major_min,
            external_pitch_min,
            internal_minor_max,
            internal_pitch_max,
        ] = sizes;
        Self {
            external_major_min,
            external_pitch_min,
            internal_minor_max,
            internal_pitch_max,
            basis,
        }
    }

    /// ASME B1.1 in inches, length of engagement one diameter; pitch tolerance 2A 0.0015 D^(1/3) + 0.0015 Le^(1/2) + 0.015 P^(2/3),
    /// allowance 0.3 of it, 2B 1.3 times it; major 0.060 P^(2/3); internal minor 0.25 P - 0.40 P^2 (1/4 in and above).
    pub(super) fn class_2_by_formula(thread: Thread) -> Self {
        let (major, pitch) = (thread.major_diameter() / INCH, thread.pitch() / INCH);
        let pitch_two_thirds = pitch.cbrt().powi(2);
        let on_pitch_diameter =
            0.0015 * major.cbrt() + 0.0015 * major.sqrt() + 0.015 * pitch_two_thirds;
        let allowance = 0.3 * on_pitch_diameter;
        let basis = LimitBasis::Formula(UNIFIED_FORMULAS);
        Self::from_basic(
            thread,
            basis,
            [
                allowance + 0.060 * pitch_two_thirds,
                allowance + on_pitch_diameter,
                0.25 * pitch - 0.40 * pitch * pitch,
                1.3 * on_pitch_diameter,
            ]
            .map(|inches| inches * INCH),
        )
    }

    /// ISO 965-1 in micrometres from D and P in mm (D as it is, not the mean of its range): deviation g 15 + 11 P; major 180 P^(2/3) - 3.15 P^(-1/2);
    /// pitch 90 P^0.4 D^0.1, internal 1.32 times that; internal minor 230 P^0.7, below 1 mm 433 P - 190 P^1.22.
    fn class_6_by_formula(thread: Thread) -> Self {
        let (major, pitch) = (thread.major_diameter(), thread.pitch());
        let deviation = 15.0 + 11.0 * pitch;
        let on_pitch_diameter = 90.0 * pitch.powf(0.4) * major.powf(0.1);
        let on_minor = if pitch < 1.0 {
            433.0 * pitch - 190.0 * pitch.powf(1.22)
        } else {
            230.0 * pitch.powf(0.7)
        };
        let basis = LimitBasis::Formula(METRIC_FORMULAS);
        Self::from_basic(
            thread,
            basis,
            [
                deviation + 180.0 * pitch.cbrt().powi(2) - 3.15 / pitch.sqrt(),
                deviation + on_pitch_diameter,
                on_minor,
                1.32 * on_pitch_diameter,
            ]
            .map(|micrometres| micrometres / 1000.0),
        )
    }

    /// Basic sizes less (external) or more (internal) these amounts, mm.
    fn from_basic(thread: Thread, basis: LimitBasis, off: [f64; 4]) -> Self {
        Self {
            external_major_min: thread.major_diameter() - off[0],
            external_pitch_min: thread.pitch_diameter() - off[1],
            internal_minor_max: thread.internal_minor_diameter() + off[2],
            internal_pitch_max: thread.pitch_diameter() + off[3],
            basis,
        }
    }

    #[cfg(test)]
    pub(super) fn sizes(&self) -> [f64; 4] {
        [
            self.external_major_min,
            self.external_pitch_min,
            self.internal_minor_max,
            self.internal_pitch_max,
        ]
    }

    #[cfg(test)]
    pub(super) fn printed_sizes() -> impl Iterator<Item = (&'static str, [f64; 4])> {
        CLASS_2.iter().copied()
    }
}
