//! Lines and columns, as an editor counts them.

use std::fmt;

/// A place in a text: line and column, both from 1, columns in characters.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Place {
    /// Line.
    pub line: usize,
    /// Column.
    pub column: usize,
}

impl fmt::Display for Place {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "line {}, column {}", self.line, self.column)
    }
}

impl Place {
    /// The place of a byte offset; an offset past the end is the end.
    #[must_use]
    pub fn of(text: &str, offset: usize) -> Self {
        let before = text.as_bytes().get(..offset).unwrap_or(text.as_bytes());
        let line_start = before
            .iter()
            .rposition(|b| *b == b'\n')
            .map_or(0, |at| at + 1);
        let on_line = before.get(line_start..).unwrap_or_default();
        Self {
            line: 1 + before.iter().filter(|b| **b == b'\n').count(),
            column: 1 + String::from_utf8_lossy(on_line).chars().count(),
        }
    }

    /// The byte offset of this place; past the end of its line, that end.
    pub(crate) fn offset(self, text: &str) -> usize {
        let mut start = 0;
        for (n, line) in text.split_inclusive('\n').enumerate() {
            if n + 1 == self.line {
                let within = line.char_indices().nth(self.column.saturating_sub(1));
                return start + within.map_or(line.len(), |(at, _)| at);
            }
            start += line.len();
        }
        text.len()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn place_and_offset_are_inverse_at_every_character() {
        let text = "a(\n  b: \"\u{e4}\u{2033}\",\r\n\n)";
        for (offset, _) in text.char_indices() {
            assert_eq!(Place::of(text, offset).offset(text), offset, "{offset}");
        }
    }

    #[test]
    fn columns_count_characters_not_bytes() {
        let text = "x\n\u{e4}\u{e4}y";
        let y = text.find('y').unwrap_or(0);
        assert_eq!(Place::of(text, y), Place { line: 2, column: 3 });
        assert_eq!(Place::of(text, 999), Place { line: 2, column: 4 });
    }
}
