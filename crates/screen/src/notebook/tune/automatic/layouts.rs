//! The layouts that were found: a look at each, and applying it as one step.

use egui::{Button, RichText, Ui};
use trammel_geometry::Corner;
use trammel_tuning::{Figures, Solution};

use super::{super::choice, Page, figures};
use crate::{
    request::Request,
    tune::{
        auto::{Form, Shown},
        moves, points,
    },
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
    if shown.solutions.iter().any(|s| s.in_steps.is_some()) {
        form(ui, page, view);
    }
    for (n, solution) in shown.solutions.iter().enumerate() {
        let layout = Layout {
            page,
            n,
            solution,
            stale,
            form: view.tune.form.of(solution),
        };
        ui.horizontal_wrapped(|ui| layout.row(ui, view, requests));
        if view.tune.preview == Some(n) {
            layout.moves(ui);
            let form = layout.form;
            figures::table(
                ui,
                page,
                shown.start.as_ref(),
                (solution, form),
                &view.tune.auto,
            );
        }
    }
}

/// Which form of the layouts is shown and applied.
fn form(ui: &mut Ui, page: Page<'_>, view: &mut View) {
    let options = [
        (
            Form::InSteps,
            "in steps",
            "Every moved dimension on a whole step: what a shop can build.",
        ),
        (Form::Exact, "exactly", "As the search found it."),
    ];
    let help =
        "What the drawing and the curve show of a layout, and what its button puts into the build.";
    let word = "Show and apply";
    if let Some(form) = choice(ui, page.input.tokens, word, help, &options, view.tune.form) {
        view.tune.form = form;
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
    form: Form,
}

impl Layout<'_> {
    fn row(&self, ui: &mut Ui, view: &mut View, requests: &mut Vec<Request>) {
        ui.spacing_mut().item_spacing.x = 6.0;
        let chosen = view.tune.preview == Some(self.n);
        let name = format!("Layout {}", self.n + 1);
        let help = format!(
            "Shows it {} on the drawing and its curve in the plot, and takes it away again.",
            self.form.words()
        );
        let look = ui.selectable_label(chosen, &name).on_hover_text(help);
        if look.clicked() {
            view.tune.preview = if chosen { None } else { Some(self.n) };
        }
        let rounded = self.solution.in_steps.as_ref();
        let summary = summary(&self.solution.exact.figures, rounded.map(|r| &r.figures));
        ui.label(RichText::new(summary).small()).on_hover_text(
            "Exactly, and after the arrow in whole steps of the shop. Click the layout for all figures.",
        );
        if self.button(ui) {
            requests.push(self.apply());
        }
    }

    fn button(&self, ui: &mut Ui) -> bool {
        let how = self.form.words();
        let help = format!("Puts the points there {how}, as shown. One step; Undo takes it back.");
        let button = ui
            .add_enabled(!self.stale, Button::new(format!("Apply {how}")).small())
            .on_hover_text(help);
        let name = format!("Apply layout {} {how}", self.n + 1);
        button.widget_info(|| egui::WidgetInfo::labeled(egui::Role::Button, !self.stale, &name));
        button.clicked()
    }

    fn apply(&self) -> Request {
        let after = self.form.corner(self.solution);
        let grid = match self.form {
            Form::InSteps => STEPS,
            Form::Exact => points::EXACT,
        };
        let (build, axle) = (self.page.input.build, self.page.axle.model.name);
        let edit = points::edit(
            build,
            (axle, self.page.side),
            self.page.corner(),
            after,
            grid,
        );
        Request::EditAs {
            name: format!("Apply layout {} {}", self.n + 1, self.form.words()),
            edits: vec![edit],
        }
    }

    /// What moves, in words.
    fn moves(&self, ui: &mut Ui) {
        let unit = self.page.input.build.unit;
        let (from, to) = (self.page.corner(), self.form.corner(self.solution));
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
