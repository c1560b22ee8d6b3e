//! Cards for setting up, as pages to print: what to measure, what was read and what to move, turns of the thread, signing off.
//!
//! | where | what |
//! |---|---|
//! | [`stations`] | the wheel heights and shock lengths to measure at, in the order of work |
//! | [`Card`], [`Card::tables`] | each card as tables |
//! | [`measuring_tables`], [`measuring_pdf`] | the sheet to measure spindles, racks, springs and joints by |
//! | [`measuring_sketches`] | where each of its figures is taken, as one drawing |
//! | [`sheets`], [`pdf`] | all cards of a build as pages, and as the bytes of a PDF |
//!
//! Derived from a build and never saved in it. No screen, no file, no clock: the same build gives the same bytes.

mod after;
mod before;
mod card;
mod fault;
mod measuring;
mod sign_off;
mod sketches;
mod stations;
mod turns;

pub use card::{Card, pdf, sheets};
pub use fault::CardFault;
pub use measuring::{measuring_pdf, measuring_tables};
pub use sign_off::checks;
pub use sketches::drawing as measuring_sketches;
pub use stations::{Station, stations};
