//! What a turn of the tie rod's thread does to static toe, and how many a wanted toe takes.

use trammel_geometry::Corner;
use trammel_tuning::{Adjustment, EffectFault, Stations, effect};

use super::difference_of_toe;

/// What turning a thread does to one wheel.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct TurnEffect {
    /// Toe that one turn longer makes, rad, toe-in positive.
    pub per_turn: f64,
    /// Toe that one flat of a hexagon longer makes, rad.
    pub per_flat: f64,
    /// The same over the tyre's diameter, mm.
    pub per_turn_at_tyre: f64,
    /// The same for one flat, mm.
    pub per_flat_at_tyre: f64,
}

/// How the tie rod has to be turned.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct WantedTurns {
    /// How much longer, mm.
    pub longer: f64,
    /// In turns.
    pub turns: f64,
}

/// Why turns are not known.
#[derive(Clone, Copy, Debug, PartialEq, thiserror::Error)]
pub enum TurnsFault {
    /// A turn changes nothing, or no thread has that pitch.
    #[error("one turn changes the tie rod by {0} mm; expected more than nothing, at most 20")]
    Thread(f64),
    /// The toe asked for is none that the tie rod can make.
    #[error("no length of the tie rod gives {0:.2} degrees of toe")]
    OutOfReach(f64),
    /// What a length does is not known.
    #[error(transparent)]
    Effect(#[from] EffectFault),
}

/// Newton steps, and the toe that is near enough, rad.
const STEPS: usize = 30;
const NEAR: f64 = 1e-10;

fn toe_change(corner: &Corner, longer: f64) -> Result<f64, TurnsFault> {
    let at_ride = Stations::new(vec![0.0], vec![0.0]).map_err(|_| EffectFault::NotUsable)?;
    Ok(effect(corner, Adjustment::RodLength(longer), &at_ride)?.static_toe)
}

/// What one turn and one flat do. `per_turn` in mm of rod, `tyre` its diameter, mm.
///
/// # Errors
/// [`TurnsFault`].
pub fn turn_effect(corner: &Corner, per_turn: f64, tyre: f64) -> Result<TurnEffect, TurnsFault> {
    check_thread(per_turn)?;
    let turn = toe_change(corner, per_turn)?;
    let flat = toe_change(corner, per_turn / 6.0)?;
    let now = difference_of_toe(corner.wheel.toe, tyre);
    let at_tyre = |change: f64| difference_of_toe(corner.wheel.toe + change, tyre) - now;
    Ok(TurnEffect {
        per_turn: turn,
        per_flat: flat,
        per_turn_at_tyre: at_tyre(turn),
        per_flat_at_tyre: at_tyre(flat),
    })
}

/// How much the tie rod has to be turned so that a toe of `now` becomes `wanted`, rad.
///
/// # Errors
/// [`TurnsFault`].
pub fn turns_for_toe(
    corner: &Corner,
    now: f64,
    wanted: f64,
    per_turn: f64,
) -> Result<WantedTurns, TurnsFault> {
    check_thread(per_turn)?;
    let out_of_reach = TurnsFault::OutOfReach(wanted.to_degrees());
    if !((wanted - now).abs() < 0.5) {
        return Err(out_of_reach);
    }
    let mut corner = *corner;
    corner.wheel.toe = now;
    let mut longer = 0.0;
    for _ in 0..STEPS {
        let off = toe_change(&corner, longer)? - (wanted - now);
        if off.abs() < NEAR {
            return Ok(WantedTurns {
                longer,
                turns: longer / per_turn,
            });
        }
        let slope =
            (toe_change(&corner, longer + 0.01)? - toe_change(&corner, longer - 0.01)?) / 0.02;
        let step = (off / slope).clamp(-5.0, 5.0);
        if !step.is_finite() {
            break;
        }
        longer -= step;
    }
    Err(out_of_reach)
}

fn check_thread(per_turn: f64) -> Result<(), TurnsFault> {
    if per_turn > 0.0 && per_turn <= 20.0 {
        Ok(())
    } else {
        Err(TurnsFault::Thread(per_turn))
    }
}
