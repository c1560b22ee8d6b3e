//! What the screen needs from the machine around it; the window shell and the tests each bring their own.

use std::path::{Path, PathBuf};

/// What a file dialog is for.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Pick {
    /// Open a build.
    OpenBuild,
    /// Save a build; the suggested file name.
    SaveBuild(String),
    /// Read a table: points, readings of toe, a tape survey.
    OpenTable,
    /// Write a point table; the suggested file name.
    SaveTable(String),
    /// A folder for sheets and files for the cutter.
    SheetsFolder,
    /// Write sheets to print; the suggested file name.
    SaveSheets(String),
}

/// What came of a file dialog.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Picked {
    /// A path was chosen.
    Path(PathBuf),
    /// No path was chosen. Where a desktop has no dialog this is all that is said, so a typed path is always offered beside it.
    Nothing,
}

/// The machine around the screen.
pub trait Host {
    /// Asks for a file with the desktop's own dialog, without holding the screen up. `start` is the folder to begin in.
    fn ask_for_file(&mut self, pick: &Pick, start: Option<&Path>);
    /// The answer, when it is there.
    fn answer(&mut self) -> Option<Picked>;
    /// Folder for unsaved work and the list of recent files, if the machine has one.
    fn state_folder(&self) -> Option<PathBuf>;
    /// Opens a file with what the system opens such files with.
    ///
    /// # Errors
    /// What the system says.
    fn open_in_viewer(&mut self, path: &Path) -> Result<(), String>;
    /// Asked once when the screen is done and the window should close.
    fn quit(&mut self);
}

/// A machine with nobody at it: nothing is asked, kept or opened.
#[derive(Debug)]
pub struct Nobody;

impl Host for Nobody {
    fn ask_for_file(&mut self, _pick: &Pick, _start: Option<&Path>) {}
    fn answer(&mut self) -> Option<Picked> {
        None
    }
    fn state_folder(&self) -> Option<PathBuf> {
        None
    }
    fn open_in_viewer(&mut self, _path: &Path) -> Result<(), String> {
        Ok(())
    }
    fn quit(&mut self) {}
}
