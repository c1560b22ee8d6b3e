//! The tie rod as a bar: axial stress, buckling, a hit across its middle, the threads at its ends.
//!
//! It is taken as a straight bar of one section between its joints, which are free to turn. Rod ends and adapters are taken as stiff as the bar;
//! the thinner shank is checked for axial stress only.

use crate::check::{Check, Finding, mpa, newtons};
use crate::column::{COLUMN_FORMULAS, Column, Ends};
use crate::engagement;
use crate::grade::Strength;
use crate::material::MaterialStrength;
use crate::number::{BadNumber, not_negative};
use crate::section::Profile;
use crate::source::{Limit, Source};
use crate::thread::Thread;

/// Elementary strength of materials: force over area, moment over section modulus, F l / 4 for a bar on two supports.
pub const BEAM: Source = Source::from_memory(
    "Shigley, Mechanical Engineering Design",
    "axial and bending stress; Table A-9 (bar on two supports, load at the middle)",
);

/// A tie rod between its joints.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct TieRodBar {
    profile: Profile,
    strength: MaterialStrength,
    length: f64,
    column: Column,
    side_hit: f64,
    shank: Option<(Thread, Strength)>,
    engaged: Option<f64>,
}

impl TieRodBar {
    /// A rod of this profile and material, with joints this far apart, mm, that a rock may hit across its middle with this force, N (zero for none).
    ///
    /// # Errors
    /// A length that is not finite and above zero, a force below zero or not finite.
    pub fn new(
        profile: Profile,
        strength: MaterialStrength,
        length: f64,
        side_hit: f64,
    ) -> Result<Self, BadNumber> {
        Ok(Self {
            profile,
            strength,
            length,
            column: Column::new(profile, strength, length, Ends::Pinned)?,
            side_hit: not_negative("the side hit on the tie rod", side_hit)?,
            shank: None,
            engaged: None,
        })
    }

    /// The same with the thread of the rod ends' shanks, and what they are made of.
    #[must_use]
    pub fn with_shank(self, thread: Thread, strength: Strength) -> Self {
        Self {
            shank: Some((thread, strength)),
            ..self
        }
    }

    /// The same with the least thread that its adapters hold, at the outer end of their adjustment, mm.
    ///
    /// # Errors
    /// A length that is not finite or below zero.
    pub fn with_engagement(self, least: f64) -> Result<Self, BadNumber> {
        Ok(Self {
            engaged: Some(not_negative("the thread left in the adapter", least)?),
            ..self
        })
    }

    /// The checks that no load case changes: a side hit, thread in the adapters.
    pub fn check_once(&self, mut found: impl FnMut(Finding)) {
        if self.side_hit > 0.0 {
            let bending = self.side_hit * self.length / 4.0 / self.profile.least_modulus();
            found(Finding::below(Check::SideHit, bending, self.yields(), BEAM));
        }
        if let Some(((thread, _), engaged)) = self.shank.zip(self.engaged) {
            let least = Limit {
                value: engagement::length_in_steel(thread),
                unit: "mm",
                source: engagement::DIAMETERS_IN_STEEL.source,
            };
            found(Finding::above(
                Check::ThreadEngagement,
                engaged,
                least,
                least.source,
            ));
        }
    }

    /// Everything that is checked under this tension (N, compression negative), one after another.
    pub fn check(&self, tension: f64, mut found: impl FnMut(Finding)) {
        let yields = self.yields();
        let axial = tension.abs() / self.profile.area();
        found(Finding::below(Check::AxialYield, axial, yields, BEAM));
        let (critical, _) = self.column.critical_load();
        let limit = newtons(critical, COLUMN_FORMULAS);
        found(Finding::below(
            Check::Buckling,
            (-tension).max(0.0),
            limit,
            COLUMN_FORMULAS,
        ));
        if let Some((thread, strength)) = self.shank {
            let limit = mpa(strength.yield_strength.mpa(), strength.source);
            let stress = tension.abs() / thread.tensile_stress_area();
            found(Finding::below(
                Check::ShankYield,
                stress,
                limit,
                thread.source(),
            ));
        }
    }

    fn yields(&self) -> Limit {
        mpa(self.strength.yield_mpa(), self.strength.source)
    }

    /// The side force at mid-span, N, at which the rod begins to yield.
    #[must_use]
    pub fn side_hit_at_yield(&self) -> f64 {
        4.0 * self.strength.yield_mpa() * self.profile.least_modulus() / self.length
    }

    /// The compression at which it buckles, N.
    #[must_use]
    pub fn critical_load(&self) -> f64 {
        self.column.critical_load().0
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::grade::Grade;
    use crate::material::Material;
    use crate::units::INCH;
    use approx::assert_relative_eq;

    fn rod(outer: f64, wall: f64, side_hit: f64) -> TieRodBar {
        let strength = Material::own("350 MPa steel", 350.0, None, 207_000.0)
            .unwrap()
            .strength(wall)
            .unwrap();
        let profile = Profile::round_tube(outer * INCH, wall * INCH).unwrap();
        TieRodBar::new(profile, strength, 340.0, side_hit).unwrap()
    }

    fn all(rod: &TieRodBar, tension: f64) -> Vec<Finding> {
        let mut found = vec![];
        rod.check(tension, |finding| found.push(finding));
        rod.check_once(|finding| found.push(finding));
        found
    }

    fn factor(found: &[Finding], check: Check) -> Option<f64> {
        found.iter().find(|f| f.check == check).unwrap().factor()
    }

    /// By hand, 340 mm between joints, steel of 350 MPa. 3/4 x 0.065 in: I = pi (19.05^4 - 15.748^4)/64 = 3446 mm^4, W = 361.7; 4 x 350 W / 340 = 1.49 kN across.
    /// 1 x 0.095 in: W = 916.3 mm^3, 3.77 kN.
    #[test]
    fn a_rock_bends_what_would_not_buckle() {
        let thin = rod(0.75, 0.065, 0.0);
        assert!(
            (thin.side_hit_at_yield() / 1000.0 - 1.49).abs() < 0.01,
            "{}",
            thin.side_hit_at_yield()
        );
        // Euler 207000 pi^2 3446 / 340^2 = 60.9 kN is not reached: Johnson's parabola gives less.
        assert!(thin.critical_load() > 20_000.0 && thin.critical_load() < 60_000.0);
        let thick = rod(1.0, 0.095, 0.0);
        assert!(
            (thick.side_hit_at_yield() / 1000.0 - 3.77).abs() < 0.01,
            "{}",
            thick.side_hit_at_yield()
        );
    }

    #[test]
    fn tension_does_not_buckle() {
        let rod = rod(0.75, 0.065, 745.0);
        let pulled = all(&rod, 5000.0);
        assert_eq!(factor(&pulled, Check::Buckling), None);
        let pushed = all(&rod, -5000.0);
        assert_relative_eq!(
            factor(&pushed, Check::Buckling).unwrap(),
            rod.critical_load() / 5000.0,
            max_relative = 1e-12
        );
        assert_eq!(
            factor(&pulled, Check::AxialYield),
            factor(&pushed, Check::AxialYield)
        );
        assert_relative_eq!(
            factor(&pulled, Check::SideHit).unwrap(),
            rod.side_hit_at_yield() / 745.0,
            max_relative = 1e-12
        );
        assert_eq!(pulled.len(), 3);
    }

    /// SAE J429 grade 5, 3/8-24: At 0.0878 in^2 (printed) x 92 ksi = 35.93 kN.
    #[test]
    fn the_shank_by_its_stress_area() {
        let thread = Thread::find("3/8-24").unwrap();
        let strength = Grade::find("grade 5")
            .unwrap()
            .strength(thread.major_diameter())
            .unwrap();
        let found = all(
            &rod(0.75, 0.065, 0.0).with_shank(thread, strength),
            10_000.0,
        );
        let shank = factor(&found, Check::ShankYield).unwrap();
        assert_relative_eq!(shank, 3.593, max_relative = 1e-3);
    }

    /// 3/8-24 in its adapter: one diameter, 9.525 mm, is wanted. What is said of the shank and the hit is kept by what is told later.
    #[test]
    fn what_no_load_changes() {
        let once = |rod: &TieRodBar| {
            let mut found = vec![];
            rod.check_once(|f| found.push((f.check, f.value, f.limit.value)));
            found
        };
        assert_eq!(once(&rod(0.75, 0.065, 0.0)), []);
        let thread = Thread::find("3/8-24").unwrap();
        let strength = Grade::find("grade 5").unwrap().strength(9.525).unwrap();
        let held = rod(0.75, 0.065, 0.0)
            .with_shank(thread, strength)
            .with_engagement(12.0)
            .unwrap();
        let &[(check, engaged, least)] = once(&held).as_slice() else {
            panic!("one check: {:?}", once(&held));
        };
        assert_eq!((check, engaged), (Check::ThreadEngagement, 12.0));
        assert_relative_eq!(least, 9.525, max_relative = 1e-12);
    }

    #[test]
    fn bad_numbers_are_refused() {
        let strength = Material::find("A36").unwrap().strength(2.0).unwrap();
        let profile = Profile::round_tube(20.0, 2.0).unwrap();
        assert!(TieRodBar::new(profile, strength, 0.0, 1.0).is_err());
        assert!(TieRodBar::new(profile, strength, 300.0, -1.0).is_err());
    }

    /// 3/4 x 0.065 in: pi/4 (19.05^2 - 15.748^2) = 90.2446 mm^2 by hand.
    #[test]
    fn force_over_area() {
        let found = all(&rod(0.75, 0.065, 0.0), -9024.46);
        let axial = found.iter().find(|f| f.check == Check::AxialYield).unwrap();
        assert_relative_eq!(axial.value, 100.0, max_relative = 1e-5);
        assert_relative_eq!(axial.factor().unwrap(), 3.5, max_relative = 1e-5);
    }
}
