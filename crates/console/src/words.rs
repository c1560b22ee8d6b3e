//! What the words on the command line come to. It needs nothing but the words, so that it can be fuzzed without a window.

use std::ffi::OsString;

use clap::{
    Command, CommandFactory, Error, FromArgMatches,
    error::{ContextValue, ErrorKind},
};

use crate::arguments::Arguments;

/// What the words come to.
#[derive(Debug)]
pub(crate) enum Parsed {
    /// Something to do.
    Run(Arguments),
    /// Help or version, to be printed.
    Tell(String),
}

/// The words can't be used: why, in one line.
#[derive(Debug, thiserror::Error)]
#[error("{0}; try `trammel --help`")]
pub struct UsageFault(String);

/// Reads the words.
pub(crate) fn parse(words: impl IntoIterator<Item = OsString>) -> Result<Parsed, UsageFault> {
    parse_by(&mut Arguments::command(), words)
}

/// The same by a command that is there already.
pub(crate) fn parse_by(
    command: &mut Command,
    words: impl IntoIterator<Item = OsString>,
) -> Result<Parsed, UsageFault> {
    let found = command
        .try_get_matches_from_mut(words)
        .and_then(|mut m| Arguments::from_arg_matches_mut(&mut m).map_err(|e| e.format(command)));
    match found {
        Ok(arguments) => Ok(Parsed::Run(arguments)),
        Err(e) => match e.kind() {
            ErrorKind::DisplayHelp | ErrorKind::DisplayVersion => {
                Ok(Parsed::Tell(e.render().to_string()))
            }
            _ => Err(UsageFault(first_sentence(e))),
        },
    }
}

/// What is wrong, without usage and tips, which come after an empty line.
fn first_sentence(mut error: Error) -> String {
    // An empty line in a word would end the sentence in its middle.
    let words: Vec<_> = error
        .context()
        .filter_map(|(kind, value)| Some((kind, in_one_line(value)?)))
        .collect();
    for (kind, value) in words {
        error.insert(kind, value);
    }
    let rendered = error.render().to_string();
    let body = rendered.split("\n\n").next().unwrap_or(&rendered);
    one_line(body.trim_start().trim_start_matches("error: "))
}

fn in_one_line(value: &ContextValue) -> Option<ContextValue> {
    match value {
        ContextValue::String(text) => Some(ContextValue::String(one_line(text))),
        ContextValue::Strings(all) => Some(ContextValue::Strings(
            all.iter().map(|t| one_line(t)).collect(),
        )),
        _ => None,
    }
}

/// One space for each gap, and a mark for each sign that a terminal would obey.
fn one_line(text: &str) -> String {
    let words: Vec<&str> = text.split_whitespace().collect();
    words.join(" ").replace(char::is_control, "\u{fffd}")
}

#[cfg(test)]
mod tests {
    use super::*;

    fn refused(words: &[&str]) -> String {
        let words = ["trammel"].iter().chain(words).map(OsString::from);
        match parse(words) {
            Ok(parsed) => panic!("{parsed:?}"),
            Err(fault) => fault.to_string(),
        }
    }

    #[test]
    fn a_word_of_several_lines_is_told_whole_and_in_one() {
        let said = refused(&["check", "demo:good", "a\n\nb"]);
        assert_eq!(
            said,
            "unexpected argument 'a b' found; try `trammel --help`"
        );
        let said = refused(&["sweep", "demo:good", "--travel", "\u{1b}[31mred\n\n"]);
        assert!(said.contains("for '--travel <FROM:TO:STEPS>'"), "{said}");
        assert!(!said.contains(char::is_control), "{said}");
    }

    #[test]
    fn what_is_missing_is_told_in_one_line() {
        assert_eq!(
            refused(&["new"]),
            "the following required arguments were not provided: --out <FILE>; try `trammel --help`"
        );
    }
}
