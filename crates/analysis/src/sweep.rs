//! A table of poses over travel and rack: the same for the command line and for whatever the window exports.

use trammel_build::{AxleModel, AxleName, Build, BuildFault, LengthUnit, Side};
use trammel_geometry::{Limit, Linkage, Pose, Unreachable, Walk, ackermann_percentage};

use crate::{sweep_column::SweepColumn, sweep_row::SweepRow};

/// Positions over the build's own travel when none are asked for.
pub const DEFAULT_POSITIONS: usize = 41;
/// The most rows that a table may have.
pub const MOST_ROWS: usize = 100_000;

/// Evenly spaced positions, both ends included, in the unit of the table.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Span {
    from: f64,
    to: f64,
    positions: usize,
}

/// Why positions or a table can't be had.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum SweepFault {
    /// An end that is no number.
    #[error("the positions run from {from} to {to}; expected two finite numbers")]
    NotFinite {
        /// First position.
        from: f64,
        /// Last position.
        to: f64,
    },
    /// No positions, or too few to meet both ends.
    #[error(
        "{positions} position(s) from {from} to {to}; expected at least 2, or 1 where both ends are the same"
    )]
    TooFew {
        /// How many.
        positions: usize,
        /// First position.
        from: f64,
        /// Last position.
        to: f64,
    },
    /// More rows than a table may have.
    #[error("the table would have {rows} rows; expected at most {MOST_ROWS}")]
    TooMany {
        /// How many it would have.
        rows: usize,
    },
    /// Rack positions for an axle without a rack.
    #[error("the {} axle has no rack, so rack positions mean nothing there", axle.word())]
    NoRack {
        /// Which.
        axle: AxleName,
    },
    /// The build can't be posed.
    #[error(transparent)]
    Build(#[from] BuildFault),
}

impl Span {
    /// `positions` positions from `from` to `to`.
    ///
    /// # Errors
    /// [`SweepFault::NotFinite`], [`SweepFault::TooFew`] or [`SweepFault::TooMany`].
    pub fn new(from: f64, to: f64, positions: usize) -> Result<Self, SweepFault> {
        if !(from.is_finite() && to.is_finite() && (to - from).is_finite()) {
            return Err(SweepFault::NotFinite { from, to });
        }
        if positions == 0 || (positions == 1 && from != to) {
            return Err(SweepFault::TooFew {
                positions,
                from,
                to,
            });
        }
        if positions > MOST_ROWS {
            return Err(SweepFault::TooMany { rows: positions });
        }
        Ok(Self {
            from,
            to,
            positions,
        })
    }

    /// One position.
    #[must_use]
    fn single(at: f64) -> Self {
        Self {
            from: at,
            to: at,
            positions: 1,
        }
    }

    fn at(&self, i: usize) -> f64 {
        if i + 1 == self.positions {
            return self.to;
        }
        let share = i as f64 / (self.positions - 1) as f64;
        self.from + (self.to - self.from) * share
    }

    pub(crate) fn count(&self) -> usize {
        self.positions
    }

    pub(crate) fn iter(self) -> impl Iterator<Item = f64> + Clone {
        (0..self.positions).map(move |i| self.at(i))
    }
}

/// What to sweep. Lengths are in `unit`.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SweepRequest {
    /// Axle.
    pub axle: AxleName,
    /// Side.
    pub side: Side,
    /// Wheel travels; the build's own range where there are none.
    pub travel: Option<Span>,
    /// Rack positions; the centre where there are none.
    pub rack: Option<Span>,
    /// Unit of every length asked for and given.
    pub unit: LengthUnit,
}

/// A table of poses, rack position by rack position, each in order of the travels asked for.
#[derive(Clone, Debug, PartialEq)]
pub struct SweepTable {
    /// Unit of its lengths.
    pub unit: LengthUnit,
    /// Rows of the poses that can be reached; a cell for each of [`SweepColumn::ALL`], `None` where there is no such figure.
    pub rows: Vec<[Option<f64>; SweepColumn::COUNT]>,
    /// Poses asked for.
    pub asked: usize,
    /// What ran out, one for each way that ended early, the first met first.
    pub ends: Vec<Unreachable>,
}

impl SweepTable {
    /// Poses the build over the positions asked for, as far as it goes.
    ///
    /// # Errors
    /// A [`SweepFault`] where the build has no such axle or rack, or the table would be too long. Poses out of reach are no error:
    /// they are left out and told in [`SweepTable::ends`].
    pub fn of(build: &Build, request: &SweepRequest) -> Result<Self, SweepFault> {
        let model = build.axle(request.axle)?;
        if request.rack.is_some() && model.rack.is_none() {
            return Err(SweepFault::NoRack { axle: request.axle });
        }
        let unit = request.unit;
        let range = model.travel;
        let travels = match request.travel {
            Some(span) => span,
            None => Span::new(
                unit.from_mm(range.droop),
                unit.from_mm(range.bump),
                DEFAULT_POSITIONS,
            )?,
        };
        let racks = request.rack.unwrap_or(Span::single(0.0));
        let asked = travels.positions.saturating_mul(racks.positions);
        if asked > MOST_ROWS {
            return Err(SweepFault::TooMany { rows: asked });
        }
        let mut table = Self {
            unit,
            rows: Vec::with_capacity(asked),
            asked,
            ends: Vec::new(),
        };
        let sweep = Sweep {
            wheelbase: build.wheelbase_mm(),
            model: &model,
            side: request.side,
            unit,
        };
        for rack in racks.iter() {
            sweep.column(rack, travels, &mut table);
        }
        Ok(table)
    }

    /// One plain line about what was left out; `None` when everything asked for is there.
    #[must_use]
    pub fn left_out(&self) -> Option<String> {
        let missing = self.asked - self.rows.len();
        let first = self.ends.first()?;
        let length = |mm: f64| format!("{:.3} {}", self.unit.from_mm(mm), self.unit.sign());
        let place = match first.limit {
            Limit::Travel(at) => format!(
                "a wheel travel of {} with the rack at {}",
                length(at),
                length(first.rack)
            ),
            Limit::Rack(at) => format!("a rack travel of {}", length(at)),
        };
        let more = match self.ends.len() {
            1 => String::new(),
            n => format!(", the first of {n} such ends"),
        };
        Some(format!(
            "{missing} of {} poses are out of reach and left out: the {} runs out at {place}{more}",
            self.asked, first.member
        ))
    }
}

struct Sweep<'a> {
    model: &'a AxleModel,
    side: Side,
    wheelbase: f64,
    unit: LengthUnit,
}

impl Sweep<'_> {
    /// Every travel at one rack position (in the table's unit).
    fn column(&self, rack: f64, travels: Span, table: &mut SweepTable) {
        let linkage = self.model.linkage(self.side);
        let rack_mm = rack * self.unit.mm();
        let start = Walk::new(linkage, rack_mm).and_then(|mut walk| Ok((walk, walk.pose(0.0)?)));
        let (mut walk, design) = match start {
            Ok(start) => start,
            Err(end) => return table.ends.push(end),
        };
        let toe_at_design = linkage.measures(&design).toe;
        // An end is told once for each direction, not once for each pose beyond it.
        let mut told = [false; 2];
        for travel in travels.iter() {
            match walk.pose(travel * self.unit.mm()) {
                Ok(pose) => {
                    let row = self.row(linkage, &pose, toe_at_design);
                    table.rows.push(std::array::from_fn(|i| {
                        let column = SweepColumn::ALL.get(i)?;
                        match column {
                            SweepColumn::Travel => Some(travel),
                            SweepColumn::Rack => Some(rack),
                            other => other.of(&row, self.unit),
                        }
                    }));
                }
                Err(end) => {
                    if let Some(told) = told.get_mut(usize::from(travel > 0.0))
                        && !std::mem::replace(told, true)
                    {
                        table.ends.push(end);
                    }
                }
            }
        }
    }

    fn row(&self, linkage: &Linkage, pose: &Pose, toe_at_design: f64) -> SweepRow {
        let measures = linkage.measures(pose);
        let steer = |side, toe: f64| match side {
            Side::Left => -toe,
            Side::Right => toe,
        };
        let other_side = match self.side {
            Side::Left => Side::Right,
            Side::Right => Side::Left,
        };
        let other_linkage = self.model.linkage(other_side);
        let other = other_linkage.pose(pose.travel, pose.rack).ok();
        let other = other.map(|p| other_linkage.measures(&p));
        let own_steer = steer(self.side, measures.toe);
        let other_steer = other.map(|m| steer(other_side, m.toe));
        let steered = self.model.rack.is_some();
        let ackermann = other
            .zip(other_steer)
            .filter(|_| steered)
            .and_then(|(m, other_steer)| {
                let (left, right) = match self.side {
                    Side::Left => (own_steer, other_steer),
                    Side::Right => (other_steer, own_steer),
                };
                let apart = measures.axis_at_ground.y + m.axis_at_ground.y;
                ackermann_percentage(left, right, self.wheelbase, apart)
            });
        SweepRow {
            measures,
            margins: pose.margins,
            toe_change: measures.toe - toe_at_design,
            steer: own_steer,
            other_steer,
            ackermann,
            spring_rate: self.model.spring_rate,
            outboard: match self.side {
                Side::Left => 1.0,
                Side::Right => -1.0,
            },
        }
    }
}
