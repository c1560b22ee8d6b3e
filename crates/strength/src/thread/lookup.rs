//! Reading a thread as people write it.

use super::{Series, System, Thread};
use crate::units::INCH;
use trammel_geometry::least_first;

/// An inch size may be typed as a decimal of three places or more: .375, .438.
const INCH_SIZE_TOLERANCE: f64 = 0.0006 * INCH;
/// Metric sizes and all pitches have to be meant exactly; this only absorbs rounding.
const EXACT: f64 = 1e-6;
/// How many threads an error names.
const NEARBY: usize = 6;

/// Why no thread was found.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
pub enum ThreadError {
    /// The text is not a thread designation at all.
    #[error(
        "\u{201c}{typed}\u{201d} is not a thread designation; expected one like 3/8-24, 1/2-20 UNF, M12 or M10x1.25; no thread was chosen"
    )]
    NotADesignation {
        /// What was typed.
        typed: String,
    },
    /// Understood, but not in the table.
    #[error("\u{201c}{typed}\u{201d} is not in the table of threads; nearby are {}; no thread was chosen", nearby.join(", "))]
    Unknown {
        /// What was typed.
        typed: String,
        /// Designations of the threads of the nearest size.
        nearby: Vec<&'static str>,
    },
    /// More than one thread fits.
    #[error("\u{201c}{typed}\u{201d} fits more than one thread: {}; add the pitch; no thread was chosen", candidates.join(", "))]
    Ambiguous {
        /// What was typed.
        typed: String,
        /// Designations of the threads that fit.
        candidates: Vec<&'static str>,
    },
}

/// What the text says, before the table is asked.
#[derive(Default)]
struct Spoken {
    metric: bool,
    system_from_series: Option<System>,
    series: Option<Series>,
    numbers: Vec<f64>,
}

pub(super) fn find(typed: &str) -> Result<Thread, ThreadError> {
    let spoken = parse(typed).ok_or_else(|| ThreadError::NotADesignation {
        typed: typed.trim().to_owned(),
    })?;
    let fits: Vec<&Thread> = Thread::all()
        .iter()
        .filter(|thread| spoken.fits(thread))
        .collect();
    match fits.as_slice() {
        [] => Err(ThreadError::Unknown {
            typed: typed.trim().to_owned(),
            nearby: spoken.nearby(),
        }),
        [one] => Ok(**one),
        several => several
            .iter()
            .find(|thread| {
                spoken.metric && spoken.series.is_none() && thread.series() == Series::Coarse
            })
            .map(|thread| **thread)
            .ok_or_else(|| ThreadError::Ambiguous {
                typed: typed.trim().to_owned(),
                candidates: several.iter().map(|thread| thread.designation()).collect(),
            }),
    }
}

impl Spoken {
    fn system(&self) -> System {
        if self.metric {
            System::Metric
        } else {
            System::Unified
        }
    }

    /// The typed major diameter, mm.
    fn major(&self) -> Option<f64> {
        let unit = if self.metric { 1.0 } else { INCH };
        self.numbers.first().map(|size| size * unit)
    }

    /// The typed pitch, mm.
    fn pitch(&self) -> Option<f64> {
        self.numbers
            .get(1)
            .map(|&number| if self.metric { number } else { INCH / number })
    }

    fn fits(&self, thread: &Thread) -> bool {
        let tolerance = if self.metric {
            EXACT
        } else {
            INCH_SIZE_TOLERANCE
        };
        thread.system() == self.system()
            && self
                .major()
                .is_some_and(|major| (major - thread.major_diameter()).abs() <= tolerance)
            && self
                .pitch()
                .is_none_or(|pitch| (pitch - thread.pitch()).abs() <= EXACT)
            && self.series.is_none_or(|series| series == thread.series())
    }

    /// The threads of the same system nearest in size.
    fn nearby(&self) -> Vec<&'static str> {
        let wanted = self.major().unwrap_or_default();
        let mut same: Vec<&Thread> = Thread::all()
            .iter()
            .filter(|thread| thread.system() == self.system())
            .collect();
        least_first(&mut same, |t| (t.major_diameter() - wanted).abs());
        same.iter()
            .take(NEARBY)
            .map(|thread| thread.designation())
            .collect()
    }
}

/// `None` when anything in the text is not part of a designation.
fn parse(typed: &str) -> Option<Spoken> {
    let plain = plain_text(typed);
    let mut spoken = Spoken::default();
    for chunk in plain
        .split([' ', 'x', '-'])
        .filter(|chunk| !chunk.is_empty())
    {
        if !is_remark(chunk) {
            read_chunk(chunk, &mut spoken)?;
        }
    }
    let numbers_fit =
        matches!(spoken.numbers.len(), 1 | 2) && spoken.numbers.iter().all(|&number| number > 0.0);
    let series_fits = spoken
        .system_from_series
        .is_none_or(|system| system == spoken.system());
    (numbers_fit && series_fits).then_some(spoken)
}

/// Lower case, with one kind of dash, one multiplication sign, a decimal point, spelled-out fractions and no inch marks.
fn plain_text(typed: &str) -> String {
    let mut plain = String::with_capacity(typed.len());
    for sign in typed.trim().chars().flat_map(char::to_lowercase) {
        match sign {
            '\u{d7}' | '\u{2715}' | '\u{2a2f}' | '*' => plain.push('x'),
            '\u{2010}'..='\u{2015}' | '\u{2212}' | ':' => plain.push('-'),
            ',' => plain.push('.'),
            '\u{2044}' | '\u{2215}' => plain.push('/'),
            '"' | '\u{201d}' | '\u{2033}' | '_' | '(' | ')' => plain.push(' '),
            '\u{bd}' => plain.push_str("1/2"),
            '\u{bc}' => plain.push_str("1/4"),
            '\u{be}' => plain.push_str("3/4"),
            '\u{215c}' => plain.push_str("3/8"),
            '\u{215d}' => plain.push_str("5/8"),
            '\u{215e}' => plain.push_str("7/8"),
            other if other.is_whitespace() => plain.push(' '),
            other => plain.push(other),
        }
    }
    plain
}

/// Words that leave the choice of the thread as it is: unit, hand, tolerance class.
fn is_remark(chunk: &str) -> bool {
    const REMARKS: &[&str] = &[
        "in", "inch", "mm", "tpi", "lh", "rh", "left", "right", "hand", "thread", "1a", "2a", "3a",
        "1b", "2b", "3b", "4g", "6g", "4h", "6h",
    ];
    REMARKS.contains(&chunk)
}

/// A number, a word, or both run together (`m12`, `20unf`).
fn read_chunk(chunk: &str, spoken: &mut Spoken) -> Option<()> {
    let is_number = |sign: char| sign.is_ascii_digit() || sign == '.' || sign == '/';
    let start = chunk.find(is_number).unwrap_or(chunk.len());
    let (before, rest) = chunk.split_at(start);
    let end = rest.find(|sign| !is_number(sign)).unwrap_or(rest.len());
    let (number, after) = rest.split_at(end);
    read_word(before, spoken)?;
    if !number.is_empty() {
        spoken.numbers.push(read_number(number)?);
    }
    read_word(after, spoken)
}

fn read_word(word: &str, spoken: &mut Spoken) -> Option<()> {
    let (system, series) = match word {
        "" | "in" | "tpi" | "mm" => return Some(()),
        "m" if spoken.numbers.is_empty() => {
            spoken.metric = true;
            return Some(());
        }
        "unc" | "unrc" | "nc" => (Some(System::Unified), Series::Coarse),
        "unf" | "unrf" | "nf" => (Some(System::Unified), Series::Fine),
        "mf" if spoken.numbers.is_empty() => {
            spoken.metric = true;
            (None, Series::Fine)
        }
        "coarse" => (None, Series::Coarse),
        "fine" => (None, Series::Fine),
        _ => return None,
    };
    let agrees = spoken.series.is_none_or(|earlier| earlier == series);
    spoken.series = Some(series);
    spoken.system_from_series = system.or(spoken.system_from_series);
    agrees.then_some(())
}

/// A decimal or a common fraction.
fn read_number(text: &str) -> Option<f64> {
    let number = match text.split_once('/') {
        Some((top, bottom)) => {
            let (top, bottom): (u16, u16) = (top.parse().ok()?, bottom.parse().ok()?);
            f64::from(top) / f64::from(bottom)
        }
        None => text.parse().ok()?,
    };
    number.is_finite().then_some(number)
}
