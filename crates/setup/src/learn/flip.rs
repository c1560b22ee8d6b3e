//! A whole sheet with its words the wrong way round.

use nalgebra::{DMatrix, DVector};
use trammel_geometry::Corner;
use trammel_tuning::Tolerance;

use super::{Round, model::Model};
use crate::ToePoint;

/// What may have been swapped on a sheet.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Flip {
    /// IN for OUT.
    InAndOut,
    /// Up for down.
    UpAndDown,
}

impl Flip {
    /// The question to ask.
    #[must_use]
    pub fn question(self) -> &'static str {
        match self {
            Self::InAndOut => {
                "These readings are far from what this vehicle can do as it is drawn, and close to it with IN and OUT swapped. Were IN and OUT swapped?"
            }
            Self::UpAndDown => {
                "These readings are far from what this vehicle can do as it is drawn, and close to it with up and down swapped. Were up and down swapped?"
            }
        }
    }
}

/// How many standard deviations beyond the usual misfit is too far.
const FAR: f64 = 6.0;
/// How much better the swapped sheet must fit.
const BETTER: f64 = 4.0;

/// Whether a sheet can hardly come from this vehicle as it reads, but could with its words swapped. To be asked, never changed.
#[must_use]
pub fn flip_doubt(drawn: &Corner, tolerances: &[Tolerance], round: &Round) -> Option<Flip> {
    let as_read = distance(drawn, tolerances, round)?;
    let count = round.readings.count() as f64;
    let usual = count + FAR * (2.0 * count).sqrt();
    if as_read <= usual {
        return None;
    }
    let flipped = |flip: Flip| {
        let readings = round.readings.map(|p| match flip {
            Flip::InAndOut => ToePoint {
                change: -p.change,
                ..*p
            },
            Flip::UpAndDown => ToePoint {
                travel: -p.travel,
                ..*p
            },
        })?;
        let there = distance(
            drawn,
            tolerances,
            &Round {
                readings,
                ..round.clone()
            },
        )?;
        (there < usual && there * BETTER < as_read).then_some((there, flip))
    };
    let all = [Flip::InAndOut, Flip::UpAndDown]
        .into_iter()
        .filter_map(flipped);
    all.min_by(|a, b| a.0.total_cmp(&b.0)).map(|(_, flip)| flip)
}

/// Square distance of the readings from the drawing, in what tolerances and reading errors let it be.
fn distance(drawn: &Corner, tolerances: &[Tolerance], round: &Round) -> Option<f64> {
    let rounds = std::slice::from_ref(round);
    let model = Model {
        drawn,
        tolerances,
        rounds,
    };
    let linear = model.linear(&DVector::zeros(model.unknowns()))?;
    let rows = round.readings.count();
    let off = linear.residuals.rows(0, rows).into_owned();
    let slopes = linear.jacobian.rows(0, rows).into_owned();
    let spread = &slopes * slopes.transpose() + DMatrix::identity(rows, rows);
    Some(off.dot(&spread.cholesky()?.solve(&off)))
}
