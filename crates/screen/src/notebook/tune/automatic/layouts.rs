//! The layouts that were found: a look at each, and applying it as one step.

use egui::{Button, RichText, Ui};
use trammel_geometry::Corner;
use trammel_tuning::{Figures, Solution};

use super::{Page, figures};
use crate::{
    request::Request,
    tune::{auto::Shown, moves, points},
    view::View,
    words::decimal,
};

/// Written numbers of a layout in steps are rounded to this part of the build's unit, finer than any step.
const STEPS: f64 = 1e6;

pub(super) fn ui(
    ui: &mut Ui,
    page: Page<'_>,
    shown: &Shown,
    view: &mut View,
    requests: &mut Vec<Request>,
) {
    let tokens = page.input.tokens;
    if let Some(fault) = &shown.fault {
        let text = RichText::new(format!("Nothing found: {fault}.")).color(tokens.danger);
        ui.add(egui::Label::new(text).wrap());
    }
    let stale = page.is_stale();
    if stale && !shown.solutions.is_empty() {
        let text = "The build has changed since this search began; search again to apply a layout.";
        ui.label(RichText::new(text).small().color(tokens.caution));
    }
    for (n, solution) in shown.solutions.iter().enumerate() {
        let layout = Layout {
            page,
            n,
            solution,
            stale,
        };
        ui.horizontal_wrapped(|ui| layout.row(ui, view, requests));
        if view.tune.preview == Some(n) {
            layout.moves(ui);
            figures::table(ui, page, shown.start.as_ref(), solution, &view.tune.auto);
        }
    }
}

impl Page<'_> {
    /// Whether the layouts are of another build than the one on the table.
    fn is_stale(&self) -> bool {
        let model = &self.axle.model;
        self.input.tune.search().is_some_and(|s| {
            (s.axle, s.side) != (model.name, self.side) || s.corner != *self.corner()
        })
    }

    fn corner(&self) -> &Corner {
        self.axle.model.linkage(self.side).corner()
    }
}

/// One line of the list.
struct Layout<'a> {
    page: Page<'a>,
    n: usize,
    solution: &'a Solution,
    stale: bool,
}

impl Layout<'_> {
    fn row(&self, ui: &mut Ui, view: &mut View, requests: &mut Vec<Request>) {
        ui.spacing_mut().item_spacing.x = 6.0;
        let chosen = view.tune.preview == Some(self.n);
        let name = format!("Layout {}", self.n + 1);
        let help = "Shows it on the drawing and its curve in the plot, and takes it away again.";
        let look = ui.selectable_label(chosen, &name).on_hover_text(help);
        if look.clicked() {
            view.tune.preview = if chosen { None } else { Some(self.n) };
        }
        let rounded = self.solution.in_steps.as_ref();
        let summary = summary(&self.solution.exact.figures, rounded.map(|r| &r.figures));
        ui.label(RichText::new(summary).small()).on_hover_text(
            "Exactly, and after the arrow in whole steps of the shop. Click the layout for all figures.",
        );
        if let Some(rounded) = rounded {
            let help = "Puts the points there in whole steps. One step; Undo takes it back.";
            if self.button(ui, "Apply in steps", help, "in steps") {
                requests.push(self.apply(&rounded.corner, STEPS));
            }
        }
        let help = "Puts the points there exactly. One step; Undo takes it back.";
        if self.button(ui, "exactly", help, "exactly") {
            requests.push(self.apply(&self.solution.exact.corner, points::EXACT));
        }
    }

    fn button(&self, ui: &mut Ui, text: &str, help: &str, how: &str) -> bool {
        let button = ui
            .add_enabled(!self.stale, Button::new(text).small())
            .on_hover_text(help);
        let name = format!("Apply Layout {} {how}", self.n + 1);
        button.widget_info(|| egui::WidgetInfo::labeled(egui::Role::Button, !self.stale, &name));
        button.clicked()
    }

    fn apply(&self, after: &Corner, grid: f64) -> Request {
        let (build, axle) = (self.page.input.build, self.page.axle.model.name);
        let edit = points::edit(
            build,
            (axle, self.page.side),
            self.page.corner(),
            after,
            grid,
        );
        Request::EditAs {
            name: format!("Apply layout {}", self.n + 1),
            edits: vec![edit],
        }
    }

    /// What moves, in words.
    fn moves(&self, ui: &mut Ui) {
        let unit = self.page.input.build.unit;
        let (from, to) = (self.page.corner(), &self.solution.exact.corner);
        for (name, by) in [
            ("inner joint", to.tie_rod.inner - from.tie_rod.inner),
            ("outer joint", to.tie_rod.outer - from.tie_rod.outer),
            (
                "upper pivots",
                to.upper_arm.front_pivot - from.upper_arm.front_pivot,
            ),
            (
                "upper ball joint",
                to.upper_arm.ball_joint - from.upper_arm.ball_joint,
            ),
            (
                "lower pivots",
                to.lower_arm.front_pivot - from.lower_arm.front_pivot,
            ),
            (
                "lower ball joint",
                to.lower_arm.ball_joint - from.lower_arm.ball_joint,
            ),
        ] {
            if let Some(words) = moves::in_words(by, unit) {
                let text = RichText::new(format!("    {name} {words}")).small();
                ui.label(text.color(self.page.input.tokens.ink_soft));
            }
        }
    }
}

/// The figures that most layouts differ in, exactly and in whole steps.
fn summary(exact: &Figures, rounded: Option<&Figures>) -> String {
    let part = |name: &str, of: &dyn Fn(&Figures) -> Option<f64>, decimals: usize, sign: &str| {
        let value = |f: &Figures| of(f).map(|v| decimal(v, decimals));
        let first = value(exact)?;
        let second = rounded.and_then(value).filter(|r| *r != first);
        let second = second.map_or_else(String::new, |r| format!(" → {r}"));
        Some(format!("{name} {first}{second}{sign}"))
    };
    let toe = |f: &Figures| Some(f.toe.largest.to_degrees());
    let parts = [
        part("toe", &toe, 2, "°"),
        part("rack end", &|f| f.rack_end_factor, 1, ""),
    ];
    parts.into_iter().flatten().collect::<Vec<_>>().join(", ")
}
