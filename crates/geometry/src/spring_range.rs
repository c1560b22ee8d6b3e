//! The wheel travel that a spring unit's open or closed length allows.

use crate::{Linkage, Unreachable};

/// Farthest travel looked at, mm.
const FARTHEST: f64 = 600.0;
/// Stride of the search, mm.
const STRIDE: f64 = 5.0;
const HALVINGS: usize = 50;

/// The travel (mm, rack at centre) at which the spring unit is `length` mm long, looking from the design height into bump when the unit must
/// shorten and into droop when it must lengthen (the other way round where bump lengthens it). `Ok(None)` when there is no spring or its length
/// never gets there within half a metre or so.
///
/// # Errors
/// [`Unreachable`] when a member runs out first.
pub fn travel_for_spring_length(
    linkage: &Linkage,
    length: f64,
) -> Result<Option<f64>, Unreachable> {
    let Some(at_design) = spring_at(linkage, 0.0)? else {
        return Ok(None);
    };
    let shortfall = at_design.length - length;
    if shortfall == 0.0 {
        return Ok(Some(0.0));
    }
    let way = (shortfall * at_design.motion_ratio).signum();
    let passed = |now: f64| (now - length) * shortfall.signum() <= 0.0;
    let mut near = 0.0;
    while near < FARTHEST {
        let far = near + STRIDE;
        let Some(there) = spring_at(linkage, way * far)? else {
            return Ok(None);
        };
        if passed(there.length) {
            return halve(linkage, way, near, far, passed).map(Some);
        }
        near = far;
    }
    Ok(None)
}

fn halve(
    linkage: &Linkage,
    way: f64,
    near: f64,
    far: f64,
    passed: impl Fn(f64) -> bool,
) -> Result<f64, Unreachable> {
    let (mut near, mut far) = (near, far);
    for _ in 0..HALVINGS {
        let middle = 0.5 * (near + far);
        match spring_at(linkage, way * middle)? {
            Some(s) if passed(s.length) => far = middle,
            _ => near = middle,
        }
    }
    Ok(way * 0.5 * (near + far))
}

fn spring_at(linkage: &Linkage, travel: f64) -> Result<Option<crate::SpringMeasures>, Unreachable> {
    let pose = linkage.pose(travel, 0.0)?;
    Ok(linkage.measures(&pose).spring)
}
