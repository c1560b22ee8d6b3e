//! The whole point table, every cell of it editable.

use egui::{Grid, RichText, Ui};
use trammel_build::{
    Axis, Coordinate, Edit, LengthUnit, PointName, PointRef, Side, format_length, parse_length,
};

use super::NotebookInput;
use crate::{
    action::Action, number_field::NumberField, request::Request, tokens::Tokens, view::View, words,
};

/// Least and most width of a cell, points.
const CELL: [f32; 2] = [56.0, 74.0];
/// Width of the names with what stands between.
const NAMES: f32 = 174.0;

pub(super) fn ui(ui: &mut Ui, input: &NotebookInput<'_>, view: &View, requests: &mut Vec<Request>) {
    let unit = input.build.unit;
    let tokens = input.tokens;
    ui.horizontal(|ui| {
        let text = format!(
            "{}, {} side; x forward, y left, z up from the ground",
            unit.sign(),
            view.side.word()
        );
        ui.label(RichText::new(text).small().color(tokens.ink_soft));
    });
    ui.horizontal_wrapped(|ui| {
        for (action, text) in [
            (Action::CopyPoints, "Copy table"),
            (Action::PastePoints, "Paste table"),
            (Action::ImportPoints, "From CSV…"),
            (Action::ExportPoints, "To CSV…"),
        ] {
            if ui.small_button(text).clicked() {
                requests.push(Request::Act(action));
            }
        }
    });
    let [least, most] = CELL;
    let cell = ((ui.available_width() - NAMES) / 3.0).clamp(least, most);
    ui.spacing_mut().button_padding.x = 4.0;
    Grid::new("point table")
        .num_columns(4)
        .spacing(egui::vec2(6.0, 3.0))
        .show(ui, |ui| {
            ui.label("");
            for axis in Axis::ALL {
                ui.label(RichText::new(axis.letter()).small().color(tokens.ink_soft));
            }
            ui.end_row();
            for point in PointName::ALL {
                let at = PointRef {
                    axle: view.axle,
                    side: view.side,
                    point,
                };
                if let Some(triple) = input.build.point(at) {
                    row(ui, input, view, (at, triple), cell, requests);
                    ui.end_row();
                }
            }
        });
}

fn row(
    ui: &mut Ui,
    input: &NotebookInput<'_>,
    view: &View,
    (at, triple): (PointRef, trammel_build::Triple),
    width: f32,
    requests: &mut Vec<Request>,
) {
    let tokens = input.tokens;
    let own = at.side == Side::Right && input.build.has_own_right_point(at.axle, at.point);
    let label = if own {
        format!("{} (own)", at.point.label())
    } else {
        at.point.label().to_owned()
    };
    let chosen = view
        .selected
        .is_some_and(|s| s.point == at.point && s.axle == at.axle);
    let response = ui.selectable_label(
        chosen,
        RichText::new(label).color(member_colour(at.point, tokens)),
    );
    if response.clicked() {
        requests.push(Request::Select(Some(at)));
    }
    if response.hovered() {
        requests.push(Request::Hover(at));
    }
    for axis in Axis::ALL {
        let coordinate = Coordinate {
            axle: at.axle,
            point: at.point,
            axis,
        };
        let locked = input.build.locked.contains(&coordinate);
        let value = triple.get(axis.index()).copied().unwrap_or_default();
        cell(
            ui,
            input,
            (at, triple),
            (axis, value, locked),
            width,
            requests,
        );
    }
}

fn cell(
    ui: &mut Ui,
    input: &NotebookInput<'_>,
    (at, triple): (PointRef, trammel_build::Triple),
    (axis, value, locked): (Axis, f64, bool),
    width: f32,
    requests: &mut Vec<Request>,
) {
    let unit = input.build.unit;
    let name = format!(
        "{}, {}, {}",
        at.point.label(),
        axis.letter(),
        at.side.word()
    );
    let shown = format_length(value, unit);
    let field = NumberField {
        name: &name,
        shown: &shown,
        hint: "",
        width,
        enabled: !locked,
    };
    let typed = field.ui(ui, input.tokens);
    let Some(typed) = typed else { return };
    match parse_length(&typed, unit) {
        Ok(length) => {
            let mut to = triple;
            if let Some(slot) = to.get_mut(axis.index()) {
                *slot = length;
            }
            requests.push(Request::Edit(Edit::MovePoint { point: at, to }));
        }
        Err(fault) => requests.push(Request::Refuse(format!(
            "{fault}. {name} stays at {}.",
            in_unit(&shown, unit)
        ))),
    }
}

fn in_unit(shown: &str, unit: LengthUnit) -> String {
    format!("{} {}", words::typeset(shown), unit.sign())
}

/// The colour that a point's member has on the drawing.
pub(crate) fn member_colour(point: PointName, tokens: &Tokens) -> egui::Color32 {
    match point {
        PointName::UpperFrontPivot | PointName::UpperRearPivot | PointName::UpperBallJoint => {
            tokens.upper_arm
        }
        PointName::LowerFrontPivot | PointName::LowerRearPivot | PointName::LowerBallJoint => {
            tokens.lower_arm
        }
        PointName::TieRodInner | PointName::TieRodOuter => tokens.tie_rod,
        PointName::SpringChassisMount | PointName::SpringArmMount => tokens.spring,
        PointName::WheelCentre | PointName::RackFace | PointName::RackBoreMouth => tokens.steel,
    }
}
