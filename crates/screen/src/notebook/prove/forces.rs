//! The force in every member at the present pose, and a plot of any force or factor over travel or rack.

use egui::{ComboBox, Grid, RichText, Ui};
use trammel_analysis::{ForceRow, effective_load_cases};
use trammel_build::Side;

use super::{
    super::{NotebookInput, tune::choice},
    head, small,
};
use crate::{
    number_field::name_node,
    plot::{Curve, Manner, Trace},
    prove::{
        forces::{Figure, Member, chosen_case, has_two_senses},
        settings::{Over, Plotted},
    },
    request::Request,
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
        name_node(ui, label.id, "Load case");
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

fn table(ui: &mut Ui, input: &NotebookInput<'_>, row: &ForceRow, view: &mut View) {
    let unit = input.build.unit;
    let (_, force) = force_unit(unit);
    let (_, moment) = moment_unit(unit);
    head(ui, "At this pose");
    let place = format!(
        "Wheel travel {}, rack {}; forces in {force}, moments in {moment}, x forward, y left, z up. Click a row to plot it.",
        length(row.travel, unit),
        length(row.rack, unit)
    );
    small(ui, input.tokens, place);
    Grid::new("member forces")
        .num_columns(5)
        .striped(true)
        .spacing(egui::vec2(8.0, 2.0))
        .show(ui, |ui| {
            for title in ["", "x", "y", "z", "total"] {
                ui.with_layout(egui::Layout::right_to_left(egui::Align::Center), |ui| {
                    ui.label(RichText::new(title).small().color(input.tokens.ink_soft));
                });
            }
            ui.end_row();
            for member in Member::ALL {
                if let Some(figure) = member.figure(row) {
                    line(ui, input, member, figure, view);
                    ui.end_row();
                }
            }
        });
}

fn line(ui: &mut Ui, input: &NotebookInput<'_>, member: Member, figure: Figure, view: &mut View) {
    let (per_newton, _) = force_unit(input.build.unit);
    let (per_newton_mm, _) = moment_unit(input.build.unit);
    let chosen = view.prove.plotted == Plotted::Force(member);
    let button = egui::Button::selectable(chosen, RichText::new(member.label()).size(12.5));
    let button = ui.add(button).on_hover_text(member.meaning());
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
        ui.with_layout(egui::Layout::right_to_left(egui::Align::Center), |ui| {
            let text = value.map_or_else(String::new, |(v, decimals)| decimal(v, decimals));
            ui.label(RichText::new(text).size(12.5));
        });
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
    let unit = input.build.unit;
    let over = view.prove.over;
    let x_of = |row: &ForceRow| match over {
        Over::Travel => unit.from_mm(row.travel),
        Over::Rack => unit.from_mm(row.rack),
    };
    let Some((name, y_sign, y_of)) = plotted(view.prove.plotted, input) else {
        return;
    };
    let rows = input.prove.forces_along();
    let points: Vec<[f64; 2]> = rows
        .iter()
        .filter_map(|row| Some([x_of(row), y_of(row)?]))
        .collect();
    let (Some(first), Some(last)) = (points.first(), points.last()) else {
        small(ui, input.tokens, "There is nothing to plot here.");
        return;
    };
    let x = first[0].min(last[0])..=last[0].max(first[0]);
    let x_label = match over {
        Over::Travel => format!("droop  ◂  wheel travel, {}  ▸  bump", unit.sign()),
        Over::Rack => format!("right  ◂  rack, {}  ▸  left", unit.sign()),
    };
    small(ui, input.tokens, format!("{name}, {y_sign}"));
    let asked = Curve {
        name: "Force over the motion",
        height: 150.0,
        here: y_of(here).map(|y| [x_of(here), y]),
        traces: vec![Trace {
            name,
            points,
            colour: input.tokens.lower_arm,
            manner: Manner::Plain,
        }],
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
        requests.push(match over {
            Over::Travel => Request::Pose {
                travel: mm,
                rack: view.rack,
            },
            Over::Rack => Request::Pose {
                travel: view.travel,
                rack: mm,
            },
        });
    }
}

type Height = Box<dyn Fn(&ForceRow) -> Option<f64>>;

/// Name, unit and height of what is plotted.
fn plotted(what: Plotted, input: &NotebookInput<'_>) -> Option<(String, &'static str, Height)> {
    let unit = input.build.unit;
    match what {
        Plotted::Force(member) => {
            let moment = matches!(member, Member::EndBending | Member::EndTorsion);
            let (by, sign) = if moment {
                moment_unit(unit)
            } else {
                force_unit(unit)
            };
            let height = move |row: &ForceRow| member.figure(row).map(|f| f.size() * by);
            Some((member.label().to_owned(), sign, Box::new(height)))
        }
        Plotted::Factor(..) => None,
    }
}
