//! A caution on fatigue: the thread's bending stress, taken as fully reversed, against its endurance limit with the notch factor of the thread.
//!
//! - Notch factor Kf of the thread: 2.2 rolled or 2.8 cut up to SAE grade 2 (class 5.8), 3.0 or 3.8 above (Shigley Table 8-16, notch sensitivity and surface
//!   finish included).
//! - Endurance limit of a rotating beam: half the tensile strength, at most 700 MPa (equation 6-8); size factor in bending
//!   `1.24 d^-0.107` up to 51 mm (equation 6-20); no other factor, so an even chance of breaking.
//!
//! A load case happens a few times, not a million, so this says how the part compares with one that would bear it for ever, no more.

use super::{RackEnd, SectionCheck};
use crate::check::{Check, Finding, mpa};
use crate::source::Source;

/// Source of the notch factors.
pub const THREAD_NOTCH: Source = Source::from_memory(
    "Shigley, Mechanical Engineering Design",
    "Table 8-16, fatigue stress-concentration factors for threads",
);
/// Source of the endurance limit.
pub const ENDURANCE: Source = Source::from_memory(
    "Shigley, Mechanical Engineering Design",
    "eq. 6-8 and 6-20 (endurance limit, size factor)",
);

/// Tensile strength, MPa, that parts SAE grade 2 from grades 4 to 8 in the table: class 5.8 has 520.
const SOFT_UP_TO: f64 = 520.0;
/// Endurance limit over tensile strength, and the largest one, MPa.
const ENDURANCE_SHARE: f64 = 0.5;
const LARGEST_ENDURANCE: f64 = 700.0;

/// How the thread was made.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum ThreadMaking {
    /// Rolled, as on bought bolts and studs.
    Rolled,
    /// Cut with a die or in the lathe.
    Cut,
}

impl ThreadMaking {
    /// The notch factor for a material of this tensile strength, MPa.
    #[must_use]
    pub fn notch_factor(self, tensile: f64) -> f64 {
        match (self, tensile <= SOFT_UP_TO) {
            (Self::Rolled, true) => 2.2,
            (Self::Cut, true) => 2.8,
            (Self::Rolled, false) => 3.0,
            (Self::Cut, false) => 3.8,
        }
    }
}

/// Endurance limit in reversed bending of a round of this diameter (mm) and tensile strength (MPa), MPa.
#[must_use]
pub fn endurance_limit(diameter: f64, tensile: f64) -> f64 {
    let size = (1.24 * diameter.powf(-0.107)).min(1.0);
    size * (ENDURANCE_SHARE * tensile).min(LARGEST_ENDURANCE)
}

impl RackEnd {
    /// The fatigue caution at the rack face; `None` when the grade's tensile strength isn't known.
    #[must_use]
    pub fn fatigue(&self, face: &SectionCheck, making: ThreadMaking) -> Option<Finding> {
        let tensile = self.strength.tensile?.mpa();
        let stress = making.notch_factor(tensile) * face.stress.bending;
        let limit = endurance_limit(self.thread.minor_diameter(), tensile);
        Some(Finding::below(
            Check::RackEndFatigue,
            stress,
            mpa(limit, ENDURANCE),
            THREAD_NOTCH,
        ))
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::grade::Grade;
    use crate::rack_end::{BoreMouth, RackEndGeometry};
    use crate::thread::Thread;
    use approx::assert_relative_eq;
    use nalgebra::Vector3;

    /// The table as it is remembered, and equation 6-20 at 10 mm: 1.24 x 10^-0.107 = 0.969218.
    #[test]
    fn factors_of_the_table() {
        assert_eq!(ThreadMaking::Rolled.notch_factor(510.0), 2.2);
        assert_eq!(ThreadMaking::Cut.notch_factor(520.0), 2.8);
        assert_eq!(ThreadMaking::Rolled.notch_factor(830.0), 3.0);
        assert_eq!(ThreadMaking::Cut.notch_factor(1034.0), 3.8);
        assert_relative_eq!(
            endurance_limit(10.0, 800.0),
            400.0 * 0.969_218,
            max_relative = 1e-5
        );
        assert_relative_eq!(
            endurance_limit(10.0, 3000.0),
            700.0 * 0.969_218,
            max_relative = 1e-5
        );
        // No size gains strength.
        assert_eq!(endurance_limit(5.0, 800.0), 400.0);
    }

    #[test]
    fn only_bending_counts_and_only_with_a_tensile_strength() {
        let geometry = RackEndGeometry::on_axis(Vector3::y(), 40.0).unwrap();
        let thread = Thread::find("M12x1.75").unwrap();
        let finding = |grade: &Grade, force| {
            let end = RackEnd::new(geometry, thread, grade, &BoreMouth::LoadsOnly).unwrap();
            let face = end.under(force, 0.0).unwrap().rack_face;
            end.fatigue(&face, ThreadMaking::Cut)
        };
        let class = Grade::find("8.8").unwrap();
        let straight = finding(&class, Vector3::new(0.0, 5000.0, 0.0)).unwrap();
        assert_eq!(straight.factor(), None);
        // 300 N at 40 mm over pi 9.85297^3/32 = 93.906 mm^3 is 127.79 MPa, times 3.8.
        let bent = finding(&class, Vector3::new(0.0, 0.0, 300.0)).unwrap();
        assert_relative_eq!(bent.value, 3.8 * 127.787, max_relative = 1e-4);
        let own = crate::grade::OwnGrade::new("mystery", 500.0).unwrap();
        assert_eq!(finding(&Grade::Own(own), Vector3::z()), None);
    }
}
