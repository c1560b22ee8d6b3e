//! The global search over the coordinates that may move.

use trammel_build::{Axis, Coordinate, PointName, Side};
use trammel_tuning::{
    self as tuning, Aim, Figure, Hardpoint, TuneRequest, Tuned, Tuner, Variable, Wish,
};

use super::{Found, Method, limits::Limit, spot::REACH};
use crate::{commands::chosen::Chosen, fault::Fault, tune_arguments::TuneArguments};

/// Wheel travels judged.
const TRAVELS: usize = 21;
/// How far off the toe change counts as one, degrees.
const TOE_SCALE_DEG: f64 = 0.05;

pub(super) fn find(chosen: &Chosen, arguments: &TuneArguments) -> Result<Found, Fault> {
    let limits: Vec<Limit> = arguments
        .limits
        .iter()
        .map(|text| Limit::read(text))
        .collect::<Result<_, _>>()?;
    let coordinates = coordinates(chosen, arguments)?;
    let request = request(chosen, arguments, &coordinates, &limits)?;
    let wants_rack_end = limits.iter().any(|l| l.figure() == Figure::RackEndFactor);
    let rack_end = wants_rack_end
        .then(|| trammel_analysis::rack_end_factor(chosen.build(), &chosen.model, chosen.side))
        .flatten();
    let mut tuner = Tuner::new(&request, rack_end)?;
    let mut solutions = tuner.run()?.to_vec();
    if solutions.is_empty() {
        return Err(Fault::NoPlace);
    }
    let best = solutions.remove(0);
    let before = tuner.figures(chosen.corner());
    let (written, exact) = match best.in_steps {
        Some(in_steps) => (in_steps, Some(best.exact.corner)),
        None => (best.exact, None),
    };
    let Tuned {
        corner, figures, ..
    } = written;
    Ok(Found {
        method: Method::Search,
        corner,
        exact,
        limits: limits
            .iter()
            .map(|l| l.held(&figures, chosen.unit()))
            .collect(),
        figures: Some((before, figures)),
        others: solutions,
        names: coordinates
            .iter()
            .map(|m| m.coordinate.to_string())
            .collect(),
    })
}

/// A coordinate with how far it may move, mm, in vehicle axes.
struct Move {
    coordinate: Coordinate,
    hardpoint: Hardpoint,
    low: f64,
    high: f64,
}

fn coordinates(chosen: &Chosen, arguments: &TuneArguments) -> Result<Vec<Move>, Fault> {
    let reach = chosen.length_or("--reach", arguments.reach.as_deref(), REACH)?;
    if !arguments.moves.is_empty() {
        let all = arguments
            .moves
            .iter()
            .map(|text| read_move(chosen, text, reach));
        return all.collect();
    }
    let free: Vec<Move> = [Axis::Y, Axis::Z]
        .into_iter()
        .filter(|axis| !chosen.is_locked(PointName::TieRodInner, *axis))
        .map(|axis| Move {
            coordinate: Coordinate {
                axle: chosen.axle(),
                point: PointName::TieRodInner,
                axis,
            },
            hardpoint: Hardpoint::TieRodInner,
            low: -reach,
            high: reach,
        })
        .collect();
    if free.is_empty() {
        return Err(Fault::AllLocked(
            "y and z of the inner tie-rod joint".into(),
        ));
    }
    Ok(free)
}

/// Reads `tie_rod.inner.z`, with or without the axle's name before it and a range behind it.
fn read_move(chosen: &Chosen, text: &str, reach: f64) -> Result<Move, Fault> {
    let fault = |why: String| Fault::Option {
        option: "--move",
        found: text.to_owned(),
        why,
    };
    let (name, range) = match text.split_once('=') {
        Some((name, range)) => (name, Some(range)),
        None => (text, None),
    };
    let axle = chosen.axle();
    let coordinate = Coordinate::from_path(name)
        .or_else(|| Coordinate::from_path(&format!("{}.{name}", axle.word())))
        .ok_or_else(|| fault("expected a coordinate, such as tie_rod.inner.z".into()))?;
    if coordinate.axle != axle {
        return Err(fault(format!(
            "the {} axle is tuned; see --axle",
            axle.word()
        )));
    }
    if chosen.build().locked.contains(&coordinate) {
        return Err(fault(format!("{coordinate} is locked in the build")));
    }
    let hardpoint = Hardpoint::ALL
        .into_iter()
        .find(|h| h.name() == coordinate.point.path())
        .ok_or_else(|| {
            fault("this point does nothing to toe; expected one of arms, tie rod or wheel".into())
        })?;
    let (low, high) = match range {
        None => (-reach, reach),
        Some(range) => {
            let (from, to) = range
                .split_once("..")
                .ok_or_else(|| fault("expected a range such as -1/2..1".into()))?;
            (chosen.length("--move", from)?, chosen.length("--move", to)?)
        }
    };
    if low >= high {
        return Err(fault(
            "expected a range from a smaller to a larger length".into(),
        ));
    }
    Ok(Move {
        coordinate,
        hardpoint,
        low,
        high,
    })
}

fn request(
    chosen: &Chosen,
    arguments: &TuneArguments,
    moves: &[Move],
    limits: &[Limit],
) -> Result<TuneRequest, Fault> {
    let step = arguments.step.as_deref();
    let step = step.map(|s| chosen.length("--step", s)).transpose()?;
    let range = chosen.model.travel;
    let travels = tuning::Stations::even(range.droop, range.bump, TRAVELS, vec![0.0])?;
    let least_toe = Wish {
        figure: Figure::ToeChange,
        aim: Aim::Near(0.0),
        scale: TOE_SCALE_DEG.to_radians(),
        weight: 1.0,
    };
    let limits = limits.iter().flat_map(|l| l.wishes(chosen.unit()));
    Ok(TuneRequest {
        corner: *chosen.corner(),
        variables: moves
            .iter()
            .map(|m| variable(m, chosen.side, step))
            .collect(),
        wishes: std::iter::once(least_toe).chain(limits).collect(),
        travels: travels.travels().to_vec(),
        lock: chosen.model.lock(),
        wheelbase: chosen.build().wheelbase_mm(),
        seed: arguments.seed,
        generations: 0,
    })
}

fn variable(m: &Move, side: Side, step: Option<f64>) -> Variable {
    let (axis, mirrored) = match m.coordinate.axis {
        Axis::X => (tuning::Axis::X, false),
        Axis::Y => (tuning::Axis::Y, side == Side::Right),
        Axis::Z => (tuning::Axis::Z, false),
    };
    let (low, high) = if mirrored {
        (-m.high, -m.low)
    } else {
        (m.low, m.high)
    };
    let coordinate = tuning::Coordinate {
        point: m.hardpoint,
        axis,
    };
    let variable = Variable::coordinate(coordinate, low, high);
    match step {
        Some(step) => variable.in_steps(step),
        None => variable,
    }
}
