//! A part cut from plate.

use crate::bend::Bend;
use crate::plane::{Bounds, Contour, Placement, Point};

/// A round hole.
#[derive(Clone, Debug, PartialEq)]
pub struct Hole {
    /// Centre, mm.
    pub centre: Point,
    /// Finished diameter, mm.
    pub diameter: f64,
    /// What goes through it and how well it fits: `3/8 bolt, close`.
    pub purpose: String,
    /// Whether its bolt pulls square to the plate, which no edge distance answers for.
    pub pulled_through: bool,
}

/// Where a flat part is bent, drawn in the middle of the bend.
#[derive(Clone, Debug, PartialEq)]
pub struct BendLine {
    /// One end of the line.
    pub from: Point,
    /// Other end.
    pub to: Point,
    /// Angle, radius and which way.
    pub bend: Bend,
    /// Towards the reader or away.
    pub way: BendWay,
}

/// Which way a flange goes, seen on the drawing.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum BendWay {
    /// Towards the reader.
    Up,
    /// Away from the reader.
    Down,
}

/// How many are needed.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Quantity {
    /// As drawn.
    pub as_drawn: u32,
    /// Turned over.
    pub mirrored: u32,
}

impl Quantity {
    /// All of them.
    #[must_use]
    pub fn total(self) -> u32 {
        self.as_drawn.saturating_add(self.mirrored)
    }
}

impl std::fmt::Display for Quantity {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        match (self.as_drawn, self.mirrored) {
            (some, 0) => write!(f, "make {some}"),
            (0, some) => write!(f, "make {some}, mirrored"),
            (some, turned) => write!(f, "make {some} + {turned} mirrored"),
        }
    }
}

/// A part cut from plate, in its own plane, as it is cut: bends are not made yet.
#[derive(Clone, Debug, PartialEq)]
pub struct FlatPart {
    /// What it is called on the sheet: `lower arm tab, front`.
    pub name: String,
    /// Outer contour.
    pub outline: Contour,
    /// Round holes.
    pub holes: Vec<Hole>,
    /// Other openings.
    pub openings: Vec<Contour>,
    /// Bend lines.
    pub bends: Vec<BendLine>,
    /// Thickness, mm.
    pub thickness: f64,
    /// Material as ordered.
    pub material: String,
    /// How many.
    pub quantity: Quantity,
    /// What to mind when making it.
    pub notes: Vec<String>,
}

impl FlatPart {
    /// A plain plate of this outline, one of it, to be filled in.
    #[must_use]
    pub fn plain(name: impl Into<String>, outline: Contour, thickness: f64) -> Self {
        Self {
            name: name.into(),
            outline,
            holes: Vec::new(),
            openings: Vec::new(),
            bends: Vec::new(),
            thickness,
            material: String::new(),
            quantity: Quantity {
                as_drawn: 1,
                mirrored: 0,
            },
            notes: Vec::new(),
        }
    }

    /// The room it takes.
    #[must_use]
    pub fn bounds(&self) -> Bounds {
        self.outline.bounds()
    }

    /// Area of metal, mm2.
    #[must_use]
    pub fn area(&self) -> f64 {
        let round = |hole: &Hole| std::f64::consts::PI * (hole.diameter / 2.0).powi(2);
        self.outline.area()
            - self.holes.iter().map(round).sum::<f64>()
            - self.openings.iter().map(Contour::area).sum::<f64>()
    }

    /// Mass of one, kg, for a density in kg/m3.
    #[must_use]
    pub fn mass(&self, density: f64) -> f64 {
        self.area() * self.thickness * density * 1e-9
    }

    /// Length of all cuts of one, mm.
    #[must_use]
    pub fn cut_length(&self) -> f64 {
        let round = |hole: &Hole| std::f64::consts::PI * hole.diameter;
        self.outline.length()
            + self.holes.iter().map(round).sum::<f64>()
            + self.openings.iter().map(Contour::length).sum::<f64>()
    }

    /// The same part as placed; turned over, its bends go the other way.
    #[must_use]
    pub fn placed(&self, placement: &Placement) -> Self {
        let mut part = self.clone();
        part.outline = self.outline.placed(placement);
        for opening in &mut part.openings {
            *opening = opening.placed(placement);
        }
        for hole in &mut part.holes {
            hole.centre = placement.point(hole.centre);
        }
        for line in &mut part.bends {
            (line.from, line.to) = (placement.point(line.from), placement.point(line.to));
            if placement.mirrored {
                line.way = line.way.other();
            }
        }
        part
    }
}

impl BendWay {
    /// The other way.
    #[must_use]
    pub fn other(self) -> Self {
        match self {
            Self::Up => Self::Down,
            Self::Down => Self::Up,
        }
    }

    /// As the sheet says it.
    #[must_use]
    pub fn word(self) -> &'static str {
        match self {
            Self::Up => "up",
            Self::Down => "down",
        }
    }
}
