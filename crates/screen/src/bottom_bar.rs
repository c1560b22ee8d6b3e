//! The bar below: the selected point with its member, and where the moved linkage is.

use egui::{Align, Layout, RichText, Slider, SliderClamping, Ui, UiBuilder};
use trammel_analysis::{AxleStudy, Study};
use trammel_build::{Build, LengthUnit, PointName, PointRef, Side, format_length, parse_length};
use trammel_geometry::Pose;

use crate::{
    action::Action,
    number_field::{NumberField, name_node},
    request::Request,
    terms::{self, Term, Told},
    tokens::{Tokens, type_size},
    view::{Stage, View},
    words,
};

/// Least and most width of the sliders at the right.
const SLIDERS: [f32; 2] = [286.0, 348.0];
/// What the selected point's row takes where there is enough.
const POINT: f32 = 560.0;
/// A bar narrower than this has the sliders in a row of their own.
const NARROW: f32 = 760.0;
/// Width of a number of the selected point.
const NUMBER: f32 = 70.0;
/// What stands beside a slider: its name, its value, a button, the room between.
const BESIDE: f32 = 178.0;

/// Height of a bar of this width, with its margins.
pub(crate) fn height(width: f32) -> f32 {
    if width < NARROW { 96.0 } else { 66.0 }
}

/// What the bar reads.
#[derive(Clone, Copy, Debug)]
pub struct BottomBarInput<'a> {
    /// The build.
    pub build: &'a Build,
    /// What was worked out from it.
    pub study: Option<&'a Study>,
    /// Colours.
    pub tokens: &'a Tokens,
}

/// Shows the bar.
pub fn ui(ui: &mut Ui, input: &BottomBarInput<'_>, view: &View, requests: &mut Vec<Request>) {
    let axle = input.study.and_then(|s| s.axle(view.axle));
    let whole = ui.max_rect();
    let narrow = whole.width() < NARROW;
    let (words, sliders) = if narrow {
        whole.split_top_bottom_at_y(whole.bottom() - 26.0)
    } else {
        let [least, most] = SLIDERS;
        let width = (whole.width() - POINT).clamp(least, most);
        let (left, right) = whole.split_left_right_at_x(whole.right() - width);
        (left.with_max_x(left.right() - 12.0), right)
    };
    let place = |rect| {
        UiBuilder::new()
            .max_rect(rect)
            .layout(Layout::top_down(Align::Min))
    };
    let clip = words.expand2(egui::vec2(0.0, 6.0));
    let mut words = ui.new_child(place(words));
    words.set_clip_rect(clip);
    match view.selected {
        Some(point) => selected(&mut words, input, axle, view, point, requests),
        None => hints(&mut words, input.tokens, view.stage),
    }
    if let Some(axle) = axle {
        if narrow {
            let half = sliders.center().x;
            let (left, right) = sliders.split_left_right_at_x(half);
            let left = left.with_max_x(half - 12.0);
            travel_slider(&mut ui.new_child(place(left)), input, axle, view, requests);
            rack_slider(&mut ui.new_child(place(right)), input, axle, view, requests);
        } else {
            let mut right = ui.new_child(place(sliders));
            right.spacing_mut().item_spacing.y = 3.0;
            travel_slider(&mut right, input, axle, view, requests);
            rack_slider(&mut right, input, axle, view, requests);
        }
    }
}

fn hints(ui: &mut Ui, tokens: &Tokens, stage: Stage) {
    let text = match stage {
        Stage::LayOut | Stage::Tune => "Drag any joint and watch the toe curve",
        Stage::Prove => "Drag any joint and watch forces and factors",
        Stage::Make => "Choose a sheet, drag a tab by its grips, export it",
        Stage::SetUp => "Type readings at the right and watch them on the plot",
    };
    ui.label(RichText::new(text).font(type_size::head()));
    let more = "Arrow keys nudge it, Shift makes steps fine, Ctrl+Z takes back. F1: all keys.";
    ui.add(egui::Label::new(RichText::new(more).small().color(tokens.ink_soft)).truncate());
}

fn selected(
    ui: &mut Ui,
    input: &BottomBarInput<'_>,
    axle: Option<&AxleStudy>,
    view: &View,
    at: PointRef,
    requests: &mut Vec<Request>,
) {
    let tokens = input.tokens;
    let unit = input.build.unit;
    let Some(triple) = input.build.point(at) else {
        return;
    };
    let locks = trammel_build::Axis::ALL.map(|axis| {
        input.build.locked.contains(&trammel_build::Coordinate {
            axle: at.axle,
            point: at.point,
            axis,
        })
    });
    ui.horizontal(|ui| {
        ui.spacing_mut().item_spacing.x = 5.0;
        let colour = crate::notebook::member_colour(at.point, tokens);
        let name = format!("{}, {}", at.point.label(), at.side.word());
        let own = at.side == Side::Right;
        // The numbers come first; the name has what they leave.
        let others = 3.0 * (NUMBER + 20.0) + if own { 102.0 } else { 48.0 };
        ui.scope(|ui| {
            ui.set_max_width((ui.available_width() - others).max(40.0));
            let text = RichText::new(&name).font(type_size::head()).color(colour);
            ui.add(egui::Label::new(text).truncate())
        })
        .inner
        .on_hover_text(&name);
        for (axis, locked) in trammel_build::Axis::ALL.into_iter().zip(locks) {
            let value = triple.get(axis.index()).copied().unwrap_or_default();
            ui.label(RichText::new(axis.letter()).small().color(tokens.ink_soft));
            let shown = format_length(value, unit);
            let name = format!("Selected point, {}", axis.letter());
            let field = NumberField { name: &name, shown: &shown, hint: "", width: NUMBER, enabled: !locked };
            if let Some(typed) = field.ui(ui, tokens) {
                requests.push(typed_coordinate(view, at, triple, axis, &typed, unit));
            }
        }
        let locked = locks.iter().all(|l| *l);
        let word = if locked { "Free" } else { "Lock" };
        if ui.small_button(word).on_hover_text("A locked point can't be dragged, nudged or typed (L)").clicked() {
            requests.push(Request::Act(Action::LockPoint));
        }
        if own {
            let own = input.build.has_own_right_point(at.axle, at.point);
            let word = if own { "Mirror" } else { "Own" };
            let why = "Give the right side a place of its own for this point, or make it the left's mirror image again (M)";
            if ui.small_button(word).on_hover_text(why).clicked() {
                requests.push(Request::Act(Action::MirrorPoint));
            }
        }
    });
    ui.horizontal(|ui| {
        if crate::view::can_take_rack_along(at) {
            let mut follows = view.rack_follows;
            let help = "The whole rack goes where this joint is put; along the rack's own line the joint only stands further out or in. Off: the joint moves alone, as on a bracket.";
            if ui.checkbox(&mut follows, "Rack follows").on_hover_text(help).changed() {
                requests.push(Request::RackFollows(follows));
            }
        }
        if let Some(text) = axle.and_then(|a| member_text(input.build, a, at)) {
            ui.add(egui::Label::new(RichText::new(text).small().color(tokens.ink_soft)).truncate());
        }
    });
}

fn typed_coordinate(
    view: &View,
    at: PointRef,
    mut to: trammel_build::Triple,
    axis: trammel_build::Axis,
    typed: &str,
    unit: LengthUnit,
) -> Request {
    match parse_length(typed, unit) {
        Ok(length) => {
            if let Some(slot) = to.get_mut(axis.index()) {
                *slot = length;
            }
            Request::Edit(view.moving(at, to))
        }
        Err(fault) => Request::Refuse(format!("{fault}. The point stays where it was.")),
    }
}

/// Length, angle and what moves, for the member that a point belongs to.
fn member_text(build: &Build, axle: &AxleStudy, at: PointRef) -> Option<String> {
    let unit = build.unit;
    let linkage = axle.model.linkage(at.side);
    let pose = linkage.pose(0.0, 0.0).ok()?;
    let measures = linkage.measures(&pose);
    let distance = |a: PointName, b: PointName| {
        let point = |point| build.point_mm(PointRef { point, ..at });
        Some(words::length((point(a)? - point(b)?).norm(), unit))
    };
    let degrees = |rad: f64| format!("{}°", words::decimal(rad.to_degrees(), 1));
    Some(match at.point {
        PointName::TieRodInner | PointName::TieRodOuter => {
            let rod = distance(PointName::TieRodInner, PointName::TieRodOuter)?;
            let moves = match (at.point, axle.model.rack) {
                (PointName::TieRodOuter, _) => "moves with the upright",
                (_, Some(_)) => "moves with the rack",
                (_, None) => "fixed to the frame",
            };
            format!(
                "Tie rod {rod} · {} at the rack · {moves}",
                degrees(measures.tie_rod_angle)
            )
        }
        PointName::UpperBallJoint | PointName::LowerBallJoint => format!(
            "Ball joints {} apart · castor {} · inclination {} · carries the upright",
            distance(PointName::UpperBallJoint, PointName::LowerBallJoint)?,
            degrees(measures.castor),
            degrees(measures.steering_axis_inclination)
        ),
        PointName::UpperFrontPivot | PointName::UpperRearPivot => format!(
            "To the ball joint {} · arm {} long · fixed to the frame",
            distance(at.point, PointName::UpperBallJoint)?,
            words::length(arm_length(&pose, linkage, false), unit)
        ),
        PointName::LowerFrontPivot | PointName::LowerRearPivot => format!(
            "To the ball joint {} · arm {} long · fixed to the frame",
            distance(at.point, PointName::LowerBallJoint)?,
            words::length(arm_length(&pose, linkage, true), unit)
        ),
        PointName::WheelCentre => format!(
            "Scrub {} · trail {} · track {} · moves with the upright",
            words::length(measures.scrub_radius, unit),
            words::length(measures.mechanical_trail, unit),
            words::length(2.0 * pose.contact.y, unit)
        ),
        PointName::SpringChassisMount | PointName::SpringArmMount => {
            let spring = measures.spring?;
            format!(
                "Spring unit {} long · motion ratio {} · travel {} droop to {} bump",
                words::length(spring.length, unit),
                words::decimal(spring.motion_ratio, 2),
                words::length(-axle.model.travel.droop, unit),
                words::length(axle.model.travel.bump, unit)
            )
        }
        PointName::RackFace | PointName::RackBoreMouth => {
            let end = axle.model.rack?.end(at.side).to_owned();
            format!(
                "Rack end {} from face to joint · bracket stands off {} · moves with the rack",
                words::length(end.free_length(), unit),
                words::length(end.bracket_offset().norm(), unit)
            )
        }
    })
}

/// Distance of the ball joint from the arm's pivot axis.
fn arm_length(pose: &Pose, linkage: &trammel_geometry::Linkage, lower: bool) -> f64 {
    let corner = linkage.corner();
    let (arm, ball) = if lower {
        (corner.lower_arm, pose.lower_ball_joint)
    } else {
        (corner.upper_arm, pose.upper_ball_joint)
    };
    let axis = (arm.front_pivot - arm.rear_pivot).normalize();
    let reach = ball - arm.front_pivot;
    (reach - axis * axis.dot(&reach)).norm()
}

fn travel_slider(
    ui: &mut Ui,
    input: &BottomBarInput<'_>,
    axle: &AxleStudy,
    view: &View,
    requests: &mut Vec<Request>,
) {
    let range = axle.model.travel;
    ui.horizontal(|ui| {
        let playing = view.playing_since.is_some();
        let (word, hover) = if playing {
            ("Stop", "Stop the run (R)")
        } else {
            ("Run", "Run the wheel through its travel (R)")
        };
        if let Some(travel) = slider(
            ui,
            input,
            ("Travel", terms::WHEEL_TRAVEL),
            view.travel,
            range.droop,
            range.bump,
        ) {
            requests.push(Request::Pose {
                travel,
                rack: view.rack,
            });
        }
        if ui.small_button(word).on_hover_text(hover).clicked() {
            requests.push(Request::Act(Action::Play));
        }
    });
}

fn rack_slider(
    ui: &mut Ui,
    input: &BottomBarInput<'_>,
    axle: &AxleStudy,
    view: &View,
    requests: &mut Vec<Request>,
) {
    if axle.model.rack.is_none() {
        return;
    }
    let lock = axle.model.lock();
    ui.horizontal(|ui| {
        if let Some(rack) = slider(
            ui,
            input,
            ("Rack", terms::RACK_TRAVEL),
            view.rack,
            -lock,
            lock,
        ) {
            requests.push(Request::Pose {
                travel: view.travel,
                rack,
            });
        }
        if ui
            .small_button("Zero")
            .on_hover_text("Back to the design position (0)")
            .clicked()
        {
            requests.push(Request::Act(Action::ResetPose));
        }
    });
}

/// A named slider with its value as it would be read on a tape; mm in and out.
fn slider(
    ui: &mut Ui,
    input: &BottomBarInput<'_>,
    (name, term): (&str, Term),
    mm: f64,
    low: f64,
    high: f64,
) -> Option<f64> {
    let unit = input.build.unit;
    let tokens = input.tokens;
    let whole = ui.available_width();
    ui.add_sized(
        [44.0, 18.0],
        egui::Label::new(RichText::new(name).small().color(tokens.ink_soft)),
    );
    let mut value = mm;
    ui.spacing_mut().slider_width = (whole - BESIDE).clamp(40.0, 170.0);
    let response = ui.add(
        Slider::new(&mut value, low..=high)
            .show_value(false)
            // Stops that are no whole steps apart must not shove the value about.
            .clamping(SliderClamping::Edits)
            .step_by(unit.mm() / 32.0),
    );
    name_node(ui, response.id, name);
    let text = words::tape(mm, unit);
    let text = if mm > 0.0 { format!("+{text}") } else { text };
    let reading = egui::Label::new(RichText::new(format!("{text} {}", unit.sign())).small());
    ui.add_sized([62.0, 18.0], reading).told(term);
    response.changed().then_some(value)
}
