//! The only place that writes to the terminal.

#![allow(
    clippy::print_stdout,
    clippy::print_stderr,
    reason = "a command line has to; everything else goes through here"
)]

use std::io::{self, ErrorKind, Write as _};

use crate::fault::Fault;

/// Writes text to standard output. A reader that has heard enough, as `head` has, is no fault.
pub(crate) fn print(text: &str) -> Result<(), Fault> {
    print_bytes(text.as_bytes())
}

/// The same with bytes.
pub(crate) fn print_bytes(bytes: &[u8]) -> Result<(), Fault> {
    let mut out = io::stdout().lock();
    match out.write_all(bytes).and_then(|()| out.flush()) {
        Err(e) if e.kind() == ErrorKind::BrokenPipe => Ok(()),
        other => other.map_err(Fault::Output),
    }
}

/// One plain line on standard error, without signs that a terminal would obey. When even that can't be written there is nobody to tell.
pub fn complain(message: &str) {
    let line = message.split_whitespace().collect::<Vec<_>>().join(" ");
    let line = line.replace(char::is_control, "\u{fffd}");
    drop(writeln!(io::stderr().lock(), "trammel: {line}"));
}
