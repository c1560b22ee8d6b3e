//! `trammel advise`: readings in, the next move out.

mod json;
mod text;

use trammel_analysis::{NextMoves, next_moves};
use trammel_build::{Build, Edit};
use trammel_persistence::{read_readings, read_text};

use crate::arguments::set_up::AdviseArguments;
use crate::fault::Fault;
use crate::files;
use crate::terminal;

/// What the answer is made of.
struct Answer<'a> {
    build: &'a Build,
    next: NextMoves,
    out: Option<String>,
}

/// Whether every wheel that was read is expected within the limit.
pub(crate) fn run(arguments: &AdviseArguments) -> Result<bool, Fault> {
    files::check_free(&arguments.out)?;
    let document = files::document(&arguments.build)?;
    let sheet = read_text(&arguments.readings)?;
    let session = read_readings(&sheet, document.build().unit).map_err(|fault| Fault::Sheet {
        path: arguments.readings.clone(),
        fault: Box::new(fault),
    })?;
    let mut set_up = document.build().set_up.clone();
    set_up.sessions.push(session);
    let build = Edit::SetSetUp(Box::new(set_up)).apply(document.build())?;
    let answer = Answer {
        next: next_moves(&build)?,
        build: &build,
        out: arguments.out.out.as_ref().map(|p| p.display().to_string()),
    };
    let told = if arguments.json {
        json::told(&answer)?
    } else {
        text::told(&answer)
    };
    files::save(&arguments.out, &document, &build)?;
    terminal::print(&told)?;
    Ok(answer.next.cured())
}
