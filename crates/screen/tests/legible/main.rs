//! Whether the screen can be read: by every eye, at every size, by a screen reader.

#![allow(
    clippy::expect_used,
    clippy::panic,
    reason = "a test stops where it fails"
)]

#[path = "../common/mod.rs"]
mod common;

mod colours;
mod eyes;
mod names;
mod room;

/// Ends a look at the screen: every fault once, in order.
fn none(mut found: Vec<String>) {
    found.sort();
    found.dedup();
    assert!(
        found.is_empty(),
        "{} faults\n{}",
        found.len(),
        found.join("\n")
    );
}
