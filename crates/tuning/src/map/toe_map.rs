//! A map that is worked out bit by bit, coarse to fine.

use trammel_geometry::{Arms, Corner, CornerFault, Linkage, Unreachable};

use super::{
    frame::MapFrame,
    lanes::{self, Chunk, LANES, RackTables, Scored, Station},
    range::ranges,
    rod::Rod,
    series::Fit,
    table::Table,
};
use crate::{Score, Stations, TieRodJoint, ToeCurves};

/// Cells between those of the coarsest pass.
const COARSEST: usize = 16;
/// What a cell costs that needs the plain solver, in cells that don't.
const PLAIN_COST: usize = 64;

/// A cell of a map.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Cell {
    /// Not worked out yet.
    Pending,
    /// The score of the whole travel.
    Scored(Score),
    /// There is no score here.
    Barred(Reason),
}

/// Why a joint can't be at a place.
#[derive(Clone, Copy, Debug, PartialEq, thiserror::Error)]
pub enum Reason {
    /// The corner can't be built with the joint here.
    #[error("can't be built here: {0}")]
    NotBuilt(CornerFault),
    /// The corner doesn't reach the travel or rack position.
    #[error("{0}")]
    OutOfReach(Unreachable),
}

/// Why there is no map at all.
#[derive(Clone, Copy, Debug, PartialEq, thiserror::Error)]
pub enum MapFault {
    /// The arms and the upright don't make a linkage, wherever the tie rod is.
    #[error(transparent)]
    Arms(#[from] CornerFault),
}

/// Scores of a tie-rod joint's places over a rectangle, refined step by step.
///
/// Exact at every cell: the same scores as posing the corner with the joint there, within 1e-9 deg. No thread, no
/// clock: [`ToeMap::refine`] does
/// as much as it is told and goes on where it stopped.
#[derive(Clone, Debug)]
pub struct ToeMap {
    corner: Corner,
    joint: TieRodJoint,
    frame: MapFrame,
    stations: Stations,
    rod: Rod,
    /// `None` when some station has no table, so that every cell is left to the plain solver.
    tables: Option<Vec<RackTables>>,
    terms: usize,
    cells: Vec<Cell>,
    /// Cells that the tables can't settle, found in the pass that goes on.
    doubtful: Vec<usize>,
    stride: usize,
    /// Next row of the pass, and next of its columns counted in the pass.
    row: usize,
    column: usize,
    done: usize,
}

impl ToeMap {
    /// Prepares the map; every cell is pending.
    ///
    /// # Errors
    /// [`MapFault`] when the arms can't be posed, whatever the tie rod.
    pub fn new(
        corner: &Corner,
        joint: TieRodJoint,
        frame: MapFrame,
        stations: &Stations,
    ) -> Result<Self, MapFault> {
        let arms = Arms::new(corner)?;
        let rod = Rod::new(corner, joint, &frame);
        let tables = tables(&arms, &rod, stations);
        let terms = tables.iter().flatten().map(most_terms).max().unwrap_or(0);
        Ok(Self {
            corner: *corner,
            joint,
            frame,
            stations: stations.clone(),
            rod,
            tables,
            terms,
            cells: vec![Cell::Pending; frame.columns() * frame.rows()],
            doubtful: Vec::new(),
            stride: COARSEST,
            row: 0,
            column: 0,
            done: 0,
        })
    }

    /// Works out about `work` more cells, coarse to fine; cells near a dead point cost several dozen. `true` when the
    /// map is complete.
    pub fn refine(&mut self, work: usize) -> bool {
        let mut left = work;
        while left > 0 && self.stride > 0 {
            let cost = if self.row < self.frame.rows() {
                self.next_chunk()
            } else if let Some(index) = self.doubtful.pop() {
                let cell = self.by_plain_solver(index);
                self.settle(index, cell);
                PLAIN_COST
            } else {
                self.stride /= 2;
                self.row = 0;
                self.column = 0;
                0
            };
            left = left.saturating_sub(cost);
        }
        self.is_complete()
    }

    /// Works out the whole map.
    pub fn complete(&mut self) {
        while !self.refine(usize::MAX) {}
    }

    /// Whether no cell is pending.
    #[must_use]
    pub fn is_complete(&self) -> bool {
        self.stride == 0
    }

    /// Part of the cells that are worked out, 0 to 1.
    #[must_use]
    pub fn progress(&self) -> f64 {
        self.done as f64 / self.cells.len() as f64
    }

    /// The rectangle.
    #[must_use]
    pub fn frame(&self) -> &MapFrame {
        &self.frame
    }

    /// The joint that is mapped.
    #[must_use]
    pub fn joint(&self) -> TieRodJoint {
        self.joint
    }

    /// A cell; pending outside the map.
    #[must_use]
    pub fn cell(&self, column: usize, row: usize) -> Cell {
        self.index(column, row)
            .and_then(|i| self.cells.get(i).copied())
            .unwrap_or(Cell::Pending)
    }

    /// The cell, or while it is pending the one of a coarser pass that stands for it.
    #[must_use]
    pub fn shown(&self, column: usize, row: usize) -> Cell {
        let mut stride = 1;
        while stride <= COARSEST {
            let cell = self.cell(column - column % stride, row - row % stride);
            if cell != Cell::Pending {
                return cell;
            }
            stride *= 2;
        }
        Cell::Pending
    }

    fn index(&self, column: usize, row: usize) -> Option<usize> {
        (column < self.frame.columns() && row < self.frame.rows())
            .then(|| row * self.frame.columns() + column)
    }

    fn settle(&mut self, index: usize, cell: Cell) {
        if let Some(c) = self.cells.get_mut(index) {
            *c = cell;
            self.done += 1;
        }
    }

    /// The next few cells of the pass; what they cost.
    fn next_chunk(&mut self) -> usize {
        let (row, stride) = (self.row, self.stride);
        // Every other row of a pass lies on the coarser pass before it, and every other cell there is known.
        let known = stride < COARSEST && row.is_multiple_of(2 * stride);
        let (first, step) = if known {
            (stride, 2 * stride)
        } else {
            (0, stride)
        };
        let mut columns = [0; LANES];
        let mut count = 0;
        let mut column = first + self.column * step;
        while count < LANES && column < self.frame.columns() {
            columns[count] = column;
            count += 1;
            column += step;
        }
        self.column += count;
        if column >= self.frame.columns() {
            self.row += stride;
            self.column = 0;
        }
        self.work_out(row, columns.get(..count).unwrap_or(&[]));
        count.max(1)
    }

    fn work_out(&mut self, row: usize, columns: &[usize]) {
        let Some(&last) = columns.last() else {
            return;
        };
        let mut padded = [last; LANES];
        padded.iter_mut().zip(columns).for_each(|(p, &c)| *p = c);
        let scored = self.tables.as_ref().map(|tables| {
            let chunk = self.chunk(row, &padded);
            match self.terms {
                ..=7 => lanes::score::<7>(tables, &chunk),
                8..=9 => lanes::score::<9>(tables, &chunk),
                _ => lanes::score::<11>(tables, &chunk),
            }
        });
        for (lane, &column) in columns.iter().enumerate() {
            let index = row * self.frame.columns() + column;
            match scored.as_ref().and_then(|s| sound(s, lane)) {
                Some(score) => self.settle(index, Cell::Scored(score)),
                None => self.doubtful.push(index),
            }
        }
    }

    fn chunk(&self, row: usize, columns: &[usize; LANES]) -> Chunk {
        let across = columns.map(|c| from_middle(c, self.frame.columns()));
        let up = from_middle(row, self.frame.rows());
        let lower = self.corner.lower_arm.ball_joint;
        let axis = (self.corner.upper_arm.ball_joint - lower).normalize();
        let joints = across.map(|a| self.rod.joints(a, up));
        Chunk {
            across,
            up,
            rod_length: joints.map(|(inner, outer)| (outer - inner).norm()),
            arm_length: joints.map(|(_, outer)| axis.cross(&(outer - lower)).norm()),
            side: joints
                .map(|(inner, outer)| (outer - inner).dot(&axis.cross(&(outer - lower))).signum()),
        }
    }

    fn by_plain_solver(&self, index: usize) -> Cell {
        let columns = self.frame.columns();
        let place = self
            .frame
            .place((index % columns) as f64, (index / columns) as f64);
        let linkage = match Linkage::new(&self.joint.moved_to(&self.corner, place)) {
            Ok(linkage) => linkage,
            Err(fault) => return Cell::Barred(Reason::NotBuilt(fault)),
        };
        match ToeCurves::of(&linkage, &self.stations) {
            Ok(curves) => Cell::Scored(curves.score()),
            Err(end) => Cell::Barred(Reason::OutOfReach(end)),
        }
    }
}

fn sound(scored: &Scored, lane: usize) -> Option<Score> {
    let sound = scored.sound.get(lane).copied().unwrap_or(false);
    scored
        .score
        .get(lane)
        .copied()
        .filter(|s| sound && s.slope.is_finite())
}

/// -1 at the first of `count` cells, 1 at the last.
fn from_middle(index: usize, count: usize) -> f64 {
    2.0 * index as f64 / (count - 1) as f64 - 1.0
}

fn most_terms(rack: &RackTables) -> usize {
    let terms = |s: &Station| match s {
        Station::Design => 0,
        Station::Travel(t) => t.terms,
    };
    rack.travels
        .iter()
        .map(terms)
        .fold(rack.design.terms, usize::max)
}

fn tables(arms: &Arms, rod: &Rod, stations: &Stations) -> Option<Vec<RackTables>> {
    let fit = Fit::new();
    let of_rack = |&rack: &f64| {
        let (design, travels) = ranges(arms, rod, stations, rack);
        let design = Table::new(arms, rod, &fit, &design?, true)?;
        let of_travel = |range: Option<_>| {
            let range: super::table::Range = range?;
            if range.travel == 0.0 {
                return Some(Station::Design);
            }
            Table::new(arms, rod, &fit, &range, false).map(|t| Station::Travel(Box::new(t)))
        };
        let travels = travels.into_iter().map(of_travel).collect::<Option<_>>()?;
        Some(RackTables { design, travels })
    };
    stations.racks().iter().map(of_rack).collect()
}
