//! Where a figure comes from, so that a caution can say so.

use std::fmt;

/// How well the source of a figure was seen.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Standing {
    /// The figure was seen in the document, or in a published copy of its table.
    Seen,
    /// The figure is quoted from memory; the document was not seen.
    FromMemory,
    /// What the trade does; no document stands behind it.
    CommonPractice,
    /// The user typed it.
    User,
}

impl fmt::Display for Standing {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Self::Seen => "seen",
            Self::FromMemory => "from memory",
            Self::CommonPractice => "common practice, no source",
            Self::User => "entered by the user",
        })
    }
}

/// A document and the place in it.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct Source {
    /// The standard or book, with its number; empty when there is none.
    pub document: &'static str,
    /// Clause, table or equation; empty when there is none.
    pub clause: &'static str,
    /// How well it was seen.
    pub standing: Standing,
}

impl Source {
    /// A trade habit without a document.
    pub const COMMON_PRACTICE: Self = Self {
        document: "",
        clause: "",
        standing: Standing::CommonPractice,
    };

    /// A figure that the user typed.
    pub const USER: Self = Self {
        document: "",
        clause: "",
        standing: Standing::User,
    };

    /// A figure seen in a document or in a published copy of its table.
    pub const fn seen(document: &'static str, clause: &'static str) -> Self {
        Self {
            document,
            clause,
            standing: Standing::Seen,
        }
    }

    /// A figure quoted from memory.
    pub const fn from_memory(document: &'static str, clause: &'static str) -> Self {
        Self {
            document,
            clause,
            standing: Standing::FromMemory,
        }
    }
}

impl fmt::Display for Source {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        if self.document.is_empty() {
            return self.standing.fmt(f);
        }
        f.write_str(self.document)?;
        if !self.clause.is_empty() {
            write!(f, ", {}", self.clause)?;
        }
        match self.standing {
            Standing::Seen => Ok(()),
            other => write!(f, " ({other})"),
        }
    }
}

/// A limit that something is compared with: value, unit and source in one place.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Limit {
    /// The number.
    pub value: f64,
    /// Its unit, as shown to the user.
    pub unit: &'static str,
    /// Where it comes from.
    pub source: Source,
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn says_where_and_how_well_it_was_seen() {
        assert_eq!(
            Source::seen("ISO 898-1", "Table 3").to_string(),
            "ISO 898-1, Table 3"
        );
        assert_eq!(
            Source::from_memory("ASME B1.1", "").to_string(),
            "ASME B1.1 (from memory)"
        );
        assert_eq!(
            Source::COMMON_PRACTICE.to_string(),
            "common practice, no source"
        );
        assert_eq!(Source::USER.to_string(), "entered by the user");
    }
}
