//! What the screen remembers from one run to the next. Reading it never fails: a state that is damaged is the one of a first start.

use std::{fs, io, path::Path};

use serde::{Deserialize, Serialize};

use crate::{outside::kept_text, save::write_file};

/// A longer file was not written here, bytes.
const LARGEST: u64 = 64 * 1024;

/// What the screen remembers.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Deserialize, Serialize)]
#[serde(rename = "screen", default)]
pub struct ScreenState {
    /// The guided tour was shown.
    pub tour_shown: bool,
}

impl ScreenState {
    /// The state in a file; that of a first start when there is none or it can't be read.
    #[must_use]
    pub fn load(path: &Path) -> Self {
        let text = kept_text(path, LARGEST).ok();
        text.and_then(|text| ron::from_str(&text).ok())
            .unwrap_or_default()
    }

    /// Writes the state.
    ///
    /// # Errors
    /// When the system refuses; the old state is whole then.
    pub fn save(&self, path: &Path) -> io::Result<()> {
        let config = ron::ser::PrettyConfig::default();
        let text = ron::ser::to_string_pretty(self, config).map_err(io::Error::other)?;
        if let Some(folder) = path.parent() {
            fs::create_dir_all(folder)?;
        }
        write_file(path, text.as_bytes())
    }
}
