//! What no load changes: looked at over the whole of travel and lock, once.

use trammel_analysis::{FactorRequest, WorstPose, factors_over};
use trammel_build::{AxleName, Side};
use trammel_strength::check::Check;

use crate::{common, proof};

/// No pose of travel and lock is worse than the row's, wherever load cases come.
#[test]
fn swivel_and_room_of_a_joint_are_worst_of_all_poses() {
    for name in ["lifted", "badly-placed-rack"] {
        let build = common::demo(name);
        let axle = build.axle(AxleName::Front).unwrap();
        let [low, high] = [axle.travel.droop, axle.travel.bump];
        let share = |i: u32| f64::from(i) / 12.0;
        let lock = axle.lock();
        let poses: Vec<WorstPose> = (0..=12)
            .flat_map(|i| (0..=12).map(move |j| (share(i), share(j))))
            .map(|(u, v)| WorstPose {
                travel: low + u * (high - low),
                rack: lock * (2.0 * v - 1.0),
            })
            .collect();
        let found = proof(&build);
        for check in [Check::Misalignment, Check::BodyRoom] {
            let rows = found
                .rows
                .iter()
                .filter(|r| r.check == check && r.axle == AxleName::Front);
            let mut seen = Vec::new();
            for row in rows {
                assert!(!seen.contains(&row.part), "{name} {check}: told twice");
                seen.push(row.part);
                assert_eq!(row.load_case, None);
                let asked = FactorRequest {
                    axle: row.axle,
                    side: Side::Left,
                    part: row.part,
                    check,
                    load_case: String::new(),
                };
                let everywhere = factors_over(&build, &asked, &poses);
                let least = everywhere
                    .iter()
                    .map(|f| f.factor)
                    .fold(f64::INFINITY, f64::min);
                let told = row.factor.unwrap();
                assert!(
                    told <= least + 1e-9,
                    "{name} {check}: told {told}, {least} is there"
                );
            }
            assert!(!seen.is_empty(), "{name} {check}");
        }
    }
}
