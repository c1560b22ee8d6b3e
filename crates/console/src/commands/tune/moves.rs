//! What `--move` lets move.

use trammel_analysis::coordinate_name;
use trammel_build::{Axis, Coordinate, PointName, Side};
use trammel_tuning::{self as tuning, Dimension, Hardpoint, Variable};

use super::{Named, spot::REACH};
use crate::arguments::tune::TuneArguments;
use crate::commands::chosen::Chosen;
use crate::fault::Fault;

/// A dimension with how far it may move, mm: a coordinate in vehicle axes, others outboard, forward and up.
pub(super) struct Move {
    name: String,
    dimension: Dimension,
    low: f64,
    high: f64,
    step: Option<f64>,
}

/// All that may move.
pub(super) fn all(chosen: &Chosen, arguments: &TuneArguments) -> Result<Vec<Move>, Fault> {
    let reach = chosen.length_or("--reach", arguments.reach.as_deref(), REACH)?;
    let step = arguments.step.as_deref();
    let step = step.map(|s| chosen.length("--step", s)).transpose()?;
    let moves = if arguments.moves.is_empty() {
        inner_joint(chosen, reach, step)?
    } else {
        let all = arguments.moves.iter();
        all.map(|text| read(chosen, text, reach, step))
            .collect::<Result<Vec<_>, _>>()?
    };
    check_once(&moves)?;
    Ok(moves)
}

/// The inner joint in the front view, without what is locked.
fn inner_joint(chosen: &Chosen, reach: f64, step: Option<f64>) -> Result<Vec<Move>, Fault> {
    let axes = [(Axis::Y, tuning::Axis::Y), (Axis::Z, tuning::Axis::Z)];
    let free: Vec<Move> = axes
        .into_iter()
        .filter(|(axis, _)| !chosen.is_locked(PointName::TieRodInner, *axis))
        .map(|(axis, along)| {
            let coordinate = Coordinate {
                axle: chosen.axle(),
                point: PointName::TieRodInner,
                axis,
            };
            Move {
                name: coordinate.to_string(),
                dimension: Dimension::One(tuning::Coordinate {
                    point: Hardpoint::TieRodInner,
                    axis: along,
                }),
                low: -reach,
                high: reach,
                step,
            }
        })
        .collect();
    if free.is_empty() {
        return Err(Fault::AllLocked(
            "y and z of the inner tie-rod joint".into(),
        ));
    }
    Ok(free)
}

/// Reads `rack_height` or `tie_rod.inner.z`, with or without the axle's name before it, and a range and a step behind.
fn read(chosen: &Chosen, text: &str, reach: f64, step: Option<f64>) -> Result<Move, Fault> {
    let fault = |why: String| Fault::Option {
        option: "--move",
        found: text.to_owned(),
        why,
    };
    let (rest, step) = match text.split_once('@') {
        Some((rest, own)) => (rest, Some(chosen.length("--move", own)?)),
        None => (text, step),
    };
    let (name, range) = match rest.split_once('=') {
        Some((name, range)) => (name, Some(range)),
        None => (rest, None),
    };
    let named = Dimension::NAMED
        .into_iter()
        .find(|d| d.name() == Some(name));
    let (name, dimension) = match named {
        Some(dimension) => (name.to_owned(), dimension),
        None => coordinate(chosen, name).map_err(fault)?,
    };
    check_free(chosen, dimension).map_err(fault)?;
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
        name,
        dimension,
        low,
        high,
        step,
    })
}

fn coordinate(chosen: &Chosen, name: &str) -> Result<(String, Dimension), String> {
    let axle = chosen.axle();
    let coordinate = Coordinate::from_path(name)
        .or_else(|| Coordinate::from_path(&format!("{}.{name}", axle.word())))
        .ok_or_else(|| {
            let dimensions = Dimension::NAMED.iter().filter_map(|d| d.name());
            let known: Vec<&str> = dimensions.collect();
            format!(
                "expected a coordinate, such as tie_rod.inner.z, or one of {}",
                known.join(", ")
            )
        })?;
    if coordinate.axle != axle {
        return Err(format!("the {} axle is tuned; see --axle", axle.word()));
    }
    let point = Hardpoint::ALL
        .into_iter()
        .find(|h| h.name() == coordinate.point.path())
        .ok_or("this point does nothing to toe; expected one of arms, tie rod or wheel")?;
    let axis = coordinate.axis;
    let one = Dimension::One(tuning::Coordinate { point, axis });
    Ok((coordinate.to_string(), one))
}

/// Refuses what a lock of the build holds.
fn check_free(chosen: &Chosen, dimension: Dimension) -> Result<(), String> {
    for c in dimension.coordinates() {
        let coordinate = coordinate_name(chosen.axle(), c);
        if chosen.build().locked.contains(&coordinate) {
            return Err(format!("{coordinate} is locked in the build"));
        }
    }
    Ok(())
}

/// Two values for one coordinate would undo each other's rounding.
fn check_once(moves: &[Move]) -> Result<(), Fault> {
    let mut seen: Vec<(tuning::Coordinate, &str)> = Vec::new();
    for m in moves {
        for c in m.dimension.coordinates() {
            if let Some((_, other)) = seen.iter().find(|s| s.0 == c) {
                return Err(Fault::Option {
                    option: "--move",
                    found: m.name.clone(),
                    why: format!("{other} moves the same coordinate; expected one of the two"),
                });
            }
            seen.push((c, &m.name));
        }
    }
    Ok(())
}

impl Move {
    /// A coordinate across the car is told in vehicle axes, where outboard is the other way on the right.
    pub(super) fn named(&self) -> Named {
        let across = |c: tuning::Coordinate| c.axis == tuning::Axis::Y;
        Named {
            name: self.name.clone(),
            mirrored: matches!(self.dimension, Dimension::One(c) if across(c)),
        }
    }

    pub(super) fn variable(&self, side: Side) -> Variable {
        let (low, high) = if self.named().mirrored && side == Side::Right {
            (-self.high, -self.low)
        } else {
            (self.low, self.high)
        };
        let variable = self.dimension.variable(low, high);
        match self.step {
            Some(step) => variable.in_steps(step),
            None => variable,
        }
    }
}
