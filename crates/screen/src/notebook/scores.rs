//! The scores of the toe curve in large figures.

use egui::{RichText, Ui};
use trammel_analysis::TravelCurve;
use trammel_build::LengthUnit;

use super::NotebookInput;
use crate::{
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
    let figures = [
        (
            format!("{}°", decimal(degrees(score.largest), 2)),
            "largest",
            format!("The largest toe change over the travel, at {} of wheel travel.", length(score.largest_at, unit)),
        ),
        (
            format!("{}°", decimal(degrees(score.rms), 2)),
            "RMS",
            "Root of the mean square of the toe change over the travel: one figure for the whole curve.".into(),
        ),
        (
            format!("{}°", signed(degrees(score.slope) * per_mm, 2)),
            per,
            "Toe change for a little travel at the design height. Positive: toeing in as the wheel rises. A height error of a tie-rod joint shows here."
                .into(),
        ),
        (
            format!("{}°", signed(degrees(score.bowl), 2)),
            "bowl",
            "What is left at equal bump and droop when the slope is taken out. A length error of the tie rod shows here.".into(),
        ),
    ];
    ui.columns(figures.len(), |columns| {
        for (column, (figure, name, meaning)) in columns.iter_mut().zip(figures) {
            column.spacing_mut().item_spacing.y = 0.0;
            let hover = |r: egui::Response| r.on_hover_text(&meaning);
            let label = large(column, figure);
            hover(column.add(label));
            hover(column.label(RichText::new(name).small().color(input.tokens.ink_soft)));
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
