//! Cutting the text into tokens.

use std::ops::Range;

use super::SyntaxFault;

/// Kinds of token.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Kind {
    /// `(` or `[`
    Open(char),
    /// `)` or `]`
    Close(char),
    /// `:`
    Colon,
    /// `,`
    Comma,
    /// A name or word.
    Word,
    /// A number, or what stands for one such as `-inf`.
    Number,
    /// Text in quotes.
    Text,
    /// `// ...` or `/* ... */`
    Comment,
    /// `#![enable(...)]`
    Attribute,
}

/// A piece of the text.
#[derive(Clone, Debug)]
pub(super) struct Token {
    pub kind: Kind,
    pub span: Range<usize>,
}

/// The tokens of a text in order, comments included, cut off one at a time: whoever has seen enough of a large text stops. The first thing that is no
/// token is the last item.
pub(super) struct Tokens<'a> {
    text: &'a str,
    at: usize,
    after_number: bool,
}

impl<'a> Tokens<'a> {
    pub(super) fn of(text: &'a str) -> Self {
        // A byte-order mark in front is what some editors write; it is no part of the text.
        let at = text.find(|c| c != '\u{feff}').unwrap_or(text.len());
        Self {
            text,
            at: at.min('\u{feff}'.len_utf8()),
            after_number: false,
        }
    }
}

impl Iterator for Tokens<'_> {
    type Item = Result<Token, SyntaxFault>;

    fn next(&mut self) -> Option<Self::Item> {
        let rest = self.text.get(self.at..)?.trim_start();
        let first = rest.chars().next()?;
        let at = self.text.len() - rest.len();
        match token(rest, first) {
            Ok((kind, length)) => {
                self.at = at + length;
                self.after_number = kind == Kind::Number;
                let span = at..self.at;
                Some(Ok(Token { kind, span }))
            }
            Err(problem) => {
                self.at = self.text.len();
                Some(Err(problem.at(at, self.after_number)))
            }
        }
    }
}

enum Problem {
    Unclosed(&'static str),
    Odd(char),
}

impl Problem {
    fn at(self, at: usize, after_number: bool) -> SyntaxFault {
        let (found, expected) = match self {
            Self::Unclosed(what) => (format!("{what} without an end"), "its end".to_owned()),
            Self::Odd('/') if after_number => (
                "a fraction".to_owned(),
                "a decimal number, such as 12.625".to_owned(),
            ),
            Self::Odd('\'') => (
                "a single quote".to_owned(),
                "text in double quotes".to_owned(),
            ),
            Self::Odd('{' | '}') => (
                "a curly bracket".to_owned(),
                "`(` and `)` around fields".to_owned(),
            ),
            Self::Odd(c) => (
                quoted_char(c),
                "a field name, a value, `,` or a bracket".to_owned(),
            ),
        };
        SyntaxFault {
            at,
            found,
            expected,
        }
    }
}

fn quoted_char(c: char) -> String {
    if c.is_control() {
        format!("the control character U+{:04X}", u32::from(c))
    } else {
        format!("`{c}`")
    }
}

fn token(rest: &str, first: char) -> Result<(Kind, usize), Problem> {
    match first {
        '(' | '[' => Ok((Kind::Open(first), 1)),
        ')' | ']' => Ok((Kind::Close(first), 1)),
        ':' => Ok((Kind::Colon, 1)),
        ',' => Ok((Kind::Comma, 1)),
        '"' => string_length(rest).map(|n| (Kind::Text, n)),
        '/' => comment_length(rest).map(|n| (Kind::Comment, n)),
        '#' if rest.starts_with("#![") => rest
            .find(']')
            .map(|end| (Kind::Attribute, end + 1))
            .ok_or(Problem::Unclosed("an attribute")),
        'r' if is_raw_string(rest) => raw_string_length(rest).map(|n| (Kind::Text, n)),
        c if c.is_alphabetic() || c == '_' => {
            Ok((Kind::Word, run(rest, |c| c.is_alphanumeric() || c == '_')))
        }
        c if c.is_ascii_digit() || matches!(c, '+' | '-' | '.') => {
            Ok((Kind::Number, number_length(rest)))
        }
        c => Err(Problem::Odd(c)),
    }
}

fn run(text: &str, belongs: impl Fn(char) -> bool) -> usize {
    text.find(|c| !belongs(c)).unwrap_or(text.len())
}

/// Sign, then letters, digits and points; a sign inside belongs to it after an `e`.
fn number_length(rest: &str) -> usize {
    let mut before = ' ';
    let mut length = 0;
    for c in rest.chars() {
        let sign = matches!(c, '+' | '-') && (length == 0 || matches!(before, 'e' | 'E'));
        if !(sign || c.is_ascii_alphanumeric() || matches!(c, '.' | '_')) {
            break;
        }
        length += c.len_utf8();
        before = c;
    }
    length
}

fn string_length(rest: &str) -> Result<usize, Problem> {
    let mut escaped = false;
    for (at, c) in rest.char_indices().skip(1) {
        match c {
            _ if escaped => escaped = false,
            '\\' => escaped = true,
            '"' => return Ok(at + 1),
            _ => {}
        }
    }
    Err(Problem::Unclosed("text in quotes"))
}

fn is_raw_string(rest: &str) -> bool {
    rest.get(1..)
        .is_some_and(|r| r.trim_start_matches('#').starts_with('"'))
}

fn raw_string_length(rest: &str) -> Result<usize, Problem> {
    let hashes = run(rest.get(1..).unwrap_or_default(), |c| c == '#');
    let end = format!("\"{}", "#".repeat(hashes));
    let start = 1 + hashes + 1;
    rest.get(start..)
        .and_then(|body| body.find(&end))
        .map(|at| start + at + end.len())
        .ok_or(Problem::Unclosed("text in quotes"))
}

fn comment_length(rest: &str) -> Result<usize, Problem> {
    if rest.starts_with("//") {
        return Ok(run(rest, |c| c != '\n' && c != '\r'));
    }
    if !rest.starts_with("/*") {
        return Err(Problem::Odd('/'));
    }
    // Block comments nest.
    let (mut depth, mut at) = (0_usize, 0);
    while let Some(here) = rest.get(at..).filter(|r| !r.is_empty()) {
        if here.starts_with("/*") {
            depth += 1;
            at += 2;
        } else if here.starts_with("*/") {
            depth = depth.saturating_sub(1);
            at += 2;
            if depth == 0 {
                return Ok(at);
            }
        } else {
            at += here.chars().next().map_or(1, char::len_utf8);
        }
    }
    Err(Problem::Unclosed("a comment"))
}

#[cfg(test)]
mod tests {
    use super::{Kind, Tokens};

    /// The pieces of a text, or what was odd in it.
    fn pieces(text: &str) -> Result<Vec<&str>, String> {
        Tokens::of(text)
            .map(|token| {
                let token = token.map_err(|fault| fault.found)?;
                Ok(text.get(token.span).unwrap_or_default())
            })
            .collect()
    }

    fn one(text: &str, kind: Kind) {
        let all: Vec<_> = Tokens::of(text).flatten().collect();
        assert_eq!(all.len(), 1, "{text}: {all:?}");
        assert!(
            all.iter()
                .all(|t| t.kind == kind && t.span == (0..text.len())),
            "{text}: {all:?}"
        );
    }

    #[test]
    fn raw_text_ends_at_as_many_hashes_as_it_began_with() {
        for text in [
            r#"r"""#,
            r#"r"abc""#,
            r###"r#""#"###,
            r###"r#"a"b"#"###,
            r####"r##"a"#b"##"####,
        ] {
            one(text, Kind::Text);
        }
        assert_eq!(pieces(r##"r"a\" x"##), Ok(vec![r#"r"a\""#, "x"]));
    }

    #[test]
    fn comments_nest() {
        for text in [
            "/**/",
            "/* a */",
            "/* a /* b */ c */",
            "/*/**//**/*/",
            "// a /* b",
        ] {
            one(text, Kind::Comment);
        }
        assert_eq!(
            pieces("/* a */ b /* c */"),
            Ok(vec!["/* a */", "b", "/* c */"])
        );
        assert_eq!(
            pieces("/* /* */"),
            Err("a comment without an end".to_owned())
        );
    }

    #[test]
    fn a_sign_belongs_to_a_number_in_front_and_behind_its_e() {
        for text in ["-1.5", "+2", "1e-3", "1E+3", "-.5", "1_000", "-inf"] {
            one(text, Kind::Number);
        }
        assert_eq!(pieces("12-5"), Ok(vec!["12", "-5"]));
        assert_eq!(pieces("1e3-2"), Ok(vec!["1e3", "-2"]));
    }

    #[test]
    fn what_is_odd_is_named() {
        for (text, found) in [
            ("a: 1/2", "a fraction"),
            ("a: /", "`/`"),
            ("# my kart [1]", "`#`"),
            ("#![enable", "an attribute without an end"),
            ("a: 'b'", "a single quote"),
        ] {
            assert_eq!(pieces(text), Err(found.to_owned()), "{text}");
        }
    }
}
