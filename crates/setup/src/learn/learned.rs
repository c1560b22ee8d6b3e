//! A regularised fit: the most likely errors of the hardpoints, given how they were made and what was read (maximum a posteriori with
//! normal errors, which is least squares with the tolerances as readings of nought).

use nalgebra::{DMatrix, DVector};
use trammel_geometry::{Corner, CornerFault, Linkage, Unreachable};
use trammel_tuning::{Coordinate, Stations, ToeCurves, Tolerance};

use super::{Told, model::Model, tell_apart};
use crate::{JointShift, ToeReadings, least_squares::descend};

/// Most tolerances, and most rounds.
const MOST: usize = 100;

/// Readings at one setting of the adjusters.
#[derive(Clone, Debug, PartialEq)]
pub struct Round {
    /// Where the adjusters had put the joints since the vehicle was built.
    pub shift: JointShift,
    /// What was read then.
    pub readings: ToeReadings,
}

/// What is known of one coordinate.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct LearnedError {
    /// Which.
    pub coordinate: Coordinate,
    /// Most likely error, as built less as drawn, mm.
    pub error: f64,
    /// Its standard deviation before any reading, mm.
    pub before: f64,
    /// And with the readings, mm.
    pub after: f64,
}

/// The vehicle as it most likely is.
#[derive(Clone, Debug, PartialEq)]
pub struct Learned {
    /// As drawn.
    pub drawn: Corner,
    /// As most likely built, adjusters as they were then.
    pub corner: Corner,
    /// Each coordinate.
    pub errors: Vec<LearnedError>,
    /// Covariance of the coordinates' errors, mm^2, in their order.
    pub covariance: DMatrix<f64>,
    /// What the readings can and can't tell apart.
    pub told: Told,
    /// Mean square of what the fit leaves of the readings, in their standard deviations; near 1 or below when all is well. 0 without
    /// readings.
    pub misfit: f64,
    /// Whether the fit came to rest.
    pub settled: bool,
    tolerances: Vec<Tolerance>,
}

/// Toe changes to come, and how sure they are.
#[derive(Clone, Debug, PartialEq)]
pub struct Prediction {
    /// The curves.
    pub curves: ToeCurves,
    /// Standard deviation of every change, rad, in the order of [`ToeCurves::changes`].
    pub deviations: Vec<f64>,
}

/// Why nothing is learned.
#[derive(Clone, Copy, Debug, PartialEq, thiserror::Error)]
pub enum LearnFault {
    /// No coordinate may be off, or there are too many.
    #[error(
        "{0} coordinates may be off and {1} rounds were read; expected 1 to {MOST} coordinates and at most {MOST} rounds"
    )]
    Count(usize, usize),
    /// A tolerance is no number.
    #[error("a tolerance is {0} mm; expected a number that is not negative")]
    Tolerance(f64),
    /// The corner as drawn can't be built.
    #[error(transparent)]
    NotBuilt(#[from] CornerFault),
    /// The corner as drawn doesn't reach the travel that was read.
    #[error(transparent)]
    OutOfReach(#[from] Unreachable),
}

/// The most likely hardpoints. Coordinates with no tolerance, or one of nought, are where they were drawn. Without rounds it is the drawing
/// with its tolerances.
///
/// # Errors
/// A [`LearnFault`] when the request makes no sense, or the drawn corner can't be posed where it was read.
pub fn learn(
    drawn: &Corner,
    tolerances: &[Tolerance],
    rounds: &[Round],
) -> Result<Learned, LearnFault> {
    let size = |t: &Tolerance| t.spread.deviation();
    if let Some(bad) = tolerances
        .iter()
        .map(size)
        .find(|s| !(0.0..=1e3).contains(s))
    {
        return Err(LearnFault::Tolerance(bad));
    }
    let free: Vec<Tolerance> = tolerances
        .iter()
        .copied()
        .filter(|t| size(t) > 0.0)
        .collect();
    if free.is_empty() || free.len() > MOST || rounds.len() > MOST {
        return Err(LearnFault::Count(free.len(), rounds.len()));
    }
    let as_drawn = Linkage::new(drawn)?;
    for round in rounds {
        let shifted = Linkage::new(&round.shift.on(as_drawn.corner()))?;
        round.readings.predicted(&shifted)?;
    }
    let model = Model {
        drawn,
        tolerances: &free,
        rounds,
    };
    let start = DVector::zeros(model.unknowns());
    // The drawn corner was posed just now, so its rows can be had unless a neighbour a hundredth of a tolerance away fails.
    let fit = descend(|x| model.linear(x), start);
    let fit = fit.ok_or(LearnFault::NotBuilt(CornerFault::Locked {
        members: "the arms and the tie rod",
    }))?;
    let n = free.len();
    let all = fit
        .linear
        .covariance()
        .unwrap_or_else(|| DMatrix::identity(fit.at.len(), fit.at.len()));
    let scaled = all.view((0, 0), (n, n)).into_owned();
    let scales = DVector::from_iterator(n, free.iter().map(size));
    let covariance = DMatrix::from_diagonal(&scales) * &scaled * DMatrix::from_diagonal(&scales);
    let readings: usize = rounds.iter().map(|r| r.readings.count()).sum();
    let left: f64 = fit
        .linear
        .residuals
        .iter()
        .take(readings)
        .map(|r| r * r)
        .sum();
    Ok(Learned {
        drawn: *drawn,
        corner: model.corner(fit.at.as_slice()),
        errors: errors(&free, &fit.at, &covariance),
        told: tell_apart(
            &free,
            &fit.linear.jacobian.rows(0, readings).into_owned(),
            &scaled,
        ),
        covariance,
        misfit: left / readings.max(1) as f64,
        settled: fit.settled,
        tolerances: free,
    })
}

fn errors(free: &[Tolerance], at: &DVector<f64>, covariance: &DMatrix<f64>) -> Vec<LearnedError> {
    free.iter()
        .zip(at.iter().zip(covariance.diagonal().iter()))
        .map(|(t, (e, v))| LearnedError {
            coordinate: t.coordinate,
            error: e * t.spread.deviation(),
            before: t.spread.deviation(),
            after: v.max(0.0).sqrt(),
        })
        .collect()
}

impl Learned {
    /// The toe curves with the adjusters at `shift`, and how sure they are.
    ///
    /// # Errors
    /// A [`LearnFault`] when the likely corner can't be posed there.
    pub fn predict(
        &self,
        shift: &JointShift,
        stations: &Stations,
    ) -> Result<Prediction, LearnFault> {
        let curves = ToeCurves::of(&Linkage::new(&shift.on(&self.corner))?, stations)?;
        let slopes = self.slopes(shift, stations, &curves)?;
        let spread = &slopes * &self.covariance;
        let deviations = (0..slopes.nrows())
            .map(|i| spread.row(i).dot(&slopes.row(i)).max(0.0).sqrt())
            .collect();
        Ok(Prediction { curves, deviations })
    }

    /// How every toe change moves with every coordinate, rad/mm.
    pub(crate) fn slopes(
        &self,
        shift: &JointShift,
        stations: &Stations,
        curves: &ToeCurves,
    ) -> Result<DMatrix<f64>, LearnFault> {
        /// Difference step, mm.
        const DIFFERENCE: f64 = 0.01;
        let mut slopes = DMatrix::zeros(curves.changes().count(), self.tolerances.len());
        for (k, t) in self.tolerances.iter().enumerate() {
            let mut off = self.corner;
            *t.coordinate.of(&mut off) += DIFFERENCE;
            let there = ToeCurves::of(&Linkage::new(&shift.on(&off))?, stations)?;
            for (i, (a, b)) in there.changes().zip(curves.changes()).enumerate() {
                slopes[(i, k)] = (a - b) / DIFFERENCE;
            }
        }
        Ok(slopes)
    }

    /// A likely set of errors about the most likely one, mm, made of as many standard normal numbers.
    pub(crate) fn lower_factor(&self) -> DMatrix<f64> {
        let n = self.covariance.nrows();
        self.covariance
            .clone()
            .cholesky()
            .map_or_else(|| DMatrix::zeros(n, n), nalgebra::Cholesky::unpack)
    }
}
