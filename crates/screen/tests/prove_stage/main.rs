//! The Prove stage by its controls: checks, load cases, forces, rack end, parts, and accepting a caution.

#![allow(
    clippy::expect_used,
    clippy::panic,
    reason = "a test stops where it fails"
)]

mod cautions;
mod checks;
#[path = "../common/mod.rs"]
mod common;
mod forces;
mod hand;
mod load_cases;
mod parts;
mod pictures;
mod rack_end;
