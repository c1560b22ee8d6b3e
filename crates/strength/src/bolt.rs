//! The bolt through a joint: shear, and bending over its spacers.
//!
//! - Shear: force over the sheared area, one plane or two, against 0.577 of the yield strength.
//! - Bending in double shear: the pin between two ears of thickness t with a ball or bush of width b and a gap g on each side carries
//!   `F/2 (t/2 + b/4 + g)` (the usual estimate for pins in lugs: even pressure over ears and bush).
//! - Bending in single shear: the bolt stands out of its tab; lever from the tab's face to the joint's middle, `g + b/2`, spacer included.
//!
//! The two are put together by distortion energy at the same section, which errs on the strict side. Clamping by the nut, which helps, is left out.

use std::f64::consts::PI;

use crate::check::{Check, Finding, mpa};
use crate::grade::Strength;
use crate::material::SHEAR_YIELD_SHARE;
use crate::number::{BadNumber, not_negative, positive};
use crate::source::Source;
use crate::stress::RoundSection;
use crate::thread::Thread;

/// Shear of bolts: Shigley section 8-12.
pub const BOLT_SHEAR: Source = Source::seen(
    "Shigley, Mechanical Engineering Design, 9th ed.",
    "section 8-12, examples 8-6 and following; shear yield 0.577 Sy",
);
/// The estimate for a pin between ears.
pub const PIN_BENDING: Source = Source::from_memory(
    "Bruhn, Analysis and Design of Flight Vehicle Structures",
    "chapter D1, bending of lug pins",
);

/// One plane of shear or two.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum ShearPlanes {
    /// The joint hangs on one tab.
    Single,
    /// The joint sits between two ears.
    Double,
}

impl ShearPlanes {
    /// Number of ears that share the force.
    #[must_use]
    pub fn count(self) -> f64 {
        match self {
            Self::Single => 1.0,
            Self::Double => 2.0,
        }
    }
}

/// What a shear plane cuts.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum ShearPlaneAt {
    /// The plain shank of this diameter, mm.
    Shank(f64),
    /// The thread.
    Thread(Thread),
}

/// A bolt with its joint.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Bolt {
    section: RoundSection,
    strength: Strength,
    planes: ShearPlanes,
    lever: f64,
}

impl Bolt {
    /// A bolt cut there, with this joint on it: ear thickness, width of the joint's ball or bush, and gap or spacer between them (on each side in double
    /// shear), mm.
    ///
    /// # Errors
    /// A diameter, thickness or width that is not finite and above zero, a gap below zero.
    pub fn new(
        at: ShearPlaneAt,
        strength: Strength,
        planes: ShearPlanes,
        [ear, joint_width, gap]: [f64; 3],
    ) -> Result<Self, BadNumber> {
        positive("the ear's thickness", ear)?;
        positive("the joint's width", joint_width)?;
        not_negative("the gap or spacer at the joint", gap)?;
        let section = match at {
            ShearPlaneAt::Shank(diameter) => RoundSection::solid(diameter)?,
            ShearPlaneAt::Thread(thread) => RoundSection::solid(thread.minor_diameter())?,
        };
        let lever = match planes {
            ShearPlanes::Single => gap + joint_width / 2.0,
            ShearPlanes::Double => (ear / 2.0 + joint_width / 4.0 + gap) / 2.0,
        };
        Ok(Self {
            section,
            strength,
            planes,
            lever,
        })
    }

    /// Area of all shear planes, mm^2.
    #[must_use]
    pub fn shear_area(&self) -> f64 {
        self.planes.count() * self.section.shear_area()
    }

    /// Both checks under this force across the bolt, N.
    pub fn check(&self, across: f64, mut found: impl FnMut(Finding)) {
        let yields = self.strength.yield_strength.mpa();
        let source = self.strength.source;
        let shear = across.abs() / self.shear_area();
        let in_shear = mpa(SHEAR_YIELD_SHARE * yields, source);
        found(Finding::below(
            Check::BoltShear,
            shear,
            in_shear,
            BOLT_SHEAR,
        ));
        let bending = across.abs() * self.lever / self.section.bending_modulus();
        let combined = (bending * bending + 3.0 * shear * shear).sqrt();
        found(Finding::below(
            Check::BoltBending,
            combined,
            mpa(yields, source),
            PIN_BENDING,
        ));
    }

    /// Largest force across the bolt, N, at which its shear planes just yield.
    #[must_use]
    pub fn shear_at_yield(&self) -> f64 {
        SHEAR_YIELD_SHARE * self.strength.yield_strength.mpa() * self.shear_area()
    }

    /// Least diameter, mm, of a solid shank that keeps this shear stress (MPa) under a force across it (N).
    #[must_use]
    pub fn least_diameter(planes: ShearPlanes, across: f64, shear_stress: f64) -> f64 {
        (4.0 * across.abs() / (PI * planes.count() * shear_stress)).sqrt()
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::grade::{Printed, StressUnit};
    use crate::units::{INCH, KSI, POUND_FORCE};
    use approx::assert_relative_eq;

    fn strength(ksi: f64) -> Strength {
        Strength {
            proof: None,
            yield_strength: Printed {
                value: ksi,
                unit: StressUnit::Ksi,
            },
            tensile: None,
            source: Source::USER,
        }
    }

    fn bolt(at: ShearPlaneAt, ksi: f64, planes: ShearPlanes) -> Bolt {
        Bolt::new(at, strength(ksi), planes, [6.0, 12.0, 3.0]).unwrap()
    }

    /// Shigley 9th ed., example 8-6: two 3/4 in bolts of 85 ksi in double shear, factor 1.5: 57.8 kip through the shanks and 45.9 kip through the
    /// threads (3/4-16, the book's root area of 0.351 in^2; here the thread's own minor diameter, 0.6733 in or 0.3561 in^2: 46.6 kip).
    #[test]
    fn splice_as_printed() {
        let shank = bolt(ShearPlaneAt::Shank(0.75 * INCH), 85.0, ShearPlanes::Double);
        let kips = |bolt: &Bolt| 2.0 * bolt.shear_at_yield() / 1.5 / POUND_FORCE / 1000.0;
        assert!((kips(&shank) - 57.8).abs() < 0.05);
        let thread = Thread::find("3/4-16").unwrap();
        let through = bolt(ShearPlaneAt::Thread(thread), 85.0, ShearPlanes::Double);
        assert_relative_eq!(kips(&through), 45.9, max_relative = 0.02);
    }

    /// Shigley's solutions, problem 8-40: lap joint, two 3/8 in bolts of 92 ksi in single shear under 4 kip: factor 2.93 (printed).
    #[test]
    fn lap_joint_as_printed() {
        let bolt = bolt(ShearPlaneAt::Shank(0.375 * INCH), 92.0, ShearPlanes::Single);
        let mut shear = None;
        bolt.check(2000.0 * POUND_FORCE, |f| {
            if f.check == Check::BoltShear {
                shear = f.factor();
            }
        });
        assert!((shear.unwrap() - 2.93).abs() < 0.005);
    }

    /// Gere, Mechanics of Materials, problem 1.8-5: one bolt in double shear, 1800 lb, 12 ksi allowed: 0.309 in (printed).
    #[test]
    fn least_diameter_as_printed() {
        let diameter = Bolt::least_diameter(ShearPlanes::Double, 1800.0 * POUND_FORCE, 12.0 * KSI);
        assert!((diameter / INCH - 0.309).abs() < 5e-4);
    }

    /// Aircraft bolts, 75 ksi in shear, MIL-B-6812 (from memory): 1/4 in 3680 lb, 3/8 in 8280 lb, 1/2 in 14700 lb as the tables print them.
    #[test]
    fn single_shear_by_area_as_printed() {
        for (inches, pounds) in [(0.25, 3680.0), (0.375, 8280.0), (0.5, 14_700.0)] {
            let bolt = bolt(
                ShearPlaneAt::Shank(inches * INCH),
                75.0 / SHEAR_YIELD_SHARE,
                ShearPlanes::Single,
            );
            assert_relative_eq!(
                bolt.shear_at_yield() / POUND_FORCE,
                pounds,
                max_relative = 2e-3
            );
        }
    }

    /// By hand, 10 mm shank, W 98.1748 mm^3, A 78.5398 mm^2, 1000 N. Double: lever (3 + 3 + 3)/2 = 4.5 mm, 45.837 MPa with 6.366 shear: 47.144. Single: lever 9 mm,
    /// 91.673 with 12.732: 94.289.
    #[test]
    fn bending_by_hand() {
        for (planes, expected) in [(ShearPlanes::Double, 47.144), (ShearPlanes::Single, 94.289)] {
            let mut stress = 0.0;
            bolt(ShearPlaneAt::Shank(10.0), 90.0, planes).check(-1000.0, |f| {
                if f.check == Check::BoltBending {
                    stress = f.value;
                }
            });
            assert_relative_eq!(stress, expected, max_relative = 1e-4);
        }
    }

    #[test]
    fn bad_numbers_are_refused() {
        let new = |d, sizes| {
            Bolt::new(
                ShearPlaneAt::Shank(d),
                strength(90.0),
                ShearPlanes::Single,
                sizes,
            )
        };
        assert!(new(0.0, [6.0, 12.0, 0.0]).is_err());
        assert!(new(10.0, [0.0, 12.0, 0.0]).is_err());
        assert!(new(10.0, [6.0, f64::NAN, 0.0]).is_err());
        assert!(new(10.0, [6.0, 12.0, -1.0]).is_err());
    }
}
