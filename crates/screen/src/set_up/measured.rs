//! The newest session as points of the plot, worked out with every number typed.

use trammel_analysis::advice_words;
use trammel_build::{AxleModel, Build, Side};

/// A measured point: wheel travel, mm; toe change and its standard deviation, degrees.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct MeasuredPoint {
    pub travel: f64,
    pub change: f64,
    pub deviation: f64,
}

/// The readings of one wheel in the newest session.
#[derive(Clone, Debug, Default, PartialEq)]
pub(crate) struct Measured {
    /// At the rack position nearest to the centre.
    pub points: Vec<MeasuredPoint>,
    /// What is still missing, or how well a run came back.
    pub remarks: Vec<String>,
    /// How one reading repeats, degrees, where something was read twice.
    pub repeatability: Option<f64>,
}

impl Measured {
    pub(crate) fn of(build: &Build, model: &AxleModel, side: Side) -> Self {
        let Some(session) = build.set_up.sessions.last().filter(|s| !s.rows.is_empty()) else {
            return Self::default();
        };
        let remark = |text: String| Self {
            remarks: vec![text],
            ..Self::default()
        };
        let sheets = match session.sheets(model, build.unit) {
            Ok(sheets) => sheets,
            Err(fault) => return remark(fault.to_string()),
        };
        let Some(sheet) = sheets.into_iter().find(|s| s.side == side) else {
            return Self::default();
        };
        let reduced = match sheet.sheet.reduce() {
            Ok(reduced) => reduced,
            Err(fault) => return remark(fault.to_string()),
        };
        let points = reduced.readings.central().map_or(&[][..], |c| &c.points);
        Self {
            points: points
                .iter()
                .map(|p| MeasuredPoint {
                    travel: p.travel,
                    change: p.change.to_degrees(),
                    deviation: p.deviation.to_degrees(),
                })
                .collect(),
            remarks: advice_words::returns(&reduced),
            repeatability: reduced.repeatability.map(f64::to_degrees),
        }
    }
}
