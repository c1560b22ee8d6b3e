//! Prints what a frame of a drag costs in each stage: the table of the bench of frames, in the profile of the program.
#![allow(
    clippy::expect_used,
    clippy::panic,
    clippy::print_stdout,
    reason = "a tool for measuring stops where it fails, and its output is what it is for"
)]

#[path = "../../../../../crates/screen/benches/dragging/mod.rs"]
mod dragging;

fn main() {
    dragging::table();
}
