//! Tabs: one plate, or a pair of ears, with a bolt through a hole.
//!
//! The force of the joint is told in the bracket's own directions: **pull** along its height from base to hole, **along** its width, **across**
//! its plates (the bolt's axis). Ears share each of them equally.
//!
//! | check | value | limit |
//! |---|---|---|
//! | bearing | in-plane force / (n d t) | yield strength (Shigley section 8-12) |
//! | net section | pull / (n (w - hole) t) | yield strength |
//! | shear-out | in-plane force / (n 2 a t), a from the hole's centre to the edge | 0.577 of it |
//! | tear-out at rupture | in-plane force | 0.75 x least of 1.2 Lc t Fu and 2.4 d t Fu a plate, Lc the clear distance to the edge (AISC J3.10) |
//! | bending at the base | pull / area + along x height / modulus + across x height / modulus | yield strength |
//! | weld throat | see [`crate::weld`] | 0.30 of the electrode |
//!
//! Two ears bend each for itself across their planes; a boxing plate between their edges makes one channel of them.

use crate::bolt::ShearPlanes;
use crate::check::{Check, Finding, mpa, newtons};
use crate::material::MaterialStrength;
use crate::number::{BadNumber, finite, not_negative, positive};
use crate::source::{Limit, Source};
use crate::tie_rod::BEAM;
use crate::weld::{Fillet, WeldLines};

/// Bearing, edge shear and net section.
pub const BOLTED_PLATES: Source = Source::seen(
    "Shigley, Mechanical Engineering Design, 9th ed.",
    "section 8-12, examples 8-6 and following",
);
/// Bearing and tear-out at rupture.
pub const AISC_J3_10: Source = Source::seen("AISC Specification", "J3.10 (resistance factor 0.75)");
/// Resistance factor of AISC J3.10.
const RESISTANCE: f64 = 0.75;

/// The plates of a bracket, mm.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct BracketSize {
    /// One tab, or two ears.
    pub ears: ShearPlanes,
    /// Thickness of a plate.
    pub thickness: f64,
    /// Width of a plate, at the hole and at the base.
    pub width: f64,
    /// Height of the hole's centre over the base.
    pub height: f64,
    /// Diameter of the bolt.
    pub bolt: f64,
    /// Diameter of the hole.
    pub hole: f64,
    /// From the hole's centre to the free edge, the way that the force would tear it.
    pub edge: f64,
    /// Between the ears, inside.
    pub gap: f64,
    /// Thickness of a plate that joins the ears' edges over their whole height; zero for none.
    pub boxing: f64,
}

/// A bracket with its material and weld.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Bracket {
    size: BracketSize,
    strength: MaterialStrength,
    weld: Option<Fillet>,
    base: Base,
    lines: WeldLines,
}

/// The section at the base.
#[derive(Clone, Copy, Debug, PartialEq)]
struct Base {
    area: f64,
    along_modulus: f64,
    across_modulus: f64,
}

/// The force of the joint on a bracket, N.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct BracketForce {
    /// Along the height, away from the base positive.
    pub pull: f64,
    /// Along the width.
    pub along: f64,
    /// Along the bolt, across the plates.
    pub across: f64,
}

impl Bracket {
    /// A bracket of these plates; `weld` runs along both faces of each plate.
    ///
    /// # Errors
    /// A length that is not finite and above zero (gap and boxing may be zero), a hole wider than the plate or narrower than the bolt, an edge inside the hole,
    /// a boxing plate on a single tab or thicker than the ears are wide.
    pub fn new(
        size: BracketSize,
        strength: MaterialStrength,
        weld: Option<Fillet>,
    ) -> Result<Self, BadNumber> {
        check_size(&size)?;
        let plates = size.ears.count();
        let joined = (size.boxing > 0.0).then_some(size.gap + size.thickness);
        Ok(Self {
            size,
            strength,
            weld,
            base: Base::of(&size),
            lines: WeldLines::along_plates(plates, size.width, size.thickness, joined),
        })
    }

    /// Everything that is checked under this force.
    pub fn check(&self, force: &BracketForce, mut found: impl FnMut(Finding)) {
        let size = &self.size;
        let source = self.strength.source;
        let yields = mpa(self.strength.yield_mpa(), source);
        let in_shear = mpa(self.strength.shear_yield_mpa(), source);
        let plates = size.ears.count() * size.thickness;
        let in_plane = force.pull.hypot(force.along);
        let bearing = in_plane / (plates * size.bolt);
        found(Finding::below(
            Check::TabBearing,
            bearing,
            yields,
            BOLTED_PLATES,
        ));
        let net = force.pull.abs() / (plates * (size.width - size.hole));
        found(Finding::below(
            Check::TabNetSection,
            net,
            yields,
            BOLTED_PLATES,
        ));
        let shear = in_plane / (plates * 2.0 * size.edge);
        found(Finding::below(
            Check::TabShearOut,
            shear,
            in_shear,
            BOLTED_PLATES,
        ));
        if let Some(tensile) = self.strength.tensile {
            let limit = newtons(self.rupture_load(tensile.mpa()), source);
            found(Finding::below(
                Check::TabTearOut,
                in_plane,
                limit,
                AISC_J3_10,
            ));
        }
        self.check_base(force, yields, found);
    }

    /// Bending at the base, and the weld around it.
    fn check_base(&self, force: &BracketForce, yields: Limit, mut found: impl FnMut(Finding)) {
        let height = self.size.height;
        let moments = [force.along * height, force.across * height];
        let bending = force.pull.abs() / self.base.area
            + moments[0].abs() / self.base.along_modulus
            + moments[1].abs() / self.base.across_modulus;
        found(Finding::below(Check::TabBending, bending, yields, BEAM));
        if let Some(weld) = &self.weld {
            let forces = [force.pull, force.along, force.across];
            found(weld.check(self.lines.force_per_length(forces, moments)));
        }
    }

    /// Bearing or tear-out at rupture, N, with AISC's resistance factor.
    fn rupture_load(&self, tensile: f64) -> f64 {
        let size = &self.size;
        let clear = size.edge - size.hole / 2.0;
        let lengths = (1.2 * clear).min(2.4 * size.bolt);
        RESISTANCE * size.ears.count() * lengths * size.thickness * tensile
    }
}

fn check_size(size: &BracketSize) -> Result<(), BadNumber> {
    positive("the tab's thickness", size.thickness)?;
    positive("the tab's width", size.width)?;
    positive("the height of the hole over the base", size.height)?;
    positive("the bolt's diameter", size.bolt)?;
    positive("the hole's diameter", size.hole)?;
    positive("the distance from hole to edge", size.edge)?;
    not_negative("the gap between the ears", size.gap)?;
    not_negative("the boxing plate's thickness", size.boxing)?;
    let wrong = |what, found, expected| {
        Err(BadNumber {
            what,
            found,
            expected,
        })
    };
    if size.hole < size.bolt {
        return wrong(
            "the hole's diameter",
            size.hole,
            "at least the bolt's diameter",
        );
    }
    if size.hole >= size.width {
        return wrong(
            "the hole's diameter",
            size.hole,
            "less than the tab's width",
        );
    }
    if size.edge <= size.hole / 2.0 {
        return wrong(
            "the distance from hole to edge",
            size.edge,
            "more than the hole's radius",
        );
    }
    let single = size.ears == ShearPlanes::Single;
    if size.boxing > 0.0 && (single || size.gap <= 0.0 || size.boxing >= size.width) {
        return wrong(
            "the boxing plate's thickness",
            size.boxing,
            "nothing on a single tab; between two ears with a gap, less than their width",
        );
    }
    finite("the tab's area", size.thickness * size.width)?;
    Ok(())
}

impl Base {
    fn of(size: &BracketSize) -> Self {
        let (plates, t, w) = (size.ears.count(), size.thickness, size.width);
        let plain = Self {
            area: plates * w * t,
            along_modulus: plates * t * w * w / 6.0,
            across_modulus: plates * w * t * t / 6.0,
        };
        if size.boxing > 0.0 {
            Self::channel(size)
        } else {
            plain
        }
    }

    /// Two ears and the plate that joins them at one edge.
    fn channel(size: &BracketSize) -> Self {
        let (t, w, gap, back) = (size.thickness, size.width, size.gap, size.boxing);
        let (ears, web) = (2.0 * t * w, gap * back);
        let area = ears + web;
        // Along the width, from the boxed edge.
        let centroid = (ears * w / 2.0 + web * back / 2.0) / area;
        let along = 2.0 * t * w.powi(3) / 12.0
            + ears * (w / 2.0 - centroid).powi(2)
            + gap * back.powi(3) / 12.0
            + web * (centroid - back / 2.0).powi(2);
        let across = 2.0 * (w * t.powi(3) / 12.0 + w * t * ((gap + t) / 2.0).powi(2))
            + back * gap.powi(3) / 12.0;
        Self {
            area,
            along_modulus: along / centroid.max(w - centroid),
            across_modulus: across / (gap / 2.0 + t),
        }
    }
}

#[cfg(test)]
mod tests;
