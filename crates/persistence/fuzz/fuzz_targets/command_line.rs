//! Whatever bytes are given as the words of the command line: they are something to do, a text to tell or a fault with one plain line. Nothing is done.
#![no_main]
// Its modules are taken in as they stand: the library that holds them brings the whole screen with it.
#![allow(dead_code, reason = "what the words come to is not done here")]

#[path = "../../../console/src/arguments/mod.rs"]
mod arguments;
#[path = "../../../console/src/words.rs"]
mod words;

use std::{
    cell::RefCell,
    ffi::{OsStr, OsString},
    os::unix::ffi::OsStrExt,
};

use clap::{Command, CommandFactory};
use libfuzzer_sys::fuzz_target;
use words::{Parsed, UsageFault, parse, parse_by};

const HINT: &str = "; try `trammel --help`";

thread_local! {
    /// Made once: making it costs far more than reading a few words by it.
    static COMMAND: RefCell<Command> = RefCell::new(arguments::Arguments::command());
}

/// Parted by noughts if there are any, so that words can hold the ends of lines, else by those.
fn words_of(bytes: &[u8]) -> Vec<OsString> {
    let mark = if bytes.contains(&0) { 0 } else { b'\n' };
    let words = bytes.split(|b| *b == mark).map(OsStr::from_bytes);
    [OsStr::new("trammel")]
        .into_iter()
        .chain(words)
        .map(OsStr::to_owned)
        .collect()
}

fn check(found: &Result<Parsed, UsageFault>) {
    match found {
        Ok(Parsed::Run(_)) => {}
        Ok(Parsed::Tell(text)) => assert!(text.contains("Usage: ") || text.starts_with("trammel ")),
        Err(fault) => {
            let line = fault.to_string();
            let said = line.strip_suffix(HINT).expect("where help is");
            assert!(
                said.len() > 10 && !said.contains(char::is_control),
                "{line}"
            );
            assert!(
                !said.starts_with("unexpected argument '") || said.ends_with("' found"),
                "{line}"
            );
            assert!(
                !said.starts_with("invalid value '") || said.contains("' for '"),
                "{line}"
            );
        }
    }
}

fuzz_target!(|bytes: &[u8]| {
    let words = words_of(bytes);
    let found = COMMAND.with_borrow_mut(|command| parse_by(command, words.iter().cloned()));
    check(&found);
    // For one in a hundred or so: a command made anew, as the program makes it, finds the same.
    if bytes
        .iter()
        .fold(0_u8, |sum, b| sum.wrapping_mul(31).wrapping_add(*b))
        < 3
    {
        assert_eq!(format!("{:?}", parse(words)), format!("{found:?}"));
    }
});
