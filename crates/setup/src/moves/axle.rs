//! Both sides together: shims under the rack raise both.

use super::{Adjuster, Advice, Question, advise};
use crate::LearnFault;

/// An adjuster that moves both sides alike.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Shared(pub Adjuster);

/// What to do on both sides.
#[derive(Clone, Debug, PartialEq)]
pub struct AxleAdvice {
    /// Steps of the shared adjuster.
    pub shared_steps: i32,
    /// Left side, the shared adjuster moved already.
    pub left: Advice,
    /// Right side, in the mirror.
    pub right: Advice,
}

impl AxleAdvice {
    /// Adjusters to move in all.
    #[must_use]
    pub fn moved(&self) -> usize {
        usize::from(self.shared_steps != 0)
            + self.left.best.moves.len()
            + self.right.best.moves.len()
    }

    /// Chance that both sides stay within the limit, taken as independent.
    #[must_use]
    pub fn confidence(&self) -> f64 {
        self.left.best.confidence * self.right.best.confidence
    }
}

/// A further adjuster is worth moving for so much more chance.
const WORTH: f64 = 0.05;

/// The smallest set of moves for an axle with an adjuster that both sides share.
///
/// # Errors
/// As [`advise`].
pub fn advise_axle(
    left: &Question<'_>,
    right: &Question<'_>,
    shared: Option<Shared>,
) -> Result<AxleAdvice, LearnFault> {
    let with = |steps: i32| -> Result<AxleAdvice, LearnFault> {
        let side = |q: &Question<'_>| {
            let raised = shared.map(|s| s.0.one_step(&q.learned.corner).times(f64::from(steps)));
            let now = raised.map_or(q.now, |r| q.now.and(&r));
            advise(&Question { now, ..q.clone() })
        };
        Ok(AxleAdvice {
            shared_steps: steps,
            left: side(left)?,
            right: side(right)?,
        })
    };
    let mut best = with(0)?;
    for steps in shared
        .into_iter()
        .flat_map(|s| s.0.range())
        .filter(|n| *n != 0)
    {
        // Too many shims may leave the travel out of reach; then they are no choice.
        let Ok(next) = with(steps) else { continue };
        let gain = next.confidence() - best.confidence();
        let fewer = next.moved() < best.moved();
        if gain > WORTH || (gain > -WORTH && fewer) {
            best = next;
        }
    }
    Ok(best)
}
