//! The loupe: the map in a corner of the table, large enough to read and to put the joint in its place.
//!
//! | where | what |
//! |---|---|
//! | `place` | where it stands |
//! | `touch`, `keys` | what hand and keyboard do on it |
//! | `ink` | frame, caption and map |
//! | `lines`, `labels` | level lines and borders on the map, and what is written on them |
//! | `marks` | joint, best spot, rule and reading place |

mod ink;
mod keys;
mod labels;
mod lines;
mod marks;
mod place;
mod touch;

pub(crate) use ink::{Inked, ink, reasons};
pub(crate) use keys::Keys;
pub(crate) use marks::{best_mark, in_sight, joint_mark, reading_mark, rect_of, rule_mark};
pub(crate) use place::{Place, place};
pub(crate) use touch::{Touch, touch, wheel};

/// Margin around the map inside the frame, and the caption's height, points.
const MARGIN: f32 = 6.0;
const CAPTION: f32 = 21.0;
/// Narrowest and widest map, mm.
pub(crate) const WIDTHS: [f64; 2] = [20.0, 320.0];
