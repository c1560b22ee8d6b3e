//! All figures of a layout beside those of the build as it is: exactly, and in whole steps of the shop.

use egui::{Grid, RichText, Ui};
use trammel_tuning::{Figure, Figures, Solution};

use super::Page;
use crate::{
    terms::Told,
    tune::auto::{AutoSettings, Form, How, Want, factor, long_name, sign, taken, term},
    words::decimal,
};

pub(super) fn table(
    ui: &mut Ui,
    page: Page<'_>,
    start: Option<&Figures>,
    (solution, form): (&Solution, Form),
    settings: &AutoSettings,
) {
    let tokens = page.input.tokens;
    let soft = |text: &str| RichText::new(text).small().color(tokens.ink_soft);
    let exact = &solution.exact.figures;
    let rounded = solution.in_steps.as_ref().map(|s| &s.figures);
    Grid::new("layout figures")
        .num_columns(5)
        .min_row_height(14.0)
        .spacing(egui::vec2(10.0, 1.0))
        .show(ui, |ui| {
            ui.label("");
            ui.label(soft("now"));
            let head = |of: Form| {
                let text = RichText::new(of.words()).small();
                if of == form {
                    text.strong().underline()
                } else {
                    text.color(tokens.ink_soft)
                }
            };
            ui.label(head(Form::Exact));
            ui.label(head(Form::InSteps))
                .on_hover_text("Every moved dimension rounded to its step, then judged again.");
            ui.label(soft("wanted"));
            ui.end_row();
            for figure in Figure::ALL {
                if exact.get(figure).is_none() {
                    continue;
                }
                ui.label(RichText::new(long_name(figure)).small())
                    .told_with(term(figure), taken(figure));
                let columns = [
                    (start, false),
                    (Some(exact), form == Form::Exact),
                    (rounded, form == Form::InSteps),
                ];
                for (figures, is_shown) in columns {
                    let text = figures.map_or_else(String::new, |f| told(page, f, figure));
                    let text = RichText::new(text).small();
                    ui.label(if is_shown { text.strong() } else { text });
                }
                let want = settings.wants.iter().find(|w| w.on && w.figure == figure);
                if let Some(want) = want {
                    let judged = match form {
                        Form::InSteps => rounded.unwrap_or(exact),
                        Form::Exact => exact,
                    };
                    let met = judged.get(figure);
                    let missed = met.is_some_and(|v| is_missed(want, v));
                    let text = format!("{} {}", want.how.word(), value(page, figure, want.value));
                    let text = if missed {
                        format!("{text}: missed")
                    } else {
                        text
                    };
                    let colour = if missed {
                        tokens.caution
                    } else {
                        tokens.ink_soft
                    };
                    ui.label(RichText::new(text).small().color(colour));
                }
                ui.end_row();
            }
        });
}

fn told(page: Page<'_>, figures: &Figures, figure: Figure) -> String {
    figures
        .get(figure)
        .filter(|v| v.is_finite())
        .map_or_else(|| "none".to_owned(), |v| value(page, figure, v))
}

fn value(page: Page<'_>, figure: Figure, value: f64) -> String {
    let unit = page.input.build.unit;
    let sign = sign(figure, unit);
    let gap = if sign.is_empty() || sign.starts_with('°') || sign == "%" {
        ""
    } else {
        " "
    };
    let decimals = match figure {
        Figure::ToeChange | Figure::ToeChangeAtLock | Figure::CamberGain => 2,
        Figure::Ackermann => 0,
        Figure::RackEndFactor => 2,
        _ => 1,
    };
    format!(
        "{}{gap}{sign}",
        decimal(value * factor(figure, unit), decimals)
    )
}

/// A limit that does not hold; a target is never missed.
fn is_missed(want: &Want, value: f64) -> bool {
    let slack = 1e-9 * (1.0 + value.abs());
    match want.how {
        How::AtLeast => value < want.value - slack,
        How::AtMost => value > want.value + slack,
        How::Near => false,
    }
}
