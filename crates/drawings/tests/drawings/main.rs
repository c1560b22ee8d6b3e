//! Drawings and their files, measured from inside the program; the files are measured from outside in the acceptance tests.

#![allow(
    clippy::unwrap_used,
    clippy::panic,
    reason = "a test stops where it fails"
)]

mod dxf;
mod look;
mod order;
mod pages;
mod pdf;
mod sample;
mod svg;
mod tables;
