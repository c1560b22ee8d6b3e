//! The second curve, chosen by chips.

use egui::{RichText, Ui};
use trammel_analysis::{Against, AxleStudy, Quantity, Study};

use super::NotebookInput;
use crate::{
    plot::{Curve, Manner, Trace},
    request::Request,
    terms::{self, Told},
    tokens::Tokens,
    view::View,
    words,
};

pub(super) fn ui(
    ui: &mut Ui,
    input: &NotebookInput<'_>,
    study: &Study,
    view: &mut View,
    requests: &mut Vec<Request>,
) {
    let Some(axle) = study.axle(view.axle) else {
        return;
    };
    if !offered(view.quantity, axle) {
        view.quantity = Quantity::Camber;
    }
    chips(ui, input.tokens, axle, view);
    let quantity = view.quantity;
    summary(ui, input, axle, view);
    let unit = input.build.unit;
    let height = (ui.available_height() - 4.0).clamp(96.0, 240.0);
    let (x, here_x) = match quantity.against() {
        Against::Travel => (
            axle.model.travel.droop..=axle.model.travel.bump,
            view.travel,
        ),
        Against::Rack => (-axle.model.lock()..=axle.model.lock(), view.rack),
    };
    let traces = traces(input, axle, view);
    let here = traces
        .last()
        .and_then(|t| at(&t.points, unit.from_mm(here_x)));
    let asked = Curve {
        name: quantity.label(),
        height,
        traces,
        here,
        x: unit.from_mm(*x.start())..=unit.from_mm(*x.end()),
        least_span: least_span(quantity),
        within: None,
        band: Vec::new(),
        x_sign: unit.sign(),
        y_sign: words::axis_sign(quantity.unit_kind(), unit),
        x_label: match quantity.against() {
            Against::Travel => format!("droop  ◂  wheel travel, {}  ▸  bump", unit.sign()),
            Against::Rack => format!("right  ◂  rack travel, {}  ▸  left", unit.sign()),
        },
    }
    .ui(ui, input.tokens);
    if let Some(x) = asked {
        let mm = x * unit.mm();
        requests.push(match quantity.against() {
            Against::Travel => Request::Pose {
                travel: mm,
                rack: view.rack,
            },
            Against::Rack => Request::Pose {
                travel: view.travel,
                rack: mm,
            },
        });
    }
}

/// Whether this axle has such a curve.
fn offered(quantity: Quantity, axle: &AxleStudy) -> bool {
    match quantity {
        Quantity::ToeChange => false,
        Quantity::MotionRatio | Quantity::SpringLength => {
            axle.model.axle.left.corner().spring.is_some()
        }
        other => other.against() == Against::Travel || axle.steer.is_some(),
    }
}

fn chips(ui: &mut Ui, tokens: &Tokens, axle: &AxleStudy, view: &mut View) {
    ui.horizontal_wrapped(|ui| {
        ui.spacing_mut().item_spacing = egui::vec2(5.0, 4.0);
        ui.spacing_mut().button_padding = egui::vec2(8.0, 1.0);
        ui.spacing_mut().interact_size.y = 20.0;
        for quantity in Quantity::ALL.into_iter().filter(|q| offered(*q, axle)) {
            let chosen = view.quantity == quantity;
            let text = RichText::new(quantity.short_label()).size(12.0);
            let button = if chosen {
                egui::Button::new(text.color(tokens.on_accent)).fill(tokens.accent)
            } else {
                egui::Button::new(text)
            };
            let button = button.corner_radius(10.0);
            let response = ui
                .add(button)
                .told_with(terms::of(quantity), &format!("{}.", quantity.label()));
            if response.clicked() {
                view.quantity = quantity;
            }
        }
    });
}

/// The value at the moved pose, and the turning circle beside the steering curves.
fn summary(ui: &mut Ui, input: &NotebookInput<'_>, axle: &AxleStudy, view: &View) {
    let quantity = view.quantity;
    let unit = input.build.unit;
    ui.horizontal_wrapped(|ui| {
        ui.label(RichText::new(quantity.label()).strong())
            .told(terms::of(quantity));
        if quantity.against() == Against::Rack {
            if let (Some(steer), Some(rack)) = (&axle.steer, &axle.model.rack) {
                let circle = steer.turning_circle.map_or_else(
                    || "no turning circle".to_owned(),
                    |d| {
                        format!(
                            "turning circle {} kerb to kerb",
                            words::long_length(d, unit)
                        )
                    },
                );
                let turns = words::decimal(rack.turns_lock_to_lock(), 2);
                let text = format!("{circle} · {turns} turns lock to lock");
                let text = RichText::new(text).small().color(input.tokens.ink_soft);
                terms::figure(ui, text, terms::TURNING_CIRCLE);
            }
        } else if let Some(value) = at_pose(axle, view) {
            let shown = value * words::axis_factor(quantity.unit_kind(), unit);
            let sign = words::axis_sign(quantity.unit_kind(), unit);
            let gap = if sign.is_empty() || sign == "°" {
                ""
            } else {
                " "
            };
            let text = format!("{}{gap}{sign} at this pose", words::decimal(shown, 2));
            let text = RichText::new(text).small().color(input.tokens.ink_soft);
            terms::figure(ui, text, terms::of(quantity));
        }
    });
}

fn at_pose(axle: &AxleStudy, view: &View) -> Option<f64> {
    let linkage = axle.model.linkage(view.side);
    let pose = linkage.pose(view.travel, view.rack).ok()?;
    view.quantity.of(&linkage.measures(&pose), 0.0)
}

fn traces(input: &NotebookInput<'_>, axle: &AxleStudy, view: &View) -> Vec<Trace> {
    let unit = input.build.unit;
    let quantity = view.quantity;
    let factor = words::axis_factor(quantity.unit_kind(), unit);
    let tokens = input.tokens;
    let trace = |name: &str, colour, points| Trace {
        name: name.to_owned(),
        points,
        colour,
        manner: Manner::Plain,
    };
    match (quantity, &axle.steer) {
        (Quantity::SteerAngle, Some(steer)) => {
            let side = |of: fn(&trammel_analysis::SteerStation) -> f64| {
                steer
                    .stations
                    .iter()
                    .map(|s| [unit.from_mm(s.rack), of(s) * factor])
                    .collect::<Vec<_>>()
            };
            vec![
                trace(
                    "right wheel",
                    tokens.lower_arm,
                    side(|s| s.pose.right_measures.steer),
                ),
                trace(
                    "left wheel",
                    tokens.tie_rod,
                    side(|s| s.pose.left_measures.steer),
                ),
            ]
        }
        (Quantity::Ackermann, Some(steer)) => {
            // Near straight ahead the percentage is a ratio of two small numbers and says nothing.
            let points = steer
                .stations
                .iter()
                .filter(|s| s.pose.left_measures.steer.abs() > 0.02)
                .filter_map(|s| s.ackermann.map(|a| [unit.from_mm(s.rack), a]))
                .collect();
            vec![trace("Ackermann percentage", tokens.lower_arm, points)]
        }
        _ => {
            let curve = axle.curve(view.side);
            let of = |s: &trammel_analysis::Station| quantity.of(&s.measures, s.toe_change);
            let points = curve
                .stations
                .iter()
                .filter_map(|s| of(s).map(|v| [unit.from_mm(s.pose.travel), v * factor]))
                .collect();
            vec![trace(quantity.label(), tokens.lower_arm, points)]
        }
    }
}

/// The point of a trace at a place on its axis.
fn at(points: &[[f64; 2]], x: f64) -> Option<[f64; 2]> {
    let after = points.iter().position(|p| p[0] >= x - 1e-9)?;
    let b = points.get(after)?;
    let a = after
        .checked_sub(1)
        .and_then(|i| points.get(i))
        .unwrap_or(b);
    let span = b[0] - a[0];
    let part = if span > 0.0 {
        ((x - a[0]) / span).clamp(0.0, 1.0)
    } else {
        1.0
    };
    Some([x, a[1] + part * (b[1] - a[1])])
}

fn least_span(quantity: Quantity) -> f64 {
    match quantity.unit_kind() {
        trammel_analysis::UnitKind::Angle => 0.5,
        trammel_analysis::UnitKind::Length => 0.2,
        trammel_analysis::UnitKind::Ratio => 0.1,
        trammel_analysis::UnitKind::Percent => 20.0,
    }
}
