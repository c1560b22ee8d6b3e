//! Why a command could not be done.

use std::{io, path::PathBuf};

use trammel_analysis::SweepFault;
use trammel_build::BuildFault;
use trammel_persistence::{OpenFault, ReadFault};

/// Why a command could not be done: one plain line each.
#[derive(Debug, thiserror::Error)]
pub(crate) enum Fault {
    /// The words on the command line.
    #[error("{0}; try `trammel --help`")]
    Usage(String),
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
    /// Not one pose of the table.
    #[error("no table was written: {0}")]
    NothingReached(String),
    /// A file could not be written.
    #[error("{} can't be written: {source}", path.display())]
    Write {
        /// Which.
        path: PathBuf,
        /// What the system says.
        source: io::Error,
    },
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
    #[error("standard output can't be written: {0}")]
    Output(io::Error),
    /// The window.
    #[error("{0}")]
    Window(String),
    /// The picture could not be painted.
    #[error("no picture was made: {0}")]
    Picture(String),
}
