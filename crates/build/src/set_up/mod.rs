//! What a build keeps of its setting up: what can be adjusted, every session of readings, and how well surveyed points are known.

mod check;
mod convert;
mod sheet;
mod spec;
mod statics;

pub(crate) use check::check;
pub(crate) use convert::convert;
pub use sheet::{SessionFault, SideSheet};
pub use spec::{
    Adjusted, AdjustedPart, Adjusters, RackEndRange, ReadingRow, RodRange, Session, SetUp,
    StackRange, SurveyedPoint, ToeMethod, TravelMeasure,
};
pub use statics::{Statics, Weights};
