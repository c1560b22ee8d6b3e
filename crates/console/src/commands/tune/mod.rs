//! `trammel tune`: joints moved until the wheel keeps its toe.

mod json;
mod limits;
mod moves;
mod outcome;
mod search;
mod spot;
mod text;

use trammel_geometry::Corner;
use trammel_tuning::{Figures, Score, Solution};

use super::chosen::Chosen;
use crate::arguments::tune::TuneArguments;
use crate::arguments::tune::WeighWord;
use crate::fault::Fault;
use crate::files;
use crate::terminal;
use limits::Held;
use outcome::Outcome;

/// What a search came to, in the chosen corner's own frame.
struct Found {
    method: Method,
    /// The corner to be written.
    corner: Corner,
    /// The corner before it was rounded to whole steps, where it was.
    exact: Option<Corner>,
    /// The least score there is within reach, where a place with less movement was taken.
    least: Option<Score>,
    figures: Option<Judged>,
    limits: Vec<Held>,
    /// Other good solutions.
    others: Vec<Solution>,
    /// What each of the solutions' values moves.
    names: Vec<Named>,
}

/// Figures of a search's best.
struct Judged {
    /// Where the corner as it is has any.
    before: Option<Figures>,
    /// Before rounding to whole steps, where there was any.
    exact: Option<Figures>,
    after: Figures,
}

/// What a value moves, and whether it is told the other way round on the right-hand side.
struct Named {
    name: String,
    mirrored: bool,
}

#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Method {
    BestSpot,
    ClearSpot,
    Search,
}

impl Method {
    fn word(self) -> &'static str {
        match self {
            Self::BestSpot => "best_spot",
            Self::ClearSpot => "clear_spot",
            Self::Search => "search",
        }
    }
}

/// Tunes; whether every limit is met and the place is clear.
pub(crate) fn run(arguments: &TuneArguments) -> Result<bool, Fault> {
    files::check_free(&arguments.out)?;
    let chosen = Chosen::of(&arguments.corner)?;
    let plain = arguments.moves.is_empty()
        && arguments.limits.is_empty()
        && arguments.weigh == WeighWord::Whole;
    let found = if plain {
        spot::find(&chosen, arguments)?
    } else {
        search::find(&chosen, arguments)?
    };
    let outcome = Outcome::of(&chosen, arguments.point.joint(), &found)?;
    let told = if arguments.json {
        json::text(&chosen, arguments, &found, &outcome)?
    } else {
        text::text(&chosen, arguments, &found, &outcome)
    };
    files::save(&arguments.out, &chosen.document, &outcome.build)?;
    terminal::print(&told)?;
    Ok(outcome.keep_out.is_none() && found.limits.iter().all(Held::met))
}
