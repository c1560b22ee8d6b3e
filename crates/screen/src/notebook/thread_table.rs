//! Threads and grades side by side: a thread in each line, a grade in each column, a bar for the figure.
//!
//! Shown for the rack end as it is, and for one under a frame that a lift raises.

use egui::{Align2, Grid, RichText, Sense, Stroke, Ui, vec2};
use trammel_analysis::ThreadRow;
use trammel_build::{LengthUnit, defaults};
use trammel_geometry::in_order;
use trammel_strength::{grade::short_name as short_grade, rack_end::Allowance, thread::System};

use super::{NotebookInput, tune::choice};
use crate::{
    prove::settings::EndFigure,
    terms,
    tokens::type_size,
    view::View,
    words::{decimal, factor, length},
};

/// Bars end at this many times the wanted factor, this angle, this free length.
const FULL_FACTORS: f64 = 2.0;
const FULL_ANGLE: f64 = std::f64::consts::FRAC_PI_4;
const FULL_LENGTH_MM: f64 = 76.2;

const FIGURES: [(EndFigure, &str, &str); 3] = [
    (EndFigure::Factor, "factor", terms::RACK_END_FACTOR.what),
    (
        EndFigure::RodAngle,
        "tie-rod angle",
        terms::THREAD_ROD_ANGLE.what,
    ),
    (
        EndFigure::FreeLength,
        "free length",
        terms::THREAD_FREE_LENGTH.what,
    ),
];

const SYSTEMS: [(System, &str, &str); 2] = [
    (System::Unified, "inch", "Unified threads in SAE grades."),
    (System::Metric, "metric", "Metric threads in ISO classes."),
];

/// What is compared, and the comparison. The rows are those of one load.
pub(super) fn ui(ui: &mut Ui, input: &NotebookInput<'_>, rows: &[ThreadRow], view: &mut View) {
    let shown = of_system(rows, system(input, view));
    table(ui, input, &shown, view);
    key(ui, input, view.prove.end_figure);
}

/// The thread and grade that was clicked, or the build's own.
pub(super) fn picked<'a>(rows: &'a [ThreadRow], view: &View) -> Option<&'a ThreadRow> {
    let picked = |row: &&ThreadRow| view.prove.end_choice.as_ref() == Some(&names(row));
    rows.iter().find(picked).or(rows.iter().find(|r| r.own))
}

/// All figures of a thread and grade, for a line that wraps.
pub(super) fn summary(ui: &mut Ui, input: &NotebookInput<'_>, row: &ThreadRow) {
    let (thread, grade) = names(row);
    let head = RichText::new(format!("{thread}, {grade}:")).font(type_size::head());
    ui.label(head);
    let figures =
        FIGURES.map(|(figure, word, _)| format!("{word} {}", shown(row, figure, input).0));
    ui.label(figures.join(" · "));
}

/// Which threads are compared, and which figure of them.
pub(super) fn choices(ui: &mut Ui, input: &NotebookInput<'_>, view: &mut View) {
    let help = "Which threads are compared.";
    let now = system(input, view);
    if let Some(picked) = choice(ui, input.tokens, "Threads", help, &SYSTEMS, now) {
        view.prove.end_system = Some(picked);
    }
    let figure = view.prove.end_figure;
    let help = "What the table shows.";
    if let Some(picked) = choice(ui, input.tokens, "Show", help, &FIGURES, figure) {
        view.prove.end_figure = picked;
    }
}

fn system(input: &NotebookInput<'_>, view: &View) -> System {
    view.prove.end_system.unwrap_or(match input.build.unit {
        LengthUnit::Inch => System::Unified,
        LengthUnit::Millimetre => System::Metric,
    })
}

/// By size, the coarse thread before the fine one.
fn of_system(rows: &[ThreadRow], system: System) -> Vec<&ThreadRow> {
    let of_system = rows.iter().filter(|r| r.thread.system() == system);
    let mut shown: Vec<&ThreadRow> = of_system.collect();
    in_order(&mut shown, |row| {
        [row.thread.major_diameter(), -row.thread.pitch()]
    });
    shown
}

/// The factor that the build wants of its rack end.
pub(super) fn wanted(input: &NotebookInput<'_>) -> f64 {
    let limits = &input.build.limits;
    limits.rack_end_factor.unwrap_or(defaults::RACK_END_FACTOR)
}

/// A thread in each line, a grade in each column.
fn table(ui: &mut Ui, input: &NotebookInput<'_>, rows: &[&ThreadRow], view: &mut View) {
    let mut threads: Vec<String> = Vec::new();
    let mut grades: Vec<String> = Vec::new();
    for row in rows {
        let (thread, grade) = names(row);
        if !threads.contains(&thread) {
            threads.push(thread);
        }
        if !grades.contains(&grade) {
            grades.push(grade);
        }
    }
    let width =
        ((ui.available_width() - 84.0) / grades.len().max(1) as f32 - 8.0).clamp(50.0, 130.0);
    ui.spacing_mut().interact_size.y = 18.0;
    Grid::new("threads").spacing(vec2(8.0, 1.0)).show(ui, |ui| {
        ui.label("");
        for grade in &grades {
            ui.scope(|ui| {
                ui.set_max_width(width);
                let text = RichText::new(short_grade(grade)).small();
                ui.add(egui::Label::new(text.color(input.tokens.ink_soft)).wrap())
                    .on_hover_text(grade);
            });
        }
        ui.end_row();
        for thread in &threads {
            ui.label(RichText::new(thread).size(12.5));
            for grade in &grades {
                let row = rows
                    .iter()
                    .find(|r| names(r) == (thread.clone(), grade.clone()));
                match row {
                    Some(row) => cell(ui, input, row, width, view),
                    None => {
                        ui.label("");
                    }
                }
            }
            ui.end_row();
        }
    });
}

/// Thread and grade as they are called.
pub(super) fn names(row: &ThreadRow) -> (String, String) {
    (row.thread.to_string(), row.grade.name().to_owned())
}

/// The figure in words, and how full its bar is.
fn shown(row: &ThreadRow, figure: EndFigure, input: &NotebookInput<'_>) -> (String, f64) {
    let allowance = |a: Option<Allowance>, text: &dyn Fn(f64) -> String, full: f64| match a {
        None => ("—".to_owned(), 0.0),
        Some(Allowance::Never) => ("none".to_owned(), 0.0),
        Some(Allowance::Always) => ("any".to_owned(), 1.0),
        Some(Allowance::UpTo(v)) => (text(v), v / full),
    };
    match figure {
        EndFigure::Factor => row.factor.map_or_else(
            || ("—".to_owned(), 0.0),
            |f| (factor(f), f / (FULL_FACTORS * wanted(input))),
        ),
        EndFigure::RodAngle => allowance(
            row.rod_angle,
            &|v| format!("{}°", decimal((v.to_degrees() * 10.0).floor() / 10.0, 1)),
            FULL_ANGLE,
        ),
        EndFigure::FreeLength => allowance(
            row.free_length,
            &|v| length(v, input.build.unit),
            FULL_LENGTH_MM,
        ),
    }
}

fn keeps(row: &ThreadRow, input: &NotebookInput<'_>) -> bool {
    row.factor.is_some_and(|f| f >= wanted(input))
}

fn cell(ui: &mut Ui, input: &NotebookInput<'_>, row: &ThreadRow, width: f32, view: &mut View) {
    let tokens = input.tokens;
    let names = names(row);
    let chosen = view.prove.end_choice.as_ref() == Some(&names);
    let (rect, response) = ui.allocate_exact_size(vec2(width, 20.0), Sense::click());
    let (text, full) = shown(row, view.prove.end_figure, input);
    let painter = ui.painter();
    if chosen || response.hovered() {
        painter.rect_filled(rect, 3.0, tokens.panel_raised);
    }
    let colour = if keeps(row, input) {
        tokens.within_bar()
    } else {
        tokens.wash(tokens.danger, 0.45)
    };
    let mut bar = rect.shrink2(vec2(2.0, 2.0));
    bar.set_width(bar.width() * full.clamp(0.0, 1.0) as f32);
    painter.rect_filled(bar, 2.0, colour);
    if view.prove.end_figure == EndFigure::Factor {
        let x = rect.left() + 2.0 + (rect.width() - 4.0) / FULL_FACTORS as f32;
        painter.vline(x, rect.y_range(), Stroke::new(1.0, tokens.ink_soft));
    }
    let font = if row.own {
        type_size::head()
    } else {
        type_size::text()
    };
    let at = rect.left_center() + vec2(6.0, 0.0);
    painter.text(at, Align2::LEFT_CENTER, &text, font, tokens.ink);
    if row.own {
        painter.rect_stroke(
            rect,
            3.0,
            Stroke::new(1.5, tokens.accent),
            egui::StrokeKind::Inside,
        );
    }
    let own = if row.own { ", your own" } else { "" };
    let name = format!("{} {}: {text}{own}", names.0, names.1);
    response.widget_info(|| egui::WidgetInfo::selected(egui::Role::Button, true, chosen, &name));
    if response
        .on_hover_text("Click for all three figures")
        .clicked()
    {
        view.prove.end_choice = Some(names);
    }
}

/// What bars, colours and outline mean.
fn key(ui: &mut Ui, input: &NotebookInput<'_>, figure: EndFigure) {
    let full = match figure {
        EndFigure::Factor => format!(
            "The line in each bar is the wanted factor; a full bar is {}.",
            factor(FULL_FACTORS * wanted(input))
        ),
        EndFigure::RodAngle => format!("A full bar is {}°.", decimal(FULL_ANGLE.to_degrees(), 0)),
        EndFigure::FreeLength => {
            format!(
                "A full bar is {}.",
                length(FULL_LENGTH_MM, input.build.unit)
            )
        }
    };
    let text = format!(
        "{full} Outlined: your own. Red: the wanted factor is missed under this load. “—”: the grade does not cover the size."
    );
    let text = RichText::new(text).small().color(input.tokens.ink_soft);
    ui.add(egui::Label::new(text).wrap());
}
