//! Both tie rods on the rack at one pose, and what they ask of the driver.

use trammel_build::{AxleName, Build, Side};
use trammel_strength::{
    proof::{PoseAt, Sides, rack_forces},
    statics::SteeringEffort,
};

use super::{
    ProofDepth,
    cases::kernel_cases,
    effort::{Steered, sides},
};
use crate::WorstPose;

/// What a load case asks of rack and hands at one pose, without friction.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SteeringForces {
    /// Force of the left tie rod and of the right one on the rack along its axis, N, to the vehicle's left positive. Of a case that hits a single
    /// wheel, the other one carries nothing.
    pub rack: [f64; 2],
    /// Both together, and what holds them at the pinion and in the hands.
    pub effort: SteeringEffort,
}

/// Rack, pinion and hands under a load case at one pose of the front axle; a hit is on the wheel of `side`. `None` without a rack, such a case,
/// or known forces there.
#[must_use]
pub fn steering_forces(
    build: &Build,
    side: Side,
    load_case: &str,
    place: WorstPose,
    sense: f64,
) -> Option<SteeringForces> {
    let model = build.axle(AxleName::Front).ok()?;
    model.rack?;
    let (steered, axle) = Steered::of(build, &model, Some(side), ProofDepth::Quick)?;
    let case = kernel_cases(build)
        .into_iter()
        .find(|case| case.name == load_case)?;
    let sides = sides(&case).unwrap_or(Sides::Both);
    let at = PoseAt {
        travel: place.travel,
        rack: place.rack,
    };
    let [here, there] = rack_forces(&axle, &steered.scene, &case, sides, at, sense).ok()?;
    let effort = steered.scene.steering?.effort(here + there).ok()?;
    // A mirrored corner has its rack axis mirrored too: both forces are to the vehicle's left already.
    let rack = match side {
        Side::Left => [here, there],
        Side::Right => [there, here],
    };
    Some(SteeringForces { rack, effort })
}
