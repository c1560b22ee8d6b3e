//! What the screen remembers from one run to the next. Reading it never fails: a state that is damaged is the one of a first start.

use std::{
    fs, io,
    path::{Path, PathBuf},
};

use serde::{Deserialize, Serialize};

use crate::{outside::kept_text, save::write_file};

/// A longer file was not written here, bytes.
const LARGEST: u64 = 64 * 1024;

/// What the screen remembers.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Deserialize, Serialize)]
#[serde(rename = "screen", default)]
pub struct ScreenState {
    /// The guided tour was shown.
    pub tour_shown: bool,
    /// Light instead of dark.
    pub light: bool,
    /// How large words and controls are, per cent of the usual.
    pub scale: u16,
    /// Width and height of the window when it does not fill the display, points of the usual scale.
    pub window: [u16; 2],
    /// The window fills the display.
    pub maximised: bool,
}

impl Default for ScreenState {
    fn default() -> Self {
        Self {
            tour_shown: false,
            light: false,
            scale: 100,
            window: [1280, 800],
            maximised: false,
        }
    }
}

impl ScreenState {
    /// The state kept in a folder; that of a first start when there is none or it can't be read.
    #[must_use]
    pub fn load(folder: &Path) -> Self {
        let text = kept_text(&file(folder), LARGEST).ok();
        text.and_then(|text| ron::from_str(&text).ok())
            .unwrap_or_default()
    }

    /// Writes the state into a folder, which is made if need be.
    ///
    /// # Errors
    /// When the system refuses; the old state is whole then.
    pub fn save(&self, folder: &Path) -> io::Result<()> {
        let config = ron::ser::PrettyConfig::default();
        let text = ron::ser::to_string_pretty(self, config).map_err(io::Error::other)?;
        fs::create_dir_all(folder)?;
        write_file(&file(folder), text.as_bytes())
    }
}

fn file(folder: &Path) -> PathBuf {
    folder.join("screen.ron")
}
