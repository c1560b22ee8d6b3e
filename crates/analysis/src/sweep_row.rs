//! One row of a table of poses, in the kernel's units.

use trammel_geometry::Measures;

/// What the columns are read from.
pub(crate) struct SweepRow {
    pub measures: Measures,
    pub margins: trammel_geometry::Margins,
    /// rad.
    pub toe_change: f64,
    /// To the vehicle's left positive, rad.
    pub steer: f64,
    /// The other wheel's, at the same travel and rack.
    pub other_steer: Option<f64>,
    pub ackermann: Option<f64>,
    /// N/mm.
    pub spring_rate: Option<f64>,
    /// Sign of y on this side.
    pub outboard: f64,
}
