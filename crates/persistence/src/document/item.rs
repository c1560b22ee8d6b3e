//! The values of a file, and how each is written.

use trammel_build::Triple;

use crate::FORMAT;

/// A value of the file.
#[derive(Clone, Debug, PartialEq)]
pub(super) enum Item {
    Format,
    Number(f64),
    /// A number of things.
    Count(u32),
    Text(String),
    Word(&'static str),
    /// A number in a unit of its own: `kg(300.0)`.
    Measure(&'static str, f64),
    Triple(Triple),
    Names(Vec<String>),
    List(Vec<Item>),
    /// Values in brackets behind a word: `front((1.0, 2.0), (3.0, 4.0))`.
    Tuple(&'static str, Vec<Item>),
    Fields(Vec<Entry>),
}

/// A named value of the file.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Entry {
    pub name: &'static str,
    pub item: Item,
}

impl Entry {
    /// Whether leaving it out would say the same. An empty thread or grade is not the same as none.
    pub(super) fn says_nothing(&self) -> bool {
        match &self.item {
            Item::Text(text) => matches!(self.name, "title" | "notes" | "what") && text.is_empty(),
            Item::Names(names) => names.is_empty(),
            Item::List(items) => items.is_empty(),
            Item::Fields(entries) => entries.is_empty(),
            _ => false,
        }
    }
}

impl Item {
    /// The entry of this name, where this is a set of fields.
    pub(super) fn entry(&self, name: &str) -> Option<&Item> {
        self.entries()
            .iter()
            .find(|e| e.name == name)
            .map(|e| &e.item)
    }

    pub(super) fn entries(&self) -> &[Entry] {
        match self {
            Self::Fields(entries) => entries,
            _ => &[],
        }
    }

    /// The value as it stands in the file on one line.
    pub(super) fn text(&self) -> String {
        match self {
            Self::Format => FORMAT.to_string(),
            Self::Number(v) => number(*v),
            Self::Count(v) => v.to_string(),
            Self::Text(text) => quoted(text),
            Self::Word(word) => (*word).to_owned(),
            Self::Measure(unit, v) => format!("{unit}({})", number(*v)),
            Self::Triple(t) => format!("({})", t.map(number).join(", ")),
            Self::Names(names) => {
                let quoted: Vec<String> = names.iter().map(|n| quoted(n)).collect();
                format!("[{}]", quoted.join(", "))
            }
            Self::List(items) => format!("[{}]", joined(items)),
            Self::Tuple(word, items) => format!("{word}({})", joined(items)),
            Self::Fields(entries) => {
                let fields: Vec<String> = entries
                    .iter()
                    .map(|e| format!("{}: {}", e.name, e.item.text()))
                    .collect();
                format!("({})", fields.join(", "))
            }
        }
    }
}

fn joined(items: &[Item]) -> String {
    let texts: Vec<String> = items.iter().map(Item::text).collect();
    texts.join(", ")
}

/// The shortest digits that read back as the same number.
pub(super) fn number(v: f64) -> String {
    format!("{v:?}")
}

fn quoted(text: &str) -> String {
    let mut quoted = String::from("\"");
    for c in text.chars() {
        match c {
            '"' | '\\' => quoted.extend(['\\', c]),
            // Line ends of notes stay line ends, so that they can be read; a lone return could be lost.
            '\n' | '\t' => quoted.push(c),
            c if c.is_control() || c == '\u{feff}' => {
                quoted.push_str(&format!("\\u{{{:x}}}", u32::from(c)));
            }
            c => quoted.push(c),
        }
    }
    quoted.push('"');
    quoted
}
