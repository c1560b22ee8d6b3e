//! Stops set closer, so that a measure stays within its limit.

use trammel_build::Edit;

use super::{After, Case};
use crate::{
    corner_view::Reading,
    search::{shop_step, step_down},
};

/// Steps by which stops are brought closer still when the poses between the grid's are a little past the limit.
const TRIES: usize = 4;

/// How far the wheel may go from the design height either way with `badness` at most `limit` at every rack position, mm (droop, bump): by
/// straight lines between the poses of the grid, so that the caller has to look once more.
fn travel_within(
    case: &Case<'_>,
    limit: f64,
    badness: &impl Fn(&Reading) -> Option<f64>,
) -> (f64, f64) {
    let range = case.view.travel;
    let (mut droop, mut bump) = (range.droop, range.bump);
    for column in case.grid.columns() {
        for pair in column.windows(2) {
            let [low, high] = pair else { continue };
            let (Some(at_low), Some(at_high)) = (badness(low), badness(high)) else {
                continue;
            };
            let share = (limit - at_low) / (at_high - at_low);
            let crossing = low.travel + share * (high.travel - low.travel);
            if at_low > limit && low.travel < 0.0 {
                let within = if at_high > limit {
                    high.travel
                } else {
                    crossing
                };
                droop = droop.max(within.min(0.0));
            }
            if at_high > limit && high.travel > 0.0 {
                let within = if at_low > limit { low.travel } else { crossing };
                bump = bump.min(within.max(0.0));
            }
        }
    }
    (droop, bump)
}

/// Stops that keep a measure within its limit, with the corner between them; `None` where the design height itself is past the limit.
pub(super) fn closer_stops(
    case: &Case<'_>,
    limit: f64,
    badness: impl Fn(&Reading) -> Option<f64>,
    is_mended: impl Fn(&After) -> bool,
) -> Option<(Edit, f64, f64)> {
    if !case.grid.ends.is_empty() {
        // Out of reach comes first, and sets stops of its own.
        return None;
    }
    let (droop, bump) = travel_within(case, limit, &badness);
    stops_before(case, droop, bump, is_mended)
}

/// Stops at these travels (mm) or a little closer, so that the corner between them is mended: the edit, droop and bump.
pub(super) fn stops_before(
    case: &Case<'_>,
    droop: f64,
    bump: f64,
    is_mended: impl Fn(&After) -> bool,
) -> Option<(Edit, f64, f64)> {
    let step = shop_step(case.unit());
    let range = case.view.travel;
    let set = |end: f64, now: f64| {
        if end == now {
            now
        } else {
            step_down(end, step)
        }
    };
    let (mut droop, mut bump) = (set(droop, range.droop), set(bump, range.bump));
    for _ in 0..TRIES {
        let edit = case.stops_at(droop, bump)?;
        if case.after(&edit).is_some_and(|after| is_mended(&after)) {
            return Some((edit, droop, bump));
        }
        droop += if droop > range.droop { step } else { 0.0 };
        bump -= if bump < range.bump { step } else { 0.0 };
    }
    None
}

/// Rack travel that keeps every pose mended, mm, with its edit, from a first guess.
pub(super) fn shorter_rack(
    case: &Case<'_>,
    guess: f64,
    is_mended: impl Fn(&After) -> bool,
) -> Option<(Edit, f64)> {
    let step = shop_step(case.unit());
    let mut travel = step_down(guess, step);
    for _ in 0..TRIES {
        let edit = case.rack_travel_of(travel)?;
        if case.after(&edit).is_some_and(|after| is_mended(&after)) {
            return Some((edit, travel));
        }
        travel -= step;
    }
    None
}
