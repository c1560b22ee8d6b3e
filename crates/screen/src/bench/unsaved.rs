//! Unsaved work kept aside every few seconds, and the list of recent files: both in the user's state folder.

use std::path::{Path, PathBuf};

use trammel_build::Build;
use trammel_persistence::{Autosave, Leftover, RecentFiles, leftovers};

/// Seconds between two keepings.
pub(super) const SECONDS: f64 = 4.0;

/// Unsaved work and recent files.
pub(super) struct Unsaved {
    folder: Option<PathBuf>,
    autosave: Option<Autosave>,
    recent: RecentFiles,
    last_kept: f64,
    kept: Option<Build>,
    complained: bool,
}

impl Unsaved {
    /// Uses a folder; without one nothing is kept.
    pub(super) fn new(folder: Option<PathBuf>) -> Self {
        let recent = folder
            .as_deref()
            .map(|f| RecentFiles::load(&recent_list(f)))
            .unwrap_or_default();
        Self {
            folder,
            autosave: None,
            recent,
            last_kept: 0.0,
            kept: None,
            complained: false,
        }
    }

    /// Work of earlier runs that did not end well.
    pub(super) fn take_leftovers(&self) -> Vec<Leftover> {
        self.folder
            .as_deref()
            .map(|f| leftovers(&f.join("unsaved")))
            .unwrap_or_default()
    }

    /// A file was opened or saved. A list that can't be written is no reason to stop work.
    pub(super) fn opened(&mut self, path: &Path) {
        let path = std::path::absolute(path).unwrap_or_else(|_| path.to_owned());
        self.recent.add(&path);
        if let Some(folder) = &self.folder {
            let made = std::fs::create_dir_all(folder);
            let _ = made.and_then(|()| self.recent.save(&recent_list(folder)));
        }
    }

    pub(super) fn recent(&self) -> &[PathBuf] {
        self.recent.files()
    }

    /// Whether it is time to keep this build aside.
    pub(super) fn due(&mut self, now: f64, unsaved: bool, build: &Build) -> bool {
        let due = unsaved && now - self.last_kept >= SECONDS && self.kept.as_ref() != Some(build);
        if due {
            self.last_kept = now;
            self.kept = Some(build.clone());
        }
        due
    }

    /// Keeps `text` aside if there is one, or lets go of what was kept once the work is in its file. Says once if it can't.
    pub(super) fn tick(
        &mut self,
        text: Option<String>,
        path: Option<&Path>,
        unsaved: bool,
    ) -> Option<String> {
        if !unsaved && self.kept.is_some() {
            self.give_up();
        }
        let (text, folder) = (text?, self.folder.as_deref()?);
        let kept = match &mut self.autosave {
            Some(autosave) => autosave.keep(path, &text),
            None => Autosave::start(&folder.join("unsaved")).and_then(|mut autosave| {
                let kept = autosave.keep(path, &text);
                self.autosave = Some(autosave);
                kept
            }),
        };
        let fault = kept.err()?;
        let first = !std::mem::replace(&mut self.complained, true);
        first.then(|| format!("{fault}. Save often: a crash would lose what is not saved."))
    }

    /// The work is saved or not wanted: nothing needs to be kept.
    pub(super) fn give_up(&mut self) {
        self.kept = None;
        if let Some(mut autosave) = self.autosave.take() {
            // What can't be removed is offered at the next start; that is harmless.
            let _ = autosave.clear();
        }
    }
}

fn recent_list(folder: &Path) -> PathBuf {
    folder.join("recent.ron")
}
