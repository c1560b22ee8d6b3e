//! The build's file: opening, saving, what comes after a question.

use std::path::{Path, PathBuf};

use egui::Context;
use trammel_build::{Build, LengthUnit, begin};
use trammel_persistence::{BuildFile, Document, IfChanged, SaveFault, demos};

use super::{
    Bench,
    dialogs::{Dialog, PathFor},
    unsaved::Unsaved,
};
use crate::{
    host::{Host, Picked},
    request::Request,
    view::Stage,
};

/// What the bench starts with.
#[derive(Clone, Debug)]
pub enum Start {
    /// The first demo build.
    Demo,
    /// A demo build by its name.
    NamedDemo(String),
    /// A file.
    File(PathBuf),
    /// A build that belongs to no file.
    Build(Box<Build>),
}

/// What comes after a question about unsaved work.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) enum Next {
    Open(PathBuf),
    Demo(&'static str),
    New,
    Tour,
    Quit,
}

/// The file of the build on the bench, the list of recent ones, and unsaved work kept aside.
pub(super) struct Files {
    file: Option<BuildFile>,
    /// What a build without a file was started from.
    document: Document,
    pub(super) unsaved: Unsaved,
    /// Whether the first demo was put on the table because nothing else was asked for.
    bare_start: bool,
    /// What to do once the build is saved under a new name.
    after_save: Option<Next>,
}

/// What a start gives: the build, its files, a question, something that went wrong.
pub(super) struct Begun {
    pub build: Build,
    pub files: Files,
    pub dialog: Option<Dialog>,
    pub problem: Option<String>,
}

/// Puts the first build on the bench. What can't be opened is said, and the demo is there instead.
pub(super) fn begin(host: &dyn Host, start: Start) -> Begun {
    let mut unsaved = Unsaved::new(host.state_folder());
    let mut problem = None;
    let mut file = None;
    let mut document = demo_document("");
    let bare_start = matches!(start, Start::Demo);
    match start {
        Start::Demo => {}
        Start::NamedDemo(name) => document = demo_document(&name),
        Start::Build(build) => document = Document::new(&build),
        Start::File(path) => match BuildFile::open(&path) {
            Ok(opened) => {
                unsaved.opened(&path);
                document = opened.document().clone();
                file = Some(opened);
            }
            Err(fault) => problem = Some(format!("{fault}. The demo is shown instead.")),
        },
    }
    let found = unsaved.take_leftovers();
    let dialog = (!found.is_empty()).then_some(Dialog::Recover(found));
    let build = document.build().clone();
    let files = Files {
        file,
        document,
        unsaved,
        bare_start,
        after_save: None,
    };
    Begun {
        build,
        files,
        dialog,
        problem,
    }
}

/// A demo by its name, the first one for any other name.
fn demo_document(name: &str) -> Document {
    let all = demos();
    let [first, ..] = all;
    let demo = all.into_iter().find(|d| d.name == name).unwrap_or(first);
    // The demos are part of the program and read in its tests; a bare build stands in rather than a crash.
    Document::read(demo.text)
        .unwrap_or_else(|_| Document::new(&begin::build(LengthUnit::Millimetre)))
}

impl Files {
    fn on_disk(&self) -> &Build {
        self.file
            .as_ref()
            .map_or(self.document.build(), BuildFile::build)
    }

    pub(super) fn differs_from_file(&self, build: &Build) -> bool {
        *build != *self.on_disk()
    }

    pub(super) fn path(&self) -> Option<&Path> {
        self.file.as_ref().map(BuildFile::path)
    }

    pub(super) fn name(&self) -> Option<String> {
        self.path().map(|p| p.display().to_string())
    }

    /// Whether the program started without a build of the user's.
    pub(super) fn is_bare_start(&self) -> bool {
        self.bare_start
    }

    pub(super) fn recent(&self) -> &[PathBuf] {
        self.unsaved.recent()
    }

    pub(super) fn folder(&self) -> Option<PathBuf> {
        let beside = self
            .path()
            .or_else(|| self.recent().first().map(PathBuf::as_path));
        beside.and_then(Path::parent).map(Path::to_owned)
    }

    /// The text that holds a build as it would be saved.
    pub(super) fn text_for(&self, build: &Build) -> String {
        self.file
            .as_ref()
            .map_or(&self.document, BuildFile::document)
            .text_for(build)
    }
}

impl Bench {
    /// Answers of the desktop, dropped files, the window's close button, unsaved work.
    pub(super) fn files_before_frame(&mut self, ctx: &Context, requests: &mut Vec<Request>) {
        if let Some(picked) = self.host.answer() {
            self.picked(
                ctx,
                match picked {
                    Picked::Path(path) => Some(path),
                    Picked::Nothing => None,
                },
            );
        }
        let dropped = ctx.input(|i| {
            i.raw
                .dropped_files
                .iter()
                .map(|f| f.path().to_owned())
                .next()
        });
        requests.extend(dropped.map(Request::OpenPath));
        let closing = ctx.input(|i| i.viewport().close_requested());
        if closing && !self.quitting && self.has_unsaved_work() {
            ctx.send_viewport_cmd(egui::ViewportCommand::CancelClose);
            self.dialog = Some(Dialog::Unsaved(Next::Quit));
        }
        if !self.history.is_open() {
            let unsaved = self.files.differs_from_file(self.history.build());
            let build = self.history.build();
            let due = self
                .files
                .unsaved
                .due(ctx.input(|i| i.time), unsaved, build);
            let text = due.then(|| self.files.text_for(build));
            let path = self.files.path().map(Path::to_owned);
            if let Some(problem) = self.files.unsaved.tick(text, path.as_deref(), unsaved) {
                self.complain(ctx, problem);
            }
            if unsaved {
                ctx.request_repaint_after(std::time::Duration::from_secs(
                    super::unsaved::SECONDS as u64,
                ));
            }
        }
    }

    /// Asks about unsaved work, if there is any, before something replaces it.
    pub(super) fn ask_then(&mut self, ctx: &Context, next: Next) {
        if self.has_unsaved_work() {
            self.dialog = Some(Dialog::Unsaved(next));
        } else {
            self.go_on(ctx, next);
        }
    }

    pub(super) fn go_on(&mut self, ctx: &Context, next: Next) {
        match next {
            Next::Open(path) => self.open(ctx, &path),
            Next::Demo(name) => {
                self.files.file = None;
                self.files.document = demo_document(name);
                self.replace_build();
                let about = demos()
                    .into_iter()
                    .find(|d| d.name == name)
                    .map_or("", |d| d.about);
                self.say(ctx, format!("Demo: {about}."));
            }
            Next::New => {
                let fresh = begin::build(self.history.build().unit);
                self.files.file = None;
                self.files.document = Document::new(&fresh);
                self.replace_build();
                self.go(Stage::LayOut);
                let how = "A plain front axle to begin with: drag its points, type them, paste a point table, or put a tape survey in. Figures has buttons for a spring unit and a rear axle.";
                self.say(ctx, how.to_owned());
            }
            Next::Tour => {
                self.go_on(ctx, Next::Demo(super::tour::DEMO));
                self.message = None;
                self.begin_tour();
            }
            Next::Quit => {
                self.quitting = true;
                self.files.unsaved.give_up();
                self.host.quit();
            }
        }
    }

    fn open(&mut self, ctx: &Context, path: &Path) {
        match BuildFile::open(path) {
            Ok(opened) => {
                self.files.unsaved.opened(path);
                self.files.document = opened.document().clone();
                self.files.file = Some(opened);
                self.replace_build();
                self.say(ctx, format!("Opened {}", path.display()));
            }
            Err(fault) => self.complain(ctx, format!("{fault}. The build on the table stays.")),
        }
    }

    fn replace_build(&mut self) {
        self.files.unsaved.give_up();
        self.files.after_save = None;
        self.start_over(self.files.on_disk().clone());
    }

    pub(super) fn save(&mut self, ctx: &Context) {
        self.save_file(ctx, IfChanged::Refuse);
    }

    fn save_file(&mut self, ctx: &Context, if_changed: IfChanged) {
        self.history.commit();
        let Some(file) = &mut self.files.file else {
            self.dialog = Some(Dialog::path(PathFor::SaveAs, self.suggested_path()));
            return;
        };
        let path = file.path().to_owned();
        match file.save(self.history.build(), if_changed) {
            Ok(_) => self.saved(ctx, &path),
            Err(SaveFault::ChangedOnDisk { .. }) => self.dialog = Some(Dialog::Changed(path)),
            Err(fault) => self.complain(ctx, format!("{fault}.")),
        }
    }

    fn save_as(&mut self, ctx: &Context, path: &Path, if_there: IfChanged) {
        self.history.commit();
        let document = self
            .files
            .file
            .as_ref()
            .map_or(&self.files.document, BuildFile::document);
        match BuildFile::save_as(path, document, self.history.build(), if_there) {
            Ok((file, _)) => {
                self.files.file = Some(file);
                self.saved(ctx, path);
            }
            Err(SaveFault::AlreadyThere { .. } | SaveFault::ChangedOnDisk { .. }) => {
                self.dialog = Some(Dialog::Exists(path.to_owned()));
            }
            Err(fault) => self.complain(ctx, format!("{fault}.")),
        }
    }

    fn saved(&mut self, ctx: &Context, path: &Path) {
        self.files.unsaved.opened(path);
        self.files.unsaved.give_up();
        self.say(ctx, format!("Saved {}", path.display()));
        if let Some(next) = self.files.after_save.take() {
            self.go_on(ctx, next);
        }
    }

    pub(super) fn save_then(&mut self, ctx: &Context, next: Next) {
        self.files.after_save = Some(next);
        self.save(ctx);
    }

    /// The user was asked and wants what is there replaced.
    pub(super) fn save_over(&mut self, ctx: &Context, path: &Path) {
        if self.files.path() == Some(path) {
            self.save_file(ctx, IfChanged::Replace);
        } else {
            self.save_as(ctx, path, IfChanged::Replace);
        }
    }

    /// A path was typed or chosen.
    pub(super) fn path_given(&mut self, ctx: &Context, what: PathFor, path: PathBuf) {
        match what {
            PathFor::Open => self.ask_then(ctx, Next::Open(path)),
            PathFor::SaveAs => {
                let path = if path.extension().is_none() {
                    path.with_extension("ron")
                } else {
                    path
                };
                self.save_as(ctx, &path, IfChanged::Refuse);
            }
            PathFor::Import => self.import_points(ctx, &path),
            PathFor::Export => self.export_points(ctx, &path),
            PathFor::Sheets => self.export_sheets(ctx, path),
            PathFor::Cards => self.save_cards(ctx, &path),
            PathFor::MeasuringSheet => self.save_measuring_sheet(ctx, &path),
            PathFor::Readings => self.open_readings(ctx, &path),
            PathFor::Survey => self.open_survey(ctx, &path),
        }
    }

    /// Nothing is saved after all, so nothing follows.
    pub(super) fn forget_what_follows(&mut self) {
        self.files.after_save = None;
    }

    pub(super) fn suggested_path(&self) -> String {
        self.suggested("ron")
    }

    pub(super) fn suggested_table_path(&self) -> String {
        self.suggested("csv")
    }

    pub(super) fn suggested_cards_path(&self) -> String {
        self.suggested("cards.pdf")
    }

    pub(super) fn suggested_measuring_path(&self) -> String {
        self.suggested("measuring.pdf")
    }

    fn suggested(&self, extension: &str) -> String {
        if let Some(path) = self.files.path() {
            return path.with_extension(extension).display().to_string();
        }
        let title = &self.history.build().title;
        let word: String = title
            .to_lowercase()
            .chars()
            .map(|c| if c.is_alphanumeric() { c } else { '-' })
            .collect();
        let stem = word
            .split('-')
            .filter(|w| !w.is_empty())
            .collect::<Vec<_>>()
            .join("-");
        let name = format!(
            "{}.{extension}",
            if stem.is_empty() { "build" } else { &stem }
        );
        let folder = self.files.folder().or_else(|| std::env::current_dir().ok());
        folder.map_or(name.clone(), |f| f.join(&name).display().to_string())
    }

    /// Puts unsaved work of an earlier run on the bench.
    pub(super) fn recover(
        &mut self,
        ctx: &Context,
        mut found: Vec<trammel_persistence::Leftover>,
        at: usize,
    ) {
        if at >= found.len() {
            return;
        }
        let leftover = found.remove(at);
        match Document::read(&leftover.text) {
            Ok(document) => {
                let recovered = document.build().clone();
                let file = leftover
                    .path
                    .as_deref()
                    .and_then(|p| BuildFile::open(p).ok());
                self.files.document = file.as_ref().map_or_else(
                    || Document::new(&begin::build(LengthUnit::Millimetre)),
                    |f| f.document().clone(),
                );
                self.files.file = file;
                self.files.after_save = None;
                self.start_over(recovered);
                self.say(
                    ctx,
                    "Unsaved work is back on the table. Save it to keep it.",
                );
                if let Err(fault) = leftover.discard() {
                    self.complain(ctx, fault.to_string());
                }
            }
            Err(fault) => self.complain(ctx, format!("The unsaved work can't be read: {fault}.")),
        }
    }

    pub(super) fn discard(&mut self, ctx: &Context, found: Vec<trammel_persistence::Leftover>) {
        for leftover in found {
            if let Err(fault) = leftover.discard() {
                self.complain(ctx, fault.to_string());
            }
        }
    }
}
