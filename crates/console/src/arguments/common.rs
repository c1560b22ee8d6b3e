//! What the words of several commands share.

use std::path::PathBuf;

use clap::{Args, ValueEnum};
use trammel_analysis::Span;
use trammel_build::{AxleName, LengthUnit, Side};

/// The corner that is posed, where to, and where the table goes.
#[derive(Debug, Args)]
pub(crate) struct PosesArguments {
    /// Axle.
    #[arg(long, value_enum, default_value_t = AxleWord::Front)]
    pub axle: AxleWord,
    /// Side.
    #[arg(long, value_enum, default_value_t = SideWord::Left)]
    pub side: SideWord,
    /// Wheel travels, up positive: STEPS positions from FROM to TO, both included,
    /// such as -4:4:9. Without it the build's own range
    #[arg(
        long,
        value_name = "FROM:TO:STEPS",
        allow_hyphen_values = true,
        value_parser = span,
        verbatim_doc_comment
    )]
    pub travel: Option<Span>,
    /// Rack positions, to the left positive, in the same way. Without it the rack is
    /// at its centre; with it every travel is posed at every rack position
    #[arg(
        long,
        value_name = "FROM:TO:STEPS",
        allow_hyphen_values = true,
        value_parser = span,
        verbatim_doc_comment
    )]
    pub rack: Option<Span>,
    /// Unit of every length asked for and written. Without it the build's own.
    #[arg(long, value_enum)]
    pub unit: Option<UnitWord>,
    /// Where to: a file, written whole or not at all, or - for standard output.
    #[arg(
        long,
        value_name = "FILE",
        default_value = "-",
        allow_hyphen_values = true
    )]
    pub csv: PathBuf,
}

/// Where a changed build goes.
#[derive(Debug, Args)]
pub(crate) struct OutArguments {
    /// Build file to write, with the text of the old one wherever nothing changed.
    /// Whole or not at all.
    #[arg(long, value_name = "FILE", verbatim_doc_comment)]
    pub out: Option<PathBuf>,
    /// Write over a file that is there already; what was there is kept beside it as
    /// FILE.bak.
    #[arg(long, verbatim_doc_comment)]
    pub force: bool,
}

/// An axle on the command line.
#[derive(Clone, Copy, Debug, ValueEnum)]
pub(crate) enum AxleWord {
    Front,
    Rear,
}

/// A side on the command line.
#[derive(Clone, Copy, Debug, ValueEnum)]
pub(crate) enum SideWord {
    Left,
    Right,
}

/// A unit on the command line.
#[derive(Clone, Copy, Debug, ValueEnum)]
pub(crate) enum UnitWord {
    Mm,
    Inch,
}

impl From<AxleWord> for AxleName {
    fn from(word: AxleWord) -> Self {
        match word {
            AxleWord::Front => Self::Front,
            AxleWord::Rear => Self::Rear,
        }
    }
}

impl From<SideWord> for Side {
    fn from(word: SideWord) -> Self {
        match word {
            SideWord::Left => Self::Left,
            SideWord::Right => Self::Right,
        }
    }
}

impl From<UnitWord> for LengthUnit {
    fn from(word: UnitWord) -> Self {
        match word {
            UnitWord::Mm => Self::Millimetre,
            UnitWord::Inch => Self::Inch,
        }
    }
}

/// Reads `1280x800`.
pub(crate) fn size(text: &str) -> Result<[f32; 2], String> {
    let expected = || {
        format!(
            "read {text:?}, expected width and height from 400x300 to 4000x3000, such as 1280x800"
        )
    };
    let (width, height) = text.split_once('x').ok_or_else(expected)?;
    let side = |t: &str| t.parse::<f32>().map_err(|_| expected());
    let [width, height] = [side(width)?, side(height)?];
    let fits = (400.0..=4000.0).contains(&width) && (300.0..=3000.0).contains(&height);
    if fits {
        Ok([width, height])
    } else {
        Err(expected())
    }
}

/// Reads a number that is one.
pub(crate) fn finite(text: &str) -> Result<f64, String> {
    let number = text.trim().parse::<f64>().ok().filter(|v| v.is_finite());
    number.ok_or_else(|| "expected a number, such as -1.5".into())
}

/// Reads `FROM:TO:STEPS`.
pub(crate) fn span(text: &str) -> Result<Span, String> {
    let parts: Vec<&str> = text.split(':').collect();
    let [from, to, steps] = parts.as_slice() else {
        return Err("expected FROM:TO:STEPS, such as -4:4:9".into());
    };
    let number = |what: &str, text: &str| {
        text.trim()
            .parse::<f64>()
            .map_err(|_| format!("{what} is {text:?}; expected a number, such as -4 or 2.5"))
    };
    let steps = steps.trim();
    let steps = steps
        .parse::<usize>()
        .map_err(|_| format!("STEPS is {steps:?}; expected how many positions, such as 9"))?;
    Span::new(number("FROM", from)?, number("TO", to)?, steps).map_err(|e| e.to_string())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn positions_are_read_with_signs_and_decimals() {
        assert_eq!(span("-4:4:9"), Ok(Span::new(-4.0, 4.0, 9).unwrap()));
        assert_eq!(span("-1.5:-0.5:3"), Ok(Span::new(-1.5, -0.5, 3).unwrap()));
        assert_eq!(span("2:2:1"), Ok(Span::new(2.0, 2.0, 1).unwrap()));
    }

    #[test]
    fn odd_positions_are_refused_with_what_was_expected() {
        for odd in [
            "",
            "1:2",
            "1:2:3:4",
            "a:1:3",
            "1:b:3",
            "0:1:x",
            "0:1:-3",
            "0:1:0",
            "0:1:1",
            "NaN:1:3",
            "0:inf:3",
            "0:1:1000000",
        ] {
            let said = span(odd).expect_err(odd);
            assert!(said.contains("expected"), "{odd}: {said}");
        }
    }
}
