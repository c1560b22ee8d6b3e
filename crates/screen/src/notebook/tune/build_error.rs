//! What build error does to the toe curve, and which measurement to take twice.

use egui::{Grid, RichText, Sense, Ui, vec2};
use trammel_tuning::{Axis, Coordinate, Hardpoint, Scatter};

use super::{super::NotebookInput, choice};
use crate::{
    tokens::type_size,
    tune::settings::{Making, Part},
    view::View,
    words::decimal,
};

/// Bars shown at most.
const MOST_BARS: usize = 7;

pub(super) fn ui(ui: &mut Ui, input: &NotebookInput<'_>, view: &mut View) {
    let tokens = input.tokens;
    ui.spacing_mut().item_spacing.y = 4.0;
    let help =
        "How its points are put in their places: that decides how far each coordinate may be off.";
    let options = Making::ALL.map(|m| (m, m.label(), m.meaning()));
    for part in Part::ALL {
        if let Some(making) = choice(
            ui,
            tokens,
            part.label(),
            help,
            &options,
            view.tune.makings.of(part),
        ) {
            view.tune.makings = view.tune.makings.with(part, making);
        }
    }
    let soft = |text: String| RichText::new(text).small().color(tokens.ink_soft);
    match input.tune.scatter().shown() {
        None => {
            ui.label(soft("The builds are being worked out.".to_owned()));
        }
        Some((_, Err(fault))) => {
            ui.label(RichText::new(fault).color(tokens.danger));
        }
        Some((builds, Ok(scatter))) => {
            summary(ui, input, builds, scatter);
            ranking(ui, input, scatter);
        }
    }
}

fn summary(ui: &mut Ui, input: &NotebookInput<'_>, builds: usize, scatter: &Scatter) {
    let tokens = input.tokens;
    let limit = input
        .build
        .limits
        .toe_change_deg
        .unwrap_or(trammel_build::defaults::TOE_CHANGE_LIMIT_DEG);
    let share = format!("{} of 100 builds", decimal(100.0 * scatter.within_limit, 0));
    ui.horizontal_wrapped(|ui| {
        let help = format!(
            "Of {builds} made-up builds of this drawing, each point off by a little within what its making allows and static toe set again, the share whose toe change stays within the limit over the whole travel."
        );
        ui.label(RichText::new(share).font(type_size::head())).on_hover_text(&help);
        ui.label(format!("stay within {}°", decimal(limit, 2))).on_hover_text(help);
    });
    if let Some(q) = &scatter.largest {
        let degrees = |rad: f64| decimal(rad.to_degrees(), 2);
        let text = format!(
            "largest toe change: half below {}°, nine in ten between {}° and {}°",
            degrees(q.median),
            degrees(q.low),
            degrees(q.high)
        );
        ui.label(RichText::new(text).small().color(tokens.ink_soft))
            .on_hover_text(
                "The band around the curve above holds nine of ten builds, its line half of them.",
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

fn ranking(ui: &mut Ui, input: &NotebookInput<'_>, scatter: &Scatter) {
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
                .filter(|s| s.linear > 0.005)
            {
                let name = coordinate_words(share.coordinate);
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
                response.on_hover_text(help);
                ui.label(RichText::new(format!("{} %", decimal(100.0 * share.linear, 0))).small());
                ui.end_row();
            }
        });
}

/// Such as `tie rod inner, height`.
fn coordinate_words(coordinate: Coordinate) -> String {
    let point = match coordinate.point {
        Hardpoint::UpperFrontPivot => "upper arm front",
        Hardpoint::UpperRearPivot => "upper arm rear",
        Hardpoint::UpperBallJoint => "upper ball joint",
        Hardpoint::LowerFrontPivot => "lower arm front",
        Hardpoint::LowerRearPivot => "lower arm rear",
        Hardpoint::LowerBallJoint => "lower ball joint",
        Hardpoint::TieRodInner => "tie rod inner",
        Hardpoint::TieRodOuter => "tie rod outer",
        Hardpoint::WheelCentre => "wheel centre",
    };
    let way = match coordinate.axis {
        Axis::X => "fore and aft",
        Axis::Y => "in and out",
        Axis::Z => "height",
    };
    format!("{point}, {way}")
}
