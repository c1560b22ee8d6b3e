//! Where to measure: wheel heights and shock lengths.

use trammel_build::{AxleModel, LengthUnit, Side};

use crate::CardFault;

/// A place of the wheel to measure at.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Station {
    /// Wheel travel from ride height, mm, up positive.
    pub travel: f64,
    /// Height of the wheel centre over the ground that the frame stands on at ride height, mm.
    pub wheel_height: f64,
    /// Length of the spring unit between its mounts, mm; `None` without one.
    pub shock_length: Option<f64>,
}

/// Steps between stations, mm.
fn step(unit: LengthUnit) -> f64 {
    match unit {
        LengthUnit::Inch => 25.4,
        LengthUnit::Millimetre => 25.0,
    }
}

/// Stations in the order of work: ride height, up to bump, ride height again, down to droop, ride height again. Steps of an inch or 25 mm
/// within the travel, so that a tape finds them.
///
/// # Errors
/// [`CardFault::OutOfReach`].
pub fn stations(axle: &AxleModel, side: Side, unit: LengthUnit) -> Result<Vec<Station>, CardFault> {
    let linkage = axle.linkage(side);
    let centre = linkage.corner().wheel.centre.z;
    travels(axle.travel.droop, axle.travel.bump, step(unit))
        .into_iter()
        .map(|travel| {
            let pose = linkage.pose(travel, 0.0)?;
            Ok(Station {
                travel,
                wheel_height: centre + travel,
                shock_length: linkage.measures(&pose).spring.map(|s| s.length),
            })
        })
        .collect()
}

fn travels(droop: f64, bump: f64, step: f64) -> Vec<f64> {
    let count = |range: f64| (range.abs() / step + 1e-6).floor() as i32;
    let up = (1..=count(bump.max(0.0))).map(f64::from);
    let down = (1..=count(droop.min(0.0))).map(|n| -f64::from(n));
    let mut all = vec![0.0];
    all.extend(up.map(|n| n * step));
    all.push(0.0);
    all.extend(down.map(|n| n * step));
    all.push(0.0);
    all
}

#[cfg(test)]
mod tests {
    use super::travels;

    #[test]
    fn the_wheel_goes_up_back_down_and_back() {
        assert_eq!(
            travels(-60.0, 75.0, 25.0),
            [0.0, 25.0, 50.0, 75.0, 0.0, -25.0, -50.0, 0.0]
        );
    }

    #[test]
    fn a_travel_shorter_than_a_step_leaves_ride_height() {
        assert_eq!(travels(-10.0, 20.0, 25.0), [0.0, 0.0, 0.0]);
    }
}
