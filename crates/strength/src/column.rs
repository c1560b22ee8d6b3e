//! Columns: the compression at which a straight bar buckles.
//!
//! With l the length, k the least radius of gyration, C the end condition and Sy the yield strength (Shigley, Mechanical Engineering
//! Design, sections 4-12 to 4-14, equations 4-44 to 4-46, seen):
//!
//! - slender, `l/k` above `sqrt(2 pi^2 C E / Sy)`: Euler, `P = C pi^2 E I / l^2`;
//! - stockier: Johnson's parabola, `P = A (Sy - (Sy l / (2 pi k))^2 / (C E))`.
//!
//! The bar is straight, of one section, loaded through its centre line. A bent rod holds less.

use std::f64::consts::PI;

use crate::material::MaterialStrength;
use crate::number::{BadNumber, positive};
use crate::section::Profile;
use crate::source::Source;

/// Source of both formulas.
pub const COLUMN_FORMULAS: Source = Source::seen(
    "Shigley, Mechanical Engineering Design, 9th ed.",
    "eq. 4-44 to 4-46 (Euler, Johnson)",
);

/// How the ends are held.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Ends {
    /// Both free to turn: ball joints, rod ends.
    Pinned,
    /// One built in, the other free to turn.
    FixedPinned,
    /// Both built in.
    Fixed,
    /// One built in, the other free to move.
    FixedFree,
}

impl Ends {
    /// The end-condition constant C (theoretical values, Shigley Table 4-2; the second one is 4.4934^2 / pi^2).
    #[must_use]
    pub fn constant(self) -> f64 {
        match self {
            Self::Pinned => 1.0,
            Self::FixedPinned => 2.045_75,
            Self::Fixed => 4.0,
            Self::FixedFree => 0.25,
        }
    }
}

/// Which formula held.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum ColumnFormula {
    /// Slender: Euler.
    Euler,
    /// Stocky: Johnson.
    Johnson,
}

/// A straight bar in compression.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Column {
    profile: Profile,
    strength: MaterialStrength,
    length: f64,
    ends: Ends,
}

impl Column {
    /// A bar of this profile and material between ends this far apart, mm.
    ///
    /// # Errors
    /// A length that is not finite and above zero.
    pub fn new(
        profile: Profile,
        strength: MaterialStrength,
        length: f64,
        ends: Ends,
    ) -> Result<Self, BadNumber> {
        positive("the column's length", length)?;
        Ok(Self {
            profile,
            strength,
            length,
            ends,
        })
    }

    /// Length over least radius of gyration.
    #[must_use]
    pub fn slenderness(&self) -> f64 {
        self.length / self.profile.least_gyration()
    }

    /// The slenderness at which Johnson's and Euler's formulas meet.
    #[must_use]
    pub fn meeting_slenderness(&self) -> f64 {
        let strength = &self.strength;
        (2.0 * PI * PI * self.ends.constant() * strength.modulus / strength.yield_mpa()).sqrt()
    }

    /// Euler's load, N, whether or not it holds here.
    #[must_use]
    pub fn euler_load(&self) -> f64 {
        let stiffness = self.strength.modulus * self.profile.least_second_moment();
        self.ends.constant() * PI * PI * stiffness / (self.length * self.length)
    }

    /// The compression at which it buckles, N, and the formula that held.
    #[must_use]
    pub fn critical_load(&self) -> (f64, ColumnFormula) {
        if self.slenderness() > self.meeting_slenderness() {
            return (self.euler_load(), ColumnFormula::Euler);
        }
        let yields = self.strength.yield_mpa();
        let bow = yields * self.slenderness() / (2.0 * PI);
        let stress = yields - bow * bow / (self.ends.constant() * self.strength.modulus);
        (self.profile.area() * stress, ColumnFormula::Johnson)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::material::Material;
    use crate::units::{INCH, KSI, POUND_FORCE};
    use approx::assert_relative_eq;

    fn column(outer: f64, wall: f64, length: f64, yields: f64, modulus: f64, ends: Ends) -> Column {
        let strength = Material::own("test", yields, None, modulus)
            .unwrap()
            .strength(wall)
            .unwrap();
        let profile = Profile::round_tube(outer, wall).unwrap();
        Column::new(profile, strength, length, ends).unwrap()
    }

    fn solid(diameter: f64, length: f64, yields: f64, modulus: f64) -> Column {
        column(
            diameter,
            diameter / 2.0,
            length,
            yields,
            modulus,
            Ends::Pinned,
        )
    }

    /// Shigley 9th ed., example 4-17 (printed d 37.48 mm for 22 kN x 4 over 1.5 m; then l/k 150 at 40 mm and a meeting point of 90.4 with Sy 500 and
    /// E 207 GPa; the short one's 19.020 mm computed).
    #[test]
    fn round_column_as_printed() {
        let (load, formula) = solid(37.48, 1500.0, 500.0, 207_000.0).critical_load();
        assert_eq!(formula, ColumnFormula::Euler);
        assert_relative_eq!(load, 88_000.0, max_relative = 1e-3);
        let chosen = solid(40.0, 1500.0, 500.0, 207_000.0);
        assert_relative_eq!(chosen.slenderness(), 150.0, max_relative = 1e-12);
        assert!((chosen.meeting_slenderness() - 90.4).abs() < 0.05);
        let (load, formula) = solid(19.020, 375.0, 500.0, 207_000.0).critical_load();
        assert_eq!(formula, ColumnFormula::Johnson);
        assert_relative_eq!(load, 88_000.0, max_relative = 1e-3);
    }

    /// Hibbeler, Mechanics of Materials, example 13.1: radii 75 and 70 mm, 7.2 m, pinned, E 200 GPa: 228.2 kN (printed).
    #[test]
    fn steel_tube_as_printed() {
        let tube = column(150.0, 5.0, 7200.0, 250.0, 200_000.0, Ends::Pinned);
        assert_eq!(tube.critical_load().1, ColumnFormula::Euler);
        assert!((tube.critical_load().0 / 1000.0 - 228.2).abs() < 0.05);
    }

    /// Gere, Mechanics of Materials, problem 11.4-2: pipe 40/36 mm, 1.2 m, E 210 GPa: pinned 62.2, fixed-free 15.6, fixed-pinned 127, fixed 249 kN (printed).
    #[test]
    fn every_end_condition_as_printed() {
        for (ends, printed, digits) in [
            (Ends::Pinned, 62.2, 0.05),
            (Ends::FixedFree, 15.6, 0.05),
            (Ends::FixedPinned, 127.0, 0.5),
            (Ends::Fixed, 249.0, 0.5),
        ] {
            let load = column(40.0, 2.0, 1200.0, 250.0, 210_000.0, ends).euler_load() / 1000.0;
            assert!((load - printed).abs() < digits, "{ends:?} {load}");
        }
    }

    /// Faires, Design of Machine Elements, problem 334: 10 kip x 3, Sy 48 ksi, E 30e3 ksi: 25 in long D 1.096 in by Johnson, 50 in long D 1.507 in by Euler.
    #[test]
    fn machine_rod_as_printed() {
        for (length, diameter, expected) in [
            (25.0, 1.096, ColumnFormula::Johnson),
            (50.0, 1.507, ColumnFormula::Euler),
        ] {
            let rod = solid(diameter * INCH, length * INCH, 48.0 * KSI, 30_000.0 * KSI);
            let (load, formula) = rod.critical_load();
            assert_eq!(formula, expected);
            assert_relative_eq!(load / POUND_FORCE, 30_000.0, max_relative = 2e-3);
        }
    }

    /// Mott, Machine Elements in Mechanical Design, example 6-1: 1.25 in, 54 in, 51 ksi: slenderness 173, column constant 108 (printed); Euler's load
    /// 12168.7 lb (computed).
    #[test]
    fn long_rod_as_printed() {
        let rod = solid(1.25 * INCH, 54.0 * INCH, 51.0 * KSI, 30_000.0 * KSI);
        assert!((rod.slenderness() - 173.0).abs() < 0.5);
        assert!((rod.meeting_slenderness() - 108.0).abs() < 0.5);
        assert_relative_eq!(
            rod.critical_load().0 / POUND_FORCE,
            12_168.7,
            max_relative = 1e-5
        );
    }

    /// The two formulas meet at half the yield strength.
    #[test]
    fn the_formulas_meet() {
        let probe = solid(20.0, 1000.0, 400.0, 207_000.0);
        let length = probe.meeting_slenderness() * 5.0;
        let half = 200.0 * PI * 100.0;
        for longer in [1.0 - 1e-9, 1.0 + 1e-9] {
            let load = solid(20.0, length * longer, 400.0, 207_000.0)
                .critical_load()
                .0;
            assert_relative_eq!(load, half, max_relative = 1e-6);
        }
        // Ends that hold better only move the place where they do.
        for (ends, constant) in [
            (Ends::FixedFree, 0.25),
            (Ends::FixedPinned, 2.0457),
            (Ends::Fixed, 4.0_f64),
        ] {
            let held = column(20.0, 10.0, 1000.0, 400.0, 207_000.0, ends);
            let further = held.meeting_slenderness() / probe.meeting_slenderness();
            assert_relative_eq!(further, constant.sqrt(), max_relative = 1e-3);
        }
        let strength = Material::find("A36").unwrap().strength(5.0).unwrap();
        let profile = Profile::flat_bar(20.0, 5.0).unwrap();
        assert!(Column::new(profile, strength, 0.0, Ends::Fixed).is_err());
    }
}
