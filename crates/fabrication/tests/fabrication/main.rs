//! Shop geometry against closed forms, handbooks and parts known by hand.

#![allow(
    clippy::unwrap_used,
    clippy::panic,
    reason = "a test stops where it fails"
)]

mod bends;
mod coping;
mod cutting;
mod handbook;
mod plane;
mod rods;
mod shown;
mod tabs;
