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

    /// The valley floor: for each column whose lowest score lies inside the map, where a parabola through the squares
    /// of it and its neighbours
    /// is lowest. (Away from the very bottom a toe score is a magnitude, with a crease; its square is smooth.)
    #[must_use]
    pub fn valley(&self, scoring: Scoring) -> Vec<Floor> {
        (0..self.frame().columns())
            .filter_map(|c| self.floor_of_column(c, scoring))
            .collect()
    }

    fn lowest_of_column(&self, column: usize, scoring: Scoring) -> Option<(usize, Score)> {
        (0..self.frame().rows())
            .filter_map(|r| self.scored(column, r).map(|s| (r, s)))
            .min_by(|a, b| a.1.by(scoring).total_cmp(&b.1.by(scoring)))
    }

    fn floor_of_column(&self, column: usize, scoring: Scoring) -> Option<Floor> {
        let (row, score) = self.lowest_of_column(column, scoring)?;
        let square = |r: usize| self.scored(column, r).map(|s| s.by(scoring).powi(2));
        let (below, here, above) = (square(row.checked_sub(1)?)?, square(row)?, square(row + 1)?);
        let bend = below - 2.0 * here + above;
        let off = if bend > 0.0 {
            0.5 * (below - above) / bend
        } else {
            0.0
        };
        Some(Floor {
            column: column as f64,
            row: row as f64 + off.clamp(-0.5, 0.5),
            score,
        })
    }

    fn scored(&self, column: usize, row: usize) -> Option<Score> {
        match self.cell(column, row) {
            Cell::Scored(score) => Some(score),
            Cell::Pending | Cell::Barred(_) => None,
        }
    }
}
