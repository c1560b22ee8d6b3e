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
