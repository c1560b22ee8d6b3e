//! Reading a grade as people write it.

use super::{Family, ListedGrade};
use crate::number::BadNumber;

/// Why no grade, or no strength, was found.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum GradeError {
    /// Nothing in the table fits.
    #[error("\u{201c}{typed}\u{201d} is not a known grade; known are {}; no grade was chosen", known.join(", "))]
    Unknown {
        /// What was typed.
        typed: String,
        /// The names of the grades that come nearest: those of the same number, or all.
        known: Vec<&'static str>,
    },
    /// More than one grade fits.
    #[error("\u{201c}{typed}\u{201d} fits more than one grade: {}; say which; no grade was chosen", candidates.join(", "))]
    Ambiguous {
        /// What was typed.
        typed: String,
        /// The names of the grades that fit.
        candidates: Vec<&'static str>,
    },
    /// The standard says nothing about that size.
    #[error(
        "{grade} covers {from} to {up_to} mm; the size here is {diameter} mm; its strength is not known"
    )]
    SizeNotCovered {
        /// Which grade.
        grade: &'static str,
        /// Nominal diameter asked for, mm.
        diameter: f64,
        /// Smallest size covered, mm.
        from: f64,
        /// Largest size covered, mm.
        up_to: f64,
    },
    /// A number that can't be computed with.
    #[error(transparent)]
    BadNumber(#[from] BadNumber),
}

/// Words that say which family is meant; anything else beside the number has to be a condition.
const FAMILY_WORDS: &[(&str, &[Family])] = &[
    ("sae", &[Family::SaeJ429, Family::BarSteel]),
    ("j429", &[Family::SaeJ429]),
    ("g", &[Family::SaeJ429, Family::Iso898]),
    ("gr", &[Family::SaeJ429, Family::Iso898]),
    ("grade", &[Family::SaeJ429, Family::Iso898]),
    ("iso", &[Family::Iso898]),
    ("898", &[Family::Iso898]),
    ("property", &[Family::Iso898]),
    ("cl", &[Family::Iso898]),
    ("class", &[Family::Iso898]),
    ("aisi", &[Family::BarSteel]),
    ("c", &[Family::BarSteel]),
    ("bolt", &[Family::SaeJ429, Family::Iso898]),
    ("steel", &[Family::BarSteel]),
    ("bar", &[Family::BarSteel]),
];

/// The text taken apart: what is left of the table by family words, the number, the condition.
struct Spoken {
    families: Vec<Family>,
    number: String,
    condition: String,
}

pub(super) fn find(typed: &str) -> Result<ListedGrade, GradeError> {
    let shown = typed.trim().to_owned();
    let words = words_of(typed);
    if let Some(exact) = ListedGrade::all()
        .iter()
        .find(|grade| words_of(grade.name) == words)
    {
        return Ok(*exact);
    }
    let spoken = take_apart(&words);
    let fits: Vec<&ListedGrade> = ListedGrade::all()
        .iter()
        .filter(|grade| spoken.fits(grade))
        .collect();
    match fits.as_slice() {
        [] => Err(GradeError::Unknown {
            typed: shown,
            known: spoken.nearest(),
        }),
        [one] => Ok(**one),
        several => {
            let candidates = several.iter().map(|grade| grade.name).collect();
            Err(GradeError::Ambiguous {
                typed: shown,
                candidates,
            })
        }
    }
}

impl Spoken {
    fn fits(&self, grade: &ListedGrade) -> bool {
        let condition_fits =
            self.condition.is_empty() || grade.conditions.contains(&self.condition.as_str());
        self.number == grade.number && self.families.contains(&grade.family) && condition_fits
    }

    fn nearest(&self) -> Vec<&'static str> {
        let names = |same_number: bool| -> Vec<&'static str> {
            let wanted = |grade: &&ListedGrade| !same_number || grade.number == self.number;
            ListedGrade::all()
                .iter()
                .filter(wanted)
                .map(|grade| grade.name)
                .collect()
        };
        let same_number = names(true);
        if same_number.is_empty() {
            names(false)
        } else {
            same_number
        }
    }
}

/// Lower-case words; a word and a number run together (`g8`, `1018cd`) are parted, as are hyphens outside `898-1`.
fn words_of(typed: &str) -> Vec<String> {
    let lower = typed.to_lowercase().replace("898-1", " 898 ");
    let mut spaced = String::with_capacity(lower.len() + 4);
    let mut earlier = ' ';
    for (index, sign) in lower.char_indices() {
        let sign = if sign == ',' && earlier.is_ascii_digit() {
            '.'
        } else {
            sign
        };
        let decimal_point =
            sign == '.' && earlier.is_ascii_digit() && followed_by_digit(&lower, index);
        let parted =
            sign.is_ascii_digit() != earlier.is_ascii_digit() && sign != '.' && earlier != '.';
        if parted {
            spaced.push(' ');
        }
        spaced.push(if sign.is_alphanumeric() || decimal_point {
            sign
        } else {
            ' '
        });
        earlier = sign;
    }
    // Standards' numbers that carry a letter are one word again.
    let joined = spaced.replace("j 429", "j429").replace("a 434", "a434");
    joined.split_whitespace().map(str::to_owned).collect()
}

fn followed_by_digit(text: &str, index: usize) -> bool {
    text.get(index + 1..)
        .is_some_and(|rest| rest.starts_with(|sign: char| sign.is_ascii_digit()))
}

fn take_apart(words: &[String]) -> Spoken {
    let mut families = vec![Family::SaeJ429, Family::Iso898, Family::BarSteel];
    let (mut numbers, mut condition) = (Vec::new(), Vec::new());
    for word in words {
        // `class` belongs to ISO 898-1 unless it is part of a bar's condition.
        let of_a_condition =
            word == "class" && words.iter().any(|other| other == "bb" || other == "bc");
        let family = FAMILY_WORDS.iter().find(|(name, _)| name == word);
        match family {
            _ if of_a_condition => condition.push(word.as_str()),
            Some((_, narrowed)) => families.retain(|family| narrowed.contains(family)),
            None if word.starts_with(|sign: char| sign.is_ascii_digit()) => {
                numbers.push(word.as_str());
            }
            None => condition.push(word.as_str()),
        }
    }
    Spoken {
        families,
        number: numbers.join(" "),
        condition: condition.join(" "),
    }
}
