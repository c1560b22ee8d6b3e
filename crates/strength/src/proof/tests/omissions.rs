//! What could not be checked is said.

use super::*;

fn springless() -> Linkage {
    Linkage::new(&Corner {
        spring: None,
        ..*linkage().corner()
    })
    .unwrap()
}

#[test]
fn what_is_missing_is_said() {
    let springless = springless();
    let proof = proof_of(&springless, &parts());
    assert_eq!(proof.omissions.len(), default_cases().len());
    assert!(
        proof.omissions[0]
            .why
            .to_string()
            .contains("no spring is given")
    );
    assert!(proof.rows.iter().all(|row| row.load_case.is_none()));
    // A case that the linkage never reaches.
    let mut cases = default_cases();
    cases.truncate(1);
    cases[0].window.travel = [1.0, 1.0];
    let parts = parts();
    let linkage = linkage();
    let setup = Setup {
        reach: Reach::new(4000.0, 0.0, 0.0).unwrap(),
        ..setup_of(&linkage, &parts, &cases, Fineness::default())
    };
    assert_eq!(prove(&setup).omissions[0].why, Why::NoPose);
    let unsteered = crate::loads::Scene {
        steering: None,
        ..scene()
    };
    let cases = default_cases();
    let proof = prove(&Setup {
        scene: unsteered,
        reach: Reach::new(50.0, 50.0, 30.0).unwrap(),
        cases: &cases,
        ..setup
    });
    assert_eq!(proof.omissions.len(), 1);
    assert_eq!(
        proof.omissions[0].load_case.as_deref(),
        Some("against the steering stop")
    );
}

/// Seven rack travels by nine wheel travels, each without a spring: sixty-three poses of one omission.
#[test]
fn an_omission_counts_its_poses() {
    let springless = springless();
    let mut cases = default_cases();
    cases.truncate(1);
    cases[0].window.travel = [-1.0, 1.0];
    cases[0].window.lock = [0.0, 1.0];
    let parts = parts();
    let proof = prove(&Setup {
        reach: Reach::new(50.0, 50.0, 30.0).unwrap(),
        ..setup_of(&springless, &parts, &cases, FINE)
    });
    let poses: Vec<usize> = proof.omissions.iter().map(|o| o.poses).collect();
    assert_eq!(poses, [63]);
}
