//! Changing only what changed: the tokens of edited values are replaced where they stand, new fields go behind the last one of their
//! brackets. All else, comments and layout, stays as its author left it.

use std::ops::Range;

use crate::ron_text::{Node, Outline, Value};

use super::{
    fields::without_nothing,
    item::{Entry, Item, number},
    layout::{field, laid_out},
};

/// A piece of the text and what takes its place.
type Change = (Range<usize>, String);

/// The text with the differences between two builds' fields made in it. `None` where a field would have to be taken out.
pub(super) fn patched(text: &str, outline: &Outline, old: &Item, new: &Item) -> Option<String> {
    let mut changes: Vec<Change> = Vec::new();
    compare(text, outline, &outline.root, Some(old), new, &mut changes)?;
    changes.sort_by_key(|(span, _)| (span.start, span.end));
    let (mut out, mut at) = (String::with_capacity(text.len()), 0);
    for (span, with) in changes {
        out.push_str(text.get(at..span.start)?);
        out.push_str(&with);
        at = span.end;
    }
    out.push_str(text.get(at..)?);
    Some(out)
}

fn compare(
    text: &str,
    outline: &Outline,
    node: &Node,
    old: Option<&Item>,
    new: &Item,
    changes: &mut Vec<Change>,
) -> Option<()> {
    if old == Some(new) {
        return Some(());
    }
    let inner = node.unwrapped(text);
    match (new, old, &inner.value) {
        (Item::Fields(entries), _, Value::Fields(_)) => {
            let gone = |e: &&Entry| new.entry(e.name).is_none();
            if old.is_some_and(|old| old.entries().iter().any(|e| gone(&e))) {
                return None;
            }
            let mut added = Vec::new();
            for e in entries {
                let before = old.and_then(|o| o.entry(e.name));
                match inner.field(text, e.name) {
                    Some(node) => compare(text, outline, node, before, &e.item, changes)?,
                    None if before == Some(&e.item) => {}
                    None => added.push(Entry {
                        name: e.name,
                        item: without_nothing(e.item.clone()),
                    }),
                }
            }
            insert(text, outline, inner, &added, changes);
        }
        (Item::Triple(to), Some(Item::Triple(from)), Value::Items(nodes)) => {
            for ((to, from), node) in to.iter().zip(from).zip(nodes) {
                if to.to_bits() != from.to_bits() {
                    changes.push((node.span.clone(), number(*to)));
                }
            }
        }
        (Item::List(to), Some(Item::List(from)), Value::Items(nodes))
            if to.len() == nodes.len() && from.len() == nodes.len() =>
        {
            for ((to, from), node) in to.iter().zip(from).zip(nodes) {
                compare(text, outline, node, Some(from), to, changes)?;
            }
        }
        _ => {
            // A comment inside what is replaced would be lost.
            let inside = |c: &Range<usize>| node.span.contains(&c.start);
            if outline.comments.iter().any(inside) {
                return None;
            }
            let indent = line_indent(text, node.span.start);
            let new = laid_out(&without_nothing(new.clone()), indent, 0, false);
            changes.push((node.span.clone(), new));
        }
    }
    Some(())
}

/// Puts new fields behind the last one.
fn insert(text: &str, outline: &Outline, node: &Node, added: &[Entry], changes: &mut Vec<Change>) {
    let (Value::Fields(fields), false) = (&node.value, added.is_empty()) else {
        return;
    };
    let close = node.span.end.saturating_sub(1);
    if let Some(last) = fields.last().map(|f| f.node.span.end)
        && !has_comma(text, outline, last..close)
    {
        changes.push((last..last, ",".to_owned()));
    }
    let line_start = text
        .get(..close)
        .and_then(|t| t.rfind('\n'))
        .map_or(0, |at| at + 1);
    let lead = text.get(line_start..close).unwrap_or_default();
    let own_line = line_start > node.span.start && lead.trim().is_empty();
    let first = fields.first().map_or(close, |f| f.key.start);
    let indent = column(text, first);
    let with = added.iter().map(|e| {
        if own_line {
            format!("{}{},\n", " ".repeat(indent), field(e, indent))
        } else if fields.is_empty() {
            format!("{}: {}", e.name, e.item.text())
        } else {
            format!(" {}: {}", e.name, e.item.text())
        }
    });
    let at = if own_line { line_start } else { close };
    let with: Vec<String> = with.collect();
    let between = if own_line { "" } else { "," };
    changes.push((at..at, with.join(between)));
}

/// Spaces at the start of the line of an offset.
fn line_indent(text: &str, at: usize) -> usize {
    let line = text.get(..at).and_then(|t| t.rsplit('\n').next());
    line.map_or(0, |l| l.chars().take_while(|c| *c == ' ').count())
}

fn column(text: &str, at: usize) -> usize {
    let before = text.get(..at).unwrap_or_default();
    before
        .rsplit('\n')
        .next()
        .unwrap_or_default()
        .chars()
        .count()
}

/// Whether a comma stands in a stretch of text, comments aside.
fn has_comma(text: &str, outline: &Outline, within: Range<usize>) -> bool {
    let in_comment = |at: usize| outline.comments.iter().any(|c| c.contains(&at));
    text.get(within.clone())
        .unwrap_or_default()
        .match_indices(',')
        .any(|(at, _)| !in_comment(within.start + at))
}
