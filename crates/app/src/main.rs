//! Trammel: suspension and steering layout for light off-road karts and buggies. The window, and the same work on the command line.

mod arguments;
mod commands;
mod console;
mod fault;
mod files;
mod picture;
mod prove_arguments;
mod prove_help;
mod set_up_arguments;
mod sheets_arguments;
mod tune_arguments;
mod tune_help;
mod window;
mod words;

use std::process::ExitCode;

use arguments::Command;
use fault::Fault;
use words::Parsed;

/// Nothing wrong.
const DONE: u8 = 0;
/// `check` or `prove` found a danger.
const DANGER: u8 = 1;
/// A reading of `survey` contradicts the others.
const CONTRADICTED: u8 = 1;
/// `tune` could not meet every limit, no adjuster of `advise` does, or `sheets` could not make every part.
const UNMET: u8 = 1;
/// The input can't be used.
const UNUSABLE: u8 = 2;

fn main() -> ExitCode {
    match run() {
        Ok(code) => ExitCode::from(code),
        Err(fault) => {
            console::complain(&fault.to_string());
            ExitCode::from(UNUSABLE)
        }
    }
}

fn run() -> Result<u8, Fault> {
    let arguments = match words::parse(std::env::args_os())? {
        Parsed::Run(arguments) => arguments,
        Parsed::Tell(text) => {
            console::print(&text)?;
            return Ok(DONE);
        }
    };
    match arguments.command {
        None => {
            window::open(files::start(arguments.build)?)?;
            Ok(DONE)
        }
        Some(Command::Sweep(sweep)) => commands::sweep::run(&sweep).map(|()| DONE),
        Some(Command::Check(check)) => {
            let danger = commands::check::run(&check)?;
            Ok(if danger { DANGER } else { DONE })
        }
        Some(Command::Forces(forces)) => commands::forces::run(&forces).map(|()| DONE),
        Some(Command::Prove(prove)) => {
            let danger = commands::prove::run(&prove)?;
            Ok(if danger { DANGER } else { DONE })
        }
        Some(Command::Tune(tune)) => {
            let met = commands::tune::run(&tune)?;
            Ok(if met { DONE } else { UNMET })
        }
        Some(Command::Map(map)) => commands::map::run(&map).map(|()| DONE),
        Some(Command::Scatter(scatter)) => commands::scatter::run(&scatter).map(|()| DONE),
        Some(Command::Lift(lift)) => commands::lift::run(&lift).map(|()| DONE),
        Some(Command::Advise(advise)) => {
            let cured = commands::advise::run(&advise)?;
            Ok(if cured { DONE } else { UNMET })
        }
        Some(Command::Survey(survey)) => {
            let sound = commands::survey::run(&survey)?;
            Ok(if sound { DONE } else { CONTRADICTED })
        }
        Some(Command::Sheets(sheets)) => {
            let all = commands::sheets::run(&sheets)?;
            Ok(if all { DONE } else { UNMET })
        }
        Some(Command::Cards(cards)) => commands::cards::run(&cards).map(|()| DONE),
        Some(Command::Picture(picture)) => commands::picture::run(&picture).map(|()| DONE),
        Some(Command::New(new)) => commands::new::run(&new).map(|()| DONE),
        Some(Command::Demo(demo)) => commands::demo::run(&demo).map(|()| DONE),
    }
}
