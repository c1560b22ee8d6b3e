//! Both sides on the rack.

use approx::assert_relative_eq;
use trammel_analysis::{WorstPose, steering_forces};
use trammel_build::Side;
use trammel_strength::check::Check;

use crate::{common, proof};

/// The table's figures are those of the proof at its own worst pose, and a hit from the right is one from the left the other way.
#[test]
fn both_rods_on_the_rack_are_what_the_hands_hold() {
    let build = common::demo("good");
    let proof = proof(&build);
    let row = proof
        .rows
        .iter()
        .find(|r| r.check == Check::HandForce)
        .unwrap();
    let case = row.load_case.as_deref().unwrap();
    let friction = build.steering.friction.unwrap_or(0.0);
    let found = [1.0, -1.0].map(|sense| {
        let found = steering_forces(&build, Side::Left, case, row.pose.unwrap(), sense).unwrap();
        let [left, right] = found.rack;
        assert_relative_eq!(left + right, found.effort.rack_force, epsilon = 1e-9);
        found.effort.hand_force.abs() / (1.0 - friction)
    });
    assert_relative_eq!(found[0].max(found[1]), row.value, max_relative = 1e-9);

    let place = WorstPose {
        travel: 10.0,
        rack: 0.0,
    };
    let hit = |side| steering_forces(&build, side, "kerb, sideways", place, 1.0).unwrap();
    let (left, right) = (hit(Side::Left), hit(Side::Right));
    assert!(left.rack[0].abs() > 1.0 && left.rack[1] == 0.0);
    assert_relative_eq!(right.rack[1], -left.rack[0], max_relative = 1e-9);
    assert_relative_eq!(
        right.effort.hand_force,
        -left.effort.hand_force,
        max_relative = 1e-9
    );
    let unknown = steering_forces(&build, Side::Left, "no such case", place, 1.0);
    assert!(unknown.is_none());
}
