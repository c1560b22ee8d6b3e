//! Why there is no next move.

use trammel_build::{BuildFault, SessionFault, Side};
use trammel_setup::{AdjusterFault, LearnFault, SheetFault};
use trammel_strength::thread::ThreadError;
use trammel_tuning::StationFault;

/// Why readings give no next move.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum NextFault {
    /// The build can't be posed.
    #[error(transparent)]
    Build(#[from] BuildFault),
    /// There are no sessions.
    #[error("this build has no readings yet; take a session first")]
    NoSession,
    /// A session's places make no travel.
    #[error("session {session}: {fault}")]
    Session {
        /// Its number, from 1.
        session: usize,
        /// What is wrong.
        fault: SessionFault,
    },
    /// A session's readings make no toe.
    #[error("session {session}, {} wheel: {fault}", side.word())]
    Sheet {
        /// Its number, from 1.
        session: usize,
        /// Which wheel.
        side: Side,
        /// What is wrong.
        fault: SheetFault,
    },
    /// The rack end's thread isn't known.
    #[error("the rack end's thread: {0}")]
    Thread(#[from] ThreadError),
    /// An adjuster makes no sense.
    #[error(transparent)]
    Adjuster(#[from] AdjusterFault),
    /// Travels can't be judged.
    #[error(transparent)]
    Stations(#[from] StationFault),
    /// The readings can't be compared with the build.
    #[error("{} wheel: {fault}", side.word())]
    Learn {
        /// Which wheel.
        side: Side,
        /// What is wrong.
        fault: LearnFault,
    },
}
