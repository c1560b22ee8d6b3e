//! The global search over what may move.

use trammel_tuning::{self as tuning, Emphasis, Figure, TuneRequest, Tuned, Tuner, Wish};

use super::{
    Found, Judged, Method,
    limits::Limit,
    moves::{self, Move},
};
use crate::arguments::tune::TuneArguments;
use crate::commands::chosen::Chosen;
use crate::fault::Fault;

/// Wheel travels judged.
const TRAVELS: usize = 21;

pub(super) fn find(chosen: &Chosen, arguments: &TuneArguments) -> Result<Found, Fault> {
    let limits: Vec<Limit> = arguments
        .limits
        .iter()
        .map(|text| Limit::read(text))
        .collect::<Result<_, _>>()?;
    let moves = moves::all(chosen, arguments)?;
    let request = request(chosen, arguments, &moves, &limits)?;
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
        Some(in_steps) => (in_steps, Some(best.exact)),
        None => (best.exact, None),
    };
    let Tuned {
        corner, figures, ..
    } = written;
    let limits = limits.iter().map(|l| l.held(&figures, chosen.unit()));
    Ok(Found {
        method: Method::Search,
        corner,
        exact: exact.as_ref().map(|e| e.corner),
        least: None,
        limits: limits.collect(),
        figures: Some(Judged {
            before,
            exact: exact.map(|e| e.figures),
            after: figures,
        }),
        others: solutions,
        names: moves.iter().map(Move::named).collect(),
    })
}

fn request(
    chosen: &Chosen,
    arguments: &TuneArguments,
    moves: &[Move],
    limits: &[Limit],
) -> Result<TuneRequest, Fault> {
    let range = chosen.model.travel;
    let travels = tuning::Stations::even(range.droop, range.bump, TRAVELS, vec![0.0])?;
    let travels = travels.travels().to_vec();
    let limits = limits.iter().flat_map(|l| l.wishes(chosen.unit()));
    let wishes = std::iter::once(Wish::little_toe_change()).chain(limits);
    Ok(TuneRequest {
        corner: *chosen.corner(),
        variables: moves.iter().map(|m| m.variable(chosen.side)).collect(),
        wishes: wishes.collect(),
        weights: Emphasis::from(arguments.weigh).weights(&travels),
        travels,
        lock: chosen.model.lock(),
        wheelbase: chosen.build().wheelbase_mm(),
        seed: arguments.seed,
        generations: 0,
    })
}
