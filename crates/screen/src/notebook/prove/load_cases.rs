//! The list of load cases: on or off, edited, added, removed, back to the usual.

use egui::{Button, RichText, Ui};
use trammel_analysis::{effective_load_cases, usual_load_cases};
use trammel_build::{
    Edit, Hold, LoadAction, LoadAxes, LoadCaseSpec, LoadPlace, LoadUnit, PartsEdit,
};

use super::{super::NotebookInput, load_case, small};
use crate::{request::Request, tokens::type_size, view::View};

/// Room for the word that a case is the build's own, points.
const OWN: f32 = 78.0;

pub(super) fn ui(
    ui: &mut Ui,
    input: &NotebookInput<'_>,
    view: &mut View,
    requests: &mut Vec<Request>,
) {
    let text = "What the vehicle is proved against. The usual cases are common practice without a source: edit them to your ground and your driving.";
    small(ui, input.tokens, text);
    let cases = effective_load_cases(input.build);
    let usual: Vec<String> = usual_load_cases(input.build.unit)
        .into_iter()
        .map(|case| case.name)
        .collect();
    for (case, on) in &cases {
        one(ui, input, case, *on, view, requests);
        if view.prove.edited_case.as_ref() == Some(&case.name) {
            ui.indent(("load case", &case.name), |ui| {
                ends(ui, input, case, usual.contains(&case.name), view, requests);
                let others: Vec<&str> = cases
                    .iter()
                    .map(|(other, _)| other.name.as_str())
                    .filter(|name| *name != case.name)
                    .collect();
                let fixed = usual.contains(&case.name);
                let names = (!fixed).then_some(others.as_slice());
                load_case::ui(ui, input, case, names, view, requests);
            });
        }
    }
    ui.add_space(6.0);
    let help = "A case of your own, with one force to begin with.";
    if ui.button("Add a load case").on_hover_text(help).clicked() {
        let case = fresh(&cases);
        view.prove.edited_case = Some(case.name.clone());
        requests.push(edit(PartsEdit::LoadCase(Box::new(case))));
    }
}

fn edit(edit: PartsEdit) -> Request {
    Request::Edit(Edit::Parts(edit))
}

fn one(
    ui: &mut Ui,
    input: &NotebookInput<'_>,
    case: &LoadCaseSpec,
    on: bool,
    view: &mut View,
    requests: &mut Vec<Request>,
) {
    let open = view.prove.edited_case.as_ref() == Some(&case.name);
    ui.horizontal(|ui| {
        let mut wanted = on;
        let tick = ui
            .checkbox(&mut wanted, "")
            .on_hover_text("Whether the build is proved against it");
        let name = format!("Put on: {}", case.name);
        tick.widget_info(|| egui::WidgetInfo::selected(egui::Role::CheckBox, true, on, &name));
        if wanted != on {
            requests.push(edit(PartsEdit::SwitchLoadCase(case.name.clone(), wanted)));
        }
        let colour = if on {
            input.tokens.ink
        } else {
            input.tokens.ink_soft
        };
        let mut text = RichText::new(&case.name).color(colour);
        if open {
            text = text.font(type_size::head());
        }
        let own = input.build.load_cases.find(&case.name).is_some();
        let room = ui.available_width() - if own { OWN } else { 0.0 };
        let button = Button::new(text).frame_when_inactive(false).selected(open);
        let button = ui
            .scope(|ui| {
                ui.set_max_width(room);
                ui.add(button.truncate())
            })
            .inner
            .on_hover_text(format!("{}\n{}", case.name, case.what));
        let name = format!("Edit load case: {}", case.name);
        button.widget_info(|| egui::WidgetInfo::selected(egui::Role::Button, true, open, &name));
        if button.clicked() {
            view.prove.edited_case = (!open).then(|| case.name.clone());
        }
        if own {
            ui.label(
                RichText::new("your own")
                    .small()
                    .color(input.tokens.ink_soft),
            );
        }
        if !open && ui.available_width() > 40.0 {
            let what = RichText::new(&case.what)
                .small()
                .color(input.tokens.ink_soft);
            ui.add(egui::Label::new(what).truncate());
        }
    });
}

/// Looking at its forces, and taking it away or back.
fn ends(
    ui: &mut Ui,
    input: &NotebookInput<'_>,
    case: &LoadCaseSpec,
    usual: bool,
    view: &mut View,
    requests: &mut Vec<Request>,
) {
    ui.horizontal(|ui| {
        let help = "Put it on at the present pose and list the force in every member.";
        if ui
            .small_button("Show its forces")
            .on_hover_text(help)
            .clicked()
        {
            view.prove.case = Some(case.name.clone());
            view.prove.page = crate::prove::settings::ProvePage::Forces;
        }
        if input.build.load_cases.find(&case.name).is_none() {
            return;
        }
        let (word, help) = if usual {
            (
                "Back to the usual",
                "Every figure of it as it came. One step; Undo takes it back.",
            )
        } else {
            ("Remove it", "One step; Undo takes it back.")
        };
        if ui.small_button(word).on_hover_text(help).clicked() {
            requests.push(edit(PartsEdit::DropLoadCase(case.name.clone())));
        }
    });
}

/// A case of a name that is free: the weight on the wheel, as it stands.
fn fresh(cases: &[(LoadCaseSpec, bool)]) -> LoadCaseSpec {
    let taken = |name: &str| cases.iter().any(|(case, _)| case.name == name);
    let name = (1..)
        .map(|n| format!("own case {n}"))
        .find(|name| !taken(name))
        .unwrap_or_default();
    LoadCaseSpec {
        name,
        what: String::new(),
        actions: vec![WEIGHT],
        hold: Hold::Rolling,
        braking: 0.0,
        cornering: 0.0,
        travel: [-1.0, 1.0],
        lock: [0.0, 1.0],
    }
}

/// What an added force is to begin with: the weight on the wheel.
pub(super) const WEIGHT: LoadAction = LoadAction::Force(
    [0.0, 0.0, 1.0],
    LoadUnit::StaticWheelLoad,
    LoadPlace::Contact,
    LoadAxes::Vehicle,
);
