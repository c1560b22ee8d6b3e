//! The notebook in the Make stage: the sheets, a bracket's figures with its minimums, what rounding costs, and the files.

mod bracket;
mod shop;

use egui::{Button, RichText, ScrollArea, Ui};
use trammel_build::{AxleName, Edit, PartsEdit, PointName, ShopSpec, ShopStep};
use trammel_drawings::sheet::Paper;
use trammel_sheets::{Group, Sheet, Sheets, Shop, Which};

use super::{NotebookInput, tune::choice};
use crate::{
    action::Action,
    make::MakeNotes,
    prove::settings::{PartPage, ProvePage},
    request::Request,
    tokens::type_size,
    view::{Stage, View},
};

pub(super) fn ui(
    ui: &mut Ui,
    input: &NotebookInput<'_>,
    view: &mut View,
    requests: &mut Vec<Request>,
) {
    files(ui, input, view, requests);
    let Some(sheets) = input.make.sheets().cloned() else {
        if let Some(why) = input.make.fault() {
            ui.colored_label(input.tokens.danger, why);
        }
        return;
    };
    let pages = MakeNotes::ALL.map(|p| (p, p.label(), "What is shown below"));
    if let Some(page) = choice(ui, input.tokens, "Page", "", &pages, view.make.notes) {
        view.make.notes = page;
    }
    settings(ui, input, view, requests);
    if view.make.notes == MakeNotes::Shop {
        ScrollArea::vertical()
            .id_salt("shop")
            .auto_shrink(false)
            .show(ui, |ui| shop::ui(ui, input, requests));
        return;
    }
    rounding(ui, input, &sheets);
    let chosen = view.make.chosen(&sheets);
    let at = chosen.and_then(|s| s.at);
    let is_mount = chosen.is_some_and(|s| s.name == MOUNT);
    let room = ui.available_height();
    let height = if at.is_some() || is_mount {
        (LIST_SHARE * room).max(room - FIGURES_HEIGHT)
    } else {
        room
    };
    ScrollArea::vertical()
        .id_salt("sheet list")
        .auto_shrink(false)
        .max_height(height)
        .show(ui, |ui| list(ui, input, &sheets, view));
    if let Some((axle, point)) = at {
        ui.separator();
        ScrollArea::vertical()
            .id_salt("bracket figures")
            .auto_shrink(false)
            .show(ui, |ui| {
                bracket::ui(ui, input, axle, point, requests);
                more(ui, axle, point, view, requests);
            });
    } else if is_mount {
        ui.separator();
        ScrollArea::vertical()
            .id_salt("mount figures")
            .auto_shrink(false)
            .show(ui, |ui| shop::rack_mount(ui, input, requests));
    }
}

/// The sheet of the plate under the rack.
const MOUNT: &str = "rack-mount-plate";

/// The way to what else sits at the joint.
fn more(
    ui: &mut Ui,
    axle: AxleName,
    point: PointName,
    view: &mut View,
    requests: &mut Vec<Request>,
) {
    let help = "Joint, bolt, spacers, ears, boxing plate, weld, material and the tube that it stands on: in the Prove stage";
    if ui
        .button("All parts of this joint…")
        .on_hover_text(help)
        .clicked()
    {
        requests.push(Request::Act(Action::Go(Stage::Prove)));
        view.axle = axle;
        view.prove.page = ProvePage::Parts;
        view.prove.part = PartPage::Joints;
        view.prove.joint = point;
    }
}

/// Part of the room that the list of sheets has while a bracket's figures stand under it.
const LIST_SHARE: f32 = 0.4;
/// All that a bracket or the rack mount has to show, points; what is left of a tall window goes to the list.
const FIGURES_HEIGHT: f32 = 420.0;

/// Buttons for files, with what is being written.
fn files(ui: &mut Ui, input: &NotebookInput<'_>, view: &View, requests: &mut Vec<Request>) {
    let writing = input.make.exporting();
    let ready = input.make.sheets().is_some() && writing.is_none();
    ui.horizontal_wrapped(|ui| {
        let help =
            "PDF at full size, DXF and SVG for the cutter, CSV lists; which of them, of which sheets, and the folder are asked";
        if ui
            .add_enabled(ready, Button::new("Export…"))
            .on_hover_text(help)
            .clicked()
        {
            requests.push(Request::Export(Which::All));
        }
        let chosen = input.make.sheets().and_then(|s| view.make.chosen(s));
        if let Some(sheet) = chosen
            && ui
                .add_enabled(ready, Button::new("Export this sheet…"))
                .clicked()
        {
            requests.push(Request::Export(Which::One(sheet.name.clone())));
        }
        let help = "The file written last, in the system's viewer";
        if ui.button("Open in viewer").on_hover_text(help).clicked() {
            requests.push(Request::OpenExported);
        }
        if let Some([done, count]) = writing {
            let share = done as f32 / count.max(1) as f32;
            ui.add(
                egui::ProgressBar::new(share)
                    .desired_width(90.0)
                    .text(format!("{done} of {count}")),
            );
        } else if !input.make.is_current() {
            ui.label(
                RichText::new("working…")
                    .small()
                    .color(input.tokens.ink_soft),
            );
        }
    });
}

/// Paper, and the step that is printed and sawn to.
fn settings(ui: &mut Ui, input: &NotebookInput<'_>, view: &mut View, requests: &mut Vec<Request>) {
    let papers = Paper::ALL.map(|p| (p, p.name(), "Paper of the pages"));
    let paper = view.make.paper(input.build);
    if let Some(paper) = choice(
        ui,
        input.tokens,
        "Paper",
        "Paper of the pages",
        &papers,
        paper,
    ) {
        view.make.paper = Some(paper);
        view.make.page = 0;
    }
    let steps = ShopStep::ALL.map(|s| {
        (
            s,
            s.label(),
            "Printed lengths are rounded to it; its unit leads",
        )
    });
    let help = "The shop's step: printed lengths are rounded to it";
    let step = Shop::of(input.build).step;
    if let Some(step) = choice(ui, input.tokens, "Step", help, &steps, step) {
        let shop = ShopSpec {
            step: Some(step),
            ..input.build.shop.clone()
        };
        requests.push(Request::Edit(Edit::Parts(PartsEdit::Shop(Box::new(shop)))));
    }
}

fn rounding(ui: &mut Ui, input: &NotebookInput<'_>, sheets: &Sheets) {
    ui.add_space(4.0);
    ui.label(RichText::new("What rounding costs").font(type_size::head()));
    let shop = Shop::of(input.build);
    let limit = input
        .build
        .limits
        .toe_change_deg
        .unwrap_or(trammel_build::defaults::TOE_CHANGE_LIMIT_DEG);
    for cost in &sheets.rounding {
        let [before, after] = cost.largest().map(f64::to_degrees);
        // Past the limit only because of rounding is what to look at.
        let colour = if after > limit && after > before + 1e-6 {
            input.tokens.caution
        } else {
            input.tokens.ink_soft
        };
        ui.label(RichText::new(cost.text(&shop)).size(12.0).color(colour));
    }
}

fn list(ui: &mut Ui, input: &NotebookInput<'_>, sheets: &Sheets, view: &mut View) {
    let chosen = view.make.chosen(sheets).map(|s| s.name.clone());
    for group in Group::ALL {
        let in_group: Vec<&Sheet> = sheets.sheets.iter().filter(|s| s.group == group).collect();
        if in_group.is_empty() {
            continue;
        }
        ui.add_space(4.0);
        ui.label(RichText::new(group.label()).font(type_size::head()));
        for sheet in in_group {
            let on = chosen.as_ref() == Some(&sheet.name);
            let pages = sheet.pages.len();
            let mut text = sheet.title.clone();
            if pages > 1 {
                text = format!("{text} ({pages} pages)");
            }
            let response = ui.selectable_label(on, RichText::new(text).size(12.5));
            response.widget_info(|| {
                egui::WidgetInfo::selected(
                    egui::Role::RadioButton,
                    true,
                    on,
                    format!("Sheet: {}", sheet.title),
                )
            });
            if response.on_hover_text(&sheet.quantity).clicked() {
                view.make.sheet.clone_from(&sheet.name);
                view.make.page = 0;
                view.make.fit();
            }
        }
    }
    let heeded: Vec<&Sheet> = sheets
        .sheets
        .iter()
        .filter(|s| !s.heed.is_empty())
        .collect();
    if !heeded.is_empty() {
        ui.add_space(4.0);
        ui.label(RichText::new("Before you cut").font(type_size::head()));
        for (sheet, text) in heeded
            .iter()
            .flat_map(|s| s.heed.iter().map(move |t| (s, t)))
        {
            let text = format!("{}: {text}", sheet.title);
            ui.label(RichText::new(text).size(12.0).color(input.tokens.danger));
        }
    }
    if !sheets.not_made.is_empty() {
        ui.add_space(4.0);
        ui.label(RichText::new("Not made").font(type_size::head()));
        for why in &sheets.not_made {
            ui.label(RichText::new(why).size(12.0).color(input.tokens.caution));
        }
    }
}
