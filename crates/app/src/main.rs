//! Trammel: suspension and steering layout for light off-road karts and buggies. The window, and the same work on the command line.

mod arguments;
mod commands;
mod console;
mod fault;
mod files;
mod picture;
mod window;

use std::process::ExitCode;

use arguments::{Command, Parsed};
use fault::Fault;

/// Nothing wrong.
const DONE: u8 = 0;
/// `check` found a danger.
const DANGER: u8 = 1;
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
    let arguments = match arguments::parse(std::env::args_os())? {
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
        Some(Command::Picture(picture)) => commands::picture::run(&picture).map(|()| DONE),
        Some(Command::Demo(demo)) => commands::demo::run(&demo).map(|()| DONE),
    }
}
