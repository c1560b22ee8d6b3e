//! A build's sessions as the kernel's rounds, side by side.

use trammel_build::{AdjustedPart, AxleModel, AxleName, Build, Session, Side};
use trammel_geometry::{Corner, Vector};
use trammel_setup::{Flip, JointShift, Reduced, Round, SignDoubt, flip_doubt, sign_doubts};
use trammel_tuning::Tolerance;

use super::{NextFault, adjusters::washers_along};
use crate::tolerances;

/// What looks wrong with a sheet; to be asked, never changed.
#[derive(Clone, Debug, PartialEq)]
pub enum Doubt {
    /// One reading fits its neighbours with the other word.
    Sign(SignDoubt),
    /// The whole sheet fits the vehicle with its words swapped.
    Whole(Flip),
}

/// All readings of one wheel.
#[derive(Clone, Debug, PartialEq)]
pub struct SideReadings {
    /// Which wheel.
    pub side: Side,
    /// The corner as drawn; the right one in the mirror.
    pub drawn: Corner,
    /// How well its coordinates are known before any reading.
    pub tolerances: Vec<Tolerance>,
    /// Every session, with where the adjusters stood.
    pub rounds: Vec<Round>,
    /// The last session as it was reduced.
    pub latest: Reduced,
    /// Where the adjusters stand now.
    pub now: JointShift,
    /// What looks wrong with the last session.
    pub doubts: Vec<Doubt>,
}

/// The readings of each wheel that was read in the last session or before.
pub(super) fn sides(build: &Build, axle: &AxleModel) -> Result<Vec<SideReadings>, NextFault> {
    if build.set_up.sessions.is_empty() {
        return Err(NextFault::NoSession);
    }
    let sides = [Side::Left, Side::Right]
        .into_iter()
        .map(|side| side_readings(build, axle, side));
    sides.filter_map(Result::transpose).collect()
}

fn side_readings(
    build: &Build,
    axle: &AxleModel,
    side: Side,
) -> Result<Option<SideReadings>, NextFault> {
    let drawn = *axle.linkage(side).corner();
    let mut now = JointShift::NONE;
    let mut rounds = Vec::new();
    let mut latest = None;
    for (session, number) in build.set_up.sessions.iter().zip(1..) {
        now = now.and(&adjusted(build, session, side, &drawn));
        let sheets = session.sheets(axle, build.unit);
        let sheets = sheets.map_err(|fault| NextFault::Session {
            session: number,
            fault,
        })?;
        for sheet in sheets.into_iter().filter(|s| s.side == side) {
            let reduced = sheet.sheet.reduce();
            let reduced = reduced.map_err(|fault| NextFault::Sheet {
                session: number,
                side,
                fault,
            })?;
            rounds.push(Round {
                shift: now,
                readings: reduced.readings.clone(),
            });
            latest = Some(reduced);
        }
    }
    let Some(latest) = latest else {
        return Ok(None);
    };
    let tolerances = tolerances(build, AxleName::Front, side);
    let doubts = doubts(&drawn, &tolerances, rounds.last());
    Ok(Some(SideReadings {
        side,
        drawn,
        tolerances,
        rounds,
        latest,
        now,
        doubts,
    }))
}

fn doubts(drawn: &Corner, tolerances: &[Tolerance], last: Option<&Round>) -> Vec<Doubt> {
    let Some(round) = last else { return Vec::new() };
    let whole = flip_doubt(drawn, tolerances, round).map(Doubt::Whole);
    let single = round
        .readings
        .curves()
        .iter()
        .flat_map(sign_doubts)
        .map(Doubt::Sign);
    whole.into_iter().chain(single).collect()
}

/// What a session says was adjusted before it, on one side.
fn adjusted(build: &Build, session: &Session, side: Side, drawn: &Corner) -> JointShift {
    let outward = drawn.rack_axis.map_or_else(Vector::zeros, |axis| {
        let unit = axis.try_normalize(1e-9).unwrap_or_else(Vector::zeros);
        unit * unit
            .dot(&(drawn.tie_rod.outer - drawn.tie_rod.inner))
            .signum()
    });
    let shims = build.set_up.adjusters.shims;
    let shims_raise_both = shims.is_none_or(|s| s.only.is_none());
    session.adjusted.iter().fold(JointShift::NONE, |sum, a| {
        let by = a.by * build.unit.mm();
        let inner = |inner| JointShift {
            inner,
            ..JointShift::NONE
        };
        let own = a.side == side;
        let moved = match a.part {
            AdjustedPart::Shims if own || shims_raise_both => inner(Vector::z() * by),
            AdjustedPart::RackEnd if own => inner(outward * by),
            AdjustedPart::Washers if own => JointShift {
                outer: washers_along(build) * by,
                ..JointShift::NONE
            },
            AdjustedPart::RackEnd | AdjustedPart::Washers | AdjustedPart::Shims => JointShift::NONE,
        };
        sum.and(&moved)
    })
}
