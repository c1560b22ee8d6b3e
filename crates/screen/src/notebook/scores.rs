//! The scores of the toe curve in large figures.

use egui::{Label, RichText, Sense, Ui};
use trammel_analysis::TravelCurve;
use trammel_build::LengthUnit;

use super::NotebookInput;
use crate::{
    terms::{self, Told},
    tokens::type_size,
    words::{decimal, length, signed},
};

pub(super) fn ui(ui: &mut Ui, input: &NotebookInput<'_>, curve: &TravelCurve) {
    let score = &curve.score;
    let unit = input.build.unit;
    let (per, per_mm) = match unit {
        LengthUnit::Inch => ("slope/in", 25.4),
        LengthUnit::Millimetre => ("slope/25 mm", 25.0),
    };
    let degrees = |rad: f64| rad.to_degrees();
    let largest_at = format!("At {} of wheel travel.", length(score.largest_at, unit));
    let figures = [
        (
            format!("{}°", decimal(degrees(score.largest), 2)),
            "largest",
            terms::LARGEST_TOE_CHANGE,
            largest_at.as_str(),
        ),
        (
            format!("{}°", decimal(degrees(score.rms), 2)),
            "RMS",
            terms::RMS_TOE_CHANGE,
            "",
        ),
        (
            format!("{}°", signed(degrees(score.slope) * per_mm, 2)),
            per,
            terms::SLOPE,
            "",
        ),
        (
            format!("{}°", signed(degrees(score.bowl), 2)),
            "bowl",
            terms::BOWL,
            "",
        ),
    ];
    ui.columns(figures.len(), |columns| {
        for (column, (figure, name, term, first)) in columns.iter_mut().zip(figures) {
            column.spacing_mut().item_spacing.y = 0.0;
            let large = RichText::new(figure).font(type_size::figure());
            let label = Label::new(large).sense(Sense::focusable_noninteractive());
            column.add(label).told_with(term, first);
            let name = RichText::new(name).small().color(input.tokens.ink_soft);
            column.label(name).told_with(term, first);
        }
    });
}
