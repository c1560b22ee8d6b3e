//! The build file, format 1: what several of its parts are written with.

use serde::Deserialize;

/// Three numbers in brackets.
pub(crate) type Triple = [f64; 3];

#[derive(Clone, Copy, Debug, Deserialize)]
#[serde(rename_all = "snake_case")]
pub(crate) enum BoltAxis {
    ForeAft,
    Vertical,
    Lateral,
    Direction(f64, f64, f64),
}
