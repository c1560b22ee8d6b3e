//! A session in the kernel's units: a sheet for each side.

use trammel_geometry::Linkage;
use trammel_setup::{Method, Raw, Row, Run, Sheet, TravelBy, TravelFault, travel};

use super::{ReadingRow, Session, ToeMethod, TravelMeasure};
use crate::{AxleModel, LengthUnit, Side};

/// Standard deviation of wheel travel where none is given, mm (common practice, no source).
const TRAVEL_ACCURACY_MM: f64 = 1.0;

/// One wheel's sheet.
#[derive(Clone, Debug, PartialEq)]
pub struct SideSheet {
    /// Which wheel.
    pub side: Side,
    /// Its runs.
    pub sheet: Sheet,
}

/// Why a session makes no sheet.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum SessionFault {
    /// A run has no line marked as ride height.
    #[error("run {run} of the {} wheel has no line at ride height, so its travel can't be counted", side.word())]
    NoRide {
        /// Which wheel.
        side: Side,
        /// Which run.
        run: u32,
    },
    /// A wheel's place is not known.
    #[error("line {line}: {fault}")]
    Travel {
        /// Line of the session, from 1.
        line: usize,
        /// What is wrong.
        fault: TravelFault,
    },
}

impl Session {
    /// A sheet for each side that was read, in mm, against the axle as it is drawn.
    ///
    /// # Errors
    /// [`SessionFault`].
    pub fn sheets(
        &self,
        axle: &AxleModel,
        unit: LengthUnit,
    ) -> Result<Vec<SideSheet>, SessionFault> {
        let mut sheets = Vec::new();
        for side in [Side::Left, Side::Right] {
            let runs = self.runs(side, axle.linkage(side), unit)?;
            if !runs.is_empty() {
                let sheet = Sheet {
                    method: self.method.kernel(unit),
                    accuracy: self.accuracy.map(|v| match self.method {
                        ToeMethod::Degrees => v,
                        _ => v * unit.mm(),
                    }),
                    travel_accuracy: self
                        .travel_accuracy
                        .map_or(TRAVEL_ACCURACY_MM, |v| v * unit.mm()),
                    runs,
                };
                sheets.push(SideSheet { side, sheet });
            }
        }
        Ok(sheets)
    }

    fn runs(
        &self,
        side: Side,
        linkage: &Linkage,
        unit: LengthUnit,
    ) -> Result<Vec<Run>, SessionFault> {
        let both = self.method.reads_both_wheels();
        let mine = || {
            self.rows
                .iter()
                .zip(1..)
                .filter(move |(r, _)| both || r.side == side)
        };
        let mut keys: Vec<(u32, f64)> = Vec::new();
        for (row, _) in mine() {
            if !keys.contains(&(row.run, row.rack)) {
                keys.push((row.run, row.rack));
            }
        }
        let of_key = |&(run, rack): &(u32, f64)| {
            let rows = || mine().filter(move |(r, _)| r.run == run && r.rack == rack);
            let ride = rows().find(|(r, _)| r.ride || self.is_nought(r));
            let ride = ride.ok_or(SessionFault::NoRide { side, run })?.0.place;
            let rows = rows()
                .map(|(r, line)| {
                    let by = self.travel_by.kernel(r.place * unit.mm(), ride * unit.mm());
                    let travel = travel(linkage, by)
                        .map_err(|fault| SessionFault::Travel { line, fault })?;
                    Ok(Row {
                        travel,
                        raw: in_mm(r.shown, unit),
                    })
                })
                .collect::<Result<_, _>>()?;
            Ok(Run {
                rack: rack * unit.mm(),
                rows,
            })
        };
        keys.iter().map(of_key).collect()
    }

    fn is_nought(&self, row: &ReadingRow) -> bool {
        self.travel_by == TravelMeasure::Travel && row.place == 0.0
    }
}

impl ToeMethod {
    /// The method in mm.
    #[must_use]
    pub fn kernel(self, unit: LengthUnit) -> Method {
        let mm = |v: f64| v * unit.mm();
        match self {
            Self::TwoDials(v, grows) => Method::TwoDials {
                spacing: mm(v),
                grows,
            },
            Self::OneDial(v, grows) => Method::OneDial {
                spacing: mm(v),
                grows,
            },
            Self::Tape(v) => Method::Tape { across: mm(v) },
            Self::Laser(v, board) => Method::Laser {
                distance: mm(v),
                board,
            },
            Self::Mirror(v) => Method::Mirror { distance: mm(v) },
            Self::Degrees => Method::Degrees,
        }
    }
}

impl TravelMeasure {
    fn kernel(self, now: f64, at_ride: f64) -> TravelBy {
        match self {
            Self::Travel => TravelBy::Travel(now - at_ride),
            Self::WheelHeight => TravelBy::WheelHeight {
                height: now,
                at_ride,
            },
            Self::ShockLength => TravelBy::ShockLength {
                length: now,
                at_ride,
            },
            Self::Blocks => TravelBy::Blocks {
                height: now,
                at_ride,
            },
        }
    }
}

fn in_mm(shown: Raw, unit: LengthUnit) -> Raw {
    let mm = |v: f64| v * unit.mm();
    match shown {
        Raw::Pair { front, rear } => Raw::Pair {
            front: mm(front),
            rear: mm(rear),
        },
        Raw::Dial(v) => Raw::Dial(mm(v)),
        Raw::Spot(v, way) => Raw::Spot(mm(v), way),
        degrees @ Raw::Degrees(..) => degrees,
    }
}
