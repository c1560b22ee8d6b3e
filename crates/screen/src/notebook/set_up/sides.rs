//! The right side against the mirror image of the left one.

use egui::{RichText, Ui};
use trammel_analysis::Study;
use trammel_build::{AxleModel, LengthUnit, PointName, Side};
use trammel_setup::moved;
use trammel_tuning::Stations;

use super::{super::NotebookInput, head, plain, soft};

/// Travels at which toe is judged.
const STATIONS: usize = 13;
/// Less than this, mm, is no difference.
const LEAST: f64 = 0.01;

pub(super) fn ui(ui: &mut Ui, input: &NotebookInput<'_>, study: &Study) {
    head(ui, "Left against right");
    soft(
        ui,
        input,
        "The right side less the mirror image of the left: forward, outboard, up; and what it alone makes of the right wheel's toe change.",
    );
    axle(ui, input, "Front", &study.front.model);
    if let Some(rear) = &study.rear {
        axle(ui, input, "Rear", &rear.model);
    }
}

fn axle(ui: &mut Ui, input: &NotebookInput<'_>, word: &str, model: &AxleModel) {
    // The right corner is told in the mirror, so that both can be laid on each other.
    let [left, right] = [Side::Left, Side::Right].map(|s| *model.linkage(s).corner());
    let range = model.travel;
    let Ok(stations) = Stations::even(range.droop, range.bump, STATIONS, vec![0.0]) else {
        return;
    };
    let apart = moved(&left, &right, &stations, LEAST);
    if apart.is_empty() {
        return plain(
            ui,
            RichText::new(format!("{word}: both sides are mirror images.")).small(),
        );
    }
    let unit = input.build.unit;
    let digits = if unit == LengthUnit::Inch { 3 } else { 1 };
    for m in &apart {
        let by = [m.by.x, m.by.y, m.by.z]
            .map(|v| format!("{:+.digits$}", unit.from_mm(v)))
            .join(", ");
        let label = PointName::from_path(m.point.name()).map_or(m.point.name(), |p| p.label());
        let toe = m
            .toe_change
            .map_or_else(String::new, |t| format!("; {:+.2}°", t.to_degrees()));
        plain(
            ui,
            RichText::new(format!("{word}, {label}: {by} {}{toe}", unit.sign())).small(),
        );
    }
}
