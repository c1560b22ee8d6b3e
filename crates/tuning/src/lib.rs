//! Where the tie rod's joints belong.

mod curve;
mod joint;
mod map;
mod score;
mod stations;

pub use curve::{RackCurve, Sensitivity, ToeCurves, curves_with_sensitivity};
pub use joint::TieRodJoint;
pub use map::{Cell, Floor, FrameFault, MapFault, MapFrame, Plane, Reason, ToeMap};
pub use score::{Score, Scoring};
pub use stations::{StationFault, Stations};
