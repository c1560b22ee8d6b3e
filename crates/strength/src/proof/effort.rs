//! What a load case asks of the driver's hands: effort when parked, kick-back when one wheel is hit.

use trammel_geometry::{Axle, Linkage, Pose};

use super::row::{PoseAt, Why};
use crate::loads::{Fineness, LoadCase, LoadError, Reach, Scene, worst};
use crate::statics::{CornerForces, Equilibrium, SteeringEffort};

/// Which wheels the case acts on.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Sides {
    /// Both alike, each in its own left-corner terms: parked steering, braking.
    Both,
    /// The left wheel alone; the other carries nothing. On a symmetrical axle the right wheel kicks as hard the other way.
    Left,
}

/// The force of each side's tie rod on the rack, left then right, along its axis (N, to the vehicle's left positive), at one wheel travel and rack
/// travel (mm) under a case. `sense` is one of the case's senses, told for the left wheel.
///
/// # Errors
/// A pose that isn't reached, a load or force that isn't known.
pub fn rack_forces(
    axle: &Axle,
    scene: &Scene,
    case: &LoadCase,
    sides: Sides,
    at: PoseAt,
    sense: f64,
) -> Result<[f64; 2], Why> {
    let left = side(&axle.left, scene, case, at, sense)?.rack_force;
    let right = match sides {
        // A turn to the left is one to the right in the mirror.
        Sides::Both => side(&axle.right_mirrored, scene, case, at, -sense)?.rack_force,
        Sides::Left => None,
    };
    Ok([left, right].map(|force| force.unwrap_or(0.0)))
}

/// What both sides of the axle together ask of the driver at one wheel travel and rack travel (mm) under a case: force on the rack, torque at the
/// pinion, force at the steering wheel's rim. `sense` is one of the case's senses, told for the left wheel.
///
/// # Errors
/// No steering in the scene, a pose that isn't reached, a load or force that isn't known.
pub fn steering_effort(
    axle: &Axle,
    scene: &Scene,
    case: &LoadCase,
    sides: Sides,
    at: PoseAt,
    sense: f64,
) -> Result<SteeringEffort, Why> {
    let [left, right] = rack_forces(axle, scene, case, sides, at, sense)?;
    let steering = scene.steering.ok_or(LoadError::NoSteering)?;
    Ok(steering.effort(left + right)?)
}

fn side(
    linkage: &Linkage,
    scene: &Scene,
    case: &LoadCase,
    at: PoseAt,
    sense: f64,
) -> Result<CornerForces, Why> {
    let pose = linkage.pose(at.travel, at.rack).map_err(|_| Why::NoPose)?;
    let load = scene.load(case, linkage, &pose, sense)?;
    Ok(Equilibrium::at(linkage, &pose)?.under(&load)?)
}

/// The largest hand force of a case over its window, with the pose where it is. `None` when no pose of the window is reached or has known forces.
///
/// # Errors
/// A window that is none.
pub fn worst_steering_effort(
    axle: &Axle,
    scene: &Scene,
    case: &LoadCase,
    sides: Sides,
    reach: &Reach,
    fineness: Fineness,
) -> Result<Option<(PoseAt, SteeringEffort)>, Why> {
    let strongest = |pose: &Pose| {
        let at = PoseAt::of(pose);
        case.senses()
            .iter()
            .filter_map(|&sense| steering_effort(axle, scene, case, sides, at, sense).ok())
            .max_by(|a, b| a.hand_force.abs().total_cmp(&b.hand_force.abs()))
    };
    let found = worst(&axle.left, &case.window, reach, fineness, |pose| {
        strongest(pose).map(|effort| effort.hand_force.abs())
    })
    .map_err(LoadError::from)?;
    Ok(found
        .and_then(|found| strongest(&found.pose).map(|effort| (PoseAt::of(&found.pose), effort))))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::loads::default_cases;
    use crate::loads::tests::{linkage, scene};
    use approx::assert_relative_eq;
    use trammel_geometry::{Corner, Vector};

    fn axle() -> Axle {
        let corner = Corner {
            rack_axis: Some(Vector::y()),
            ..*linkage().corner()
        };
        let right = Corner {
            rack_axis: Some(-Vector::y()),
            ..corner
        };
        Axle {
            left: Linkage::new(&corner).unwrap(),
            right_mirrored: Linkage::new(&right).unwrap(),
        }
    }

    fn case(name: &str) -> LoadCase {
        default_cases()
            .into_iter()
            .find(|case| case.name == name)
            .unwrap()
    }

    const AHEAD: PoseAt = PoseAt {
        travel: 0.0,
        rack: 0.0,
    };

    fn effort(name: &str, sides: Sides, at: PoseAt, sense: f64) -> SteeringEffort {
        steering_effort(&axle(), &scene(), &case(name), sides, at, sense).unwrap()
    }

    /// Straight ahead the two sides of a symmetrical axle hold each other under equal loads: nothing is left for the hands.
    #[test]
    fn equal_loads_leave_nothing_straight_ahead() {
        let both = effort("at rest", Sides::Both, AHEAD, 1.0);
        let alone = effort("at rest", Sides::Left, AHEAD, 1.0);
        assert!(both.rack_force.abs() < 1e-9 * alone.rack_force.abs());
        assert!(alone.rack_force.abs() > 1.0);
    }

    /// Turning both tyres on the spot takes twice one tyre's part: the difference of the two senses, seen on one side and on both.
    #[test]
    fn both_tyres_resist() {
        let span = |sides| {
            let [to, fro] = [1.0, -1.0].map(|sense| effort("parked steering", sides, AHEAD, sense));
            (to.hand_force - fro.hand_force).abs()
        };
        assert_relative_eq!(
            span(Sides::Both),
            2.0 * span(Sides::Left),
            max_relative = 1e-9
        );
        assert!(span(Sides::Both) > 20.0);
    }

    /// At rest and turned left the wheels ask for the opposite of what they ask for turned right.
    #[test]
    fn left_and_right_are_alike() {
        let at = |rack| effort("at rest", Sides::Both, PoseAt { travel: 0.0, rack }, 1.0);
        assert_relative_eq!(
            at(25.0).hand_force,
            -at(-25.0).hand_force,
            max_relative = 1e-9
        );
    }

    #[test]
    fn the_worst_is_at_least_as_bad_as_any() {
        let reach = Reach::new(60.0, 60.0, 35.0).unwrap();
        let found = worst_steering_effort(
            &axle(),
            &scene(),
            &case("kerb, sideways"),
            Sides::Left,
            &reach,
            Fineness::default(),
        );
        let (_, worst) = found.unwrap().unwrap();
        for (travel, rack) in [(0.0, 0.0), (60.0, 35.0), (-30.0, -35.0), (20.0, 10.0)] {
            let here = effort("kerb, sideways", Sides::Left, PoseAt { travel, rack }, 1.0);
            assert!(worst.hand_force.abs() >= here.hand_force.abs() * (1.0 - 1e-9));
        }
        let far = PoseAt {
            travel: 3000.0,
            rack: 0.0,
        };
        let beyond = steering_effort(&axle(), &scene(), &case("at rest"), Sides::Both, far, 1.0);
        assert_eq!(beyond, Err(Why::NoPose));
        let unsteered = Scene {
            steering: None,
            ..scene()
        };
        let none = steering_effort(
            &axle(),
            &unsteered,
            &case("at rest"),
            Sides::Both,
            AHEAD,
            1.0,
        );
        assert_eq!(none, Err(Why::Load(LoadError::NoSteering)));
    }
}
