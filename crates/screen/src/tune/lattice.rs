//! The scores of a map on an even lattice, as fine as is worked out so far, with its level lines.

use trammel_tuning::{Cell, Scoring, ToeMap};

/// Columns and rows of a map; one more than multiples of the coarsest pass, so that every pass is a whole lattice. The valley is wide and low, so cells
/// are wider than high.
pub(crate) const CELLS: [usize; 2] = [65, 145];
const COARSEST: usize = 16;

/// Scores over the unit square, `[0, 0]` being the first cell.
#[derive(Clone, Debug)]
pub(crate) struct Lattice {
    columns: usize,
    rows: usize,
    /// Row by row; not a number where the joint can't be.
    values: Vec<f32>,
}

/// A stretch of a level line in the unit square.
pub(crate) type Stretch = [[f32; 2]; 2];

impl Lattice {
    /// The finest lattice that has no pending cell; none before the coarsest pass is done. Values are scores times `factor`.
    pub(crate) fn of(map: &ToeMap, scoring: Scoring, factor: f64) -> Option<Self> {
        let mut stride = 1;
        while stride <= COARSEST {
            if let Some(lattice) = Self::with_stride(map, scoring, factor, stride) {
                return Some(lattice);
            }
            stride *= 2;
        }
        None
    }

    fn with_stride(map: &ToeMap, scoring: Scoring, factor: f64, stride: usize) -> Option<Self> {
        let (columns, rows) = (
            map.frame().columns().div_ceil(stride),
            map.frame().rows().div_ceil(stride),
        );
        let mut values = Vec::with_capacity(columns * rows);
        for row in (0..map.frame().rows()).step_by(stride) {
            for column in (0..map.frame().columns()).step_by(stride) {
                values.push(match map.cell(column, row) {
                    Cell::Pending => return None,
                    Cell::Scored(score) => (score.by(scoring) * factor) as f32,
                    Cell::Barred(_) => f32::NAN,
                });
            }
        }
        Some(Self {
            columns,
            rows,
            values,
        })
    }

    /// Row by row; `columns` times `rows` values, at least two each way.
    pub(crate) fn from_values(columns: usize, rows: usize, values: Vec<f32>) -> Self {
        Self {
            columns,
            rows,
            values,
        }
    }

    /// Every cell with its place.
    pub(crate) fn cells(&self) -> impl Iterator<Item = ([f32; 2], f32)> + '_ {
        let (across, up) = ((self.columns - 1) as f32, (self.rows - 1) as f32);
        self.values.iter().enumerate().map(move |(i, v)| {
            (
                [
                    (i % self.columns) as f32 / across,
                    (i / self.columns) as f32 / up,
                ],
                *v,
            )
        })
    }

    fn value(&self, column: usize, row: usize) -> f32 {
        self.values
            .get(row * self.columns + column)
            .copied()
            .unwrap_or(f32::NAN)
    }

    /// The score at a place of the unit square, straight between cells; not a number where it can't be told.
    pub(crate) fn at(&self, [x, y]: [f32; 2]) -> f32 {
        let split = |v: f32, count: usize| {
            let v = v.clamp(0.0, 1.0) * (count - 1) as f32;
            let low = (v.floor() as usize).min(count - 2);
            (low, v - low as f32)
        };
        let ((c, u), (r, v)) = (split(x, self.columns), split(y, self.rows));
        let row = |r| self.value(c, r) * (1.0 - u) + self.value(c + 1, r) * u;
        row(r) * (1.0 - v) + row(r + 1) * v
    }

    /// Stretches of the line where the score is `level`.
    pub(crate) fn level_line(&self, level: f32) -> Vec<Stretch> {
        self.level_lines(&[level]).pop().unwrap_or_default()
    }

    /// Stretches of the lines of several levels, in one walk over the cells.
    pub(crate) fn level_lines(&self, levels: &[f32]) -> Vec<Vec<Stretch>> {
        let mut lines = vec![Vec::new(); levels.len()];
        for row in 0..self.rows - 1 {
            for column in 0..self.columns - 1 {
                let corners =
                    [(0, 0), (1, 0), (1, 1), (0, 1)].map(|(x, y)| self.value(column + x, row + y));
                if corners.iter().any(|v| v.is_nan()) {
                    continue;
                }
                let low = corners.iter().copied().fold(f32::INFINITY, f32::min);
                let high = corners.iter().copied().fold(f32::NEG_INFINITY, f32::max);
                for (level, line) in levels
                    .iter()
                    .zip(&mut lines)
                    .filter(|(l, _)| (low..=high).contains(*l))
                {
                    self.cross(column, row, *level, line);
                }
            }
        }
        lines
    }

    /// Where a level goes through a square of four cells: straight from side to side. Of a saddle's two readings one is taken.
    fn cross(&self, column: usize, row: usize, level: f32, stretches: &mut Vec<Stretch>) {
        let corners =
            [(0, 0), (1, 0), (1, 1), (0, 1)].map(|(x, y)| (x, y, self.value(column + x, row + y)));
        let mut ends: [[f32; 2]; 4] = [[0.0; 2]; 4];
        let mut count = 0;
        for i in 0..4 {
            let ((ax, ay, a), (bx, by, b)) = (corners[i], corners[(i + 1) % 4]);
            if (a < level) == (b < level) {
                continue;
            }
            let t = (level - a) / (b - a);
            let between = |p: usize, q: usize| p as f32 + (q as f32 - p as f32) * t;
            ends[count] = [
                (column as f32 + between(ax, bx)) / (self.columns - 1) as f32,
                (row as f32 + between(ay, by)) / (self.rows - 1) as f32,
            ];
            count += 1;
        }
        match count {
            2 => stretches.push([ends[0], ends[1]]),
            4 => stretches.extend([[ends[0], ends[1]], [ends[2], ends[3]]]),
            _ => {}
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn cone() -> Lattice {
        let n = 41;
        let values = (0..n * n)
            .map(|i| {
                let (x, y) = ((i % n) as f32 / 40.0 - 0.5, (i / n) as f32 / 40.0 - 0.5);
                x.hypot(y)
            })
            .collect();
        Lattice::from_values(n, n, values)
    }

    #[test]
    fn the_level_line_of_a_cone_is_a_circle() {
        let line = cone().level_line(0.3);
        let length: f32 = line
            .iter()
            .map(|[a, b]| (a[0] - b[0]).hypot(a[1] - b[1]))
            .sum();
        assert!(
            (length - std::f32::consts::TAU * 0.3).abs() < 0.01,
            "{length}"
        );
        for [a, b] in line {
            for p in [a, b] {
                assert!(((p[0] - 0.5).hypot(p[1] - 0.5) - 0.3).abs() < 2e-3, "{p:?}");
            }
        }
    }

    #[test]
    fn between_cells_the_score_is_straight_and_beside_a_barred_cell_there_is_none() {
        let lattice = Lattice::from_values(3, 2, vec![0.0, 1.0, f32::NAN, 2.0, 3.0, 4.0]);
        assert!((lattice.at([0.25, 0.5]) - 1.5).abs() < 1e-6);
        assert!(lattice.at([0.9, 0.1]).is_nan());
        assert_eq!(lattice.level_line(0.5).len(), 1);
    }
}
