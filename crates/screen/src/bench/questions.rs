//! What is asked before work could be lost: unsaved changes, a file that another program changed, work that was left over.

use egui::{RichText, Ui};
use trammel_persistence::Leftover;

use super::{
    dialogs::{Answer, heading},
    files::Next,
};

pub(super) fn unsaved_ui(ui: &mut Ui, next: &Next) -> Answer {
    heading(ui, "This build has changes that are not saved");
    ui.label(match next {
        Next::Quit => "Save them before leaving?",
        Next::Open(_) | Next::Demo(_) | Next::New | Next::Tour => {
            "Save them before opening another build?"
        }
    });
    ui.add_space(6.0);
    let mut answer = Answer::None;
    ui.horizontal(|ui| {
        if ui.button("Save").clicked() {
            answer = Answer::SaveThen(next.clone());
        }
        if ui.button("Don't save").clicked() {
            answer = Answer::Without(next.clone());
        }
        if ui.button("Cancel").clicked() {
            answer = Answer::Close;
        }
    });
    answer
}

pub(super) fn changed_ui(ui: &mut Ui, path: &std::path::Path) -> Answer {
    heading(ui, "The file was changed by another program");
    ui.label(format!(
        "{} is not what it was when this build was opened or last saved.",
        path.display()
    ));
    overwrite_choice(ui, path)
}

pub(super) fn exists_ui(ui: &mut Ui, path: &std::path::Path) -> Answer {
    heading(ui, "There is a file of that name already");
    ui.label(path.display().to_string());
    overwrite_choice(ui, path)
}

fn overwrite_choice(ui: &mut Ui, path: &std::path::Path) -> Answer {
    ui.label("The version that is there now would be kept beside it as a backup.");
    ui.add_space(6.0);
    let mut answer = Answer::None;
    ui.horizontal(|ui| {
        if ui.button("Save over it").clicked() {
            answer = Answer::Overwrite(path.to_owned());
        }
        if ui.button("Save under another name").clicked() {
            answer = Answer::SaveElsewhere;
        }
        if ui.button("Cancel").clicked() {
            answer = Answer::Close;
        }
    });
    answer
}

pub(super) fn recover_ui(
    ui: &mut Ui,
    found: &[Leftover],
    tokens: &crate::tokens::Tokens,
) -> Answer {
    heading(ui, "Unsaved work was found");
    ui.label("Trammel ended before this work was saved.");
    let mut answer = Answer::None;
    for (at, leftover) in found.iter().enumerate() {
        let (title, about) = described(leftover);
        ui.horizontal_wrapped(|ui| {
            ui.label(RichText::new(&title).strong());
            ui.label(RichText::new(&about).small().color(tokens.ink_soft));
            let name = format!("Bring back {title}");
            let button = ui.small_button("Bring back");
            button.widget_info(|| egui::WidgetInfo::labeled(egui::Role::Button, true, &name));
            if button.clicked() {
                answer = Answer::Recover(at);
            }
        });
    }
    ui.add_space(6.0);
    ui.horizontal(|ui| {
        if ui.button("Ask again next time").clicked() {
            answer = Answer::Close;
        }
        if ui.button("Throw it away").clicked() {
            answer = Answer::Discard;
        }
    });
    answer
}

/// What unsaved work belongs to, and how old it is.
fn described(leftover: &Leftover) -> (String, String) {
    let title = leftover.path.as_ref().map_or_else(
        || "A build that was never saved".to_owned(),
        |p| p.display().to_string(),
    );
    let age = std::time::SystemTime::now()
        .duration_since(leftover.saved_at)
        .unwrap_or_default()
        .as_secs();
    let about = match age {
        0..120 => "kept a minute ago".to_owned(),
        120..7200 => format!("kept {} minutes ago", age / 60),
        7200..172_800 => format!("kept {} hours ago", age / 3600),
        _ => format!("kept {} days ago", age / 86_400),
    };
    (title, about)
}
