//! The Make stage on the bench: asking for a folder, writing, looking at what was written.

use std::path::{Path, PathBuf};

use egui::Context;
use trammel_persistence::{read_text, save_bytes};

use super::{
    Bench,
    dialogs::{Dialog, PathFor},
};
use trammel_sheets::Which;

use crate::{
    make::{Make, outline::OutlineEvent, wanted::Wanted},
    view::Stage,
};

/// The stage with what it remembers from one day to the next.
pub(super) struct Making {
    pub(super) make: Make,
    /// Where sheets were written last.
    folder: Option<PathBuf>,
    state: Option<PathBuf>,
    /// What is to be written once a folder is given.
    pub(super) wanted: Wanted,
    /// What was written last.
    written: Option<PathBuf>,
}

/// Name of the file in the state folder that keeps the folder of the sheets.
const REMEMBERED: &str = "sheets-folder";

impl Making {
    pub(super) fn new(state: Option<PathBuf>) -> Self {
        let kept = state
            .as_deref()
            .and_then(|s| read_text(&s.join(REMEMBERED)).ok());
        Self {
            make: Make::default(),
            folder: kept.map(|text| PathBuf::from(text.trim())),
            state,
            wanted: Wanted::default(),
            written: None,
        }
    }

    /// A folder that can't be remembered is no reason to stop work.
    fn remember(&mut self, folder: &Path) {
        self.folder = Some(folder.to_owned());
        if let Some(state) = &self.state {
            let text = folder.display().to_string();
            let made = std::fs::create_dir_all(state).is_ok();
            let _ = made.then(|| save_bytes(&state.join(REMEMBERED), text.as_bytes()));
        }
    }
}

impl Bench {
    /// Goes on with the sheets, and says what an export came to.
    pub(super) fn make_go_on(&mut self, ctx: &Context) {
        if self.view.stage == Stage::Make && !self.history.is_open() {
            self.making
                .make
                .go_on(ctx, self.history.build(), &self.view);
        }
        match self.making.make.exported() {
            Some(Ok((said, path))) => {
                self.making.written = Some(path);
                self.say(ctx, said);
            }
            Some(Err(why)) => self.complain(ctx, why),
            None => {}
        }
    }

    /// Asks where to write: the remembered folder, or one beside the build.
    pub(super) fn ask_for_sheets_folder(&mut self, which: &Which) {
        self.making.wanted.ask(which);
        let beside = || Some(self.files.folder()?.join("sheets"));
        let folder = self.making.folder.clone().or_else(beside);
        let here = || std::env::current_dir().ok().map(|d| d.join("sheets"));
        let folder = folder.or_else(here).unwrap_or_default();
        self.dialog = Some(Dialog::path(PathFor::Sheets, folder.display().to_string()));
    }

    pub(super) fn export_sheets(&mut self, ctx: &Context, folder: PathBuf) {
        self.making.remember(&folder);
        let (formats, which) = (self.making.wanted.formats(), self.making.wanted.which());
        let begun = self.making.make.export(ctx, &formats, &which, folder);
        if let Err(why) = begun {
            self.complain(ctx, why);
        }
    }

    pub(super) fn open_exported(&mut self, ctx: &Context) {
        let Some(path) = self.making.written.clone() else {
            self.complain(ctx, "Nothing was written yet: export a sheet first.");
            return;
        };
        if let Err(why) = self.host.open_in_viewer(&path) {
            self.complain(
                ctx,
                format!("{} can't be shown here: {why}", path.display()),
            );
        }
    }

    /// What the hand did to the outline on the page: a drag is one undo step.
    pub(super) fn outline_events(&mut self, ctx: &Context, events: Vec<OutlineEvent>) {
        for event in events {
            match event {
                OutlineEvent::Began(name) => {
                    self.message = None;
                    self.history.begin(name);
                }
                OutlineEvent::Put(edit) if self.history.is_open() => {
                    match self.history.edit(&edit) {
                        Ok(()) => self.work_out(),
                        Err(fault) => self.complain(
                            ctx,
                            format!("Not so: {fault}. The outline waits at the last one that can be made."),
                        ),
                    }
                }
                OutlineEvent::Put(edit) => {
                    let request = crate::request::Request::Edit(*edit);
                    self.carry_out(ctx, vec![request]);
                }
                OutlineEvent::Ended => {
                    self.history.commit();
                    self.work_out();
                }
                OutlineEvent::GivenUp => {
                    self.history.abort();
                    self.work_out();
                }
            }
        }
    }
}
