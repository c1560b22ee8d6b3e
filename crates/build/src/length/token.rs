//! Cutting a typed length into numbers, signs and units.

use super::LengthProblem;

/// A piece of a typed length.
#[derive(Clone, Debug, PartialEq)]
pub(super) enum Token {
    /// Digits without a point.
    Whole(u32),
    /// Digits with a point.
    Decimal(f64),
    /// A fraction that is one sign, such as a vulgar half.
    Vulgar(u32, u32),
    Slash,
    Plus,
    /// A minus or hyphen, and whether spaces stand beside it.
    Minus {
        spaced: bool,
    },
    Unit(Unit),
}

/// Units that a length may be typed in.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Unit {
    Foot,
    Inch,
    Millimetre,
    Centimetre,
    Metre,
}

/// Most digits of a whole number, so that sums of them stay exact.
const MOST_DIGITS: usize = 7;

/// The signs for a fraction that Unicode has.
const VULGAR: [(char, u32, u32); 18] = [
    ('\u{bc}', 1, 4),
    ('\u{bd}', 1, 2),
    ('\u{be}', 3, 4),
    ('\u{2150}', 1, 7),
    ('\u{2151}', 1, 9),
    ('\u{2152}', 1, 10),
    ('\u{2153}', 1, 3),
    ('\u{2154}', 2, 3),
    ('\u{2155}', 1, 5),
    ('\u{2156}', 2, 5),
    ('\u{2157}', 3, 5),
    ('\u{2158}', 4, 5),
    ('\u{2159}', 1, 6),
    ('\u{215a}', 5, 6),
    ('\u{215b}', 1, 8),
    ('\u{215c}', 3, 8),
    ('\u{215d}', 5, 8),
    ('\u{215e}', 7, 8),
];

/// The pieces of a typed length, spaces left out.
pub(super) fn tokens(text: &str) -> Result<Vec<Token>, LengthProblem> {
    let mut tokens = Vec::new();
    let mut rest = text.trim();
    let mut spaced = false;
    while let Some(c) = rest.chars().next() {
        if c.is_whitespace() {
            spaced = true;
            rest = rest.trim_start();
            continue;
        }
        let (token, length) = token(rest, c, spaced)?;
        tokens.push(token);
        spaced = false;
        rest = rest.get(length..).unwrap_or_default();
    }
    Ok(tokens)
}

/// The piece that the text starts with, and its bytes.
fn token(rest: &str, first: char, spaced: bool) -> Result<(Token, usize), LengthProblem> {
    let one = first.len_utf8();
    let after = rest.get(one..).unwrap_or_default();
    let run = |belongs: fn(char) -> bool| {
        let length = rest.find(|c| !belongs(c)).unwrap_or(rest.len());
        (rest.get(..length).unwrap_or_default(), length)
    };
    Ok(match first {
        '0'..='9' | '.' => {
            let (digits, length) = run(|c| c.is_ascii_digit() || c == '.');
            (number(digits)?, length)
        }
        ',' => return Err(LengthProblem::Comma),
        '/' | '\u{2044}' => (Token::Slash, one),
        '+' => (Token::Plus, one),
        // Hyphens, dashes and the minus sign.
        '-' | '\u{2010}'..='\u{2013}' | '\u{2212}' => {
            let spaced = spaced || after.starts_with(char::is_whitespace);
            (Token::Minus { spaced }, one)
        }
        // Two single primes are a double one.
        c if is_prime(c) && after.starts_with(is_prime) => {
            let other = after.chars().next().map_or(0, char::len_utf8);
            (Token::Unit(Unit::Inch), one + other)
        }
        c if is_prime(c) => (Token::Unit(Unit::Foot), one),
        '"' | '\u{2033}' | '\u{201c}' | '\u{201d}' => (Token::Unit(Unit::Inch), one),
        c if c.is_alphabetic() => {
            let (word, length) = run(char::is_alphabetic);
            // `in.` and `ft.` as abbreviations.
            let dot = rest.get(length..).is_some_and(|r| r.starts_with('.'));
            (unit(word)?, length + usize::from(dot))
        }
        c => {
            let sign = vulgar(c).ok_or_else(|| LengthProblem::Unexpected(c.to_string()))?;
            (sign, one)
        }
    })
}

fn is_prime(c: char) -> bool {
    matches!(c, '\'' | '\u{2032}' | '\u{2018}' | '\u{2019}')
}

fn number(digits: &str) -> Result<Token, LengthProblem> {
    let unexpected = || LengthProblem::Unexpected(digits.to_owned());
    if digits.contains('.') {
        let value: f64 = digits.parse().map_err(|_| unexpected())?;
        return Ok(Token::Decimal(value));
    }
    if digits.trim_start_matches('0').len() > MOST_DIGITS {
        return Err(LengthProblem::TooLarge);
    }
    digits.parse().map(Token::Whole).map_err(|_| unexpected())
}

fn vulgar(c: char) -> Option<Token> {
    VULGAR
        .into_iter()
        .find(|(sign, ..)| *sign == c)
        .map(|(_, over, under)| Token::Vulgar(over, under))
}

fn unit(word: &str) -> Result<Token, LengthProblem> {
    let unit = match word.to_lowercase().as_str() {
        "ft" | "foot" | "feet" => Unit::Foot,
        "in" | "inch" | "inches" => Unit::Inch,
        "mm" | "millimetre" | "millimetres" | "millimeter" | "millimeters" => Unit::Millimetre,
        "cm" | "centimetre" | "centimetres" | "centimeter" | "centimeters" => Unit::Centimetre,
        "m" | "metre" | "metres" | "meter" | "meters" => Unit::Metre,
        _ => return Err(LengthProblem::UnknownUnit(word.to_owned())),
    };
    Ok(Token::Unit(unit))
}
