//! Trammel's strength checks: what a member carries, what it can carry, and where each limit comes from.
//!
//! | module | subject |
//! |---|---|
//! | [`source`] | where a figure comes from, and how well that source was seen |
//! | [`thread`] | Unified and metric screw threads, found by what is stamped or said |
//! | [`grade`] | bolt grades and bar steels: proof, yield, tensile strength |
//! | [`stress`] | a round section under bending, axial force, torsion and shear |
//! | [`material`] | tube, plate and bar: yield, tensile strength, stiffness |
//! | [`section`] | areas and moments of tubes and bars |
//! | [`mod@column`] | the compression at which a bar buckles |
//! | [`check`] | a value against a limit: what every check hands back |
//! | [`tie_rod`] | the tie rod as a bar: axial, buckling, side hit |
//! | [`rod_end`] | rod ends and ball joints: load and misalignment |
//! | [`arm_tubes`] | an A-arm's tubes as struts and beams |
//! | [`bolt`], [`bracket`], [`weld`] | bolts in single and double shear, tabs and ears, the fillet around them |
//! | [`force`] | tie-rod force from the moments about the steering axis |
//! | [`statics`] | every force of a corner at a pose: rod, ball joints, pivots, spring, rack, hands |
//! | [`loads`] | load cases as data, wheel loads, the search for the worst pose |
//! | [`rack_end`] | the threaded rack end as a cantilever: stress, factor, what would mend it |
//! | [`engagement`] | how much thread has to be screwed in, and the wall left around it |
//! | [`joint_room`] | a rod end's body between its ears, its jam nut before them |
//! | [`clearance`] | least gaps between tie rod, arms, spring and wheel |
//! | [`proof`] | every part under every load case at its worst pose, worst first |
//! | [`units`] | exact inch and pound conversions |
//!
//! Units throughout: mm, N, N mm, MPa, radians. Vectors are in ISO 8855 vehicle axes (x forward, y left, z up), though
//! nothing here depends on more than a right-handed frame. Nothing here does I/O or knows the screen, a colour or a file.
//!
//! A result says which limit was compared, never that a part is good enough: a static factor knows nothing of
//! fatigue, notches, weld heat, bent parts or impact.

#![doc = include_str!("../BENCHMARKS.md")]

pub mod arm_tubes;
pub mod bolt;
pub mod bracket;
pub mod check;
pub mod clearance;
pub mod column;
pub mod engagement;
pub mod force;
pub mod grade;
pub mod joint_room;
pub mod loads;
pub mod material;
pub mod proof;
pub mod rack_end;
pub mod rod_end;
pub mod section;
pub mod source;
pub mod statics;
pub mod stress;
pub mod thread;
pub mod tie_rod;
pub mod units;
pub mod weld;

mod number;

pub use number::BadNumber;
