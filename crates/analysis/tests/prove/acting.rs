//! Where the forces of a load case act.

use approx::assert_relative_eq;
use trammel_analysis::{
    ForceRequest, Span, WorstPose, acting_forces, effective_load_cases, forces_under_case,
};
use trammel_build::{AxleName, LengthUnit, LoadAction, LoadPlace, Side};
use trammel_geometry::Vector;

use super::common;

/// What acts on the wheel is what rod and arms hold up, and a hit on the rim stands a rim's radius from the wheel's axis.
#[test]
fn acting_forces_are_held_by_rod_and_arms() {
    let build = common::demo("good");
    let (travel, rack) = (20.0, 15.0);
    let mut on_rims = 0;
    for (case, _) in effective_load_cases(&build) {
        for side in [Side::Left, Side::Right] {
            let at = WorstPose { travel, rack };
            let acting = acting_forces(&build, (AxleName::Front, side), &case.name, at).unwrap();
            let request = ForceRequest {
                axle: AxleName::Front,
                side,
                travel: Some(Span::new(travel, travel, 1).unwrap()),
                rack: Some(Span::new(rack, rack, 1).unwrap()),
                unit: LengthUnit::Millimetre,
            };
            let table = forces_under_case(&build, &request, &case.name, 1.0).unwrap();
            let f = table.rows[0].forces;
            let held = f.force_on_inner_joint
                - f.upper.ball_joint_on_upright
                - f.lower.ball_joint_on_upright;
            let sum: Vector = acting.iter().map(|(_, force)| force).sum();
            assert!(
                (sum - held).norm() < 1e-6 * (1.0 + held.norm()),
                "{}",
                case.name
            );
            let pose = build.axle(AxleName::Front).unwrap();
            let pose = pose.linkage(side).pose(travel, rack).unwrap();
            let forces = case
                .actions
                .iter()
                .filter(|a| matches!(a, LoadAction::Force(..)));
            for (action, (point, _)) in forces.zip(&acting) {
                let LoadAction::Force(_, _, place, _) = action else {
                    continue;
                };
                let out = if side == Side::Left { 1.0 } else { -1.0 };
                let mut point = *point;
                point.y *= out;
                match place {
                    LoadPlace::Contact => assert!((point - pose.contact).norm() < 1e-9),
                    LoadPlace::Rim(_, height, _) => {
                        let from = point - pose.wheel_centre;
                        let across = from - pose.spin_axis * from.dot(&pose.spin_axis);
                        assert_relative_eq!(across.norm(), 127.0, epsilon = 1e-9);
                        assert_relative_eq!(
                            from.z - pose.spin_axis.z * from.dot(&pose.spin_axis),
                            height * 127.0 * pose.spin_axis.x.hypot(pose.spin_axis.y),
                            epsilon = 1e-9
                        );
                        on_rims += 1;
                    }
                    LoadPlace::WheelCentre => {
                        assert!((point - pose.wheel_centre).norm() < 1e-9);
                    }
                }
            }
        }
    }
    assert!(on_rims >= 2, "{on_rims}");
    let missing = acting_forces(
        &build,
        (AxleName::Front, Side::Left),
        "no such case",
        WorstPose {
            travel: 0.0,
            rack: 0.0,
        },
    );
    assert!(missing.unwrap_err().to_string().contains("at rest"));
}
