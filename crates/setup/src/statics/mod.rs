//! Static set-up: toe, camber, castor, turns of the thread, weights.

mod castor;
mod static_toe;
mod turns;
mod weights;

pub use castor::{CastorFault, CastorSweep, castor_factor};
pub use static_toe::{difference_of_toe, toe_of_difference};
pub use turns::{TurnEffect, TurnsFault, WantedTurns, turn_effect, turns_for_toe};
pub use weights::{CornerWeights, Shares};
