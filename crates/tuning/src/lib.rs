//! Where the tie rod's joints belong.

mod auto;
mod best;
mod cause;
mod coordinate;
mod curve;
mod joint;
mod lift;
mod map;
mod misalignment;
mod remedy;
mod rod_length;
mod rule;
mod scatter;
mod score;
mod stations;

pub use auto::{
    Aim, Figure, Figures, Progress, RackEndFactor, Solution, TuneFault, TuneRequest, Tuned, Tuner,
    Variable, Wish,
};
pub use best::{BestSpot, Movable, Search, SearchFault, Spot, Ways, best_spot};
pub use cause::{Cause, HeightError, LengthError, RodSide, Split};
pub use coordinate::{Axis, Coordinate, Hardpoint};
pub use curve::{RackCurve, Sensitivity, ToeCurves, curves_with_sensitivity};
pub use joint::TieRodJoint;
pub use lift::{LiftFault, Lifted, Reset, lifted};
pub use map::{Cell, Floor, FrameFault, MapFault, MapFrame, Plane, Reason, ToeMap};
pub use misalignment::{BoltDirection, Tilt, kindest_bolt, misalignment, most_misalignment};
pub use remedy::{Adjustment, Effect, EffectFault, effect};
pub use rule::{FrontPoint, TwoLineRule, two_line_rule};
pub use scatter::{
    Band, Quantiles, RackBand, Scatter, ScatterFault, ScatterRequest, Share, Spread, Tolerance,
    default_tolerances, scatter,
};
pub use score::{Score, Scoring};
pub use stations::{StationFault, Stations};
