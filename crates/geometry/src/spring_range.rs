//! The wheel travel that a spring unit's open or closed length allows.

use crate::{Limit, Linkage, SpringMeasures, Unreachable, Walk};

/// Farthest travel looked at, mm.
const FARTHEST: f64 = 600.0;
/// Stride of the search, mm.
const STRIDE: f64 = 5.0;
/// A length this close, mm, is the wanted one.
const SAME_LENGTH: f64 = 1e-11;
/// How far inside the end of the reach, mm, the last length is taken.
const HAIR: f64 = 1e-6;
/// Rounds of the bracketed search; by halving alone they take a stride to rounding.
const ROUNDS: usize = 50;

/// The travel (mm, rack at centre) at which the spring unit is `length` mm long, looking from the design height into bump when the unit must
/// shorten and into droop when it must lengthen (the other way round where bump lengthens it). `Ok(None)` when there is no spring or its length
/// never gets there within 600 mm.
///
/// # Errors
/// [`Unreachable`] when a member runs out first.
pub fn travel_for_spring_length(
    linkage: &Linkage,
    length: f64,
) -> Result<Option<f64>, Unreachable> {
    let mut walk = Walk::new(linkage, 0.0)?;
    let Some(at_design) = spring_at(&mut walk, 0.0)? else {
        return Ok(None);
    };
    let shortfall = at_design.length - length;
    if !shortfall.is_finite() {
        return Ok(None);
    }
    if shortfall == 0.0 {
        return Ok(Some(0.0));
    }
    let way = (shortfall * at_design.motion_ratio).signum();
    let passed = |now: f64| (now - length) * shortfall.signum() <= 0.0;
    let mut near = 0.0;
    while near < FARTHEST {
        let (far, stopped) = match walk.pose(way * (near + STRIDE)) {
            Ok(_) => (near + STRIDE, None),
            Err(stop) => (within(&stop, near), Some(stop)),
        };
        match spring_at(&mut walk, way * far)? {
            Some(s) if passed(s.length) => {
                let ends = (way * near, way * far);
                return close_in(&mut walk, length, ends, passed, ROUNDS).map(Some);
            }
            _ => near = far,
        }
        if let Some(stop) = stopped {
            return Err(stop);
        }
    }
    Ok(None)
}

/// The last travel before the stop, as a distance from the design height and a hair inside; `near` is known to be within reach.
fn within(stop: &Unreachable, near: f64) -> f64 {
    match stop.limit {
        Limit::Travel(at) => (at.abs() - HAIR).max(near),
        Limit::Rack(_) => near,
    }
}

/// The travel between two `ends` at which the spring has its length: Newton's method with the motion ratio, halving where that leaves
/// the bracket.
fn close_in(
    walk: &mut Walk<'_>,
    length: f64,
    ends: (f64, f64),
    passed: impl Fn(f64) -> bool,
    rounds: usize,
) -> Result<f64, Unreachable> {
    let (mut near, mut far) = ends;
    let mut travel = far;
    for _ in 0..rounds {
        let Some(spring) = spring_at(walk, travel)? else {
            break;
        };
        let error = spring.length - length;
        if error.abs() <= SAME_LENGTH {
            break;
        }
        if passed(spring.length) {
            far = travel;
        } else {
            near = travel;
        }
        let newton = travel + error / spring.motion_ratio;
        travel = if (newton - near) * (newton - far) < 0.0 {
            newton
        } else {
            0.5 * (near + far)
        };
    }
    Ok(travel)
}

fn spring_at(walk: &mut Walk<'_>, travel: f64) -> Result<Option<SpringMeasures>, Unreachable> {
    let pose = walk.pose(travel)?;
    Ok(walk.linkage().measures(&pose).spring)
}

#[cfg(test)]
mod tests {
    use super::close_in;
    use crate::{
        Walk,
        square::{linkage, square},
    };

    /// The spring of the square corner stands 250 mm above a mount that swings 240 mm about a pivot 60 mm inboard of it.
    fn length(travel: f64) -> f64 {
        let angle = (travel / 360.0).asin();
        (240.0 * angle.cos() - 60.0).hypot(240.0 * angle.sin() - 250.0)
    }

    #[test]
    fn newtons_method_takes_few_rounds_between_two_ends() {
        let linkage = linkage(&square());
        for (wanted, ends) in [
            (42.0, (40.0, 45.0)),
            (1e-3, (0.0, 5.0)),
            (-73.0, (-70.0, -75.0)),
        ] {
            let way: f64 = ends.1 - ends.0;
            let passed = |now: f64| (now - length(wanted)) * way <= 0.0;
            let mut walk = match Walk::new(&linkage, 0.0) {
                Ok(walk) => walk,
                Err(stop) => unreachable!("{stop}"),
            };
            let found = close_in(&mut walk, length(wanted), ends, passed, 3);
            assert!(
                found.as_ref().is_ok_and(|f| (f - wanted).abs() < 1e-9),
                "{found:?} for {wanted}"
            );
        }
    }
}
