//! The strip across the top: whose build, which stage, and what can always be asked for.

use egui::{RichText, Ui};
use trammel_build::{AxleName, Build, LengthUnit};

use crate::{
    action::Action,
    history::History,
    landmark::{self, Landmark},
    request::Request,
    tokens::{Tokens, type_size},
    view::{Stage, View},
};

/// What the strip reads.
#[derive(Clone, Copy, Debug)]
pub struct TopStripInput<'a> {
    /// The build with its past.
    pub history: &'a History,
    /// Whether there is work that is not in the file.
    pub unsaved: bool,
    /// Name of the file, if it has one.
    pub file_name: Option<&'a str>,
    /// Files opened lately, newest first.
    pub recent: &'a [std::path::PathBuf],
    /// Colours.
    pub tokens: &'a Tokens,
}

/// Least width of the title, points; the strip's other parts leave it that much at the least width of the window.
const LEAST_TITLE: f32 = 64.0;
/// Most that a long title takes on a wide screen.
const LONGEST_TITLE: f32 = 420.0;
/// Between the left and the right part.
const GAP: f32 = 16.0;
/// Narrower than this, words are shortened.
const NARROW: f32 = 1060.0;

/// Shows the strip.
pub fn ui(ui: &mut Ui, input: &TopStripInput<'_>, view: &View, requests: &mut Vec<Request>) {
    ui.horizontal_centered(|ui| {
        let whole = ui.max_rect();
        let others = ui.scope_id().with("width of all but the title");
        let before: f32 = ui.data(|d| d.get_temp(others)).unwrap_or(780.0);
        title(ui, input, (whole.width() - before).max(LEAST_TITLE));
        let titled = ui.min_rect().right();
        ui.add_space(18.0);
        for stage in Stage::ALL {
            stage_tab(ui, input.tokens, stage, view.stage == stage, requests);
        }
        if input.history.build().rear.is_some() {
            ui.add_space(12.0);
            axle_switch(ui, view, whole.width() < NARROW, requests);
        }
        let left = ui.min_rect().right() - titled;
        let right = ui.with_layout(egui::Layout::right_to_left(egui::Align::Center), |ui| {
            ui.spacing_mut().item_spacing.x = 4.0;
            help_menu(ui, requests);
            file_menu(ui, input, requests);
            act(
                ui,
                Action::SwitchTheme,
                if input.tokens.dark { "Light" } else { "Dark" },
                "",
                true,
                requests,
            );
            unit_button(ui, input.history.build(), requests);
            step_button(ui, Action::Redo, input.history.redo_name(), requests);
            step_button(ui, Action::Undo, input.history.undo_name(), requests);
            whole.right() - ui.cursor().right()
        });
        // What the title may take follows in the next frame.
        let now = left + right.inner + GAP;
        if (now - before).abs() > 0.5 {
            ui.data_mut(|d| d.insert_temp(others, now));
            ui.ctx().request_repaint();
        }
    });
}

fn title(ui: &mut Ui, input: &TopStripInput<'_>, most: f32) {
    let build = input.history.build();
    let title = if build.title.is_empty() {
        "Untitled build"
    } else {
        &build.title
    };
    let file = input.file_name.unwrap_or("not in a file yet");
    let mark = egui::vec2(10.0, 10.0);
    let room = if input.unsaved {
        most - mark.x - ui.spacing().item_spacing.x
    } else {
        most
    };
    let text = RichText::new(title).font(type_size::head());
    ui.scope(|ui| {
        ui.set_max_width(room.min(LONGEST_TITLE));
        ui.add(egui::Label::new(text).truncate())
    })
    .inner
    .on_hover_text(format!("{title}\n{file}"));
    if input.unsaved {
        let (rect, response) = ui.allocate_exact_size(mark, egui::Sense::hover());
        ui.painter()
            .circle_filled(rect.center(), 4.0, input.tokens.accent);
        response
            .widget_info(|| egui::WidgetInfo::labeled(egui::Role::Label, true, "unsaved changes"));
        response.on_hover_text("Not saved yet");
    }
}

fn stage_tab(
    ui: &mut Ui,
    tokens: &Tokens,
    stage: Stage,
    chosen: bool,
    requests: &mut Vec<Request>,
) {
    let text = RichText::new(stage.label())
        .font(type_size::head())
        .color(if chosen { tokens.ink } else { tokens.ink_soft });
    let response = ui.add(egui::Button::new(text).frame(false).selected(chosen));
    response
        .widget_info(|| egui::WidgetInfo::selected(egui::Role::Tab, true, chosen, stage.label()));
    if chosen {
        let r = response.rect;
        ui.painter().hline(
            r.x_range(),
            r.bottom() + 5.0,
            egui::Stroke::new(2.5, tokens.accent),
        );
    }
    if stage == Stage::Tune {
        landmark::mark(ui.ctx(), Landmark::TuneTab, response.rect);
    }
    if response
        .on_hover_text(with_key(Action::Go(stage), stage.meaning()))
        .clicked()
        && !chosen
    {
        requests.push(Request::Act(Action::Go(stage)));
    }
    ui.add_space(6.0);
}

fn axle_switch(ui: &mut Ui, view: &View, narrow: bool, requests: &mut Vec<Request>) {
    for (axle, name, short) in [
        (AxleName::Front, "Front axle", "Front"),
        (AxleName::Rear, "Rear axle", "Rear"),
    ] {
        let chosen = view.axle == axle;
        let response = ui.selectable_label(chosen, if narrow { short } else { name });
        response.widget_info(|| egui::WidgetInfo::selected(egui::Role::Button, true, chosen, name));
        if response
            .on_hover_text(with_key(Action::SwitchAxle, name))
            .clicked()
            && !chosen
        {
            requests.push(Request::Act(Action::SwitchAxle));
        }
    }
}

fn with_key(action: Action, text: &str) -> String {
    match action.shortcut() {
        Some(s) => format!("{text}  ({})", s.format(&egui::ModifierNames::NAMES, false)),
        None => text.to_owned(),
    }
}

fn act(
    ui: &mut Ui,
    action: Action,
    text: &str,
    hover: &str,
    enabled: bool,
    requests: &mut Vec<Request>,
) {
    let hover = with_key(
        action,
        if hover.is_empty() {
            action.label()
        } else {
            hover
        },
    );
    let button = egui::Button::new(text).frame_when_inactive(false);
    if ui
        .add_enabled(enabled, button)
        .on_hover_text(&hover)
        .on_disabled_hover_text(hover)
        .clicked()
    {
        requests.push(Request::Act(action));
    }
}

fn step_button(ui: &mut Ui, action: Action, step: Option<&str>, requests: &mut Vec<Request>) {
    let hover = match step {
        Some(name) => format!("{}: {name}", action.label()),
        None => format!("Nothing to {}", action.label().to_lowercase()),
    };
    act(ui, action, action.label(), &hover, step.is_some(), requests);
}

fn unit_button(ui: &mut Ui, build: &Build, requests: &mut Vec<Request>) {
    let (text, hover) = match build.unit {
        LengthUnit::Inch => (
            "inch",
            "Lengths are in inches. Click to convert the whole build to millimetres",
        ),
        LengthUnit::Millimetre => (
            "mm",
            "Lengths are in millimetres. Click to convert the whole build to inches",
        ),
    };
    act(ui, Action::SwitchUnit, text, hover, true, requests);
}

fn menu_item(ui: &mut Ui, action: Action, requests: &mut Vec<Request>) {
    let mut button = egui::Button::new(action.label());
    if let Some(s) = action.shortcut() {
        button = button.shortcut_text(s.format(&egui::ModifierNames::NAMES, false));
    }
    if ui.add(button).clicked() {
        requests.push(Request::Act(action));
        ui.close();
    }
}

fn file_menu(ui: &mut Ui, input: &TopStripInput<'_>, requests: &mut Vec<Request>) {
    ui.menu_button("File", |ui| {
        ui.set_min_width(230.0);
        for action in [Action::New, Action::Open, Action::Save, Action::SaveAs] {
            menu_item(ui, action, requests);
        }
        ui.separator();
        for demo in trammel_persistence::demos() {
            if ui.button(format!("Demo: {}", demo.name)).clicked() {
                requests.push(Request::OpenDemo(demo.name));
                ui.close();
            }
        }
        if !input.recent.is_empty() {
            ui.separator();
            for path in input.recent.iter().take(8) {
                let name = path.file_name().map_or_else(
                    || path.display().to_string(),
                    |n| n.to_string_lossy().into_owned(),
                );
                if ui
                    .button(name)
                    .on_hover_text(path.display().to_string())
                    .clicked()
                {
                    requests.push(Request::OpenPath(path.clone()));
                    ui.close();
                }
            }
        }
        ui.separator();
        for action in [
            Action::ImportPoints,
            Action::ExportPoints,
            Action::CopyPoints,
            Action::PastePoints,
        ] {
            menu_item(ui, action, requests);
        }
        ui.separator();
        menu_item(ui, Action::Quit, requests);
    });
}

fn help_menu(ui: &mut Ui, requests: &mut Vec<Request>) {
    ui.menu_button("Help", |ui| {
        ui.set_min_width(200.0);
        for action in [
            Action::Tour,
            Action::Manual,
            Action::Glossary,
            Action::Shortcuts,
            Action::About,
        ] {
            menu_item(ui, action, requests);
        }
        ui.separator();
        for action in [Action::Larger, Action::Smaller, Action::UsualScale] {
            menu_item(ui, action, requests);
        }
    });
}
