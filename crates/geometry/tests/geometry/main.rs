//! Checks of the kernel from outside, one subject per file.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    reason = "a test may stop where it finds a fault"
)]

mod corners;

mod ackermann;
mod any_input;
mod bad_input;
mod four_bar;
mod instant_centre;
mod laws;
mod limits;
mod mirror_and_scale;
mod parallel_arms;
mod rates;
mod roll;
mod spatial_four_bar;
mod spring;
mod textbook_corner;
mod tie_rod_angle;
mod toe_score;
mod walks;
