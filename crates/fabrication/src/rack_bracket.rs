//! The rack-end bracket: a base plate on the rack-end bolt with two ears that take the tie-rod joint between them.
//!
//! Bent from one flat bar or welded of three plates. Heights are measured from the inside face of the base; the bolt's head lies inside, the jam nut outside against the
//! rack end.

mod fit;
mod flat;

pub use fit::{BracketFit, EndBolt, Joint, fit};

use trammel_strength::BadNumber;

use crate::bend::Bend;
use crate::flat_part::FlatPart;
use crate::size::{SizeError, positive};

/// Sizes of the bracket, mm.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct BracketSize {
    /// Width of the bar.
    pub width: f64,
    /// Thickness of the bar.
    pub thickness: f64,
    /// Inside, from ear to ear.
    pub gap: f64,
    /// Centre of the joint's bolt over the inside face of the base.
    pub stand_off: f64,
    /// From the joint's bolt to the end of the ear.
    pub edge: f64,
    /// Hole for the joint's bolt.
    pub ear_hole: f64,
    /// Hole for the rack-end bolt.
    pub base_hole: f64,
}

/// How it is made.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Making {
    /// Bent twice through a right angle from one bar.
    Bent {
        /// Inside radius of the bends, mm.
        inside_radius: f64,
        /// Depth of the layer that keeps its length, see [`crate::bend`].
        k: f64,
    },
    /// A base with an ear welded on each side of it: the base is as wide as the gap, the ears stand beside it and reach down to its outside face.
    Welded,
}

/// A bracket whose sizes go together.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct RackBracket {
    size: BracketSize,
    making: Making,
}

impl RackBracket {
    /// A bracket of these sizes.
    ///
    /// # Errors
    /// A size that is not above zero, a hole wider than the bar or outside the ear, bends that leave nothing straight of ear or base.
    pub fn new(size: BracketSize, making: Making) -> Result<Self, BadNumber> {
        for (what, value) in [
            ("the bar's width", size.width),
            ("the bar's thickness", size.thickness),
            ("the gap between the ears", size.gap),
            ("the bracket's stand-off", size.stand_off),
            ("the ear's edge distance", size.edge),
            ("the ear's hole", size.ear_hole),
            ("the base's hole", size.base_hole),
        ] {
            positive(what, value)?;
        }
        let widest = size.ear_hole.max(size.base_hole);
        BadNumber::unless(
            "the bracket's hole",
            widest,
            widest < size.width,
            "less than the bar's width",
        )?;
        let edge_fits = size.edge > size.ear_hole / 2.0;
        BadNumber::unless(
            "the ear's edge distance",
            size.edge,
            edge_fits,
            "more than the hole's radius",
        )?;
        BadNumber::unless(
            "the base's hole",
            size.base_hole,
            size.base_hole < size.gap,
            "less than the gap between the ears",
        )?;
        let bracket = Self { size, making };
        if let Some(bend) = bracket.bend()? {
            let radius = bend.inside_radius();
            let fits = 2.0 * radius < size.gap && radius + size.ear_hole / 2.0 < size.stand_off;
            BadNumber::unless(
                "the bends' inside radius",
                radius,
                fits,
                "less than half of the gap, and below the ear's hole",
            )?;
        }
        Ok(bracket)
    }

    /// Its sizes.
    #[must_use]
    pub fn size(&self) -> &BracketSize {
        &self.size
    }

    /// The bend at each side; none in a welded one.
    fn bend(&self) -> Result<Option<Bend>, BadNumber> {
        match self.making {
            Making::Welded => Ok(None),
            Making::Bent { inside_radius, k } => Bend::new(
                std::f64::consts::FRAC_PI_2,
                inside_radius,
                self.size.thickness,
                k,
            )
            .map(Some),
        }
    }

    /// The flat parts: one bar, or a base and two ears. Each has its datum edge at x = 0.
    ///
    /// # Errors
    /// Sizes too close to each other for an outline.
    pub fn parts(&self, name: &str) -> Result<Vec<FlatPart>, SizeError> {
        match self.bend()? {
            Some(bend) => Ok(vec![flat::bar(&self.size, bend, name)?]),
            None => flat::plates(&self.size, name),
        }
    }
}
