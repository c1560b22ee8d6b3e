//! Trammel's screen, without a window: the whole of what is shown and done, on egui alone.
//!
//! | where | what |
//! |---|---|
//! | [`Bench`] | the whole screen; one [`Bench::ui`] call is one frame |
//! | [`drawing`] | the marking-out table: three projections with joints that can be dragged |
//! | [`tune`] | the Tune stage: toe map, best spot, build error, automatic tuning, ride height |
//! | [`make`] | the Make stage: the sheets as they will print, and their files |
//! | [`prove`] | the Prove stage: checks, load cases, forces, rack-end threads |
//! | [`set_up`] | the Set up stage: readings, next move, tape survey, static figures, log, parts |
//! | [`notebook`] | curves, points, figures, cautions |
//! | [`action`] | everything that menu, button or key can ask for, in one list |
//! | [`history`] | undo and redo |
//! | [`host`] | what the screen needs from the machine around it |
//! | [`background`] | threads for work that would hold a frame up |
//! | [`tokens`], [`style`], [`fonts`] | how it looks |
//!
//! Parts read the build and push [`request::Request`]s; only the bench carries them out, after the frame's painting, in order.
#![doc = include_str!("../BENCHMARKS.md")]

pub mod action;
pub mod background;
mod bench;
pub mod bottom_bar;
mod cloud;
pub mod drawing;
pub mod fonts;
pub mod history;
pub mod host;
mod landmark;
pub mod make;
mod message;
pub mod notebook;
mod number_field;
mod plot;
pub mod prove;
pub mod request;
pub mod results;
pub mod set_up;
pub mod style;
pub mod terms;
mod title_block;
pub mod tokens;
pub mod top_strip;
pub mod tune;
pub mod view;
mod words;

pub use bench::{Bench, LEAST_WINDOW, OTHER_KEYS, Start};
