//! What build error does to the toe curve, and which measurement to take twice.

use egui::{Grid, RichText, Sense, Ui, vec2};
use trammel_analysis::coordinate_name;
use trammel_build::{Axis, Coordinate, Edit, Limits, defaults};
use trammel_tuning::Scatter;

use super::{super::NotebookInput, made_by};
use crate::{
    number_field::NumberField, request::Request, tokens::type_size, view::View, words::decimal,
};

/// Bars shown at most.
const MOST_BARS: usize = 7;
/// Shares below this get no bar.
const LEAST_SHARE: f64 = 0.005;

pub(super) fn ui(ui: &mut Ui, input: &NotebookInput<'_>, view: &View, requests: &mut Vec<Request>) {
    let tokens = input.tokens;
    ui.spacing_mut().item_spacing.y = 4.0;
    let soft = |text: String| RichText::new(text).small().color(tokens.ink_soft);
    match input.tune.scatter().shown() {
        None => {
            ui.label(soft("The builds are being worked out.".to_owned()));
            limit(ui, input, requests);
        }
        Some((_, Err(fault))) => {
            ui.label(RichText::new(fault).color(tokens.danger));
            limit(ui, input, requests);
        }
        Some((builds, Ok(scatter))) => summary(ui, input, builds, scatter, requests),
    }
    made_by::usual(ui, input, requests);
    if let Some((_, Ok(scatter))) = input.tune.scatter().shown() {
        ranking(ui, input, view, scatter);
    }
    made_by::points(ui, input, view, requests);
}

/// The toe change that is allowed, as a field.
fn limit(ui: &mut Ui, input: &NotebookInput<'_>, requests: &mut Vec<Request>) {
    let limits = input.build.limits;
    let shown = limits
        .toe_change_deg
        .map_or_else(String::new, |v| v.to_string());
    let hint = defaults::TOE_CHANGE_LIMIT_DEG.to_string();
    let field = NumberField {
        name: "Toe limit",
        shown: &shown,
        hint: &hint,
        width: 48.0,
        enabled: true,
    };
    let typed = field.ui(ui, input.tokens);
    ui.label("°").on_hover_text(
        "The most toe change that a build may have over the travel. The same limit that the cautions begin at; empty takes the usual one.",
    );
    let Some(typed) = typed else { return };
    let text = typed.trim().trim_end_matches('°').trim();
    let toe_change_deg = match text.parse::<f64>() {
        _ if text.is_empty() => None,
        Ok(v) if v.is_finite() => Some(v),
        _ => {
            requests.push(Request::Refuse(format!(
                "Read “{text}”, expected degrees such as 0.3. The limit stays as it was."
            )));
            return;
        }
    };
    requests.push(Request::Edit(Edit::SetLimits(Limits {
        toe_change_deg,
        ..limits
    })));
}

fn summary(
    ui: &mut Ui,
    input: &NotebookInput<'_>,
    builds: usize,
    scatter: &Scatter,
    requests: &mut Vec<Request>,
) {
    let tokens = input.tokens;
    let share = format!("{} of 100 builds", decimal(100.0 * scatter.within_limit, 0));
    ui.horizontal(|ui| {
        let help = format!(
            "Of {builds} made-up builds of this drawing, each coordinate off by a little as its making has it and static toe set again, the share whose toe change stays within the limit over the whole travel."
        );
        ui.label(RichText::new(share).font(type_size::head())).on_hover_text(&help);
        ui.label("stay within").on_hover_text(help);
        limit(ui, input, requests);
    });
    if let Some(q) = &scatter.largest {
        let degrees = |rad: f64| decimal(rad.to_degrees(), 2);
        let text = format!(
            "largest toe change: half below {}°, nine of ten {}° to {}°",
            degrees(q.median),
            degrees(q.low),
            degrees(q.high)
        );
        let text = RichText::new(text).small().color(tokens.ink_soft);
        ui.add(egui::Label::new(text).wrap())
            .on_hover_text(
                "The band around the curve above holds nine of ten builds, the thin line in it is the middle one.",
            );
    }
    if scatter.failed > 0 {
        let text = format!(
            "{} of {builds} builds do not reach the whole travel and count as outside.",
            scatter.failed
        );
        ui.label(RichText::new(text).small().color(tokens.caution));
    }
}

fn ranking(ui: &mut Ui, input: &NotebookInput<'_>, view: &View, scatter: &Scatter) {
    let tokens = input.tokens;
    ui.add_space(4.0);
    ui.label(RichText::new("Measure these twice").font(type_size::head()))
        .on_hover_text("Each coordinate's share of the spread of the toe curve, to first order.");
    let most = scatter.ranking.first().map_or(1.0, |s| s.linear).max(1e-9);
    Grid::new("ranking")
        .num_columns(3)
        .spacing(vec2(8.0, 2.0))
        .show(ui, |ui| {
            for share in scatter
                .ranking
                .iter()
                .take(MOST_BARS)
                .filter(|s| s.linear > LEAST_SHARE)
            {
                let name = coordinate_words(coordinate_name(view.axle, share.coordinate));
                let per = decimal(share.toe_per_mm.to_degrees() * input.build.unit.mm(), 2);
                let help = format!(
                    "{per}° of toe for each {} of error, taken over the travel.",
                    input.build.unit.sign()
                );
                ui.label(RichText::new(&name).small()).on_hover_text(&help);
                let room = vec2(150.0, 12.0);
                let (rect, response) = ui.allocate_exact_size(room, Sense::hover());
                let bar =
                    rect.with_max_x(rect.left() + rect.width() * (share.linear / most) as f32);
                ui.painter().rect_filled(bar, 1.0, tokens.lower_arm);
                response.on_hover_text(&help);
                ui.label(RichText::new(format!("{} %", decimal(100.0 * share.linear, 0))).small())
                    .on_hover_text(help);
                ui.end_row();
            }
        });
}

/// Such as `Tie rod, inner joint, height`.
fn coordinate_words(at: Coordinate) -> String {
    format!("{}, {}", at.point.label(), way(at.axis))
}

/// An axis as one would say it in the shop.
pub(super) fn way(axis: Axis) -> &'static str {
    match axis {
        Axis::X => "fore and aft",
        Axis::Y => "in and out",
        Axis::Z => "height",
    }
}
