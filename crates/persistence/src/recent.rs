//! The list of files opened lately. Reading it never fails: a list that is damaged is an empty one.

use std::{
    fs, io,
    path::{Path, PathBuf},
};

use serde::{Deserialize, Serialize};

use crate::{outside::kept_text, save::write_file};

/// Files that are remembered.
const MOST: usize = 12;
/// A longer list file was not written here, bytes.
const LARGEST: u64 = 256 * 1024;

/// Files opened lately, the latest first.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct RecentFiles {
    files: Vec<PathBuf>,
}

#[derive(Deserialize, Serialize)]
#[serde(rename = "recent_files")]
struct Kept {
    files: Vec<String>,
}

impl RecentFiles {
    /// The list in a file; empty when there is none or it can't be read.
    #[must_use]
    pub fn load(path: &Path) -> Self {
        let text = kept_text(path, LARGEST).ok();
        let kept = text.and_then(|text| ron::from_str::<Kept>(&text).ok());
        let mut list = Self::default();
        for file in kept.map(|k| k.files).unwrap_or_default().iter().rev() {
            list.add(Path::new(file));
        }
        list
    }

    /// Writes the list. A path that is not Unicode is left out.
    ///
    /// # Errors
    /// When the system refuses; the old list is whole then.
    pub fn save(&self, path: &Path) -> io::Result<()> {
        let files = self
            .files
            .iter()
            .filter_map(|f| f.to_str().map(str::to_owned))
            .collect();
        let config = ron::ser::PrettyConfig::default();
        let text = ron::ser::to_string_pretty(&Kept { files }, config).map_err(io::Error::other)?;
        if let Some(folder) = path.parent() {
            fs::create_dir_all(folder)?;
        }
        write_file(path, text.as_bytes())
    }

    /// Puts a file first.
    pub fn add(&mut self, file: &Path) {
        self.remove(file);
        self.files.insert(0, file.to_owned());
        self.files.truncate(MOST);
    }

    /// Takes a file out, as when it is no longer there.
    pub fn remove(&mut self, file: &Path) {
        self.files.retain(|f| f != file);
    }

    /// The files, the latest first.
    #[must_use]
    pub fn files(&self) -> &[PathBuf] {
        &self.files
    }
}
