//! Trammel's screen, without a window: the whole of what is shown and done, on egui alone.

pub mod drawing;
pub mod tokens;
