//! Things set against each other in two figures: a plot of points, the numbered ones to be clicked.

use egui::{Align2, Pos2, Rect, Sense, Stroke, Ui, vec2};
use egui_plot::{AxisHints, PlotPoint, PlotPoints, Points};

use crate::{
    number_field::tell_node,
    plot::{below, opened, still, tick_decimals, ticks},
    tokens::{Tokens, type_size, weight},
    words,
};

/// A numbered point.
#[derive(Clone, Debug)]
pub struct Mark {
    /// What a screen reader says.
    pub name: String,
    /// What is written beside it.
    pub number: String,
    /// Where it is.
    pub at: [f64; 2],
    /// Whether it is the one that is looked at.
    pub chosen: bool,
}

/// A plot of points.
#[derive(Clone, Debug)]
pub struct Cloud<'a> {
    /// Name for the screen reader; unique on the screen.
    pub name: &'a str,
    /// Height, points.
    pub height: f32,
    /// Range of the horizontal axis.
    pub x: [f64; 2],
    /// Range of the vertical axis.
    pub y: [f64; 2],
    /// Words under the horizontal axis.
    pub x_label: String,
    /// Sign of the vertical axis.
    pub y_sign: &'static str,
    /// Points that are only there to be seen.
    pub faint: Vec<[f64; 2]>,
    /// How it is now, a cross.
    pub now: Option<[f64; 2]>,
    /// Points to be clicked.
    pub marks: Vec<Mark>,
}

/// How near to a mark a click counts, points either way.
const NEAR: f32 = 9.0;

impl Cloud<'_> {
    /// Paints it over the width that is left; the mark that was clicked.
    pub fn ui(self, ui: &mut Ui, tokens: &Tokens) -> Option<usize> {
        let (x, y) = (opened(self.x), opened(self.y));
        let sign = self.y_sign;
        let x_axis = below(ui, &self.x_label, tokens)
            .formatter(|mark, _| words::decimal(mark.value, tick_decimals(mark.step_size)));
        let y_axis = AxisHints::new_y()
            .label_spacing(egui::Rangef::new(8.0, 12.0))
            .min_thickness(44.0)
            .formatter(move |mark, _| {
                let decimals = tick_decimals(mark.step_size);
                format!("{}{sign}", words::decimal(mark.value, decimals))
            });
        let response = still(self.name)
            .height(self.height)
            .sense(Sense::hover())
            .grid_color(tokens.ink_faint)
            .y_grid_spacer(|g| ticks(&g, 4.0))
            .custom_x_axes(vec![x_axis])
            .custom_y_axes(vec![y_axis])
            .label_formatter(|_| None)
            .show(ui, |p| {
                p.set_plot_bounds_x(x[0]..=x[1]);
                p.set_plot_bounds_y(y[0]..=y[1]);
                let faint = Points::new("places tried", PlotPoints::from(self.faint.clone()));
                p.points(faint.radius(1.6).color(tokens.ink_faint).allow_hover(false));
            });
        let name = self.name.to_owned();
        response
            .response
            .widget_info(|| egui::WidgetInfo::labeled(egui::Role::Figure, true, &name));
        let chosen = self.marks.iter().find(|m| m.chosen);
        let words = match chosen {
            Some(mark) => format!("{} layouts; looked at: {}", self.marks.len(), mark.name),
            None => format!("{} layouts; none is looked at", self.marks.len()),
        };
        tell_node(ui, response.response.id, &words);
        let frame = response.response.rect;
        let screen = |[x, y]: [f64; 2]| {
            let at = response
                .transform
                .position_from_point(&PlotPoint::new(x, y));
            frame.contains(at).then_some(at)
        };
        if let Some(at) = self.now.and_then(screen) {
            cross(ui, at, tokens);
        }
        let mut clicked = None;
        for (i, mark) in self.marks.iter().enumerate() {
            if screen(mark.at).is_some_and(|at| dot(ui, at, mark, tokens)) {
                clicked = Some(i);
            }
        }
        clicked
    }
}

/// A mark; whether it was clicked.
fn dot(ui: &Ui, at: Pos2, mark: &Mark, tokens: &Tokens) -> bool {
    let area = Rect::from_center_size(at, vec2(2.0 * NEAR, 2.0 * NEAR));
    let response = ui.interact(
        area,
        ui.scope_id().with(("mark", &mark.name)),
        Sense::click(),
    );
    response.widget_info(|| {
        egui::WidgetInfo::selected(egui::Role::Button, true, mark.chosen, &mark.name)
    });
    let radius = if mark.chosen || response.hovered() {
        6.5
    } else {
        5.0
    };
    let colour = if mark.chosen {
        tokens.spring
    } else {
        tokens.accent
    };
    ui.painter()
        .circle(at, radius, colour, Stroke::new(weight::HAIR, tokens.panel));
    ui.painter().text(
        at + vec2(8.0, -3.0),
        Align2::LEFT_BOTTOM,
        &mark.number,
        type_size::small(),
        tokens.ink,
    );
    response.clicked()
}

fn cross(ui: &Ui, at: Pos2, tokens: &Tokens) {
    let stroke = Stroke::new(weight::NARROW, tokens.ink);
    for arm in [vec2(5.0, 5.0), vec2(5.0, -5.0)] {
        ui.painter().line_segment([at - arm, at + arm], stroke);
    }
    ui.painter().text(
        at + vec2(8.0, 0.0),
        Align2::LEFT_CENTER,
        "now",
        type_size::small(),
        tokens.ink_soft,
    );
}
