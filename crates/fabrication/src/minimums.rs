//! What a flat part should not go below, each with its source.

use trammel_strength::source::{Limit, Source, Standing};

use crate::flat_part::{BendLine, FlatPart, Hole};
use crate::plane::Edge;

/// Hole centre to edge, in hole diameters.
pub const EDGE: Limit = Limit {
    value: 1.5,
    unit: "hole diameters",
    source: Source::from_memory(
        "Shigley, Mechanical Engineering Design",
        "section 8-12: shear-out may be left out from 1.5 diameters on",
    ),
};
/// Edge of the hole to the middle of a bend: twice the thickness and the inside radius.
pub const HOLE_TO_BEND: Limit = Limit {
    value: 2.0,
    unit: "thicknesses, plus the inside radius",
    source: Source::COMMON_PRACTICE,
};
/// Inside radius of a bend, in thicknesses.
pub const BEND_RADIUS: Limit = Limit {
    value: 1.0,
    unit: "thicknesses",
    source: Source::COMMON_PRACTICE,
};
/// Hole diameter over thickness, so that a cutter can make it.
pub const HOLE_TO_THICKNESS: Limit = Limit {
    value: 1.0,
    unit: "thicknesses",
    source: Source {
        document: "cutting shops ask from 0.5 to 1.5; a smaller hole is marked and drilled",
        clause: "",
        standing: Standing::CommonPractice,
    },
};

/// What was compared.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Minimum {
    /// Hole centre to the outline or an opening.
    EdgeDistance,
    /// Edge of a hole to the middle of a bend.
    HoleToBend,
    /// Edge of a hole to the edge of the next: the thickness at least.
    HoleToHole,
    /// Diameter of a hole.
    HoleDiameter,
    /// Inside radius of a bend.
    BendRadius,
}

impl Minimum {
    /// As the sheet says it.
    #[must_use]
    pub fn word(self) -> &'static str {
        match self {
            Self::EdgeDistance => "hole centre to edge",
            Self::HoleToBend => "edge of hole to bend line",
            Self::HoleToHole => "edge of hole to edge of hole",
            Self::HoleDiameter => "diameter of hole",
            Self::BendRadius => "inside radius of bend",
        }
    }
}

/// One comparison.
#[derive(Clone, Debug, PartialEq)]
pub struct MinimumCheck {
    /// What was compared.
    pub what: Minimum,
    /// Which hole or bend, counted from nought in its list.
    pub at: usize,
    /// What the part has, mm.
    pub value: f64,
    /// What it should have at least, mm.
    pub least: f64,
    /// Where that comes from.
    pub source: Source,
}

impl MinimumCheck {
    /// Whether the part has at least that.
    #[must_use]
    pub fn holds(&self) -> bool {
        self.value >= self.least - 1e-9
    }
}

/// Everything that is compared on a part.
#[must_use]
pub fn check(part: &FlatPart) -> Vec<MinimumCheck> {
    let mut checks = Vec::new();
    for (at, hole) in part.holes.iter().enumerate() {
        if !hole.pulled_through {
            checks.push(edge(part, at, hole));
        }
        checks.push(MinimumCheck {
            what: Minimum::HoleDiameter,
            at,
            value: hole.diameter,
            least: HOLE_TO_THICKNESS.value * part.thickness,
            source: HOLE_TO_THICKNESS.source,
        });
        checks.extend(part.bends.iter().map(|bend| to_bend(part, at, hole, bend)));
        checks.extend(part.holes.iter().skip(at + 1).map(|other| MinimumCheck {
            what: Minimum::HoleToHole,
            at,
            value: (hole.centre - other.centre).norm() - (hole.diameter + other.diameter) / 2.0,
            least: part.thickness,
            source: Source::COMMON_PRACTICE,
        }));
    }
    checks.extend(
        part.bends
            .iter()
            .enumerate()
            .map(|(at, bend)| MinimumCheck {
                what: Minimum::BendRadius,
                at,
                value: bend.bend.inside_radius(),
                least: BEND_RADIUS.value * part.thickness,
                source: BEND_RADIUS.source,
            }),
    );
    checks
}

fn edge(part: &FlatPart, at: usize, hole: &Hole) -> MinimumCheck {
    let distance = part
        .openings
        .iter()
        .chain([&part.outline])
        .map(|contour| contour.distance_to(hole.centre))
        .fold(f64::INFINITY, f64::min);
    let inside = part.outline.contains(hole.centre);
    MinimumCheck {
        what: Minimum::EdgeDistance,
        at,
        value: if inside { distance } else { -distance },
        least: EDGE.value * hole.diameter,
        source: EDGE.source,
    }
}

fn to_bend(part: &FlatPart, at: usize, hole: &Hole, line: &BendLine) -> MinimumCheck {
    let bend = Edge::Line {
        from: line.from,
        to: line.to,
    };
    MinimumCheck {
        what: Minimum::HoleToBend,
        at,
        value: bend.distance_to(hole.centre) - hole.diameter / 2.0,
        least: HOLE_TO_BEND.value * part.thickness + line.bend.inside_radius(),
        source: HOLE_TO_BEND.source,
    }
}
