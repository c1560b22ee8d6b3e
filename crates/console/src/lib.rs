//! The command line: what its words mean, and the commands that do the whole job without a window.
//!
//! | where | what |
//! |---|---|
//! | [`answer()`] | the words read, and what they ask for done, but for the window |
//! | [`Answer`] | what is left to the program: a window to open, or the code to end with |
//! | [`Fault`] | why it could not be done, one plain line each |
//! | [`complain`] | that line on standard error |

mod answer;
mod arguments;
mod commands;
mod fault;
mod files;
mod picture;
mod terminal;
mod words;

pub use answer::{Answer, UNUSABLE, answer};
pub use fault::Fault;
pub use terminal::complain;
pub use words::UsageFault;
