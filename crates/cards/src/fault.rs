//! Why there is no card.

use trammel_analysis::NextFault;
use trammel_build::BuildFault;
use trammel_drawings::DrawingError;
use trammel_geometry::Unreachable;
use trammel_setup::TurnsFault;
use trammel_strength::thread::ThreadError;

/// Why there is no card.
#[derive(Debug, thiserror::Error)]
pub enum CardFault {
    /// The build can't be posed.
    #[error(transparent)]
    Build(#[from] BuildFault),
    /// A station can't be reached.
    #[error("a station of the card is out of reach: {0}")]
    OutOfReach(#[from] Unreachable),
    /// The tie rod's thread isn't known.
    #[error("the turns table needs the thread: {0}")]
    Thread(#[from] ThreadError),
    /// What a turn does isn't known.
    #[error(transparent)]
    Turns(#[from] TurnsFault),
    /// The readings give no next move.
    #[error("the card of moves can't be made: {0}")]
    Next(#[from] NextFault),
    /// The pages can't be written.
    #[error(transparent)]
    Drawing(#[from] DrawingError),
}
