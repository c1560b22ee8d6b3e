//! A length of stock: section and material.

use egui::Ui;
use trammel_build::{LengthUnit, Section, Tube, defaults};

use super::{
    super::super::form::{Form, Takes},
    named,
};

/// Shapes that stock has.
#[derive(Clone, Copy, PartialEq)]
enum Shape {
    Round,
    Square,
    Bar,
}

const SHAPES: [(Shape, &str, &str); 3] = [
    (Shape::Round, "round tube", "Outer diameter and wall."),
    (Shape::Square, "square tube", "Side and wall."),
    (Shape::Bar, "round bar", "Diameter."),
];

fn shape(section: Section) -> Shape {
    match section {
        Section::Round(..) => Shape::Round,
        Section::Square(..) => Shape::Square,
        Section::Bar(_) => Shape::Bar,
    }
}

fn of_shape(shape: Shape, across: f64, wall: f64) -> Section {
    match shape {
        Shape::Round => Section::Round(across, wall),
        Shape::Square => Section::Square(across, wall),
        Shape::Bar => Section::Bar(across),
    }
}

/// A tube of usual size to begin with: 1 in by 0.083 in, or 25 mm by 2 mm.
fn first(unit: LengthUnit) -> Section {
    match unit {
        LengthUnit::Inch => Section::Round(1.0, 0.083),
        LengthUnit::Millimetre => Section::Round(25.0, 2.0),
    }
}

/// Rows of a section; `Some` when it was changed.
pub(super) fn section(
    ui: &mut Ui,
    form: &mut Form<'_>,
    what: &str,
    section: Section,
) -> Option<Section> {
    let mut next = section;
    let here = shape(section);
    let wall = if here == Shape::Bar {
        0.1 * section.across()
    } else {
        section.wall()
    };
    let tokens = form.tokens;
    let word = format!("{what}: shape");
    if let Some(picked) = super::choice(ui, tokens, &word, "Of the stock.", &SHAPES, here) {
        next = of_shape(picked, section.across(), wall);
    }
    egui::Grid::new(("section", what))
        .num_columns(3)
        .show(ui, |ui| {
            let takes = Takes::Length { default_mm: None };
            let across = format!("{what}: across");
            let help = "Outer diameter, or the side of a square tube.";
            if let Some(Some(v)) = form.row(ui, &across, Some(section.across()), takes, help) {
                next = of_shape(here, v, wall);
            }
            if here == Shape::Bar {
                return;
            }
            let label = format!("{what}: wall");
            if let Some(Some(v)) = form.row(ui, &label, Some(wall), takes, "Thickness of the wall.")
            {
                next = of_shape(here, section.across(), v);
            }
        });
    (next != section).then_some(next)
}

/// Rows of a tube; `Some` when something was changed. Without one there is a button that enters a usual size.
pub(super) fn tube(
    ui: &mut Ui,
    form: &mut Form<'_>,
    what: &str,
    tube: Option<&Tube>,
) -> Option<Option<Tube>> {
    let Some(tube) = tube else {
        let button = ui.button(format!("Enter the {what}"));
        let help = "None is entered, so its strength is not checked. A usual size is put in to begin with.";
        return button.on_hover_text(help).clicked().then(|| {
            Some(Tube {
                section: first(form.unit),
                material: None,
            })
        });
    };
    let mut next = Some(tube.clone());
    if let Some(section) = section(ui, form, what, tube.section) {
        next = Some(Tube {
            section,
            ..tube.clone()
        });
    }
    egui::Grid::new(("material", what)).num_columns(3).show(ui, |ui| {
        let label = format!("{what}: material");
        let shown = tube.material.as_deref().unwrap_or_default();
        let help = "By its name: one of the table, such as “4130 tube, normalised”, or one of your own.";
        if let Some(t) = form.text_row(ui, &label, shown, defaults::TUBE_MATERIAL, help) {
            next = Some(Tube {
                material: named(t),
                ..tube.clone()
            });
        }
    });
    if ui.small_button(format!("Take the {what} out")).clicked() {
        next = None;
    }
    (next.as_ref() != Some(tube)).then_some(next)
}
