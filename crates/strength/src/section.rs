//! Sections of bars and tubes: area, stiffness and strength in bending.

use crate::number::{BadNumber, positive};
use crate::stress::RoundSection;

/// A bar's cross-section, the same all along. Elementary formulas; square tubes with sharp corners.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Profile {
    area: f64,
    /// Second moment of area about the weak axis, mm^4.
    second_moment: f64,
    /// Distance of the outermost fibre in bending about it, mm.
    fibre: f64,
    wall: f64,
}

impl Profile {
    /// A round bar or tube.
    #[must_use]
    pub fn round(section: RoundSection) -> Self {
        let outer = section.outer_diameter();
        let inner = section.inner_diameter();
        Self {
            area: section.shear_area(),
            second_moment: section.second_moment(),
            fibre: outer / 2.0,
            wall: if inner > 0.0 {
                (outer - inner) / 2.0
            } else {
                outer
            },
        }
    }

    /// A round tube of this outer diameter and wall, mm; a solid bar when the wall is half the diameter.
    ///
    /// # Errors
    /// A length that is not finite and above zero, or a wall above half the diameter.
    pub fn round_tube(outer_diameter: f64, wall: f64) -> Result<Self, BadNumber> {
        positive("the tube's outer diameter", outer_diameter)?;
        wall_within(wall, outer_diameter)?;
        let inner = (outer_diameter - 2.0 * wall).max(0.0);
        Ok(Self::round(RoundSection::tube(outer_diameter, inner)?))
    }

    /// A square tube of this side and wall, mm.
    ///
    /// # Errors
    /// As for a round tube.
    pub fn square_tube(side: f64, wall: f64) -> Result<Self, BadNumber> {
        positive("the tube's side", side)?;
        wall_within(wall, side)?;
        let inside = (side - 2.0 * wall).max(0.0);
        Ok(Self {
            area: side * side - inside * inside,
            second_moment: (side.powi(4) - inside.powi(4)) / 12.0,
            fibre: side / 2.0,
            wall,
        })
    }

    /// A flat bar, mm.
    ///
    /// # Errors
    /// A length that is not finite and above zero.
    pub fn flat_bar(width: f64, thickness: f64) -> Result<Self, BadNumber> {
        positive("the bar's width", width)?;
        positive("the bar's thickness", thickness)?;
        let (wide, thin) = (width.max(thickness), width.min(thickness));
        Ok(Self {
            area: wide * thin,
            second_moment: wide * thin.powi(3) / 12.0,
            fibre: thin / 2.0,
            wall: thin,
        })
    }

    /// Area, mm^2.
    #[must_use]
    pub fn area(&self) -> f64 {
        self.area
    }

    /// Least second moment of area, mm^4: about the axis that it bends over by itself.
    #[must_use]
    pub fn least_second_moment(&self) -> f64 {
        self.second_moment
    }

    /// Least section modulus, mm^3.
    #[must_use]
    pub fn least_modulus(&self) -> f64 {
        self.second_moment / self.fibre
    }

    /// Least radius of gyration, mm.
    #[must_use]
    pub fn least_gyration(&self) -> f64 {
        (self.second_moment / self.area).sqrt()
    }

    /// Thickness of the wall, or of a solid bar, mm.
    #[must_use]
    pub fn wall(&self) -> f64 {
        self.wall
    }
}

fn wall_within(wall: f64, across: f64) -> Result<(), BadNumber> {
    positive("the tube's wall", wall)?;
    if wall > across / 2.0 {
        return Err(BadNumber {
            what: "the tube's wall",
            found: wall,
            expected: "at most half of what it is across",
        });
    }
    Ok(())
}

#[cfg(test)]
mod tests {
    use super::*;
    use approx::assert_relative_eq;

    /// Gere, Mechanics of Materials, problem 11.4-2: pipe of 40 and 36 mm has I = 43.22e3 mm^4 (printed).
    #[test]
    fn pipe_as_printed() {
        let pipe = Profile::round_tube(40.0, 2.0).unwrap();
        assert!((pipe.least_second_moment() / 1000.0 - 43.22).abs() < 0.005);
        assert_relative_eq!(pipe.least_modulus(), pipe.least_second_moment() / 20.0);
        assert_relative_eq!(
            pipe.area(),
            std::f64::consts::PI * 76.0,
            max_relative = 1e-12
        );
        assert_relative_eq!(pipe.wall(), 2.0);
    }

    /// By hand: square 40 x 3: 1600 - 1156 = 444 mm^2, I = (40^4 - 34^4)/12 = 101972; flat 40 x 6: weak I = 40 x 216/12 = 720, W = 240.
    #[test]
    fn square_and_flat_by_hand() {
        let square = Profile::square_tube(40.0, 3.0).unwrap();
        assert_relative_eq!(square.area(), 444.0);
        assert_relative_eq!(square.least_second_moment(), 101_972.0);
        assert_relative_eq!(square.least_modulus(), 5098.6);
        let flat = Profile::flat_bar(6.0, 40.0).unwrap();
        assert_relative_eq!(flat.least_second_moment(), 720.0);
        assert_relative_eq!(flat.least_modulus(), 240.0);
        assert_relative_eq!(flat.least_gyration(), 3.0_f64.sqrt());
        assert_relative_eq!(flat.wall(), 6.0);
        let solid = Profile::round_tube(10.0, 5.0).unwrap();
        assert_relative_eq!(solid.wall(), 10.0);
        assert_relative_eq!(solid.least_gyration(), 2.5, max_relative = 1e-12);
    }

    #[test]
    fn sections_that_are_none_are_refused() {
        assert!(Profile::round_tube(20.0, 11.0).is_err());
        assert!(Profile::round_tube(f64::NAN, 1.0).is_err());
        assert!(Profile::square_tube(20.0, 0.0).is_err());
        assert!(Profile::flat_bar(20.0, -1.0).is_err());
    }
}
