//! Questions and lists over the table.

use std::path::PathBuf;

use egui::{Context, Id, Modal, RichText, Ui};

use trammel_persistence::Leftover;

use super::{Bench, files::Next, help, manual, questions};
use crate::{host::Pick, make::wanted::Wanted, request::Request, tokens::type_size};

/// Width of what is read rather than answered, points: about 90 letters to a line.
const READING: f32 = 640.0;

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
    /// Every term, searched.
    Glossary(help::Search),
    /// A page of the manual.
    Manual(manual::Reading),
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
    /// Asks for a path, with what to begin with.
    pub(super) fn path(what: PathFor, typed: String) -> Self {
        Self::Path(PathDialog {
            what,
            typed,
            waiting: false,
            nothing_came: false,
            fresh: true,
        })
    }
}

/// What was answered in this frame.
pub(super) enum Answer {
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
            ui.set_width(match dialog {
                Dialog::Glossary(_) | Dialog::Manual(_) => READING,
                _ => 460.0,
            });
            answer = match &mut dialog {
                Dialog::Path(path) => path_ui(ui, path, &recent, &mut wanted, &tokens),
                Dialog::Unsaved(next) => questions::unsaved_ui(ui, next),
                Dialog::Changed(path) => questions::changed_ui(ui, path),
                Dialog::Exists(path) => questions::exists_ui(ui, path),
                Dialog::Recover(found) => questions::recover_ui(ui, found, &tokens),
                Dialog::Paste(text) => paste_ui(ui, text),
                Dialog::Keys => closed(help::keys(ui, &tokens)),
                Dialog::About => closed(help::about(ui)),
                Dialog::Glossary(search) => closed(help::glossary(ui, search, &tokens)),
                Dialog::Manual(reading) => closed(manual::ui(ui, reading, &tokens)),
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
            Answer::SaveElsewhere => {
                self.dialog = Some(Dialog::path(PathFor::SaveAs, self.suggested_path()));
            }
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
