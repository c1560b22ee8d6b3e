//! Carrying a builder's comments over when the text has to be laid out anew.

use crate::ron_text::Outline;

use super::layout::HEADER;

const CARRIED: &str =
    "// Comments of the text before it was laid out anew, each with the field that it stood at:";

const CONVERTED: &str = "// Converted from ";

/// The comments of a text that a new layout would lose, as lines to put behind it; empty when there are none.
pub(super) fn carried(text: &str, outline: &Outline) -> String {
    let fields = outline.fields(text);
    let mut lines = String::new();
    for span in &outline.comments {
        let comment = text.get(span.clone()).unwrap_or_default();
        if HEADER.contains(&comment) || comment == CARRIED {
            continue;
        }
        // The field that holds or precedes the comment on its line, else the one that follows it.
        let line_start = text
            .get(..span.start)
            .and_then(|t| t.rfind('\n'))
            .map_or(0, |at| at + 1);
        let inside = outline.root.span.contains(&span.start);
        let field = fields
            .iter()
            .rev()
            .find(|(_, f)| (line_start..span.start).contains(&f.key.start))
            .or_else(|| fields.iter().find(|(_, f)| f.key.start > span.end))
            .filter(|_| inside);
        match field {
            Some((path, _)) => lines.push_str(&format!("// {path}: {}\n", bare(comment))),
            None => lines.push_str(&format!("{comment}\n")),
        }
    }
    if lines.is_empty() {
        lines
    } else {
        format!("\n{CARRIED}\n{lines}")
    }
}

fn bare(comment: &str) -> String {
    let inner = comment
        .strip_prefix("//")
        .or_else(|| {
            comment
                .strip_prefix("/*")
                .and_then(|c| c.strip_suffix("*/"))
        })
        .unwrap_or(comment);
    let words: Vec<&str> = inner.split_whitespace().collect();
    words.join(" ")
}

/// The text with a first line that says that its numbers were converted; comments may still speak of the old unit.
pub(super) fn with_conversion(text: &str, from: &str, to: &str) -> String {
    let rest = match text.split_once('\n') {
        Some((first, rest)) if first.starts_with(CONVERTED) => rest,
        _ => text,
    };
    format!(
        "{CONVERTED}{from} to {to}: figures in comments are as they were written before.\n{rest}"
    )
}
