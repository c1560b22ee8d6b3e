//! What one turn or one washer does, to static toe and to the toe curve.

use trammel_geometry::{Corner, CornerFault, Linkage, Unreachable, Vector};

use crate::{
    Stations, ToeCurves,
    rod_length::{Wanted, turned},
};

/// Something that a builder can turn or shim, once.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Adjustment {
    /// The rack end unscrewed by so many mm: the inner joint moves towards the wheel along the rack. Negative: screwed
    /// in.
    RackEnd(f64),
    /// A washer of so many mm under the outer joint, which moves it along this direction; its length does not matter.
    OuterWasher(f64, Vector),
    /// A shim of so many mm under the rack: the inner joint rises.
    RackShim(f64),
    /// The tie rod made longer by so many mm by its own adjuster.
    RodLength(f64),
}

/// Toe and toe curve before and after.
#[derive(Clone, Debug, PartialEq)]
pub struct Effect {
    /// What the static toe of this wheel does when nothing else is touched, rad, toe-in positive.
    pub static_toe: f64,
    /// The curves as they were.
    pub before: ToeCurves,
    /// The curves when nothing else is touched, each against its own static toe.
    pub as_turned: ToeCurves,
    /// The curves once the tie rod's adjuster has put static toe back.
    pub toe_reset: ToeCurves,
}

/// Why an adjustment's effect is not known.
#[derive(Clone, Copy, Debug, PartialEq, thiserror::Error)]
pub enum EffectFault {
    /// The size or direction of the adjustment is not a usable number.
    #[error("the adjustment is not a usable number of mm, or has no direction")]
    NotUsable,
    /// There is no rack to adjust.
    #[error("this corner has no rack: its inner joint is on the chassis")]
    NoRack,
    /// The wheel can't be turned to where the adjustment puts it.
    #[error(
        "the tie rod can't be fitted after this adjustment: it would have to stand in line with the steering arm"
    )]
    NotFitted,
    /// The corner can't be built before or after it.
    #[error(transparent)]
    NotBuilt(#[from] CornerFault),
    /// The corner doesn't reach the travel before or after it.
    #[error(transparent)]
    OutOfReach(#[from] Unreachable),
}

/// What an adjustment does to a corner.
///
/// # Errors
/// An [`EffectFault`] when the adjustment makes no sense or the corner can't take it.
pub fn effect(
    corner: &Corner,
    adjustment: Adjustment,
    stations: &Stations,
) -> Result<Effect, EffectFault> {
    let reset = adjusted(corner, adjustment)?;
    let length = (corner.tie_rod.outer - corner.tie_rod.inner).norm();
    let length = match adjustment {
        Adjustment::RodLength(by) => length + by,
        _ => length,
    };
    Linkage::new(&reset)?;
    let as_turned = turned(&reset, Wanted::RodLength(length)).ok_or(EffectFault::NotFitted)?;
    let curves = |corner: &Corner| -> Result<ToeCurves, EffectFault> {
        Ok(ToeCurves::of(&Linkage::new(corner)?, stations)?)
    };
    Ok(Effect {
        static_toe: as_turned.wheel.toe - corner.wheel.toe,
        before: curves(corner)?,
        as_turned: curves(&as_turned)?,
        toe_reset: curves(&reset)?,
    })
}

/// The corner with its joints where the adjustment puts them, at the old static toe.
fn adjusted(corner: &Corner, adjustment: Adjustment) -> Result<Corner, EffectFault> {
    let (by, along) = match adjustment {
        Adjustment::RackEnd(by) => {
            let axis = corner.rack_axis.ok_or(EffectFault::NoRack)?;
            let outwards = corner.tie_rod.outer - corner.tie_rod.inner;
            (by, axis * axis.dot(&outwards).signum())
        }
        Adjustment::OuterWasher(by, along) => (by, along),
        Adjustment::RackShim(by) => (by, Vector::z()),
        Adjustment::RodLength(by) => (by, Vector::z()),
    };
    let along = along
        .try_normalize(1e-9)
        .filter(|v| by.abs() < 1e3 && v.iter().all(|c| c.is_finite()))
        .ok_or(EffectFault::NotUsable)?;
    let mut adjusted = *corner;
    match adjustment {
        Adjustment::RackEnd(_) | Adjustment::RackShim(_) => adjusted.tie_rod.inner += along * by,
        Adjustment::OuterWasher(..) => adjusted.tie_rod.outer += along * by,
        Adjustment::RodLength(_) => {}
    }
    Ok(adjusted)
}
