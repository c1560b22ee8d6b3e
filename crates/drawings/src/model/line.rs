//! Lines as ISO 128-2 has them.

/// Pattern of a line, with its number in ISO 128-2.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum LineKind {
    /// 01: outlines, dimensions, hatching, bend lines on flat patterns.
    Continuous,
    /// 02: hidden edges; where tiles are cut.
    Dashed,
    /// 04: centre lines.
    LongDashDot,
    /// 05: parts that are there already, outlines before forming.
    LongDashDoubleDot,
}

/// Width of a line: the standard's group 0.35, wide twice narrow.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Weight {
    /// What is cut.
    Wide,
    /// All else.
    Narrow,
}

/// A line's pattern and width.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct Line {
    /// Its pattern.
    pub kind: LineKind,
    /// Its width.
    pub weight: Weight,
}

impl Line {
    /// What is cut.
    pub const WIDE: Self = Self {
        kind: LineKind::Continuous,
        weight: Weight::Wide,
    };
    /// Dimensions and leaders.
    pub const NARROW: Self = Self {
        kind: LineKind::Continuous,
        weight: Weight::Narrow,
    };
    /// Hidden, or where paper is cut.
    pub const DASHED: Self = Self {
        kind: LineKind::Dashed,
        weight: Weight::Narrow,
    };
    /// Centre lines.
    pub const CENTRE: Self = Self {
        kind: LineKind::LongDashDot,
        weight: Weight::Narrow,
    };
    /// What is there already.
    pub const NEIGHBOUR: Self = Self {
        kind: LineKind::LongDashDoubleDot,
        weight: Weight::Narrow,
    };

    /// Width on paper, mm.
    #[must_use]
    pub fn width(self) -> f64 {
        match self.weight {
            Weight::Wide => 0.35,
            Weight::Narrow => 0.18,
        }
    }

    /// Dashes and gaps on paper, mm; empty for an unbroken line. In line widths: dash 12, long dash 24, gap 3, dot 0.5.
    #[must_use]
    pub fn pattern(self) -> Vec<f64> {
        let widths: &[f64] = match self.kind {
            LineKind::Continuous => &[],
            LineKind::Dashed => &[12.0, 3.0],
            LineKind::LongDashDot => &[24.0, 3.0, 0.5, 3.0],
            LineKind::LongDashDoubleDot => &[24.0, 3.0, 0.5, 3.0, 0.5, 3.0],
        };
        widths.iter().map(|width| width * self.width()).collect()
    }
}
