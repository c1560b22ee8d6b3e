//! Readings of toe against wheel travel: from what the instruments show to toe change with its uncertainty.

mod doubt;
mod fit;
mod method;
mod readings;
mod sheet;
mod travel;
mod way;

pub use doubt::{SignDoubt, sign_doubts};
pub use fit::{Shape, Uncertain};
pub use method::{Board, Method, MethodFault, Raw, SpotWay};
pub use readings::{Curve, ReadingsFault, ToePoint, ToeReadings};
pub use sheet::{Reduced, Row, Run, RunCheck, Sheet, SheetFault};
pub use travel::{TravelBy, TravelFault, travel};
pub use way::Way;
