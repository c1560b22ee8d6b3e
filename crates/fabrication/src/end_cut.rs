//! What every cut around a tube's end has in common: how far it runs, and its template to wrap around the tube.

use std::f64::consts::TAU;

use trammel_strength::BadNumber;

use crate::plane::Point;
use crate::size::not_negative;

/// Points around the tube: on a 50 mm tube 0.44 mm apart, where the curve leaves its chords by less than 0.002 mm.
const STEPS: u32 = 360;

/// A cut around the end of a round tube. Distances run along the tube from a point beyond the end on its axis, mm; the metal that stays lies farther than the cut.
/// Angles run around the tube from the side named inside, rad.
pub trait EndCut {
    /// Outside diameter of the tube, mm.
    fn tube_diameter(&self) -> f64;

    /// How far the cut lies at this angle around the tube, mm.
    fn cut_at(&self, around: f64) -> f64;

    /// The nearest and the farthest of the cut, mm, from a look at every degree: the tips of the metal that stays and the bottom of the notch.
    fn range(&self) -> [f64; 2] {
        degrees()
            .map(|f| self.cut_at(f))
            .fold([f64::INFINITY, f64::NEG_INFINITY], |[least, most], z| {
                [least.min(z), most.max(z)]
            })
    }

    /// The template laid flat: x around the tube from the inside, y how far the metal stands out beyond the bottom of the notch. `paper` is the paper's thickness, by half of
    /// which the wrap lies farther out.
    ///
    /// # Errors
    /// A paper thickness below zero.
    fn template(&self, paper: f64) -> Result<Vec<Point>, BadNumber> {
        not_negative("the paper's thickness", paper)?;
        let wrap = (self.tube_diameter() + paper) / 2.0;
        let [_, bottom] = self.range();
        Ok(degrees()
            .map(|f| Point::new(wrap * f, bottom - self.cut_at(f)))
            .collect())
    }
}

fn degrees() -> impl Iterator<Item = f64> {
    (0..=STEPS).map(|step| TAU * f64::from(step) / f64::from(STEPS))
}
