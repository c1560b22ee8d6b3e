//! How exactly points are made: usually, each way's accuracy, and point by point.

use egui::{Grid, RichText, Ui};
use trammel_build::{
    Axis, AxleName, Coordinate, Edit, LengthUnit, MadeBy, PointName, PointRef, Tolerances,
    defaults, format_length, parse_length,
};

use super::{super::NotebookInput, build_error::way, choice};
use crate::{number_field::NumberField, request::Request, tokens::type_size, view::View, words};

/// The ways of the shop with their word on a chip and what they mean.
const WAYS: [(MadeBy, &str, &str); 3] = [
    (
        MadeBy::JigDrilled,
        "jig-drilled",
        "Drilled through a jig, or set by one while it is welded.",
    ),
    (MadeBy::Tape, "tape", "Marked out by tape and square."),
    (
        MadeBy::HandHeld,
        "hand-held",
        "Held by hand while it is tacked.",
    ),
];
/// Points that take part in the toe curve.
const POINTS: [PointName; 9] = [
    PointName::TieRodInner,
    PointName::TieRodOuter,
    PointName::UpperFrontPivot,
    PointName::UpperRearPivot,
    PointName::UpperBallJoint,
    PointName::LowerFrontPivot,
    PointName::LowerRearPivot,
    PointName::LowerBallJoint,
    PointName::WheelCentre,
];

/// The usual way, and how exact each way is.
pub(super) fn usual(ui: &mut Ui, input: &NotebookInput<'_>, requests: &mut Vec<Request>) {
    let tolerances = &input.build.tolerances;
    let help = "How points are put in their places of which nothing else is said below.";
    let now = input.build.usually_made_by();
    if let Some(made) = choice(ui, input.tokens, "Usually", help, &WAYS, now) {
        requests.push(set(Tolerances {
            usual: Some(made),
            ..tolerances.clone()
        }));
    }
    ui.horizontal_wrapped(|ui| {
        ui.spacing_mut().item_spacing = egui::vec2(5.0, 3.0);
        let help = "Standard deviation of each coordinate: two of three come out nearer than this, nineteen of twenty within twice as much. Empty takes the usual one (common practice, no source).";
        ui.label(RichText::new("Accuracy").small().color(input.tokens.ink_soft)).on_hover_text(help);
        accuracy(ui, input, "jig", tolerances.jig_drilled, defaults::JIG_DRILLED_DEVIATION_MM, |t, v| t.jig_drilled = v, requests);
        accuracy(ui, input, "tape", tolerances.tape, defaults::TAPE_DEVIATION_MM, |t, v| t.tape = v, requests);
        accuracy(ui, input, "hand", tolerances.hand_held, defaults::HAND_HELD_DEVIATION_MM, |t, v| t.hand_held = v, requests);
        ui.label(RichText::new(input.build.unit.sign()).small().color(input.tokens.ink_soft));
    });
}

fn accuracy(
    ui: &mut Ui,
    input: &NotebookInput<'_>,
    word: &str,
    value: Option<f64>,
    default_mm: f64,
    put: fn(&mut Tolerances, Option<f64>),
    requests: &mut Vec<Request>,
) {
    ui.label(RichText::new(word).small());
    let unit = input.build.unit;
    let hint = deviation(unit.from_mm(default_mm), unit);
    let name = format!("Accuracy, {word}");
    if let Some(typed) = length_field(ui, input, &name, value, &hint, 54.0, requests) {
        let mut next = input.build.tolerances.clone();
        put(&mut next, typed);
        requests.push(set(next));
    }
}

/// A deviation as a number to read: a fraction that it is near, else three decimals.
fn deviation(value: f64, unit: LengthUnit) -> String {
    match unit {
        LengthUnit::Inch => words::decimal(value, 3),
        LengthUnit::Millimetre => format_length((value * 100.0).round() / 100.0, unit),
    }
}

/// A length that may be empty; `Some` with what was typed.
fn length_field(
    ui: &mut Ui,
    input: &NotebookInput<'_>,
    name: &str,
    value: Option<f64>,
    hint: &str,
    width: f32,
    requests: &mut Vec<Request>,
) -> Option<Option<f64>> {
    let unit = input.build.unit;
    let shown = value.map_or_else(String::new, |v| format_length(v, unit));
    let field = NumberField {
        name,
        shown: &shown,
        hint,
        width,
        enabled: true,
    };
    let typed = field.ui(ui, input.tokens)?;
    if typed.trim().is_empty() {
        return Some(None);
    }
    match parse_length(&typed, unit) {
        Ok(v) => Some(Some(v)),
        Err(fault) => {
            requests.push(Request::Refuse(format!("{fault}. {name} stays as it was.")));
            None
        }
    }
}

fn set(tolerances: Tolerances) -> Request {
    Request::Edit(Edit::SetTolerances(tolerances))
}

/// What a row of the list is about.
#[derive(Clone, Copy)]
enum Of {
    Point(AxleName, PointName),
    Coordinate(Coordinate),
}

impl Of {
    fn name(self) -> String {
        match self {
            Self::Point(_, point) => point.label().to_owned(),
            Self::Coordinate(at) => format!("{}, {}", at.point.label(), way(at.axis)),
        }
    }

    fn made(self, tolerances: &Tolerances) -> Option<MadeBy> {
        match self {
            Self::Point(axle, point) => tolerances.points.get(&(axle, point)).copied(),
            Self::Coordinate(at) => tolerances.coordinates.get(&at).copied(),
        }
    }

    /// The tolerances with this made so, or not said any more.
    fn with(self, tolerances: &Tolerances, made: Option<MadeBy>) -> Tolerances {
        let mut next = tolerances.clone();
        match (self, made) {
            (Self::Point(axle, point), Some(made)) => {
                next.points.insert((axle, point), made);
            }
            (Self::Point(axle, point), None) => {
                next.points.remove(&(axle, point));
            }
            (Self::Coordinate(at), Some(made)) => {
                next.coordinates.insert(at, made);
            }
            (Self::Coordinate(at), None) => {
                next.coordinates.remove(&at);
            }
        }
        next
    }
}

/// Point by point; the coordinates of the selected point each by itself.
pub(super) fn points(
    ui: &mut Ui,
    input: &NotebookInput<'_>,
    view: &View,
    requests: &mut Vec<Request>,
) {
    ui.add_space(4.0);
    ui.label(RichText::new("How each point is made").font(type_size::head())).on_hover_text(
        "A click on a point's name opens its three coordinates. Both sides alike. The wheel centre is a measure of the hub and counts only where something is said of it.",
    );
    Grid::new("made by")
        .num_columns(6)
        .spacing(egui::vec2(3.0, 1.0))
        .show(ui, |ui| {
            for point in POINTS {
                let open = view
                    .selected
                    .is_some_and(|s| s.point == point && s.axle == view.axle);
                let of = Of::Point(view.axle, point);
                let name = RichText::new(of.name()).small();
                if ui.selectable_label(open, name).clicked() {
                    let at = PointRef {
                        axle: view.axle,
                        side: view.side,
                        point,
                    };
                    requests.push(Request::Select((!open).then_some(at)));
                }
                ways(ui, input, of, "usual", requests);
                for axis in Axis::ALL.into_iter().filter(|_| open) {
                    let axle = view.axle;
                    let of = Of::Coordinate(Coordinate { axle, point, axis });
                    let word = format!("      {}", way(axis));
                    ui.label(RichText::new(word).small().color(input.tokens.ink_soft));
                    ways(ui, input, of, "as point", requests);
                }
            }
        });
}

/// The ways of one row: not said, one of the shop's, or a deviation of its own.
fn ways(ui: &mut Ui, input: &NotebookInput<'_>, of: Of, unsaid: &str, requests: &mut Vec<Request>) {
    let tolerances = &input.build.tolerances;
    let now = of.made(tolerances);
    let options = [
        (None, unsaid),
        (Some(MadeBy::JigDrilled), "jig"),
        (Some(MadeBy::Tape), "tape"),
        (Some(MadeBy::HandHeld), "hand"),
    ];
    for (made, word) in options {
        let on = now == made;
        let response = ui.selectable_label(on, RichText::new(word).small());
        let name = format!("{}: {word}", of.name());
        response
            .widget_info(|| egui::WidgetInfo::selected(egui::Role::RadioButton, true, on, &name));
        if response.clicked() && !on {
            requests.push(set(of.with(tolerances, made)));
        }
    }
    let own = match now {
        Some(MadeBy::Deviation(v)) => Some(v),
        _ => None,
    };
    let name = format!("{}, deviation", of.name());
    if let Some(typed) = length_field(ui, input, &name, own, "own", 50.0, requests) {
        requests.push(set(of.with(tolerances, typed.map(MadeBy::Deviation))));
    }
    ui.end_row();
}
