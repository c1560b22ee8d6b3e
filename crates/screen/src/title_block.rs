//! The corner of the table where a drawing has its title block: what this axle is at its design position.

use egui::{Align, Grid, Layout, Rect, RichText, Ui, UiBuilder, vec2};
use trammel_analysis::AxleStudy;
use trammel_build::{AxleName, Build};

use crate::{
    terms::{self, Term, Told},
    tokens::{Tokens, type_size},
    words::{decimal, length, long_length, tape},
};

/// Least place that it takes.
const LEAST: egui::Vec2 = vec2(190.0, 130.0);
/// Height of a row.
const ROW: f32 = 17.0;

/// Shows the block in the lower right of a corner, as far as there is room.
pub(crate) fn ui(ui: &mut Ui, corner: Rect, build: &Build, axle: &AxleStudy, tokens: &Tokens) {
    // The upper edge belongs to the drawing's own controls.
    let corner = corner
        .with_min_y(corner.top() + 40.0)
        .shrink2(vec2(14.0, 10.0));
    if corner.width() < LEAST.x || corner.height() < LEAST.y {
        return;
    }
    let rows = rows(build, axle);
    let fit = ((corner.height() - 24.0) / ROW).floor().max(0.0) as usize;
    let mut block = ui.new_child(
        UiBuilder::new()
            .max_rect(corner)
            .layout(Layout::bottom_up(Align::Max)),
    );
    block.set_clip_rect(corner.expand(2.0));
    block.with_layout(Layout::top_down(Align::Min), |ui| {
        // Projection lines run behind the words, not through them.
        let back = egui::vec2(
            204.0_f32.min(corner.width()),
            20.0 + fit.min(rows.len()) as f32 * ROW,
        );
        let place = Rect::from_min_size(ui.max_rect().left_top(), back).expand(4.0);
        ui.painter()
            .rect_filled(place, 3.0, tokens.table.gamma_multiply(0.85));
        ui.spacing_mut().item_spacing.y = 2.0;
        let name = match axle.model.name {
            AxleName::Front => "Front axle at the design position",
            AxleName::Rear => "Rear axle at the design position",
        };
        ui.label(
            RichText::new(name)
                .font(type_size::small())
                .color(tokens.ink_soft),
        );
        Grid::new("title block")
            .num_columns(2)
            .spacing(vec2(12.0, 1.0))
            .min_row_height(ROW - 1.0)
            .show(ui, |ui| {
                for (word, value, term) in rows.into_iter().take(fit) {
                    ui.label(
                        RichText::new(word)
                            .font(type_size::small())
                            .color(tokens.ink_soft),
                    )
                    .told(term);
                    terms::figure(ui, RichText::new(value).font(type_size::small()), term);
                    ui.end_row();
                }
            });
    });
}

type Row = (&'static str, String, Term);

fn rows(build: &Build, axle: &AxleStudy) -> Vec<Row> {
    let unit = build.unit;
    let linkage = &axle.model.axle.left;
    let Ok(pose) = linkage.pose(0.0, 0.0) else {
        return Vec::new();
    };
    let m = linkage.measures(&pose);
    let degrees = |rad: f64| format!("{}°", decimal(rad.to_degrees(), 1));
    let right = &axle.model.axle.right_mirrored;
    let track = right
        .pose(0.0, 0.0)
        .map_or(2.0 * pose.contact.y, |r| pose.contact.y + r.contact.y);
    let travel = axle.model.travel;
    let mut rows = vec![
        ("Track", length(track, unit), terms::TRACK),
        (
            "Travel",
            format!(
                "+{}, −{} {}",
                tape(travel.bump, unit),
                tape(travel.droop.abs(), unit),
                unit.sign()
            ),
            terms::WHEEL_TRAVEL,
        ),
        ("Castor", degrees(m.castor), terms::CASTOR),
        (
            "Inclination",
            degrees(m.steering_axis_inclination),
            terms::INCLINATION,
        ),
        (
            "Scrub radius",
            length(m.scrub_radius, unit),
            terms::SCRUB_RADIUS,
        ),
        ("Trail", length(m.mechanical_trail, unit), terms::TRAIL),
        (
            "Roll centre",
            length(m.roll_centre_height, unit),
            terms::ROLL_CENTRE,
        ),
    ];
    if let Some(spring) = m.spring {
        rows.push((
            "Motion ratio",
            decimal(spring.motion_ratio, 2),
            terms::MOTION_RATIO,
        ));
    }
    if let (Some(steer), Some(rack)) = (&axle.steer, axle.model.rack) {
        let circle = steer
            .turning_circle
            .map_or_else(|| "none".to_owned(), |d| long_length(d, unit));
        rows.push(("Turning circle", circle, terms::TURNING_CIRCLE));
        rows.push((
            "Lock to lock",
            format!("{} turns", decimal(rack.turns_lock_to_lock(), 2)),
            terms::LOCK_TO_LOCK,
        ));
    }
    rows
}
