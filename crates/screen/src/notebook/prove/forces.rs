//! The force in every member at the present pose, and a plot of any force or factor over travel or rack.

use egui::{ComboBox, RichText, Ui};
use trammel_analysis::{FactorRow, ForceRow, ProofPart, effective_load_cases};
use trammel_build::{AxleName, LengthUnit, Side};
use trammel_strength::check::Check;

use super::{
    super::{NotebookInput, tune::choice},
    head, small,
};
use crate::{
    plot::{Curve, Manner, Trace},
    prove::{
        forces::{Figure, Member, chosen_case, has_two_senses},
        settings::{Over, Plotted},
    },
    request::Request,
    terms::{self, Term, Told},
    view::View,
    words::{decimal, force_unit, length, moment_unit},
};

pub(super) fn ui(
    ui: &mut Ui,
    input: &NotebookInput<'_>,
    view: &mut View,
    requests: &mut Vec<Request>,
) {
    controls(ui, input, view);
    match input.prove.forces_here() {
        None => small(
            ui,
            input.tokens,
            "No load case is put on: switch one on among the load cases.",
        ),
        Some(Err(why)) => {
            let text = format!("No forces: {why}");
            ui.add(egui::Label::new(RichText::new(text).color(input.tokens.danger)).wrap());
        }
        Some(Ok(row)) => {
            plot(ui, input, row, view, requests);
            table(ui, input, row, view);
            steering(ui, input);
        }
    }
}

fn controls(ui: &mut Ui, input: &NotebookInput<'_>, view: &mut View) {
    let chosen = chosen_case(input.build, &view.prove);
    ui.horizontal_wrapped(|ui| {
        let label = ui.label("Load case");
        let shown = chosen.as_ref().map_or("none is on", |c| c.name.as_str());
        let combo = ComboBox::from_id_salt("load case of the forces")
            .selected_text(shown)
            .width(170.0)
            .show_ui(ui, |ui| {
                for (case, on) in effective_load_cases(input.build) {
                    let here = Some(&case.name) == chosen.as_ref().map(|c| &c.name);
                    let entry = egui::Button::selectable(here, &case.name);
                    if ui.add_enabled(on, entry).on_hover_text(&case.what).clicked() {
                        view.prove.case = Some(case.name);
                    }
                }
            });
        combo.response.labelled_by(label.id);
        let help = "Arrows to scale in all three views: on the frame and the rack at their joints, on the upright at its ball joints, and the load on the wheel.";
        ui.checkbox(&mut view.prove.arrows, "Arrows").on_hover_text(help);
    });
    if chosen.as_ref().is_some_and(has_two_senses) {
        let senses = [
            (
                1.0,
                "one way",
                "The ground resists the wheel turned one way.",
            ),
            (
                -1.0,
                "the other way",
                "The ground resists the wheel turned the other way.",
            ),
        ];
        let help = "Which way a wheel that is turned on the spot is resisted.";
        if let Some(sense) = choice(ui, input.tokens, "Turned", help, &senses, view.prove.sense) {
            view.prove.sense = sense;
        }
    }
    let own_right = input
        .build
        .axle_spec(view.axle)
        .is_some_and(|a| !a.right.is_empty());
    if own_right {
        let sides = [
            (Side::Left, "left", "The left corner."),
            (Side::Right, "right", "The right corner."),
        ];
        if let Some(side) = choice(ui, input.tokens, "Side", "Which corner.", &sides, view.side) {
            view.side = side;
        }
    }
}

/// Width of the names and of each column of numbers.
const NAME: f32 = 148.0;
const NUMBER: f32 = 52.0;
const LINE: f32 = 19.0;
/// Between two columns.
const GAP: f32 = 4.0;

fn table(ui: &mut Ui, input: &NotebookInput<'_>, row: &ForceRow, view: &mut View) {
    let unit = input.build.unit;
    let (_, force) = force_unit(unit);
    let (_, moment) = moment_unit(unit);
    head(ui, "At this pose");
    let place = format!(
        "Wheel travel {}, rack {}. Forces in {force}, moments in {moment}; x forward, y left, z up. Click a name to plot it.",
        length(row.travel, unit),
        length(row.rack, unit)
    );
    small(ui, input.tokens, place);
    ui.spacing_mut().item_spacing.y = 1.0;
    ui.spacing_mut().interact_size.y = LINE;
    ui.horizontal(|ui| {
        ui.spacing_mut().item_spacing.x = GAP;
        ui.add_space(NAME + GAP);
        for title in ["x", "y", "z", "total"] {
            let text = RichText::new(title).small().color(input.tokens.ink_soft);
            ui_number(ui, text);
        }
    });
    for member in Member::ALL {
        if let Some(figure) = member.figure(row) {
            ui.horizontal(|ui| line(ui, input, member, figure, view));
        }
    }
}

/// Both tie rods on the rack, and what holds them.
fn steering(ui: &mut Ui, input: &NotebookInput<'_>) {
    let Some(found) = input.prove.steering_here() else {
        return;
    };
    let (per_newton, force) = force_unit(input.build.unit);
    let (per_newton_mm, moment) = moment_unit(input.build.unit);
    let [left, right] = found.rack;
    let effort = found.effort;
    head(ui, "Steering");
    let help = format!(
        "At this pose, without friction: a steering force comes out greater by it, a kick smaller. Forces in {force}, to the left positive; torques in {moment}. A case that hits a wheel hits one side alone."
    );
    small(ui, input.tokens, help);
    for (what, value, decimals, term) in [
        (
            "Rack, from the left rod",
            left * per_newton,
            0,
            terms::RACK_FORCE,
        ),
        (
            "Rack, from the right rod",
            right * per_newton,
            0,
            terms::RACK_FORCE,
        ),
        (
            "Rack, both together",
            effort.rack_force * per_newton,
            0,
            terms::RACK_FORCE,
        ),
        (
            "Torque at the pinion",
            effort.pinion_torque * per_newton_mm,
            1,
            terms::PINION_TORQUE,
        ),
        (
            "Torque at the steering wheel",
            effort.pinion_torque * per_newton_mm,
            1,
            terms::PINION_TORQUE,
        ),
        (
            "Hand force at its rim",
            effort.hand_force * per_newton,
            0,
            terms::HAND_FORCE,
        ),
    ] {
        ui.horizontal(|ui| {
            let name = RichText::new(what).size(12.5);
            let layout = egui::Layout::left_to_right(egui::Align::Center);
            ui.spacing_mut().item_spacing.x = GAP;
            let width = NAME + 3.0 * (NUMBER + GAP);
            ui.allocate_ui_with_layout(egui::vec2(width, LINE), layout, |ui| {
                ui.set_min_width(width);
                ui.label(name).told(term)
            });
            number(ui, RichText::new(decimal(value, decimals)).size(12.5), term);
        });
    }
}

/// A number at the right of its column.
fn number(ui: &mut Ui, text: RichText, term: Term) {
    ui_number(ui, text).told(term);
}

/// The same without a term, as for the heads.
fn ui_number(ui: &mut Ui, text: RichText) -> egui::Response {
    let layout = egui::Layout::right_to_left(egui::Align::Center);
    ui.allocate_ui_with_layout(egui::vec2(NUMBER, LINE), layout, |ui| {
        ui.set_min_width(NUMBER);
        ui.label(text)
    })
    .inner
}

fn line(ui: &mut Ui, input: &NotebookInput<'_>, member: Member, figure: Figure, view: &mut View) {
    ui.spacing_mut().item_spacing.x = GAP;
    let (per_newton, _) = force_unit(input.build.unit);
    let (per_newton_mm, _) = moment_unit(input.build.unit);
    let chosen = view.prove.plotted == Plotted::Force(member);
    let button = egui::Button::selectable(chosen, RichText::new(member.label()).size(12.5))
        .right_text("")
        .min_size(egui::vec2(NAME, LINE));
    let layout = egui::Layout::left_to_right(egui::Align::Center);
    let button = ui
        .allocate_ui_with_layout(egui::vec2(NAME, LINE), layout, |ui| ui.add(button))
        .inner
        .told(member.term());
    let name = format!("Plot: {}", member.label());
    button.widget_info(|| egui::WidgetInfo::selected(egui::Role::Button, true, chosen, &name));
    if button.clicked() {
        view.prove.plotted = Plotted::Force(member);
    }
    let [x, y, z, total] = match figure {
        Figure::Along(v) => [None, None, None, Some((v * per_newton, 0))],
        Figure::Moment(v) => [None, None, None, Some((v * per_newton_mm, 1))],
        Figure::Vector(v) => [v.x, v.y, v.z, v.norm()].map(|c| Some((c * per_newton, 0))),
    };
    for value in [x, y, z, total] {
        let text = value.map_or_else(String::new, |(v, decimals)| decimal(v, decimals));
        number(ui, RichText::new(text).size(12.5), member.term());
    }
}

fn plot(
    ui: &mut Ui,
    input: &NotebookInput<'_>,
    here: &ForceRow,
    view: &mut View,
    requests: &mut Vec<Request>,
) {
    let steered = here.rack_end.is_some();
    if steered {
        let overs = [
            (Over::Travel, "wheel travel", "The rack stays where it is."),
            (Over::Rack, "rack", "The wheel stays where it is."),
        ];
        if let Some(over) = choice(
            ui,
            input.tokens,
            "Over",
            "What the plot runs over.",
            &overs,
            view.prove.over,
        ) {
            view.prove.over = over;
        }
    } else {
        view.prove.over = Over::Travel;
    }
    pick(ui, input, view);
    let unit = input.build.unit;
    let over = view.prove.over;
    let shown = match view.prove.plotted {
        Plotted::Force(member) => of_member(input, member, here, over),
        Plotted::Factor(part, check) => of_check(input, part, check, over),
    };
    let (Some(first), Some(last)) = (shown.points.first(), shown.points.last()) else {
        small(
            ui,
            input.tokens,
            "There is nothing to plot here: this load case does not change it, or the part is not entered.",
        );
        return;
    };
    let x = first[0].min(last[0])..=last[0].max(first[0]);
    if x.end() - x.start() < 1e-6 {
        // One place only, as in the frame in which the plot is turned to the other motion.
        ui.ctx().request_repaint();
        return;
    }
    let mut traces = Vec::new();
    if let Some(wanted) = shown.wanted {
        traces.push(Trace {
            name: "wanted".to_owned(),
            points: vec![[*x.start(), wanted], [*x.end(), wanted]],
            colour: input.tokens.ink_soft,
            manner: Manner::Ghost,
        });
    }
    traces.push(Trace {
        name: shown.name,
        points: shown.points,
        colour: input.tokens.lower_arm,
        manner: Manner::Plain,
    });
    let x_label = match over {
        Over::Travel => format!("droop  ◂  wheel travel, {}  ▸  bump", unit.sign()),
        Over::Rack => format!("right  ◂  rack, {}  ▸  left", unit.sign()),
    };
    let asked = Curve {
        name: "Force over the motion",
        height: if ui.ctx().content_rect().height() > 900.0 {
            170.0
        } else {
            112.0
        },
        here: shown.here,
        traces,
        x,
        least_span: 0.1,
        within: None,
        band: Vec::new(),
        x_sign: unit.sign(),
        y_sign: "",
        x_label,
    }
    .ui(ui, input.tokens);
    if let Some(x) = asked {
        let mm = x * unit.mm();
        let (travel, rack) = match over {
            Over::Travel => (mm, view.rack),
            Over::Rack => (view.travel, mm),
        };
        requests.push(Request::Pose { travel, rack });
    }
}

/// What is plotted: a force of the table or the factor of a check.
fn pick(ui: &mut Ui, input: &NotebookInput<'_>, view: &mut View) {
    let plotted = &mut view.prove.plotted;
    ui.horizontal(|ui| {
        let label = ui.label("Plot");
        let combo = ComboBox::from_id_salt("what is plotted")
            .selected_text(name(*plotted, input))
            .width(ui.available_width() - 12.0)
            .show_ui(ui, |ui| {
                for member in Member::ALL {
                    let what = Plotted::Force(member);
                    ui.selectable_value(plotted, what, name(what, input));
                }
                for (part, check) in checks(input, view.axle) {
                    let what = Plotted::Factor(part, check);
                    ui.selectable_value(plotted, what, name(what, input));
                }
            });
        combo.response.labelled_by(label.id);
    });
}

/// Checks that a load or a pose changes, the worst first.
fn checks(input: &NotebookInput<'_>, axle: AxleName) -> Vec<(ProofPart, Check)> {
    let mut checks = Vec::new();
    let rows = input.prove.proof().map_or(&[][..], |p| &p.rows);
    for row in rows {
        let known = checks.contains(&(row.part, row.check));
        if row.axle == axle && row.has_a_curve() && !known {
            checks.push((row.part, row.check));
        }
    }
    checks
}

fn name(what: Plotted, input: &NotebookInput<'_>) -> String {
    let unit = input.build.unit;
    match what {
        Plotted::Force(member @ (Member::EndBending | Member::EndTorsion)) => {
            format!("{}, {}", member.label(), moment_unit(unit).1)
        }
        Plotted::Force(member) => format!("{}, {}", member.label(), force_unit(unit).1),
        Plotted::Factor(part, check) => format!("Factor: {}, {check}", part.label()),
    }
}

/// A curve ready to be plotted.
struct Shown {
    name: String,
    points: Vec<[f64; 2]>,
    here: Option<[f64; 2]>,
    wanted: Option<f64>,
}

fn across(travel: f64, rack: f64, over: Over, unit: LengthUnit) -> f64 {
    unit.from_mm(match over {
        Over::Travel => travel,
        Over::Rack => rack,
    })
}

fn of_member(input: &NotebookInput<'_>, member: Member, here: &ForceRow, over: Over) -> Shown {
    let unit = input.build.unit;
    let (by, _) = if matches!(member, Member::EndBending | Member::EndTorsion) {
        moment_unit(unit)
    } else {
        force_unit(unit)
    };
    let place = |row: &ForceRow| {
        let size = member.figure(row)?.size();
        Some([across(row.travel, row.rack, over, unit), size * by])
    };
    Shown {
        name: member.label().to_owned(),
        points: input
            .prove
            .forces_along()
            .iter()
            .filter_map(place)
            .collect(),
        here: place(here),
        wanted: None,
    }
}

/// Factors above this are drawn there: near a pose without load they grow past all bounds.
const MOST: f64 = 10.0;

fn of_check(input: &NotebookInput<'_>, part: ProofPart, check: Check, over: Over) -> Shown {
    let unit = input.build.unit;
    let place = |row: &FactorRow| {
        let x = across(row.pose.travel, row.pose.rack, over, unit);
        [x, row.factor.min(MOST)]
    };
    let (here, along) = input.prove.factors();
    let rows = input.prove.proof().map_or(&[][..], |p| &p.rows);
    let row = rows.iter().find(|r| (r.part, r.check) == (part, check));
    Shown {
        name: check.to_string(),
        points: along.iter().map(place).collect(),
        here: here.as_ref().map(place),
        wanted: row.map(|r| r.wanted),
    }
}
