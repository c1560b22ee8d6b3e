//! The toe map: what every place of a tie-rod joint would score over the whole travel.

mod frame;
mod lanes;
mod range;
mod rod;
mod series;
mod table;
mod toe_map;
mod valley;

pub use frame::{FrameFault, MapFrame, Plane};
pub use toe_map::{Cell, MapFault, Reason, ToeMap};
pub use valley::Floor;
