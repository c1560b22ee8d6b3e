//! Sections of stock, their mass, and a cutting plan on stock lengths.

mod plan;
mod section;

pub use plan::{Bar, CutPiece, CuttingPlan, PlanError, SawRules, cutting_plan};
pub use section::StockSection;

use trammel_strength::source::Source;

/// Density of carbon steel, kg/m3.
pub const STEEL_DENSITY: f64 = 7850.0;
/// Source of [`STEEL_DENSITY`].
pub const STEEL_DENSITY_SOURCE: Source =
    Source::from_memory("EN 1991-1-1", "Table A.4: steel 77.0 to 78.5 kN/m3");
