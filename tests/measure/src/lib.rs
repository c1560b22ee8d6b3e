//! What the kernels cost.
//!
//! | where | what |
//! |---|---|
//! | [`cases`] | the work that is measured |
//! | [`calibration`] | fixed arithmetic that it is measured against |
//! | [`corner`] | a corner as another solver reads it |
//! | [`count`] | instructions of a case, counted by valgrind |
//! | [`clock`] | least time of a case, and of a command |
//! | [`baseline`] | what a case cost when it was last accepted, and whether it has grown |
//! | [`table`] | the table of measurements |
#![allow(
    clippy::expect_used,
    reason = "a tool for measuring stops where its own figures are wrong"
)]

pub mod baseline;
pub mod calibration;
pub mod cases;
pub mod clock;
pub mod corner;
pub mod count;
pub mod table;

#[path = "../../../crates/geometry/benches/newton/mod.rs"]
mod newton;
