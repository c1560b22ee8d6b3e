//! Why a command could not be done.

use std::{io, path::PathBuf};

use trammel_analysis::{ForceFault, NextFault, RaiseFault, SweepFault};
use trammel_build::{BuildFault, EditFault, LengthFault};
use trammel_drawings::DrawingError;
use trammel_persistence::{OpenFault, ReadFault, SaveFault, SheetFileFault, in_plain_words};
use trammel_setup::SurveyFault;
use trammel_sheets::FileFault;
use trammel_tuning::{FrameFault, MapFault, ScatterFault, SearchFault, StationFault, TuneFault};

use crate::words::UsageFault;

/// Why a command could not be done: one plain line each.
#[derive(Debug, thiserror::Error)]
pub enum Fault {
    /// The words on the command line.
    #[error(transparent)]
    Usage(#[from] UsageFault),
    /// The build file.
    #[error(transparent)]
    Open(#[from] OpenFault),
    /// A demo's text.
    #[error("demo:{name}: {fault}")]
    Demo {
        /// Which demo.
        name: &'static str,
        /// What is wrong with it.
        fault: Box<ReadFault>,
    },
    /// No demo of that name.
    #[error("there is no demo called {name}; the demos are {known}")]
    NoDemo {
        /// What was asked for.
        name: String,
        /// Those there are.
        known: String,
    },
    /// The build can be read but not posed.
    #[error(transparent)]
    Build(#[from] BuildFault),
    /// The table.
    #[error(transparent)]
    Sweep(#[from] SweepFault),
    /// The forces of a corner.
    #[error(transparent)]
    Forces(#[from] ForceFault),
    /// No load case of that name.
    #[error("--case {name}: the build has no such load case; expected one of: {known}")]
    NoCase {
        /// What was asked for.
        name: String,
        /// Those there are.
        known: String,
    },
    /// Not one pose of the table.
    #[error("no table was written: {0}")]
    NothingReached(String),
    /// A folder could not be made.
    #[error("the folder {} could not be made: {}", path.display(), in_plain_words(source))]
    Folder {
        /// Which.
        path: PathBuf,
        /// What the system says.
        source: io::Error,
    },
    /// A build file could not be saved.
    #[error(transparent)]
    Save(#[from] SaveFault),
    /// A length on the command line.
    #[error("{option}: {fault}")]
    Length {
        /// Which option.
        option: &'static str,
        /// What is wrong with it.
        fault: LengthFault,
    },
    /// Something on the command line that the build has no place for.
    #[error("{option} {found}: {why}")]
    Option {
        /// Which option.
        option: &'static str,
        /// What was given.
        found: String,
        /// What is wrong with it, and what was expected.
        why: String,
    },
    /// A change that the build does not take.
    #[error("the build can't be changed so: {0}")]
    Edit(#[from] EditFault),
    /// Travels or rack positions.
    #[error(transparent)]
    Stations(#[from] StationFault),
    /// The best spot.
    #[error(transparent)]
    Spot(#[from] SearchFault),
    /// The global search.
    #[error(transparent)]
    Tune(#[from] TuneFault),
    /// The rectangle of a map.
    #[error(transparent)]
    Frame(#[from] FrameFault),
    /// The map.
    #[error(transparent)]
    Map(#[from] MapFault),
    /// The made-up builds.
    #[error(transparent)]
    Scatter(#[from] ScatterFault),
    /// The raised frame.
    #[error(transparent)]
    Raise(#[from] RaiseFault),
    /// A table of readings.
    #[error("{}: {fault}", path.display())]
    Sheet {
        /// Which.
        path: PathBuf,
        /// What is wrong with it.
        fault: Box<SheetFileFault>,
    },
    /// A tape survey.
    #[error("{}: {fault}", path.display())]
    Survey {
        /// Which.
        path: PathBuf,
        /// What is wrong with it.
        fault: Box<SurveyFault>,
    },
    /// The cards.
    #[error(transparent)]
    Cards(#[from] Box<trammel_cards::CardFault>),
    /// The next moves.
    #[error(transparent)]
    Next(#[from] NextFault),
    /// Not one place of a map.
    #[error(
        "no place of the map can be built and reaches the whole travel; look at the build with `trammel check`"
    )]
    NoPlace,
    /// Nothing is left to be moved.
    #[error("nothing may move: {0} are locked")]
    AllLocked(String),
    /// A sheet, or the file of one.
    #[error(transparent)]
    SheetFile(#[from] FileFault),
    /// The fonts for the sheets.
    #[error(transparent)]
    Drawing(#[from] DrawingError),
    /// A file is in the way.
    #[error("{} is there already, so nothing was written; --force writes over it", path.display())]
    Exists {
        /// Which.
        path: PathBuf,
    },
    /// Output over the input.
    #[error("{} is the build itself, so nothing was written over it", path.display())]
    OverBuild {
        /// Which.
        path: PathBuf,
    },
    /// Standard output.
    #[error("standard output can't be written: {}", in_plain_words(.0))]
    Output(io::Error),
    /// The window.
    #[error("{0}")]
    Window(String),
    /// The picture could not be painted.
    #[error("no picture was made: {0}")]
    Picture(String),
}
