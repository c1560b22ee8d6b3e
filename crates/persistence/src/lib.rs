//! Trammel's files: the build file and what is kept beside it.
//!
//! | where | what |
//! |---|---|
//! | [`read`], [`read_bytes`], [`read_text`] | a build out of text, or a [`ReadFault`] with line, column and what was expected |
//! | [`write()`] | the canonical text of a build |
//! | [`Document`] | a build with the text it was read from: saving disturbs nothing that was not edited |
//! | [`BuildFile`] | a build open from a file and saved back to it |
//! | [`save`] | a text put on disk so that the old or the new file is whole at every instant |
//! | [`in_plain_words`] | what the system says of a file, for a shop |
//! | [`Autosave`], [`leftovers`] | unsaved work, kept and found again after a crash |
//! | [`RecentFiles`] | files opened lately |
//! | [`ScreenState`] | what the screen remembers between two runs |
//! | [`write_points`], [`read_points`] | hardpoints as a table for spreadsheets and the clipboard |
//! | [`read_readings`], [`read_survey`] | sheets of toe readings and tape surveys |
//! | [`Drawer`] | measured parts, kept in the user's folder |
//! | [`demos`] | the builds that come with the program |

mod autosave;
mod build_file;
mod convert;
mod convert_parts;
mod convert_pieces;
mod demos;
mod document;
mod drawer;
mod explain;
mod fault;
mod format1;
mod format1_parts;
mod format1_pieces;
mod nearest;
mod outside;
mod place;
mod read;
mod recent;
mod ron_text;
mod save;
mod screen_state;
mod set_up;
mod sheets;
mod table;

pub use autosave::{Autosave, AutosaveFault, Leftover, leftovers};
pub use build_file::{BuildFile, IfChanged};
pub use demos::{Demo, demos};
pub use document::{Document, write};
pub use drawer::{Drawer, DrawerFault};
pub use fault::{FORMAT, LARGEST_FILE, OpenFault, ReadFault, ReadFaultKind};
pub use outside::in_plain_words;
pub use place::Place;
pub use read::{read, read_bytes, read_text};
pub use recent::RecentFiles;
pub use save::{Expected, SaveFault, Saved, backup_path, changed_on_disk, save, save_bytes};
pub use screen_state::ScreenState;
pub use sheets::{SheetFileFault, SheetFileFaultKind, SurveyFile, read_readings, read_survey};
pub use table::{Separator, TableFault, TableFaultKind, read_points, write_points};
