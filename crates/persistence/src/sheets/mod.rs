//! Sheets of readings as tables of our own: toe against travel, and a tape survey.

mod cells;
mod fault;
mod readings;
mod rows;
mod survey;

pub use fault::{SheetFileFault, SheetFileFaultKind};
pub use readings::read_readings;
pub use survey::{SurveyFile, read_survey};
