//! The files for paper and cutter, measured by programs that know nothing of ours: poppler for PDF, ezdxf for DXF, Python's XML reader for SVG.
//!
//! Where such a program is missing the test says so and measures nothing, unless `TRAMMEL_OUTSIDE_TOOLS` is `required`, as it is before a change lands. Another Python
//! than `python3` is taken from `TRAMMEL_PYTHON`.

#![allow(
    clippy::expect_used,
    clippy::unwrap_used,
    clippy::panic,
    clippy::indexing_slicing,
    clippy::print_stderr,
    reason = "a test stops where it fails, and says loudly what it skips"
)]

mod cutter;
mod demos;
mod paper;
mod raster;
mod sample;
mod tools;
