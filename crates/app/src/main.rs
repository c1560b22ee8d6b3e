//! Trammel: suspension and steering layout for light off-road karts and buggies. The window, and the same work on the command line.

mod window;

use std::process::ExitCode;

use trammel_console::{Answer, Fault, UNUSABLE, answer, complain};

fn main() -> ExitCode {
    match run() {
        Ok(code) => ExitCode::from(code),
        Err(fault) => {
            complain(&fault.to_string());
            ExitCode::from(UNUSABLE)
        }
    }
}

fn run() -> Result<u8, Fault> {
    match answer(std::env::args_os())? {
        Answer::Window(start) => window::open(start).map(|()| 0),
        Answer::Done(code) => Ok(code),
    }
}
