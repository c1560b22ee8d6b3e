//! Trammel's strength checks: what a member carries, what it can carry, and where each limit comes from.
//!
//! | module | subject |
//! |---|---|
//! | [`source`] | where a figure comes from, and how well that source was seen |
//! | [`thread`] | Unified and metric screw threads, found by what is stamped or said |
//! | [`grade`] | bolt grades and bar steels: proof, yield, tensile strength |
//! | [`stress`] | a round section under bending, axial force, torsion and shear |
//! | [`force`] | tie-rod force from the moments about the steering axis |
//! | [`rack_end`] | the threaded rack end as a cantilever: stress, factor, what would mend it |
//! | [`engagement`] | how much thread has to be screwed in, and the wall left around it |
//! | [`units`] | exact inch and pound conversions |
//!
//! Units throughout: mm, N, N mm, MPa, radians. Vectors are in ISO 8855 vehicle axes (x forward, y left, z up), though
//! nothing here depends on more than a right-handed frame. Nothing here does I/O or knows the screen, a colour or a file.
//!
//! A result says which limit was compared, never that a part is good enough: a static factor knows nothing of
//! fatigue, notches, weld heat, bent parts or impact.

pub mod engagement;
pub mod force;
pub mod grade;
pub mod rack_end;
pub mod source;
pub mod stress;
pub mod thread;
pub mod units;

mod number;

pub use number::BadNumber;
