//! Fillet welds around a plate's base, as lines of throat.
//!
//! The throat of a fillet with leg h is 0.707 h; the allowed stress on it is 0.30 of the electrode's tensile strength (AWS and AISC allowable stress, as
//! in Shigley Table 9-6). Force and moments are spread over the weld as over a line (Shigley sections 9-2 to 9-4):
//! line length for force, line moduli for bending; the parts are added as vectors at the worst point.

use crate::check::{Check, Finding, mpa};
use crate::number::{BadNumber, positive};
use crate::source::Source;
use crate::units::KSI;

/// Throat over leg of an equal-legged fillet: cos 45 degrees as printed.
pub const THROAT: f64 = 0.707;
/// Allowed throat stress over the electrode's tensile strength.
pub const ALLOWED_SHARE: f64 = 0.30;
/// Source of the allowed stress.
pub const WELD_ALLOWABLE: Source = Source::seen(
    "AISC allowable stress design; Shigley 9th ed. Table 9-6",
    "fillet welds: 0.30 of the electrode's tensile strength on the throat",
);
/// Source of the line method.
pub const WELD_LINES: Source = Source::from_memory(
    "Shigley, Mechanical Engineering Design",
    "sections 9-2 to 9-4, Tables 9-1 and 9-2",
);

/// A fillet weld's leg and electrode.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Fillet {
    leg: f64,
    electrode_tensile: f64,
}

impl Fillet {
    /// A fillet of this leg (mm) laid with an electrode or wire of this tensile class in ksi: 70 for E70 and ER70.
    ///
    /// # Errors
    /// A number that is not finite and above zero.
    pub fn new(leg: f64, electrode_ksi: f64) -> Result<Self, BadNumber> {
        Ok(Self {
            leg: positive("the weld's leg", leg)?,
            electrode_tensile: positive("the electrode's tensile strength", electrode_ksi)? * KSI,
        })
    }

    /// Thickness of the throat, mm.
    #[must_use]
    pub fn throat(&self) -> f64 {
        THROAT * self.leg
    }

    /// Allowed stress on the throat, MPa.
    #[must_use]
    pub fn allowed(&self) -> f64 {
        ALLOWED_SHARE * self.electrode_tensile
    }

    /// Allowed force for each mm of weld, N/mm.
    #[must_use]
    pub fn allowed_per_length(&self) -> f64 {
        self.allowed() * self.throat()
    }

    /// The check of the throat under this force per length of weld (N/mm).
    pub(crate) fn check(&self, force_per_length: f64) -> Finding {
        let stress = force_per_length / self.throat();
        Finding::below(
            Check::WeldThroat,
            stress,
            mpa(self.allowed(), WELD_ALLOWABLE),
            WELD_LINES,
        )
    }
}

/// Weld lines round the base of one plate or of two equal ones: length for force and the two moduli for bending.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct WeldLines {
    /// mm.
    pub length: f64,
    /// In the plates' plane, mm^2.
    pub along_modulus: f64,
    /// Across the plates, mm^2.
    pub across_modulus: f64,
}

impl WeldLines {
    /// Both faces of each plate welded along its width: one plate, or two whose middle planes stand `apart`. Two act together across their planes
    /// only where `joined`, by a back plate; otherwise each bends for itself.
    pub(crate) fn along_plates(
        plates: f64,
        width: f64,
        thickness: f64,
        joined_apart: Option<f64>,
    ) -> Self {
        let across_modulus = match joined_apart {
            // Four lines at (apart +- thickness)/2 from the middle.
            Some(apart) => {
                let (far, near) = ((apart + thickness) / 2.0, (apart - thickness) / 2.0);
                2.0 * width * (far * far + near * near) / far
            }
            None => plates * width * thickness,
        };
        Self {
            length: 2.0 * plates * width,
            along_modulus: plates * width * width / 3.0,
            across_modulus,
        }
    }

    /// Force per length at the worst point: pull, in-plane and cross forces (N), moments in the plane and across (N mm).
    pub(crate) fn force_per_length(
        &self,
        [pull, along, across]: [f64; 3],
        [in_plane, out_of_plane]: [f64; 2],
    ) -> f64 {
        let normal = pull.abs() / self.length
            + in_plane.abs() / self.along_modulus
            + out_of_plane.abs() / self.across_modulus;
        let shear = along.hypot(across) / self.length;
        normal.hypot(shear)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::{INCH, POUND_FORCE};
    use approx::assert_relative_eq;

    const KIP: f64 = 1000.0 * POUND_FORCE;

    /// Shigley 9th ed., Table 9-6 and example 9-2 (p. 492): E70 carries 14.85 h kip/in; a 3/8 in leg 5.57 kip/in, 4 in of it 22.28 kip; 0.928 kip/in for each
    /// 1/16 in of leg.
    #[test]
    fn allowable_as_printed() {
        let per_inch =
            |leg: f64| Fillet::new(leg * INCH, 70.0).unwrap().allowed_per_length() * INCH / KIP;
        assert!((per_inch(1.0) - 14.85).abs() < 0.005);
        assert!((per_inch(0.375) - 5.57).abs() < 0.005);
        assert!((4.0 * per_inch(0.375) - 22.28).abs() < 0.01);
        assert!((per_inch(1.0 / 16.0) - 0.928).abs() < 5e-4);
    }

    /// Shigley 10th ed., problems 9-1 and 9-2: h 5 mm, two lines of 50 mm, 140 MPa: 49.5 kN; 5/16 in, 4 in, 25 ksi: 22.1 kip. By an open calculator: a leg of
    /// 0.2245 in for 40 kip over 12 in with E70.
    #[test]
    fn throat_as_printed() {
        let fillet = Fillet::new(5.0, 70.0).unwrap();
        assert!((140.0 * fillet.throat() * 100.0 / 1000.0 - 49.5).abs() < 0.05);
        let inch = Fillet::new(5.0 / 16.0 * INCH, 70.0).unwrap();
        assert!((25.0 * KSI * inch.throat() * 4.0 * INCH / KIP - 22.1).abs() < 0.05);
        let leg = Fillet::new(0.2245 * INCH, 70.0).unwrap();
        assert_relative_eq!(
            leg.allowed_per_length() * 12.0 * INCH / KIP,
            40.0,
            max_relative = 1e-3
        );
    }

    /// Shigley Table 9-2 (from memory): two parallel lines of length d bend as d^2/3 along themselves, and as b d across when b apart. For a plate of
    /// width 40 and thickness 5: length 80, 533.33 and 200 mm^2. By hand: 800 N pull, 1600 N mm and 2000 N mm: 10 + 3 + 10 = 23 N/mm; 600 N along, 7.5 N/mm.
    #[test]
    fn one_plate_by_hand() {
        let lines = WeldLines::along_plates(1.0, 40.0, 5.0, None);
        assert_relative_eq!(lines.length, 80.0);
        assert_relative_eq!(lines.along_modulus, 1600.0 / 3.0);
        assert_relative_eq!(lines.across_modulus, 200.0);
        let force = lines.force_per_length([800.0, 600.0, 0.0], [1600.0, -2000.0]);
        assert_relative_eq!(force, 23.0_f64.hypot(7.5), max_relative = 1e-12);
    }

    /// Two joined plates 30 mm apart, 40 x 5: lines at 17.5 and 12.5 mm, 80 (306.25 + 156.25)/17.5 = 2114.29 mm^2.
    #[test]
    fn joined_plates_are_stiffer_across() {
        let joined = WeldLines::along_plates(2.0, 40.0, 5.0, Some(30.0));
        assert_relative_eq!(joined.across_modulus, 2_114.285_714, max_relative = 1e-9);
        let apart = WeldLines::along_plates(2.0, 40.0, 5.0, None);
        assert_relative_eq!(apart.across_modulus, 400.0);
    }

    #[test]
    fn bad_numbers_are_refused() {
        assert!(Fillet::new(0.0, 70.0).is_err());
        assert!(Fillet::new(5.0, f64::NAN).is_err());
    }
}
