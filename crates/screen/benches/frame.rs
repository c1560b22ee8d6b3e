//! A frame of a drag: everything but the painting. Budget: 2 ms on one core, drawing apart.
//!
//! The whole screen is run through egui as the window does it, the left inner tie-rod joint being dragged up and down; what egui then paints with is left
//! out. A table of least times is printed first, criterion's statistics follow.

#![allow(
    missing_docs,
    clippy::expect_used,
    clippy::panic,
    clippy::print_stdout,
    reason = "criterion's macros make undocumented items; a bench stops where it fails"
)]

mod dragging;

use criterion::{Criterion, criterion_group};
use dragging::{Dragging, table};
use trammel_build::PointName;
use trammel_screen::view::Stage;

fn frames(c: &mut Criterion) {
    let mut dragging = Dragging::new(Stage::LayOut, PointName::TieRodInner);
    c.bench_function("standing frame", |b| b.iter(|| dragging.standing_frame()));
    c.bench_function("frame of a drag", |b| b.iter(|| dragging.frame()));
}

criterion_group!(benches, frames);

fn main() {
    table();
    benches();
    Criterion::default().configure_from_args().final_summary();
}
