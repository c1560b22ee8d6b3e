//! One way to draw a curve: title, axes with words, a ghost, marks.

use std::ops::RangeInclusive;

use egui::{Color32, RichText, Stroke, TextStyle, Ui, Vec2b};
use egui_plot::{
    AxisHints, GridInput, GridMark, HLine, Line, LineStyle, Plot, PlotPoints, Points, Polygon,
    VLine,
};

use crate::{
    number_field::tell_node,
    tokens::{Tokens, weight},
    words,
};

/// A line of a plot, in the units of its axes.
#[derive(Clone, Debug)]
pub struct Trace {
    /// What a screen reader and the pointer call it.
    pub name: String,
    /// Points in order.
    pub points: Vec<[f64; 2]>,
    /// Colour.
    pub colour: Color32,
    /// How it is drawn.
    pub manner: Manner,
}

/// How a line of a plot is drawn.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Manner {
    /// Wide.
    Plain,
    /// Narrow.
    Thin,
    /// Narrow and dashed: what is not built but would be.
    Dashed,
    /// As narrow as can be.
    Hair,
    /// Narrow, dashed and grey: how it was.
    Ghost,
    /// Points by themselves: what was read.
    Marks,
    /// The ends of an error bar.
    Bar,
}

/// A plot of some traces over one axis.
#[derive(Clone, Debug)]
pub struct Curve<'a> {
    /// Name for the screen reader; unique on the screen.
    pub name: &'a str,
    /// Height, points.
    pub height: f32,
    /// Lines, the ghost first.
    pub traces: Vec<Trace>,
    /// Range of the horizontal axis.
    pub x: RangeInclusive<f64>,
    /// Least half-range or range of the vertical axis, so that a flat curve looks flat.
    pub least_span: f64,
    /// Band within the limit, about nought.
    pub within: Option<f64>,
    /// A band about the curve: place, lower and upper end.
    pub band: Vec<[f64; 3]>,
    /// Where the moved linkage is.
    pub here: Option<[f64; 2]>,
    /// Sign of the horizontal axis.
    pub x_sign: &'a str,
    /// Sign of the vertical axis.
    pub y_sign: &'a str,
    /// Words under the horizontal axis.
    pub x_label: String,
}

/// A plot that stays where it is, under a name that is unique on the screen.
pub(crate) fn still<'a>(name: &str) -> Plot<'a> {
    Plot::new(name.to_owned())
        .allow_drag(false)
        .allow_zoom(false)
        .allow_scroll(false)
        .allow_boxed_zoom(false)
        .allow_double_click_reset(false)
        .auto_bounds(Vec2b::FALSE)
        .show_crosshair(false)
        .x_grid_spacer(|g| ticks(&g, 5.0))
}

/// The axis below a plot: numbers, and words under them.
///
/// An axis learns from being painted how much room it takes, so that the first frame of a plot, and the first after it was out of sight, would
/// show the words on the numbers. Their room is kept from the beginning instead.
pub(crate) fn below<'a>(ui: &Ui, label: &str, tokens: &Tokens) -> AxisHints<'a> {
    let numbers = ui.text_style_height(&TextStyle::Body);
    let words = ui.text_style_height(&TextStyle::Small);
    AxisHints::new_x()
        .label(
            RichText::new(label.to_owned())
                .small()
                .color(tokens.ink_soft),
        )
        .label_spacing(egui::Rangef::new(16.0, 24.0))
        .min_thickness(numbers + 1.25 * words)
}

impl Curve<'_> {
    /// Paints it over the width that is left; the horizontal place that was clicked or dragged to, if any.
    pub fn ui(self, ui: &mut Ui, tokens: &Tokens) -> Option<f64> {
        let (low, high) = self.vertical_range();
        let [left, right] = self.horizontal_ends();
        let (x_sign, y_sign) = (self.x_sign.to_owned(), self.y_sign.to_owned());
        let decimals = decimals_for(high - low);
        let y_count = f64::from((self.height / 40.0).clamp(2.0, 5.0));
        let x_decimals = if self.x.end() - self.x.start() > 20.0 {
            0
        } else {
            1
        };
        let x_axis = below(ui, &self.x_label, tokens).formatter(move |mark, _| {
            words::signed(
                mark.value,
                tick_decimals(mark.step_size).min(x_decimals + 2),
            )
        });
        let y_axis = AxisHints::new_y()
            .label_spacing(egui::Rangef::new(8.0, 12.0))
            .min_thickness(44.0)
            .formatter(move |mark, _| {
                format!(
                    "{}{}",
                    words::signed(mark.value, tick_decimals(mark.step_size)),
                    y_sign
                )
            });
        let plot = still(self.name)
            .height(self.height)
            .default_x_bounds(left, right)
            .default_y_bounds(low, high)
            .sense(egui::Sense::click_and_drag())
            .grid_color(tokens.ink_faint)
            .y_grid_spacer(move |g| ticks(&g, y_count))
            .grid_spacing(egui::Rangef::new(2.0, 24.0))
            .custom_x_axes(vec![x_axis])
            .custom_y_axes(vec![y_axis])
            .label_formatter({
                let y_sign = self.y_sign.to_owned();
                move |hover| {
                    let at = hover_point(hover)?;
                    Some(format!(
                        "{} {}\n{}{}",
                        words::signed(at[0], x_decimals + 1),
                        x_sign,
                        words::signed(at[1], decimals + 1),
                        y_sign
                    ))
                }
            });
        let words = self.words(x_decimals + 1, decimals + 1);
        let response = plot.show(ui, |p| {
            p.set_plot_bounds_x(left..=right);
            p.set_plot_bounds_y(low..=high);
            if let Some(limit) = self.within {
                let (a, b) = (left, right);
                let band = vec![[a, -limit], [b, -limit], [b, limit], [a, limit]];
                p.polygon(
                    Polygon::new("within the limit", PlotPoints::from(band))
                        .fill_color(tokens.within)
                        .stroke(Stroke::NONE)
                        .allow_hover(false),
                );
            }
            p.hline(
                HLine::new("", 0.0)
                    .stroke(Stroke::new(weight::HAIR, tokens.ink_soft))
                    .allow_hover(false),
            );
            p.vline(
                VLine::new("", 0.0)
                    .stroke(Stroke::new(weight::HAIR, tokens.ink_faint))
                    .allow_hover(false),
            );
            band(p, &self.band, tokens);
            for trace in self.traces {
                if trace.manner == Manner::Marks {
                    p.points(marks(trace));
                } else {
                    p.line(line(trace, tokens));
                }
            }
            if let Some(here) = self.here {
                p.points(
                    Points::new("here", PlotPoints::from(vec![here]))
                        .radius(5.0)
                        .color(tokens.ink)
                        .allow_hover(false),
                );
            }
        });
        let inner = response.response;
        let name = self.name.to_owned();
        inner.widget_info(|| egui::WidgetInfo::labeled(egui::Role::Figure, true, &name));
        tell_node(ui, inner.id, &words);
        let asked = inner.clicked() || inner.dragged();
        let at = asked.then(|| inner.interact_pointer_pos()).flatten()?;
        let x = response.transform.value_from_position(at).x;
        let [low, high] = opened([*self.x.start(), *self.x.end()]);
        Some(x.clamp(low, high))
    }

    /// What the plot shows, for a screen reader: each line from its lowest to its highest, and where the moved linkage is.
    fn words(&self, x_decimals: usize, y_decimals: usize) -> String {
        let y = |v: f64| format!("{}{}", words::signed(v, y_decimals), self.y_sign);
        let mut parts: Vec<String> = Vec::new();
        for trace in &self.traces {
            if matches!(trace.manner, Manner::Hair | Manner::Bar) {
                continue;
            }
            let ys = || trace.points.iter().map(|p| p[1]).filter(|v| v.is_finite());
            let (low, high) = (
                ys().fold(f64::INFINITY, f64::min),
                ys().fold(f64::NEG_INFINITY, f64::max),
            );
            parts.push(if low <= high {
                format!("{}: {} to {}", trace.name, y(low), y(high))
            } else {
                format!("{}: nothing to show", trace.name)
            });
        }
        if let Some([at, here]) = self.here {
            let at = words::signed(at, x_decimals);
            parts.push(format!("{} at {at} {}", y(here), self.x_sign));
        }
        if parts.is_empty() {
            parts.push("nothing to show".to_owned());
        }
        parts.join("; ")
    }

    /// Ends of the horizontal axis: a little wider than its range where readings are shown, so that those at its ends are whole.
    fn horizontal_ends(&self) -> [f64; 2] {
        let (left, right) = (*self.x.start(), *self.x.end());
        let marks = self.traces.iter().any(|t| t.manner == Manner::Marks);
        let more = if marks { 0.025 * (right - left) } else { 0.0 };
        opened([left - more, right + more])
    }

    /// Ends of the vertical axis. A faint family may make it three times as long as the other lines ask for, and is cut off there.
    fn vertical_range(&self) -> (f64, f64) {
        let ends = self.band.iter().flat_map(|b| [b[1], b[2]]);
        let ys = self
            .traces
            .iter()
            .filter(|t| t.manner != Manner::Hair)
            .flat_map(|t| t.points.iter().map(|p| p[1]))
            .chain(ends)
            .filter(|y| y.is_finite());
        let (mut low, mut high) = ys.fold((f64::INFINITY, f64::NEG_INFINITY), |(l, h), y| {
            (l.min(y), h.max(y))
        });
        if low > high {
            (low, high) = (0.0, 0.0);
        }
        if let Some(limit) = self.within {
            low = low.min(-1.3 * limit);
            high = high.max(1.3 * limit);
        }
        let family = self.traces.iter().filter(|t| t.manner == Manner::Hair);
        let [least, most] = [2.0 * low - high, 2.0 * high - low];
        for y in family.flat_map(|t| t.points.iter().map(|p| p[1])) {
            if y.is_finite() {
                (low, high) = (low.min(y.max(least)), high.max(y.min(most)));
            }
        }
        let middle = 0.5 * (low + high);
        let span = (high - low).max(self.least_span) * 1.16;
        opened([middle - 0.5 * span, middle + 0.5 * span]).into()
    }
}

/// Ends of an axis that a plot can take: finite, the left one less than the right. A range of one place is widened about it.
pub(crate) fn opened([low, high]: [f64; 2]) -> [f64; 2] {
    // Differences of larger numbers would not be finite on the way to the screen.
    const LARGEST: f64 = 1e30;
    let end = |v: f64| {
        if v.is_nan() {
            0.0
        } else {
            v.clamp(-LARGEST, LARGEST)
        }
    };
    let (low, high) = (end(low).min(end(high)), end(low).max(end(high)));
    let least = 1e-6 * low.abs().max(high.abs()).max(1e-3);
    if high - low > least {
        [low, high]
    } else {
        let middle = 0.5 * (low + high);
        let more = 0.5 * middle.abs().max(1.0);
        [middle - more, middle + more]
    }
}

/// The band as quadrilaterals side by side, since a polygon must be convex.
fn band(p: &mut egui_plot::PlotUi<'_>, band: &[[f64; 3]], tokens: &Tokens) {
    let fill = tokens.wash(tokens.tie_rod, if tokens.dark { 0.28 } else { 0.22 });
    for pair in band.windows(2) {
        let &[[xa, la, ha], [xb, lb, hb]] = pair else {
            continue;
        };
        let corners = vec![[xa, la], [xb, lb], [xb, hb], [xa, ha]];
        p.polygon(
            Polygon::new("nine of ten builds", PlotPoints::from(corners))
                .fill_color(fill)
                .stroke(Stroke::NONE)
                .allow_hover(false),
        );
    }
}

fn marks<'a>(trace: Trace) -> Points<'a> {
    Points::new(trace.name, PlotPoints::from(trace.points))
        .radius(3.5)
        .color(trace.colour)
}

fn line<'a>(trace: Trace, tokens: &Tokens) -> Line<'a> {
    let (width, colour) = match trace.manner {
        Manner::Plain => (weight::WIDE, trace.colour),
        Manner::Thin | Manner::Dashed => (weight::SYMBOL, trace.colour),
        Manner::Hair => (weight::HAIR, trace.colour),
        Manner::Bar | Manner::Marks => (weight::NARROW, trace.colour),
        Manner::Ghost => (weight::NARROW, tokens.ink_soft),
    };
    let manner = trace.manner;
    let line = Line::new(trace.name, PlotPoints::from(trace.points))
        .color(colour)
        .width(width);
    match manner {
        Manner::Ghost => line.style(LineStyle::dashed_dense()).allow_hover(false),
        Manner::Dashed => line.style(LineStyle::dashed_loose()),
        _ => line,
    }
}

fn hover_point(hover: &egui_plot::HoverPosition<'_>) -> Option<[f64; 2]> {
    match hover {
        egui_plot::HoverPosition::NearDataPoint { position, .. } => Some([position.x, position.y]),
        egui_plot::HoverPosition::Elsewhere { .. } => None,
    }
}

/// Ticks at 1, 2 or 5 times a power of ten, about `count` of them.
pub(crate) fn ticks(grid: &GridInput, count: f64) -> Vec<GridMark> {
    let (low, high) = grid.bounds;
    let step = round_step((high - low) / count);
    if step.is_nan() || step <= 0.0 {
        return Vec::new();
    }
    let first = (low / step).ceil() as i64;
    let last = (high / step).floor() as i64;
    (first..=last.min(first + 40))
        .map(|i| GridMark {
            value: i as f64 * step,
            step_size: step,
        })
        .collect()
}

fn round_step(rough: f64) -> f64 {
    if !(rough > 0.0 && rough.is_finite()) {
        return 0.0;
    }
    let power = 10f64.powf(rough.log10().floor());
    let part = rough / power;
    power
        * if part < 1.5 {
            1.0
        } else if part < 3.5 {
            2.0
        } else if part < 7.5 {
            5.0
        } else {
            10.0
        }
}

pub(crate) fn tick_decimals(step: f64) -> usize {
    if step > 0.0 {
        (-step.log10().floor()).clamp(0.0, 6.0) as usize
    } else {
        0
    }
}

fn decimals_for(span: f64) -> usize {
    tick_decimals(span / 20.0)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn ticks_stand_on_round_numbers_inside_the_range() {
        let marks = ticks(
            &GridInput {
                bounds: (-0.37, 0.41),
                base_step_size: 0.01,
            },
            4.0,
        );
        let values: Vec<_> = marks
            .iter()
            .map(|m| (m.value * 1e9).round() / 1e9)
            .collect();
        assert_eq!(values, [-0.2, 0.0, 0.2, 0.4]);
    }

    /// Random events stopped the window at a ride-height study of a single row.
    #[test]
    fn a_plot_over_a_single_place_is_painted() {
        for x in [0.0..=0.0, 5.0..=5.0, f64::NAN..=f64::NAN, 3.0..=-3.0] {
            for y in [0.0, 1e308, f64::NAN] {
                egui::__run_test_ui(|ui| {
                    let curve = Curve {
                        name: "a plot",
                        height: 100.0,
                        traces: vec![Trace {
                            name: "one place".into(),
                            points: vec![[*x.start(), y], [*x.end(), -y]],
                            colour: Color32::WHITE,
                            manner: Manner::Plain,
                        }],
                        x: x.clone(),
                        least_span: 0.0,
                        within: None,
                        band: Vec::new(),
                        here: None,
                        x_sign: "in",
                        y_sign: "°",
                        x_label: String::new(),
                    };
                    assert_eq!(curve.ui(ui, &Tokens::dark()), None);
                });
            }
        }
    }

    #[test]
    fn ends_of_an_axis_are_in_order_and_apart() {
        assert_eq!(opened([-2.0, 3.0]), [-2.0, 3.0]);
        for ends in [
            [0.0, 0.0],
            [7.0, 7.0],
            [f64::NEG_INFINITY, f64::INFINITY],
            [2.0, f64::NAN],
        ] {
            let [low, high] = opened(ends);
            assert!(
                low < high && (high - low).is_finite(),
                "{ends:?}: {low} {high}"
            );
        }
    }

    #[test]
    fn an_empty_range_has_no_ticks() {
        assert!(
            ticks(
                &GridInput {
                    bounds: (1.0, 1.0),
                    base_step_size: 1.0
                },
                4.0
            )
            .is_empty()
        );
        assert!(
            ticks(
                &GridInput {
                    bounds: (0.0, f64::NAN),
                    base_step_size: 1.0
                },
                4.0
            )
            .is_empty()
        );
    }

    #[test]
    fn a_tick_shows_the_decimals_of_its_step() {
        assert_eq!(
            [tick_decimals(0.5), tick_decimals(0.02), tick_decimals(10.0)],
            [1, 2, 0]
        );
    }
}
