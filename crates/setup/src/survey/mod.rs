//! Coordinates from a tape: weighted least squares over any mix of readings.

mod accuracy;
mod adjust;
mod blunder;
mod compare;
mod correction;
mod ellipse;
mod fault;
mod points;
mod reading;
mod start;
mod suggest;
mod weak;

pub use accuracy::{Reach, TapeClass, tape_deviation};
pub use adjust::{Checked, Placed, Surveyed};
pub use blunder::{Blunder, Slip};
pub use compare::{Moved, moved};
pub use correction::{Correction, Edge};
pub use ellipse::{Ellipse, View};
pub use fault::SurveyFault;
pub use points::{Hint, Place, PointId, ReadingId, Side, Survey};
pub use reading::{Reading, What};
pub use suggest::{Suggestion, suggest};
pub use weak::Weak;
