//! The drawing under hands and eyes: drags by name, gestures, and pictures.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    reason = "helpers of tests fail as tests do"
)]

mod bench;
mod hands;
mod pictures;
mod rough;
