//! A build open from a file, and saved back to it.

use std::path::{Path, PathBuf};

use trammel_build::Build;

use crate::{Document, Expected, OpenFault, SaveFault, Saved, changed_on_disk, read_text, save};

/// What to do when a file is not as this program left it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum IfChanged {
    /// Save nothing and say so.
    Refuse,
    /// The user was asked: replace it. What was there goes to the backup.
    Replace,
}

/// A build and the file that it belongs to.
#[derive(Clone, Debug)]
pub struct BuildFile {
    path: PathBuf,
    document: Document,
}

impl BuildFile {
    /// Opens a file.
    ///
    /// # Errors
    /// [`OpenFault`] when it can't be read or holds no build; every fault of the text has its line and column.
    pub fn open(path: &Path) -> Result<Self, OpenFault> {
        let document = Document::read(&read_text(path)?).map_err(|fault| OpenFault::Build {
            path: path.to_owned(),
            fault: Box::new(fault),
        })?;
        Ok(Self {
            path: path.to_owned(),
            document,
        })
    }

    /// Saves a build under a new name; `document` is what it was read from or [`Document::new`].
    ///
    /// # Errors
    /// [`SaveFault`], [`SaveFault::AlreadyThere`] among them when a file is to be refused that is there already.
    pub fn save_as(
        path: &Path,
        document: &Document,
        build: &Build,
        if_there: IfChanged,
    ) -> Result<(Self, Saved), SaveFault> {
        let document = document.with(build);
        let expected = match if_there {
            IfChanged::Refuse => Expected::Nothing,
            IfChanged::Replace => Expected::Anything,
        };
        let saved = save(path, document.text(), expected)?;
        let path = path.to_owned();
        Ok((Self { path, document }, saved))
    }

    /// Saves a build back to the file, disturbing nothing of its text that was not edited.
    ///
    /// # Errors
    /// [`SaveFault`], [`SaveFault::ChangedOnDisk`] among them; the file and this value are as they were.
    pub fn save(&mut self, build: &Build, if_changed: IfChanged) -> Result<Saved, SaveFault> {
        let next = self.document.with(build);
        let expected = match if_changed {
            IfChanged::Refuse => Expected::Text(self.document.text()),
            IfChanged::Replace => Expected::Anything,
        };
        let saved = save(&self.path, next.text(), expected)?;
        self.document = next;
        Ok(saved)
    }

    /// Where it is.
    #[must_use]
    pub fn path(&self) -> &Path {
        &self.path
    }

    /// The document as opened or saved last.
    #[must_use]
    pub fn document(&self) -> &Document {
        &self.document
    }

    /// The build as opened or saved last.
    #[must_use]
    pub fn build(&self) -> &Build {
        self.document.build()
    }

    /// Whether the file is no longer as it was opened or saved last.
    #[must_use]
    pub fn has_changed_on_disk(&self) -> bool {
        changed_on_disk(&self.path, self.document.text())
    }
}
