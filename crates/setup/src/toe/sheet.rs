//! A sheet of readings as it was written down: runs through the travel, reduced to toe changes.

use trammel_geometry::in_order;

use super::{Method, MethodFault, Raw, ReadingsFault, ToePoint, ToeReadings, readings::AT_RIDE};

/// One line of a run.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Row {
    /// Wheel travel, mm, up positive.
    pub travel: f64,
    /// What the instruments showed.
    pub raw: Raw,
}

/// One way through the travel with the rack held, in the order it was read.
#[derive(Clone, Debug, PartialEq)]
pub struct Run {
    /// Rack position, mm, to the left positive.
    pub rack: f64,
    /// Its lines.
    pub rows: Vec<Row>,
}

/// All runs of one wheel, or of both together by tape.
#[derive(Clone, Debug, PartialEq)]
pub struct Sheet {
    /// How toe was measured.
    pub method: Method,
    /// Standard deviation of one number, mm or degrees; the method's usual one where it is not given.
    pub accuracy: Option<f64>,
    /// Standard deviation of wheel travel, mm.
    pub travel_accuracy: f64,
    /// The runs.
    pub runs: Vec<Run>,
}

/// Whether a run came back to where it began.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct RunCheck {
    /// Rack position, mm.
    pub rack: f64,
    /// Last reading at ride height less the first, rad; `None` when it was read only once.
    pub return_to_zero: Option<f64>,
    /// What the instruments' accuracy allows, rad: three standard deviations of a difference.
    pub allowed: f64,
}

/// What a sheet comes to.
#[derive(Clone, Debug, PartialEq)]
pub struct Reduced {
    /// The toe changes, runs averaged.
    pub readings: ToeReadings,
    /// Each run's return to zero.
    pub runs: Vec<RunCheck>,
    /// Standard deviation of one reading as the runs repeat, rad; `None` when nothing was read twice.
    pub repeatability: Option<f64>,
    /// Standard deviation of one reading that was used, rad: the larger of the instrument's and the repeatability.
    pub deviation: f64,
}

/// Why a sheet gives no toe changes.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum SheetFault {
    /// There are no runs, or a run has no lines.
    #[error("the sheet has no readings")]
    Empty,
    /// An accuracy is not above nought.
    #[error("the accuracy is {0}; expected more than nothing")]
    Accuracy(f64),
    /// A run was never read at ride height.
    #[error(
        "run {run} has no reading at ride height (travel 0), so there is nothing to count from"
    )]
    NoZero {
        /// Its number, from 1.
        run: usize,
    },
    /// A line makes no toe.
    #[error("run {run}, line {line}: {fault}")]
    Line {
        /// Number of the run, from 1.
        run: usize,
        /// Number of the line in it, from 1.
        line: usize,
        /// What is wrong.
        fault: MethodFault,
    },
    /// The toe changes are no readings.
    #[error(transparent)]
    Readings(#[from] ReadingsFault),
}

impl RunCheck {
    /// Whether it came back within what the accuracy allows; `None` when zero was read only once.
    #[must_use]
    pub fn came_back(&self) -> Option<bool> {
        self.return_to_zero.map(|r| r.abs() <= self.allowed)
    }
}

impl Sheet {
    /// Toe changes with their uncertainty.
    ///
    /// Zero is the mean of a run's readings at ride height. Runs at the same rack position and travel are averaged; how they differ is the
    /// repeatability, and counts when it is worse than the instruments.
    ///
    /// # Errors
    /// [`SheetFault`].
    pub fn reduce(&self) -> Result<Reduced, SheetFault> {
        let number = self
            .accuracy
            .unwrap_or_else(|| self.method.usual_deviation());
        for v in [number, self.travel_accuracy.max(f64::MIN_POSITIVE)] {
            if !(v > 0.0 && v < 1e3) {
                return Err(SheetFault::Accuracy(v));
            }
        }
        let instrument = self.method.deviation(number);
        let mut all = Vec::new();
        let mut runs = Vec::new();
        let mut zeros = usize::MAX;
        for (run, n) in self.runs.iter().zip(1..) {
            let read = self.read_run(run, n, instrument)?;
            zeros = zeros.min(read.zeros);
            runs.push(read.check);
            all.extend(read.changes);
        }
        if all.is_empty() {
            return Err(if runs.is_empty() {
                SheetFault::Empty
            } else {
                ReadingsFault::None.into()
            });
        }
        let groups = grouped(all);
        let repeatability = pooled(&groups);
        let deviation = repeatability.map_or(instrument, |r| r.max(instrument));
        let fewest = groups.iter().map(Vec::len).min().unwrap_or(1).max(1);
        let points = self.averaged(&groups, deviation);
        let zero = deviation / ((zeros.max(1) * fewest) as f64).sqrt();
        Ok(Reduced {
            readings: ToeReadings::new(points, zero)?,
            runs,
            repeatability,
            deviation,
        })
    }

    fn read_run(&self, run: &Run, n: usize, instrument: f64) -> Result<ReadRun, SheetFault> {
        let mut toes = Vec::with_capacity(run.rows.len());
        for (row, line) in run.rows.iter().zip(1..) {
            let toe = self.method.toe(row.raw);
            let toe = toe.map_err(|fault| SheetFault::Line {
                run: n,
                line,
                fault,
            })?;
            toes.push((row.travel, toe));
        }
        let zero: Vec<f64> = toes
            .iter()
            .filter(|t| t.0.abs() <= AT_RIDE)
            .map(|t| t.1)
            .collect();
        let (Some(&first), Some(&last)) = (zero.first(), zero.last()) else {
            return Err(SheetFault::NoZero { run: n });
        };
        let mean = zero.iter().sum::<f64>() / zero.len() as f64;
        Ok(ReadRun {
            zeros: zero.len(),
            check: RunCheck {
                rack: run.rack,
                return_to_zero: (zero.len() > 1).then_some(last - first),
                allowed: 3.0 * std::f64::consts::SQRT_2 * instrument,
            },
            changes: toes
                .into_iter()
                .filter(|t| t.0.abs() > AT_RIDE)
                .map(|(travel, toe)| (run.rack, travel, toe - mean))
                .collect(),
        })
    }

    /// The mean of each group, its travel's uncertainty taken in by the slope of the readings around it.
    fn averaged(&self, groups: &[Vec<Change>], deviation: f64) -> Vec<ToePoint> {
        let mean = |g: &Vec<Change>, of: fn(&Change) -> f64| {
            g.iter().map(of).sum::<f64>() / g.len().max(1) as f64
        };
        let flat: Vec<ToePoint> = groups
            .iter()
            .map(|g| ToePoint {
                rack: mean(g, |c| c.0),
                travel: mean(g, |c| c.1),
                change: mean(g, |c| c.2),
                deviation: deviation / (g.len().max(1) as f64).sqrt(),
            })
            .collect();
        let slope = |p: &ToePoint| (p.change / p.travel).abs();
        flat.iter()
            .map(|p| ToePoint {
                deviation: p.deviation.hypot(slope(p) * self.travel_accuracy),
                ..*p
            })
            .collect()
    }
}

/// Rack, travel, toe change.
type Change = (f64, f64, f64);

struct ReadRun {
    zeros: usize,
    check: RunCheck,
    changes: Vec<Change>,
}

/// Readings of the same rack position and travel together.
fn grouped(mut all: Vec<Change>) -> Vec<Vec<Change>> {
    in_order(&mut all, |change| [change.0, change.1]);
    all.chunk_by(|a, b| a.0 == b.0 && (a.1 - b.1).abs() <= AT_RIDE)
        .map(<[_]>::to_vec)
        .collect()
}

/// Standard deviation of one reading from groups that were read more than once.
fn pooled(groups: &[Vec<Change>]) -> Option<f64> {
    let mut squares = 0.0;
    let mut spare = 0;
    for g in groups.iter().filter(|g| g.len() > 1) {
        let mean = g.iter().map(|c| c.2).sum::<f64>() / g.len() as f64;
        squares += g.iter().map(|c| (c.2 - mean).powi(2)).sum::<f64>();
        spare += g.len() - 1;
    }
    (spare > 0).then(|| (squares / spare as f64).sqrt())
}
