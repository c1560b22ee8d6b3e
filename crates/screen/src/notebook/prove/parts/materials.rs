//! Materials of one's own.

use egui::{RichText, Ui};
use trammel_build::{Edit, LengthUnit, MaterialSpec, PartsEdit, Stress};

use trammel_strength::{
    grade::{Grade, ListedGrade},
    material::{ListedMaterial, Material},
    units::KSI,
};

use super::super::{
    super::form::{Form, Takes},
    head,
};
use crate::words::decimal;

pub(super) fn ui(ui: &mut Ui, form: &mut Form<'_>, materials: &[MaterialSpec]) {
    let mut next = materials.to_vec();
    for (index, material) in materials.iter().enumerate() {
        head(ui, &material.name);
        let mut changed = material.clone();
        egui::Grid::new(("material of one's own", index))
            .num_columns(3)
            .show(ui, |ui| rows(ui, form, index + 1, &mut changed));
        if let Some(place) = next.get_mut(index) {
            *place = changed;
        }
        let button = ui.small_button("Remove");
        let name = format!("Remove material {}", index + 1);
        button.widget_info(|| egui::WidgetInfo::labeled(egui::Role::Button, true, &name));
        if button.clicked() {
            next.remove(index);
            break;
        }
    }
    ui.add_space(6.0);
    let help =
        "With the figures of a certificate or a supplier's sheet. Parts take it by its name.";
    if ui.button("Add a material").on_hover_text(help).clicked() {
        next.push(fresh(materials, form.unit));
    }
    if next != materials {
        form.edit(Edit::Parts(PartsEdit::Materials(next)));
    }
    known(ui, form);
}

/// Thickness and diameter, mm, at which the tables' materials and grades are shown; other sizes of theirs may have other figures.
const SHOWN_AT: [f64; 2] = [3.0, 10.0];

/// What the tables know by name, with its least yield strength.
fn known(ui: &mut Ui, form: &Form<'_>) {
    head(ui, "Known by name");
    let [wall, diameter] = SHOWN_AT;
    let materials = ListedMaterial::all().iter().filter_map(|m| {
        let strength = Material::Listed(*m).strength(wall).ok()?;
        Some((m.name(), strength.yield_strength, strength.source))
    });
    let grades = ListedGrade::all().iter().filter_map(|g| {
        let strength = Grade::Listed(*g).strength(diameter).ok()?;
        Some((g.name(), strength.yield_strength, strength.source))
    });
    let help = "Least yield strength of a thin wall or a bolt of common size; the proof takes that of the part's own size.";
    egui::Grid::new("known materials")
        .num_columns(2)
        .spacing(egui::vec2(16.0, 2.0))
        .show(ui, |ui| {
            for (name, yields, source) in materials.chain(grades) {
                let text = |t: String| RichText::new(t).size(12.5);
                ui.label(text(name.to_owned()));
                let shown = match form.unit {
                    LengthUnit::Inch => format!("{} ksi", decimal(yields.mpa() / KSI, 0)),
                    LengthUnit::Millimetre => format!("{} MPa", decimal(yields.mpa(), 0)),
                };
                ui.label(text(shown))
                    .on_hover_text(format!("{help} From: {source}."));
                ui.end_row();
            }
        });
}

fn fresh(materials: &[MaterialSpec], unit: LengthUnit) -> MaterialSpec {
    let taken = |name: &str| materials.iter().any(|m| m.name == name);
    let name = (1..)
        .map(|n| format!("own material {n}"))
        .find(|name| !taken(name))
        .unwrap_or_default();
    MaterialSpec {
        name,
        yield_strength: match unit {
            LengthUnit::Inch => Stress::Ksi(36.0),
            LengthUnit::Millimetre => Stress::Megapascals(235.0),
        },
        tensile: None,
        modulus: None,
        source: String::new(),
    }
}

fn rows(ui: &mut Ui, form: &mut Form<'_>, number: usize, m: &mut MaterialSpec) {
    let label = format!("Material {number}, name");
    if let Some(t) = form.text_row(ui, &label, &m.name, "", "What parts call it.") {
        if t.is_empty() {
            form.refuse(format!("A material needs a name; it stays {}.", m.name));
        } else {
            m.name = t;
        }
    }
    let ksi = matches!(m.yield_strength, Stress::Ksi(_));
    let sign = if ksi { "ksi" } else { "MPa" };
    let typed = |s: Stress| match (s, ksi) {
        (Stress::Ksi(v), true) | (Stress::Megapascals(v), false) => v,
        (other, true) => other.mpa() / Stress::Ksi(1.0).mpa(),
        (other, false) => other.mpa(),
    };
    let stress = |v: f64| {
        if ksi {
            Stress::Ksi(v)
        } else {
            Stress::Megapascals(v)
        }
    };
    let label = format!("Material {number}, yield");
    let takes = Takes::Number {
        sign,
        default: None,
    };
    let now = Some(typed(m.yield_strength));
    if let Some(Some(v)) = form.row(ui, &label, now, takes, "Least yield strength.") {
        m.yield_strength = stress(v);
    }
    let takes = Takes::MaybeNumber { sign };
    let label = format!("Material {number}, tensile");
    let help = "Least tensile strength, if it is known.";
    if let Some(v) = form.row(ui, &label, m.tensile.map(typed), takes, help) {
        m.tensile = v.map(stress);
    }
    let label = format!("Material {number}, modulus");
    let help = "Modulus of elasticity; steel's where it is left empty.";
    if let Some(v) = form.row(ui, &label, m.modulus.map(typed), takes, help) {
        m.modulus = v.map(stress);
    }
    let label = format!("Material {number}, source");
    let help = "Where the figures come from: a certificate, a supplier's sheet.";
    if let Some(t) = form.text_row(ui, &label, &m.source, "", help) {
        m.source = t;
    }
}
