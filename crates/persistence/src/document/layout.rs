//! The canonical text: one layout for every build.

use trammel_build::Build;

use super::{
    fields::{whole, without_nothing},
    item::{Entry, Item},
};

/// What stands at the top of every file that this crate lays out.
pub(super) const HEADER: [&str; 5] = [
    "// Trammel build file: the hardpoints and figures of one vehicle, as its builder typed them. It is plain text and may be edited.",
    "// Lengths are in the unit named below, angles in degrees. x is forward, y to the left, z up; the origin is on the ground, in the",
    "// vehicle's centre plane, under the front wheel centres, everything at ride height. The rear axle is at minus the wheelbase.",
    "// Points are those of the left side; the right side is its mirror image except for the points under `right`. Toe-in is positive,",
    "// a top leaning inboard is negative camber. What is left out takes the program's defaults.",
];

/// Longest line that fields are gathered on.
const WIDEST: usize = 120;
const STEP: usize = 4;

/// The canonical text of a build: comments that say what it is, then every field that the build gives, numbers with the fewest digits that
/// read back the same. Reading it gives an equal build, provided the build has no [faults](Build::faults).
#[must_use]
pub fn write(build: &Build) -> String {
    let mut text = HEADER.join("\n");
    text.push('\n');
    text.push_str(&laid_out(&without_nothing(whole(build)), 0, 0, true));
    text.push('\n');
    text
}

/// A value as it stands `indent` columns in, behind `before` columns of its own line; broken over lines where it must be or would be too wide.
pub(super) fn laid_out(item: &Item, indent: usize, before: usize, broken: bool) -> String {
    let line = item.text();
    if !broken && indent + before + line.chars().count() < WIDEST {
        return line;
    }
    let inner = " ".repeat(indent + STEP);
    let lines: Vec<String> = match item {
        Item::Fields(entries) => entries
            .iter()
            .map(|e| format!("{inner}{},\n", field(e, indent + STEP)))
            .collect(),
        Item::Names(names) => names
            .iter()
            .map(|n| format!("{inner}{},\n", Item::Text(n.clone()).text()))
            .collect(),
        Item::List(items) => items
            .iter()
            .map(|i| format!("{inner}{},\n", laid_out(i, indent + STEP, 0, false)))
            .collect(),
        _ => return line,
    };
    let (open, close) = match item {
        Item::Names(_) | Item::List(_) => ('[', ']'),
        _ => ('(', ')'),
    };
    format!("{open}\n{}{}{close}", lines.concat(), " ".repeat(indent))
}

/// `name: value`, `indent` columns in.
pub(super) fn field(entry: &Entry, indent: usize) -> String {
    let before = entry.name.len() + 2;
    // An axle is never put on one line, however short.
    let broken = matches!(entry.name, "front" | "rear");
    format!(
        "{}: {}",
        entry.name,
        laid_out(&entry.item, indent, before, broken)
    )
}
