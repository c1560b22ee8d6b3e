//! Bracket tabs: a plate that stands on a tube and carries a bolt.
//!
//! The part's y goes from the foot up to the hole, x along the foot; the foot's middle is at (0, 0), on the tube's face. A coped foot fits a round tube that runs
//! square through the tab's plane; one that runs askew through it cuts it in an ellipse, the [`Saddle`]; a tab that stands along a round tube, or on a square one, has a
//! flat foot.

mod boxing;
mod outline;
mod saddle;

pub use boxing::{BOXING_HEIGHT, boxing_plate, gusset, wants_boxing};
pub use saddle::{ACCURACY as SADDLE_ACCURACY, Saddle};

use trammel_strength::BadNumber;

use crate::flat_part::{FlatPart, Hole};
use crate::plane::Point;
use crate::size::{SizeError, finite, positive};

/// How the tab's sides go.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum TabForm {
    /// A rectangle: as wide as the foot, square at the end.
    Straight,
    /// Upright sides and a round end about the hole; the foot is twice the edge distance wide.
    Radiused,
    /// Sides that run from a wider foot to a round end about the hole, touching it.
    Tapered,
}

/// What the foot stands on.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Foot {
    /// A flat face: square tube, plate, or along a round tube.
    Flat,
    /// Across a round tube.
    Coped {
        /// Outside diameter of the tube, mm.
        tube_diameter: f64,
    },
    /// Across a round tube that runs askew through the tab's plane.
    Askew(Saddle),
}

/// Sizes of a tab, mm.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct TabSize {
    /// How its sides go.
    pub form: TabForm,
    /// What it stands on.
    pub foot: Foot,
    /// Width of the foot; for a radiused tab twice the edge distance is taken instead.
    pub foot_width: f64,
    /// Height of the hole's centre over the tube's face.
    pub height: f64,
    /// How far the hole's centre stands to the right of the foot's middle.
    pub lean: f64,
    /// Finished hole.
    pub hole: f64,
    /// From the hole's centre to the edge above and beside it.
    pub edge: f64,
    /// Thickness of the plate.
    pub thickness: f64,
}

/// A tab whose sizes go together.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Tab {
    size: TabSize,
}

impl Tab {
    /// A tab of these sizes.
    ///
    /// # Errors
    /// A size that is not above zero, a hole that leaves no edge, an end wider than a tapered foot or outside a straight one, a hole too near the foot, a cope wider
    /// than its tube.
    pub fn new(size: TabSize) -> Result<Self, BadNumber> {
        positive("the tab's height", size.height)?;
        positive("the tab's hole", size.hole)?;
        positive("the tab's edge distance", size.edge)?;
        positive("the tab's thickness", size.thickness)?;
        finite("the tab's lean", size.lean)?;
        let edge_fits = size.edge > size.hole / 2.0;
        BadNumber::unless(
            "the tab's edge distance",
            size.edge,
            edge_fits,
            "more than the hole's radius",
        )?;
        let width = match size.form {
            TabForm::Radiused => 2.0 * size.edge,
            _ => positive("the tab's foot width", size.foot_width)?,
        };
        check_form(&size, width)?;
        if let Foot::Coped { tube_diameter } = size.foot {
            positive("the tube's diameter", tube_diameter)?;
            BadNumber::unless(
                "the tab's foot width",
                width,
                width < tube_diameter,
                "less than the diameter of the tube it is coped to",
            )?;
        }
        if let Foot::Askew(saddle) = size.foot {
            positive("the tube's diameter", saddle.tube_diameter)?;
            for part in [saddle.along, saddle.up, saddle.offset] {
                finite("the way that the tube runs through the tab", part)?;
            }
            BadNumber::unless(
                "the tab's foot width",
                width,
                saddle.carries(width),
                "within the tube that runs askew under it",
            )?;
        }
        Ok(Self {
            size: TabSize {
                foot_width: width,
                ..size
            },
        })
    }

    /// Its sizes.
    #[must_use]
    pub fn size(&self) -> &TabSize {
        &self.size
    }

    /// Centre of the hole.
    #[must_use]
    pub fn hole_centre(&self) -> Point {
        Point::new(self.size.lean, self.size.height)
    }

    /// The flat part, its hole for this purpose.
    ///
    /// # Errors
    /// Sizes too close to each other for an outline.
    pub fn part(
        &self,
        name: impl Into<String>,
        purpose: impl Into<String>,
    ) -> Result<FlatPart, SizeError> {
        let mut part = FlatPart::plain(name, outline::of(&self.size)?, self.size.thickness);
        part.holes.push(Hole {
            centre: self.hole_centre(),
            diameter: self.size.hole,
            purpose: purpose.into(),
            pulled_through: false,
        });
        if wants_boxing(self.size.height, self.size.foot_width) {
            part.notes.push(BOXING_NOTE.to_owned());
        }
        Ok(part)
    }
}

/// Said beside a tall tab.
const BOXING_NOTE: &str =
    "Tall for its width: box the pair with a plate or a gusset. Weld it in after the mock-up.";

fn check_form(size: &TabSize, width: f64) -> Result<(), BadNumber> {
    let half = width / 2.0;
    match size.form {
        TabForm::Radiused => {
            BadNumber::unless(
                "the tab's lean",
                size.lean,
                size.lean == 0.0,
                "0 on a radiused tab; a tapered one can lean",
            )?;
        }
        TabForm::Straight => {
            let fits = size.lean.abs() + size.edge <= half + 1e-9;
            BadNumber::unless(
                "the tab's foot width",
                width,
                fits,
                "at least twice the lean and the edge distance together, on a straight tab",
            )?;
        }
        TabForm::Tapered => {
            let fits = half >= size.edge + size.lean.abs();
            BadNumber::unless(
                "the tab's foot width",
                width,
                fits,
                "at least twice the lean and the edge distance together, on a tapered tab",
            )?;
        }
    }
    BadNumber::unless(
        "the tab's height",
        size.height,
        size.height > size.hole / 2.0,
        "more than the hole's radius",
    )?;
    Ok(())
}
