//! The scores of the toe curve in large figures.

use egui::{RichText, Sense, Ui};
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
            let label = large(column, figure).sense(Sense::focusable_noninteractive());
            column.add(label).told_with(term, first);
            let name = RichText::new(name).small().color(input.tokens.ink_soft);
            column.label(name).told_with(term, first);
        }
    });
}

/// A figure on one line: large, or smaller where the column has no room for it.
fn large(column: &Ui, figure: String) -> egui::Label {
    let wide = |font| {
        let galley = (column.painter()).layout_no_wrap(figure.clone(), font, egui::Color32::WHITE);
        galley.size().x > column.available_width()
    };
    let font = if wide(type_size::figure()) {
        type_size::head()
    } else {
        type_size::figure()
    };
    egui::Label::new(RichText::new(figure).font(font)).extend()
}
