//! The valley floor of a map: where the joint scores best in every column or row.

use super::toe_map::{Cell, ToeMap};
use crate::{Score, Scoring};

/// A place in a map, counted in cells, with its score.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Floor {
    /// Column, between cells.
    pub column: f64,
    /// Row, between cells.
    pub row: f64,
    /// The score of the cell nearest to it.
    pub score: Score,
}

impl ToeMap {
    /// The lowest cell that is worked out, if there is one with a score.
    #[must_use]
    pub fn lowest(&self, scoring: Scoring) -> Option<(usize, usize, Score)> {
        let columns = self.frame().columns();
        (0..columns)
            .filter_map(|c| self.lowest_of_column(c, scoring).map(|(r, s)| (c, r, s)))
            .min_by(|a, b| a.2.by(scoring).total_cmp(&b.2.by(scoring)))
    }

    /// The valley floor. Where it runs across the map: for each column whose lowest score lies inside the map, where a
    /// parabola through the squares of it and its neighbours is lowest. (Away from the very bottom a toe score is a
    /// magnitude, with a crease; its square is smooth.) Where it runs up the map, the same for each row: that is when
    /// more of the rows than of the columns have their lowest score inside.
    #[must_use]
    pub fn valley(&self, scoring: Scoring) -> Vec<Floor> {
        let [columns, rows] = [Lines::Columns, Lines::Rows].map(|lines| {
            let all = (0..lines.count(self)).filter_map(|n| self.floor(lines, n, scoring));
            all.collect::<Vec<Floor>>()
        });
        let across = columns.len() * Lines::Rows.count(self);
        let up = rows.len() * Lines::Columns.count(self);
        if up > across { rows } else { columns }
    }

    fn lowest_of_column(&self, column: usize, scoring: Scoring) -> Option<(usize, Score)> {
        self.lowest_on(Lines::Columns, column, scoring)
    }

    /// The lowest cell of a column or row, by its place along it.
    fn lowest_on(&self, lines: Lines, n: usize, scoring: Scoring) -> Option<(usize, Score)> {
        (0..lines.length(self))
            .filter_map(|at| self.on(lines, n, at).map(|s| (at, s)))
            .min_by(|a, b| a.1.by(scoring).total_cmp(&b.1.by(scoring)))
    }

    fn floor(&self, lines: Lines, n: usize, scoring: Scoring) -> Option<Floor> {
        let (at, score) = self.lowest_on(lines, n, scoring)?;
        let square = |at: usize| self.on(lines, n, at).map(|s| s.by(scoring).powi(2));
        let (below, here, above) = (square(at.checked_sub(1)?)?, square(at)?, square(at + 1)?);
        let bend = below - 2.0 * here + above;
        let off = if bend > 0.0 {
            0.5 * (below - above) / bend
        } else {
            0.0
        };
        let (line, along) = (n as f64, at as f64 + off.clamp(-0.5, 0.5));
        let (column, row) = match lines {
            Lines::Columns => (line, along),
            Lines::Rows => (along, line),
        };
        Some(Floor { column, row, score })
    }

    fn on(&self, lines: Lines, n: usize, at: usize) -> Option<Score> {
        match lines {
            Lines::Columns => self.scored(n, at),
            Lines::Rows => self.scored(at, n),
        }
    }

    fn scored(&self, column: usize, row: usize) -> Option<Score> {
        match self.cell(column, row) {
            Cell::Scored(score) => Some(score),
            Cell::Pending | Cell::Barred(_) => None,
        }
    }
}

/// Columns or rows.
#[derive(Clone, Copy)]
enum Lines {
    Columns,
    Rows,
}

impl Lines {
    /// How many there are.
    fn count(self, map: &ToeMap) -> usize {
        match self {
            Self::Columns => map.frame().columns(),
            Self::Rows => map.frame().rows(),
        }
    }

    /// Cells in each.
    fn length(self, map: &ToeMap) -> usize {
        match self {
            Self::Columns => map.frame().rows(),
            Self::Rows => map.frame().columns(),
        }
    }
}
