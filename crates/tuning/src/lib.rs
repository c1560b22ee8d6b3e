//! Where the tie rod's joints belong.

mod best;
mod curve;
mod joint;
mod map;
mod rule;
mod score;
mod stations;

pub use best::{BestSpot, Movable, Search, SearchFault, Spot, Ways, best_spot};
pub use curve::{RackCurve, Sensitivity, ToeCurves, curves_with_sensitivity};
pub use joint::TieRodJoint;
pub use map::{Cell, Floor, FrameFault, MapFault, MapFrame, Plane, Reason, ToeMap};
pub use rule::{FrontPoint, TwoLineRule, two_line_rule};
pub use score::{Score, Scoring};
pub use stations::{StationFault, Stations};
