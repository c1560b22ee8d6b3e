//! The next moves of both sides.

use trammel_build::{AxleName, Build, Side, defaults};
use trammel_setup::{
    Advice, LearnFault, Learned, Question, ReadCause, RodThread, Shared, ToePoint, advise,
    advise_axle, learn,
};
use trammel_tuning::Stations;

use super::{NextFault, SideReadings, adjusters, rounds::sides};

/// Travels at which the curve is judged.
const STATIONS: usize = 13;

/// What to do next.
#[derive(Clone, Debug, PartialEq)]
pub struct NextMoves {
    /// Each wheel that was read.
    pub sides: Vec<SideNext>,
    /// Steps of the shims under the rack, for both sides together.
    pub shims: i32,
    /// The shims, where there are any.
    pub shim: Option<Shared>,
    /// Largest toe change allowed at rack centre, rad.
    pub limit: f64,
    /// The poses judged: the whole travel at rack centre.
    pub stations: Stations,
    /// The tie rod's thread.
    pub rod: RodThread,
    /// Whether the build says nothing of adjusters, so that the usual ones were taken.
    pub adjusters_assumed: bool,
}

/// One wheel.
#[derive(Clone, Debug, PartialEq)]
pub struct SideNext {
    /// Its readings.
    pub readings: SideReadings,
    /// What is wrong, by the last session; `None` where it can't be told.
    pub cause: Option<ReadCause>,
    /// The vehicle as it most likely is.
    pub learned: Learned,
    /// What to do, shims under the rack moved already.
    pub advice: Advice,
    /// What the last session's places should read after the move, in its order.
    pub next: Vec<ToePoint>,
}

impl NextMoves {
    /// Whether every wheel is expected to be within the limit after the moves.
    #[must_use]
    pub fn cured(&self) -> bool {
        self.sides.iter().all(|s| s.advice.cured)
    }
}

/// What to do next on a build's front axle, from all its sessions.
///
/// # Errors
/// A [`NextFault`].
pub fn next_moves(build: &Build) -> Result<NextMoves, NextFault> {
    let axle = build.axle(AxleName::Front)?;
    let read = sides(build, &axle)?;
    let kernel = adjusters::adjusters(build)?;
    let limit = build
        .limits
        .toe_change_deg
        .unwrap_or(defaults::TOE_CHANGE_LIMIT_DEG);
    let limit = limit.to_radians();
    // The limit is one of the wheels straight ahead: towards lock toe changes with travel on a perfect build too. What is read there tells of
    // the geometry and is predicted anew, but is not judged.
    let stations = Stations::even(axle.travel.droop, axle.travel.bump, STATIONS, vec![0.0])?;
    let learned: Vec<Learned> = read
        .iter()
        .map(|r| learn(&r.drawn, &r.tolerances, &r.rounds).map_err(|f| of_side(r.side, f)))
        .collect::<Result<_, _>>()?;
    let questions: Vec<Question<'_>> = read
        .iter()
        .zip(&learned)
        .map(|(r, learned)| Question {
            learned,
            now: r.now,
            adjusters: kernel.of(r.side),
            stations: &stations,
            limit,
            rod: kernel.rod,
        })
        .collect();
    let (shims, advice) = ask(&read, &questions, kernel.shared)?;
    let sides = read
        .iter()
        .zip(learned.iter().zip(advice))
        .map(|(r, (l, a))| side_next(r, l, a))
        .collect::<Result<_, _>>()?;
    Ok(NextMoves {
        sides,
        shims,
        shim: kernel.shared,
        limit,
        stations,
        rod: kernel.rod,
        adjusters_assumed: kernel.assumed,
    })
}

/// Both sides with what they share, or one side with everything as its own.
fn ask(
    read: &[SideReadings],
    questions: &[Question<'_>],
    shared: Option<Shared>,
) -> Result<(i32, Vec<Advice>), NextFault> {
    match questions {
        [left, right] => {
            let both = advise_axle(left, right, shared).map_err(|f| of_side(Side::Left, f))?;
            Ok((both.shared_steps, vec![both.left, both.right]))
        }
        [one] => {
            let side = read.first().map_or(Side::Left, |r| r.side);
            // Shims would move the other wheel too, which was not read.
            Ok((0, vec![advise(one).map_err(|f| of_side(side, f))?]))
        }
        _ => Err(NextFault::NoSession),
    }
}

fn of_side(side: Side, fault: LearnFault) -> NextFault {
    NextFault::Learn { side, fault }
}

fn side_next(
    read: &SideReadings,
    learned: &Learned,
    advice: Advice,
) -> Result<SideNext, NextFault> {
    let fault = |f| of_side(read.side, f);
    let corner = read.now.on(&learned.corner);
    let mut next = Vec::new();
    for curve in read.latest.readings.curves() {
        let travels = curve.points.iter().map(|p| p.travel).collect();
        let rack = curve.points.first().map_or(0.0, |p| p.rack);
        let stations = Stations::new(travels, vec![rack])?;
        let expected = learned
            .predict(&advice.best.shift, &stations)
            .map_err(fault)?;
        let changes = expected.curves.changes().zip(&expected.deviations);
        next.extend(
            curve
                .points
                .iter()
                .zip(changes)
                .map(|(p, (change, deviation))| ToePoint {
                    change,
                    deviation: deviation.hypot(p.deviation),
                    ..*p
                }),
        );
    }
    Ok(SideNext {
        cause: ReadCause::of(&corner, &read.latest.readings),
        readings: read.clone(),
        learned: learned.clone(),
        advice,
        next,
    })
}
