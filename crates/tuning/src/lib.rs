//! Where the tie rod's joints belong, and what it costs when they are elsewhere.
//!
//! On top of the kernel: millimetres and radians, ISO 8855 axes, a left corner (a right one in the mirror). Pure
//! functions and plain data: no file, no window,
//! no clock. Threads only in [`scatter`], whose result does not depend on them. What can't be built or reached is a
//! typed error or a marked cell, never a panic and
//! never a number that is not one.
//!
//! | where | what |
//! |---|---|
//! | [`Stations`], [`Score`], [`ToeCurves`] | the poses judged, the figures they are judged by, and the plain way to them |
//! | [`ToeMap`] | the score of every place of a joint over a rectangle, coarse to fine: [`ToeMap::refine`] |
//! | [`best_spot`] | the exact best place of one joint or both, along a line, in the front plane or free, and in whole steps |
//! | [`two_line_rule`] | the trade's rule beside it |
//! | [`Cause`], [`Split`], [`RodSide`] | slope and bowl: height error and length error, with directions that know ahead from behind |
//! | [`effect`] | what one turn or washer does, to static toe and to the curve |
//! | [`scatter`] | what build error does: band, share within a limit, which coordinate matters |
//! | [`lifted`] | a wheel travel becomes the ride height |
//! | [`misalignment`] | tilt of a joint on its bolt |
//! | [`Tuner`] | a global search with limits and wishes |
//!
//! # How the map is worked out
//! With the wheel centre held at a height, the upright on its two arms has one freedom left, its turn about the
//! steering axis, and that family does not depend on the tie
//! rod ([`trammel_geometry::Arms`]). A tie rod picks the turn at which it has its length; the difference of its
//! squared length to that at the design position is straight
//! in the free joint's coordinates, because the joint's own square drops out. So for every travel the family is
//! written down once as a power series in the turn
//! (through Chebyshev points, to 2e-13 rad); a cell then is one Newton iteration on a short polynomial, without a root
//! or an angle function, eight cells side by
//! side. Cells near a dead point, or beyond the series' range, are posed plainly, so the map agrees with the plain
//! solver everywhere.
//!
#![doc = include_str!("../BENCHMARKS.md")]
#![allow(
    clippy::neg_cmp_op_on_partial_ord,
    reason = "!(a > b) refuses what is not a number as well, and that is meant wherever it stands"
)]

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
    Aim, Dimension, Emphasis, Figure, FigureUnit, Figures, Progress, RackEndFactor, Solution,
    TuneFault, TuneRequest, Tuned, Tuner, Variable, Wish,
};
pub use best::{
    BestSpot, Block, Movable, Search, SearchFault, Spot, Ways, best_spot, best_spot_clear_of,
};
pub use cause::{Cause, HeightError, LengthError, RodSide, Split};
pub use coordinate::{Coordinate, Hardpoint};
pub use curve::{RackCurve, Sensitivity, ToeCurves, curves_with_sensitivity};
pub use joint::TieRodJoint;
pub use lift::{LiftFault, Lifted, Reset, lifted};
pub use map::{Cell, Floor, FrameFault, MapFault, MapFrame, Plane, Reason, ToeMap};
pub use misalignment::{
    BoltDirection, Tilt, kindest_bolt, misalignment, most_misalignment, rod_seen,
};
pub use remedy::{Adjustment, Effect, EffectFault, effect};
pub use rule::{FrontPoint, TwoLineRule, two_line_rule};
pub use scatter::{
    Band, Quantiles, RackBand, Scatter, ScatterFault, ScatterRequest, Share, Spread, Tolerance,
    default_tolerances, normal_quantile, scatter,
};
pub use score::{Score, Scoring};
pub use stations::{StationFault, Stations};
pub use trammel_geometry::Axis;
