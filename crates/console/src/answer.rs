//! What the words on the command line ask for, done.

use std::ffi::OsString;

use trammel_screen::Start;

use crate::arguments::{Arguments, Command};
use crate::words::{self, Parsed};
use crate::{Fault, commands, files, terminal};

/// Nothing wrong.
const DONE: u8 = 0;
/// `check` or `prove` found a danger.
const DANGER: u8 = 1;
/// A reading of `survey` contradicts the others.
const CONTRADICTED: u8 = 1;
/// `tune` could not meet every limit, no adjuster of `advise` does, or `sheets` could not make every part.
const UNMET: u8 = 1;
/// The code to end with when the input can't be used.
pub const UNUSABLE: u8 = 2;

/// What is left to the program.
#[derive(Debug)]
pub enum Answer {
    /// A window to open.
    Window(Start),
    /// All is done: the code to end with.
    Done(u8),
}

/// Reads the words, the program's name first, and does what they ask for. A window is left to the caller.
///
/// # Errors
/// [`Fault`] where the words or the files they name can't be used.
pub fn answer(words: impl IntoIterator<Item = OsString>) -> Result<Answer, Fault> {
    match words::parse(words)? {
        Parsed::Tell(text) => {
            terminal::print(&text)?;
            Ok(Answer::Done(DONE))
        }
        Parsed::Run(Arguments {
            build,
            command: None,
        }) => files::start(build).map(Answer::Window),
        Parsed::Run(Arguments {
            command: Some(command),
            ..
        }) => run(&command).map(Answer::Done),
    }
}

fn run(command: &Command) -> Result<u8, Fault> {
    let unless = |good: bool, code| if good { DONE } else { code };
    let code = match command {
        Command::Check(check) => unless(!commands::check::run(check)?, DANGER),
        Command::Prove(prove) => unless(!commands::prove::run(prove)?, DANGER),
        Command::Tune(tune) => unless(commands::tune::run(tune)?, UNMET),
        Command::Advise(advise) => unless(commands::advise::run(advise)?, UNMET),
        Command::Survey(survey) => unless(commands::survey::run(survey)?, CONTRADICTED),
        Command::Sheets(sheets) => unless(commands::sheets::run(sheets)?, UNMET),
        Command::Sweep(sweep) => commands::sweep::run(sweep).map(|()| DONE)?,
        Command::Forces(forces) => commands::forces::run(forces).map(|()| DONE)?,
        Command::Map(map) => commands::map::run(map).map(|()| DONE)?,
        Command::Scatter(scatter) => commands::scatter::run(scatter).map(|()| DONE)?,
        Command::Lift(lift) => commands::lift::run(lift).map(|()| DONE)?,
        Command::Cards(cards) => commands::cards::run(cards).map(|()| DONE)?,
        Command::Picture(picture) => commands::picture::run(picture).map(|()| DONE)?,
        Command::New(new) => commands::new::run(new).map(|()| DONE)?,
        Command::Demo(demo) => commands::demo::run(demo).map(|()| DONE)?,
    };
    Ok(code)
}
