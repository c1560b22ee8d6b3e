//! Reading a typed length.

use super::{
    LengthFault, LengthProblem, convert_length,
    token::{Token, Unit, tokens},
};
use crate::LengthUnit;

const INCHES_IN_A_FOOT: f64 = 12.0;
/// Lengths beyond this, mm, are no vehicle's.
const LONGEST_MM: f64 = 1e6;

/// A typed length in `default_unit`, which is also the unit of a bare number.
///
/// Fractions, decimals, feet and inches, and mm, cm and m are understood: `12 5/8`, `12-5/8`, `12 5/8"`, `1' 3-1/2"`, `1 ft 3 1/2 in`, `5/8`,
/// `-3 3/4`, `3.25`, `320 mm`, `32 cm`, with Unicode's primes, minus and fractions as well. A fraction of inches in inches is exact where it is one
/// of halves; a length in the other unit is rounded to a ten-millionth.
///
/// ```
/// use trammel_build::{LengthUnit, parse_length};
/// assert_eq!(parse_length("1' 3-1/2\"", LengthUnit::Inch), Ok(15.5));
/// assert_eq!(parse_length("12 5/8 in", LengthUnit::Millimetre), Ok(320.675));
/// assert!(parse_length("3,25", LengthUnit::Inch).is_err());
/// ```
///
/// # Errors
/// [`LengthFault`], which says what was typed, what is wrong with it and what is expected. Nothing is guessed.
pub fn parse_length(text: &str, default_unit: LengthUnit) -> Result<f64, LengthFault> {
    read(text, default_unit).map_err(|problem| LengthFault {
        text: text.trim().chars().take(60).collect(),
        unit: default_unit,
        problem,
    })
}

fn read(text: &str, default_unit: LengthUnit) -> Result<f64, LengthProblem> {
    let all = tokens(text)?;
    let (negative, rest) = match all.as_slice() {
        [Token::Minus { .. }, rest @ ..] => (true, rest),
        [Token::Plus, rest @ ..] => (false, rest),
        rest => (false, rest),
    };
    let (value, unit) = magnitude(rest, default_unit)?;
    let value = match unit {
        Unit::Inch => convert_length(value, LengthUnit::Inch, default_unit),
        Unit::Foot => convert_length(value * INCHES_IN_A_FOOT, LengthUnit::Inch, default_unit),
        Unit::Millimetre => convert_length(value, LengthUnit::Millimetre, default_unit),
        Unit::Centimetre => metric(value, 10.0, default_unit),
        Unit::Metre => metric(value, 1000.0, default_unit),
    };
    if value * default_unit.mm() > LONGEST_MM {
        return Err(LengthProblem::TooLarge);
    }
    // Nought has no sign.
    Ok(if negative && value > 0.0 {
        -value
    } else {
        value
    })
}

fn metric(value: f64, mm: f64, to: LengthUnit) -> f64 {
    // Tenths of a centimetre are not exact, their millimetres are: the rounding of a conversion brings them back.
    let mm = (value * mm * super::PARTS).round() / super::PARTS;
    convert_length(mm, LengthUnit::Millimetre, to)
}

fn magnitude(tokens: &[Token], default_unit: LengthUnit) -> Result<(f64, Unit), LengthProblem> {
    let (first, rest) = quantity(tokens)?;
    match rest {
        [] => {
            let unit = match default_unit {
                LengthUnit::Inch => Unit::Inch,
                LengthUnit::Millimetre => Unit::Millimetre,
            };
            Ok((first.value(), unit))
        }
        [Token::Unit(unit)] => Ok((first.value(), *unit)),
        // The hyphen of 1'-3" joins, whatever spaces stand beside it.
        [Token::Unit(Unit::Foot), Token::Minus { .. }, rest @ ..]
        | [Token::Unit(Unit::Foot), rest @ ..] => {
            let (inches, end) = quantity(rest)?;
            match end {
                [] | [Token::Unit(Unit::Inch)] => Ok((inches.behind_feet(first)?, Unit::Inch)),
                [Token::Unit(Unit::Inch), next, ..] | [next, ..] => Err(unexpected(next)),
            }
        }
        [Token::Unit(_), next, ..] | [next, ..] => Err(unexpected(next)),
    }
}

/// A number as typed: a decimal, or a whole number of parts.
#[derive(Clone, Copy)]
enum Quantity {
    Decimal(f64),
    Parts { over: u64, under: u64 },
}

impl Quantity {
    fn value(self) -> f64 {
        match self {
            Self::Decimal(v) => v,
            // Both are far below 2^53, so the one rounding is that of the quotient.
            Self::Parts { over, under } => over as f64 / under as f64,
        }
    }

    /// Inches of these inches behind whole feet.
    fn behind_feet(self, feet: Self) -> Result<f64, LengthProblem> {
        let Self::Parts {
            over: feet,
            under: 1,
        } = feet
        else {
            return Err(LengthProblem::BrokenFeet);
        };
        let whole = feet * INCHES_IN_A_FOOT as u64;
        Ok(match self {
            Self::Decimal(v) => whole as f64 + v,
            Self::Parts { over, under } => Self::Parts {
                over: whole * under + over,
                under,
            }
            .value(),
        })
    }
}

fn quantity(tokens: &[Token]) -> Result<(Quantity, &[Token]), LengthProblem> {
    match tokens {
        [
            Token::Whole(over),
            Token::Slash,
            Token::Whole(under),
            rest @ ..,
        ] => parts(0, *over, *under).map(|q| (q, rest)),
        [Token::Vulgar(over, under), rest @ ..] => parts(0, *over, *under).map(|q| (q, rest)),
        [Token::Whole(whole), rest @ ..] => behind_whole(*whole, rest),
        [Token::Decimal(_), Token::Vulgar(..), ..]
        | [Token::Decimal(_), Token::Whole(_), Token::Slash, ..] => Err(LengthProblem::OddFraction),
        [Token::Decimal(v), rest @ ..] => Ok((Quantity::Decimal(*v), rest)),
        [] => Err(LengthProblem::NoNumber),
        [Token::Unit(_)] => Err(LengthProblem::NoNumber),
        [next, ..] => Err(unexpected(next)),
    }
}

/// A whole number and the fraction that may follow it, joined by a space or a hyphen.
fn behind_whole(whole: u32, rest: &[Token]) -> Result<(Quantity, &[Token]), LengthProblem> {
    let (joined, fraction) = match rest {
        [
            Token::Minus { spaced: true },
            Token::Whole(_) | Token::Vulgar(..),
            ..,
        ] => {
            return Err(LengthProblem::MinusInside);
        }
        [Token::Minus { spaced: false }, after @ ..] => (true, after),
        other => (false, other),
    };
    let (over, under, rest) = match fraction {
        [
            Token::Whole(over),
            Token::Slash,
            Token::Whole(under),
            rest @ ..,
        ] => (*over, *under, rest),
        [Token::Vulgar(over, under), rest @ ..] => (*over, *under, rest),
        _ if joined => return Err(LengthProblem::MinusInside),
        rest => {
            let whole = Quantity::Parts {
                over: u64::from(whole),
                under: 1,
            };
            return Ok((whole, rest));
        }
    };
    if under != 0 && over >= under {
        return Err(LengthProblem::OddFraction);
    }
    parts(whole, over, under).map(|q| (q, rest))
}

fn parts(whole: u32, over: u32, under: u32) -> Result<Quantity, LengthProblem> {
    if under == 0 {
        return Err(LengthProblem::OverNought);
    }
    let (whole, over, under) = (u64::from(whole), u64::from(over), u64::from(under));
    Ok(Quantity::Parts {
        over: whole * under + over,
        under,
    })
}

fn unexpected(token: &Token) -> LengthProblem {
    LengthProblem::Unexpected(match token {
        Token::Whole(n) => n.to_string(),
        Token::Decimal(v) => v.to_string(),
        Token::Vulgar(over, under) => format!("{over}/{under}"),
        Token::Slash => "/".into(),
        Token::Plus => "+".into(),
        Token::Minus { .. } => return LengthProblem::MinusInside,
        Token::Unit(unit) => match unit {
            Unit::Foot => "ft".into(),
            Unit::Inch => "in".into(),
            Unit::Millimetre => "mm".into(),
            Unit::Centimetre => "cm".into(),
            Unit::Metre => "m".into(),
        },
    })
}
