//! Trammel's shop geometry: from a size to an outline, a cut length, a drill, a list of stock.
//!
//! | module | subject |
//! |---|---|
//! | [`plane`] | closed contours of straight edges and true arcs |
//! | [`flat_part`] | a part cut from plate: outline, holes, bend lines, how many of it |
//! | [`tab`] | bracket tabs: straight, tapered, radiused; flat or coped foot; boxing plates and gussets |
//! | [`rack_bracket`] | the rack-end bracket, bent from one bar or welded of three plates |
//! | [`plate`] | mount plates with a pattern of holes |
//! | [`bend`] | bend allowance and flat length |
//! | [`coping`] | the notch of a tube that meets another, as a wrap-around template |
//! | [`mitre`] | the end of a tube that meets its twin at a round housing |
//! | [`end_cut`] | cuts around a tube's end: how far they run, their template |
//! | [`tie_rod`] | the tie-rod tube's length as a sum that can be printed |
//! | [`arm`] | the true shape of an A-arm and its tubes' cut lengths |
//! | [`spacer`] | spacers, sleeves, and the gap of a pair of tabs |
//! | [`tap_card`] | drilling and tapping a rack end, step by step |
//! | [`clearance_hole`] | holes for bolts by class of fit |
//! | [`minimums`] | edge distance, hole to bend, thickness to hole, each with its source |
//! | [`stock`] | sections, mass, cutting plan on stock lengths |
//! | [`nest`] | outlines on a stock plate |
//! | [`shown`] | lengths as the shop prints them, and rounding to its step |
//!
//! Units: mm, rad, kg. A part lies in its own plane: x to the right, y up. Nothing here knows a build, a sheet or a file. A check says what was compared
//! with which limit from which source, never that a part is good enough.

pub mod arm;
pub mod bend;
pub mod clearance_hole;
pub mod coping;
pub mod end_cut;
pub mod flat_part;
pub mod minimums;
pub mod mitre;
pub mod nest;
pub mod plane;
pub mod plate;
pub mod rack_bracket;
pub mod shown;
pub mod spacer;
pub mod stock;
pub mod tab;
pub mod tap_card;
pub mod tie_rod;

mod size;

pub use size::SizeError;
pub use trammel_strength::BadNumber;
