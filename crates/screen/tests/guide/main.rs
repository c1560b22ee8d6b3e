//! The newcomer's path: the guided tour, help on every figure, the glossary, the manual, the list of keys.

#![allow(
    clippy::expect_used,
    clippy::panic,
    reason = "a test stops where it fails"
)]

#[path = "../common/mod.rs"]
mod common;

mod figures;
mod reading;
mod tour;
