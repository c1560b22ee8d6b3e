//! Questions and lists over the table.

use std::path::PathBuf;

use egui::{Context, Id, Modal, RichText, Ui};

use trammel_persistence::Leftover;

use super::{Bench, files::Next, help};
use crate::{host::Pick, make::wanted::Wanted, request::Request, tokens::type_size};

/// What is asked or shown.
#[derive(Debug)]
pub(super) enum Dialog {
    /// A path is wanted: typed here, or chosen in the desktop's own dialog.
    Path(PathDialog),
    /// There is unsaved work and something is about to replace it.
    Unsaved(Next),
    /// The file was changed by somebody else since it was opened.
    Changed(PathBuf),
    /// A file of that name is there already.
    Exists(PathBuf),
    /// Unsaved work of an earlier run was found.
    Recover(Vec<Leftover>),
    /// A point table is to be pasted here.
    Paste(String),
    /// The list of keys.
    Keys,
    /// What this is, and the cautions.
    About,
}

/// What a path is wanted for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum PathFor {
    Open,
    SaveAs,
    Import,
    Export,
    Sheets,
    Cards,
    MeasuringSheet,
    Readings,
    Survey,
}

/// A path being typed.
#[derive(Clone, Debug)]
pub(super) struct PathDialog {
    pub what: PathFor,
    pub typed: String,
    pub waiting: bool,
    pub nothing_came: bool,
    /// Not shown yet: the field takes the focus when it is.
    pub fresh: bool,
}

impl Dialog {
    fn path(what: PathFor, typed: String) -> Self {
        Self::Path(PathDialog {
            what,
            typed,
            waiting: false,
            nothing_came: false,
            fresh: true,
        })
    }

    pub(super) fn open() -> Self {
        Self::path(PathFor::Open, String::new())
    }

    pub(super) fn save_as(suggested: String) -> Self {
        Self::path(PathFor::SaveAs, suggested)
    }

    pub(super) fn import() -> Self {
        Self::path(PathFor::Import, String::new())
    }

    pub(super) fn sheets(folder: String) -> Self {
        Self::path(PathFor::Sheets, folder)
    }

    pub(super) fn export(suggested: String) -> Self {
        Self::path(PathFor::Export, suggested)
    }

    pub(super) fn cards(suggested: String) -> Self {
        Self::path(PathFor::Cards, suggested)
    }

    pub(super) fn measuring_sheet(suggested: String) -> Self {
        Self::path(PathFor::MeasuringSheet, suggested)
    }

    pub(super) fn readings() -> Self {
        Self::path(PathFor::Readings, String::new())
    }

    pub(super) fn survey() -> Self {
        Self::path(PathFor::Survey, String::new())
    }
}

/// What was answered in this frame.
enum Answer {
    None,
    Close,
    Path(PathFor, PathBuf),
    Browse(PathFor, String),
    SaveThen(Next),
    Without(Next),
    Overwrite(PathBuf),
    SaveElsewhere,
    OpenInstead(Request),
    Recover(usize),
    Discard,
    Paste(String),
}

impl Bench {
    pub(super) fn dialog_ui(&mut self, ctx: &Context, requests: &mut Vec<Request>) {
        let Some(mut dialog) = self.dialog.take() else {
            return;
        };
        let recent = self.files.recent().to_vec();
        let tokens = self.tokens.clone();
        let mut answer = Answer::None;
        let mut wanted = self.making.wanted.clone();
        let modal = Modal::new(Id::unique("dialog")).show(ctx, |ui| {
            ui.set_width(460.0);
            answer = match &mut dialog {
                Dialog::Path(path) => path_ui(ui, path, &recent, &mut wanted, &tokens),
                Dialog::Unsaved(next) => unsaved_ui(ui, next),
                Dialog::Changed(path) => changed_ui(ui, path),
                Dialog::Exists(path) => exists_ui(ui, path),
                Dialog::Recover(found) => recover_ui(ui, found, &tokens),
                Dialog::Paste(text) => paste_ui(ui, text),
                Dialog::Keys => closed(help::keys(ui, &tokens)),
                Dialog::About => closed(help::about(ui)),
            };
        });
        self.making.wanted = wanted;
        if modal.should_close() {
            answer = Answer::Close;
        }
        self.answered(ctx, dialog, answer, requests);
    }

    fn answered(
        &mut self,
        ctx: &Context,
        dialog: Dialog,
        answer: Answer,
        requests: &mut Vec<Request>,
    ) {
        match answer {
            Answer::None => self.dialog = Some(dialog),
            Answer::Close => self.forget_what_follows(),
            Answer::Path(what, path) => self.path_given(ctx, what, path),
            Answer::Browse(what, typed) => {
                let pick = match what {
                    PathFor::Open => Pick::OpenBuild,
                    PathFor::SaveAs => Pick::SaveBuild(file_name_of(&typed)),
                    PathFor::Import | PathFor::Readings | PathFor::Survey => Pick::OpenTable,
                    PathFor::Export => Pick::SaveTable(file_name_of(&typed)),
                    PathFor::Sheets => Pick::SheetsFolder,
                    PathFor::Cards | PathFor::MeasuringSheet => {
                        Pick::SaveSheets(file_name_of(&typed))
                    }
                };
                self.host
                    .ask_for_file(&pick, self.files.folder().as_deref());
                self.dialog = Some(Dialog::Path(PathDialog {
                    what,
                    typed,
                    waiting: true,
                    nothing_came: false,
                    fresh: false,
                }));
            }
            Answer::SaveThen(next) => self.save_then(ctx, next),
            Answer::Without(next) => self.go_on(ctx, next),
            Answer::Overwrite(path) => self.save_over(ctx, &path),
            Answer::SaveElsewhere => self.dialog = Some(Dialog::save_as(self.suggested_path())),
            Answer::OpenInstead(request) => requests.push(request),
            Answer::Recover(at) => {
                if let Dialog::Recover(found) = dialog {
                    self.recover(ctx, found, at);
                }
            }
            Answer::Discard => {
                if let Dialog::Recover(found) = dialog {
                    self.discard(ctx, found);
                }
            }
            Answer::Paste(text) => self.paste_points(ctx, &text),
        }
    }

    /// The desktop's dialog answered.
    pub(super) fn picked(&mut self, ctx: &Context, path: Option<PathBuf>) {
        let Some(Dialog::Path(asked)) = &mut self.dialog else {
            return;
        };
        asked.waiting = false;
        let what = asked.what;
        match path {
            Some(path) => {
                self.dialog = None;
                self.path_given(ctx, what, path);
            }
            None => asked.nothing_came = true,
        }
    }
}

fn file_name_of(typed: &str) -> String {
    PathBuf::from(typed)
        .file_name()
        .map_or_else(String::new, |n| n.to_string_lossy().into_owned())
}

/// The answer of something that can only be closed.
fn closed(closed: bool) -> Answer {
    if closed { Answer::Close } else { Answer::None }
}

pub(super) fn heading(ui: &mut Ui, text: &str) {
    ui.label(RichText::new(text).font(type_size::head()));
    ui.add_space(4.0);
}

fn path_ui(
    ui: &mut Ui,
    dialog: &mut PathDialog,
    recent: &[PathBuf],
    wanted: &mut Wanted,
    tokens: &crate::tokens::Tokens,
) -> Answer {
    let (title, word) = match dialog.what {
        PathFor::Open => ("Open a build", "Open"),
        PathFor::SaveAs => ("Save the build as", "Save"),
        PathFor::Import => ("Read points from a CSV file", "Read"),
        PathFor::Export => ("Write points to a CSV file", "Write"),
        PathFor::Sheets => ("Write sheets and files for the cutter", "Write"),
        PathFor::Cards => ("Save the set-up cards as a PDF", "Save"),
        PathFor::MeasuringSheet => ("Save the sheet to measure parts by as a PDF", "Save"),
        PathFor::Readings => ("Read a sheet of toe readings from a CSV file", "Read"),
        PathFor::Survey => ("Read a tape survey from a CSV file", "Read"),
    };
    heading(ui, title);
    let label = ui.label(match dialog.what {
        PathFor::Sheets => "Folder; files of the same names in it are written over:",
        _ => "File, with its folder:",
    });
    let edit = egui::TextEdit::singleline(&mut dialog.typed).desired_width(f32::INFINITY);
    let response = ui.add(edit).labelled_by(label.id);
    let entered = response.lost_focus() && ui.input(|i| i.key_pressed(egui::Key::Enter));
    if std::mem::take(&mut dialog.fresh) {
        response.request_focus();
    }
    if dialog.nothing_came {
        let text = "No file was chosen in the desktop's dialog. If none appeared, this desktop has none: type the path above.";
        ui.label(RichText::new(text).small().color(tokens.ink_soft));
    }
    let mut answer = Answer::None;
    if dialog.what == PathFor::Open {
        answer = offers(ui, recent, tokens);
    }
    let sheets = dialog.what == PathFor::Sheets;
    if sheets {
        wanted.ui(ui, tokens);
    }
    ui.add_space(6.0);
    ui.horizontal(|ui| {
        let given = !dialog.typed.trim().is_empty() && (!sheets || wanted.is_something());
        if ui.add_enabled(given, egui::Button::new(word)).clicked() || (entered && given) {
            answer = Answer::Path(dialog.what, PathBuf::from(dialog.typed.trim()));
        }
        let browse = if dialog.waiting {
            "Waiting for the desktop…"
        } else {
            "Browse…"
        };
        if ui
            .add_enabled(!dialog.waiting, egui::Button::new(browse))
            .clicked()
        {
            answer = Answer::Browse(dialog.what, dialog.typed.clone());
        }
        if ui.button("Cancel").clicked() {
            answer = Answer::Close;
        }
    });
    answer
}

/// Demo builds and recent files, each one click away.
fn offers(ui: &mut Ui, recent: &[PathBuf], tokens: &crate::tokens::Tokens) -> Answer {
    let mut answer = Answer::None;
    ui.add_space(6.0);
    ui.label(RichText::new("Demo builds").small().color(tokens.ink_soft));
    for demo in trammel_persistence::demos() {
        if ui.link(demo.name).on_hover_text(demo.about).clicked() {
            answer = Answer::OpenInstead(Request::OpenDemo(demo.name));
        }
    }
    if !recent.is_empty() {
        ui.add_space(4.0);
        ui.label(
            RichText::new("Opened lately")
                .small()
                .color(tokens.ink_soft),
        );
        for path in recent.iter().take(6) {
            if ui.link(path.display().to_string()).clicked() {
                answer = Answer::OpenInstead(Request::OpenPath(path.clone()));
            }
        }
    }
    answer
}

fn unsaved_ui(ui: &mut Ui, next: &Next) -> Answer {
    heading(ui, "This build has changes that are not saved");
    ui.label(match next {
        Next::Quit => "Save them before leaving?",
        Next::Open(_) | Next::Demo(_) => "Save them before opening another build?",
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

fn changed_ui(ui: &mut Ui, path: &std::path::Path) -> Answer {
    heading(ui, "The file was changed by another program");
    ui.label(format!(
        "{} is not what it was when this build was opened or last saved.",
        path.display()
    ));
    overwrite_choice(ui, path)
}

fn exists_ui(ui: &mut Ui, path: &std::path::Path) -> Answer {
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

fn recover_ui(ui: &mut Ui, found: &[Leftover], tokens: &crate::tokens::Tokens) -> Answer {
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

fn paste_ui(ui: &mut Ui, text: &mut String) -> Answer {
    heading(ui, "Paste a point table");
    let label = ui.label(
        "Rows of point, x, y, z with the unit in the heading, as “Copy point table” gives them:",
    );
    let edit = egui::TextEdit::multiline(text)
        .desired_rows(10)
        .desired_width(f32::INFINITY);
    let response = ui.add(edit).labelled_by(label.id);
    if ui.memory(|m| m.focused().is_none()) {
        response.request_focus();
    }
    ui.add_space(6.0);
    let mut answer = Answer::None;
    ui.horizontal(|ui| {
        let given = !text.trim().is_empty();
        if ui
            .add_enabled(given, egui::Button::new("Place the points"))
            .clicked()
        {
            answer = Answer::Paste(text.clone());
        }
        if ui.button("Cancel").clicked() {
            answer = Answer::Close;
        }
    });
    answer
}
